using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Blame;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Style;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Tests.Sheet;

/// <summary>A sheet of the demo pair: the flights are real, the studies made up, so that every number in them is known.</summary>
internal static class SampleSheet
{
    /// <summary>A name that would do harm where it is not escaped, with a character that no page may hold.</summary>
    public const string Hostile = "</style><script>alert('x')</script> & \"B\" | *bold* [x](y) \u0001`c`";

    private static readonly Lazy<FeelSheet> Demo = new(Make);

    public static FeelSheet Of => Demo.Value;

    public static Metric Metric(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);

    /// <summary>The same with other names.</summary>
    public static FeelSheet Named(string a, string b)
    {
        FeelSheet sheet = Of;
        Comparison named = sheet.Comparison with { A = Name(sheet.Comparison.A, a), B = Name(sheet.Comparison.B, b) };
        return sheet with
        {
            A = sheet.A with { Build = sheet.A.Build with { Name = a, ClassLabel = a, Description = a } },
            B = sheet.B with { Build = sheet.B.Build with { Name = b } },
            Comparison = named,
            OtherPolicy = named with { Policy = b },
            Growth = [.. sheet.Growth.Select(curve => curve with { Build = b })],
            NotModelled = [a],
        };

        static TunedUnit Name(TunedUnit unit, string name) => unit with { Unit = unit.Unit with { Name = name } };
    }

    /// <summary>The same with build B never reaching an event.</summary>
    public static FeelSheet Missing(string metric) => Of with
    {
        Comparison = Of.Comparison with
        {
            Metrics = [.. Of.Comparison.Metrics.Select(pair => pair.Metric.Name == metric ? pair with { B = double.NaN } : pair)],
        },
    };

    private static FeelSheet Make()
    {
        Comparison comparison = Comparison.Run(Starters.Get("wagtail"), Starters.Get("curlew"), Starters.Profile);
        UncertaintyStudy uncertainty = Uncertainty(comparison);
        return new()
        {
            Version = "1.2.3",
            A = Assembled("wagtail"),
            B = Assembled("curlew"),
            Fingerprints = ("aa11", "bb22"),
            Comparison = comparison,
            OtherPolicy = comparison with { Policy = "same-gains", Metrics = [.. comparison.Metrics.Select(pair => pair with { B = 1.5 * pair.B })] },
            Uncertainty = uncertainty,
            Blame = [Ledger(comparison, "stop_time"), Ledger(comparison, "bounce_back") with { Gap = "a hybrid never gets there within the drill." }],
            Growth = [Growth("Curlew")],
            Styles = [.. FlyingStyle.All.Select(style => StyleReading.Of(style, comparison, uncertainty))],
            NotModelled = ["Gusts."],
        };
    }

    private static AssembledBuild Assembled(string name) =>
        BuildAssembler.Assemble(BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml")).Build!, Starters.Air);

    /// <summary>Two thirds of the difference from the propellers' inertia, the rest from the frame, nothing from the others.</summary>
    private static BlameLedger Ledger(Comparison comparison, string metric)
    {
        MetricPair pair = comparison.Metrics.Single(known => known.Metric.Name == metric);
        return new()
        {
            Metric = pair.Metric,
            A = pair.A,
            B = pair.B,
            Hybrids = 4,
            Shares =
            [
                .. PartGroupNames.All.Select(group => group switch
                {
                    PartGroups.PropellerInertia => new BlameShare(group, pair.Difference * 2 / 3, pair.Difference, pair.Difference / 3),
                    PartGroups.Frame => new(group, pair.Difference / 3, pair.Difference * 2 / 3, 0),
                    _ => new(group, 0, 0, 0),
                }),
            ],
        };
    }

    /// <summary>Bands of a tenth about the differences, but for the climb, whose sign is left open.</summary>
    private static UncertaintyStudy Uncertainty(Comparison comparison)
    {
        UncertainInput input = new("motor.bell_inertia_g_mm2", InputOwner.A, "rule"), other = new("propeller.thrust_factor", InputOwner.Both, "default");
        return new()
        {
            Draws = 50,
            Seed = 7,
            Refused = 2,
            Inputs = [input, other],
            Metrics =
            [
                .. comparison.Metrics.Select(pair => new UncertainMetric
                {
                    Metric = pair.Metric,
                    A = new(0.9 * pair.A, pair.A, 1.1 * pair.A),
                    B = new(0.9 * pair.B, pair.B, 1.1 * pair.B),
                    Difference = pair.Metric.Name == "climb_in_1_s"
                        ? new(-1, pair.Difference, 2)
                        : new(pair.Difference - Math.Abs(0.1 * pair.Difference), pair.Difference, pair.Difference + Math.Abs(0.1 * pair.Difference)),
                    Draws = 48,
                    Tornado = pair.Metric.Name == "stop_time"
                        ? [new(input, 0.5 * pair.Difference, 1.5 * pair.Difference), new(other, 1.2 * pair.Difference, 0.9 * pair.Difference)]
                        : [],
                }),
            ],
        };
    }

    private static GrowthCurve Growth(string build)
    {
        GrowthPoint[] points =
        [
            new(0.5, 1000, 0.12), new(1, 2000, 0.09), new(1.5, 3000, 0.08), new(2, 4000, 0.085), new(2.5, 5000, double.NaN, "propellers overlap"),
        ];
        return new()
        {
            Build = build,
            Knob = new("motor.volume", "stator volume of the motors", "mm3"),
            Metric = Metric("stop_time"),
            Points = points,
            Variants = [new("bell inertia stays", [0.13, 0.1, 0.07, 0.06, double.NaN], 2)],
            Best = points[2],
            InnerOptimum = true,
            FlatRange = (1.5, 2),
            Sentences = ["It is best at 1.50 times.", "Beyond, more makes it worse."],
        };
    }
}
