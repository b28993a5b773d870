using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Style;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Tests.Sheet;

/// <summary>Sheets without a flight: one craft under two names, Gull (A) and Tern (B), and numbers that are made up.</summary>
internal static class MadeSheet
{
    /// <summary>A sheet in which nothing differs but what is given, and nothing was asked for beside.</summary>
    /// <param name="numbers">Metrics that differ, SI; all others are 20 floors for both.</param>
    public static FeelSheet Of(params (string Name, double A, double B)[] numbers)
    {
        AssembledBuild craft = BuildAssembler.Assemble(BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build!, Starters.Air);
        Comparison comparison = Compared(numbers);
        return new()
        {
            Version = "1.2.3",
            A = craft,
            B = craft,
            Fingerprints = ("aa", "bb"),
            Comparison = comparison,
            OtherPolicy = comparison with { Policy = "same-gains" },
            Uncertainty = new() { Draws = 9, Seed = 3, Refused = 0, Inputs = [], Metrics = [] },
            Blame = [],
            Growth = [],
            Styles = [],
            NotModelled = [],
        };
    }

    /// <summary>A comparison in which nothing differs but what is given.</summary>
    public static Comparison Compared(params (string Name, double A, double B)[] numbers)
    {
        Dictionary<string, (double A, double B)> given = numbers.ToDictionary(one => one.Name, one => (one.A, one.B));
        return Compared(MetricCatalogue.All.Select(metric =>
        {
            (double a, double b) = given.GetValueOrDefault(metric.Name, (20 * metric.Floor, 20 * metric.Floor));
            return new MetricPair(metric, a, b, FeelBands.Usual);
        }));
    }

    /// <summary>A comparison of two builds named Gull and Tern, both Wagtail, of which only these numbers were read.</summary>
    public static Comparison Compared(IEnumerable<MetricPair> metrics)
    {
        TunedUnit unit = Starters.Get("wagtail");
        return new()
        {
            A = Called("Gull"),
            B = Called("Tern"),
            Policy = "matched",
            Field = new(),
            Profile = Starters.Profile,
            Effort = 1,
            Bands = FeelBands.Usual,
            Metrics = [.. metrics],
            Work = [],
            Logs = [],
        };

        TunedUnit Called(string name) => unit with { Unit = unit.Unit with { Name = name } };
    }

    public static UncertainMetric Drawn(string name, double low, double middle, double high, params TornadoBar[] tornado) =>
        new() { Metric = Metric(name), A = new(0.9 * middle, middle, 1.1 * middle), B = new(1.9 * middle, 2 * middle, 2.1 * middle), Difference = new(low, middle, high), Draws = 9, Tornado = tornado };

    public static Metric Metric(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);

    public static FeelSheet Styled(this FeelSheet sheet) =>
        sheet with { Styles = [.. FlyingStyle.All.Select(style => StyleReading.Of(style, sheet.Comparison, sheet.Uncertainty))] };
}
