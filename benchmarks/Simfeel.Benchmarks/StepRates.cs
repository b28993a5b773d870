using System.Diagnostics;
using System.Globalization;
using System.Text;
using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;

namespace Simfeel.Benchmarks;

/// <summary>
/// What the physics step does to the numbers that people read: all drills flown by all starter builds at several step rates, each
/// metric against the same metric at the finest. The controller runs once for a whole number of steps, so its rate is the lowest
/// step rate; a coarser step is tried with a slower controller, against a fine step with that same slower controller.
/// </summary>
internal static class StepRates
{
    /// <summary>Steps a second of the flights that the others are held against.</summary>
    private const int Finest = 32000;

    private static readonly int[] Rates = [1000, 2000, 4000, 8000, 16000];

    /// <summary>Rates of the controller, Hz, and effects: those that everything flies with, then what lets a coarser step live.</summary>
    private static readonly (int LoopRate, AirEffects Effects)[] Cases =
        [(4000, AirEffects.All), (1000, AirEffects.All), (1000, AirEffects.Wake | AirEffects.Ground)];

    /// <summary>Share of the smaller of band and floor under which an error is called far below what is felt.</summary>
    private const double Small = 0.1;

    /// <summary>Flies and returns a Markdown report.</summary>
    public static string Report()
    {
        BuildShelf shelf = new(Path.Combine(TwinBuild.RepositoryRoot(), "assets", "builds"));
        Build?[] builds = [.. shelf.Names.Select(name => BuildReader.Read(shelf.PathOf(name)!).Build)];
        StringBuilder text = new();
        text.AppendLine("# Metrics and the physics step");
        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture,
            $"Every metric of every drill, {builds.Length} starter builds, midpoint rule. Largest change against {Finest} steps a second with the same controller.");
        text.AppendLine("In percent of the value, and, in brackets, in percent of the difference that is the least to be called \"perhaps\" (5 % of the value, or the metric's floor where that is more).");
        foreach ((int loopRate, AirEffects effects) in Cases) Table(text, builds, loopRate, effects);
        return text.ToString();
    }

    private static void Table(StringBuilder text, Build?[] builds, int loopRate, AirEffects effects)
    {
        IReadOnlyList<Metric> metrics = MetricCatalogue.All;
        AirState air = StandardAtmosphere.At(0);
        // gains depend on the rate of the controller, not on the step
        TunedUnit?[] units = new StudyConditions(air, Profile(loopRate, loopRate), new()).TuneAll(builds);
        double[][] finest = Fly(Finest);
        int[] rates = [.. Rates.Where(rate => rate >= loopRate)];
        List<double[][]> flown = [];
        List<double> seconds = [];
        foreach (int rate in rates)
        {
            Stopwatch watch = Stopwatch.StartNew();
            flown.Add(Fly(rate));
            seconds.Add(watch.Elapsed.TotalSeconds);
        }

        text.AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $"## Controller at {loopRate} Hz, {(effects == AirEffects.All ? "all effects of moving air" : "inflow without lag")}");
        text.AppendLine();
        text.AppendLine("| drill | metric | " + string.Join(" | ", rates.Select(rate => $"{rate} steps/s")) + " |");
        text.AppendLine("| --- | --- |" + string.Concat(rates.Select(_ => " ---: |")));
        double[] most = new double[rates.Length], mostOfBand = new double[rates.Length];
        int[] large = new int[rates.Length];
        for (int m = 0; m < metrics.Count; m++)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {metrics[m].Drill.Name} | {metrics[m].Title} |");
            for (int r = 0; r < rates.Length; r++)
            {
                (double share, double ofBand) = Worst(metrics[m], m, flown[r], finest);
                text.Append(CultureInfo.InvariantCulture, $" {100 * share:g2} ({100 * ofBand:g2}) |");
                most[r] = Math.Max(most[r], share);
                mostOfBand[r] = Math.Max(mostOfBand[r], ofBand);
                if (ofBand > Small) large[r]++;
            }
            text.AppendLine();
        }
        Line("largest", r => $"{100 * most[r]:g2} ({100 * mostOfBand[r]:g2})");
        Line("metrics over a tenth of that difference", r => $"{large[r]} of {metrics.Count}");
        Line("time of all flights, s", r => $"{seconds[r]:f1}");

        void Line(string name, Func<int, FormattableString> cell)
        {
            text.Append(CultureInfo.InvariantCulture, $"| | **{name}** |");
            for (int r = 0; r < rates.Length; r++) text.Append(CultureInfo.InvariantCulture, $" {FormattableString.Invariant(cell(r))} |");
            text.AppendLine();
        }

        double[][] Fly(int rate)
        {
            try
            {
                return MetricFlights.Read(units, metrics, new(air, Profile(rate, loopRate), new() { Effects = effects }));
            }
            catch (AggregateException error) when (error.InnerExceptions.All(inner => inner is ArithmeticException))
            {
                // a craft whose step is too long for its fastest decay ends in no number at all
                return [.. units.Select(_ => Enumerable.Repeat(double.NaN, metrics.Count).ToArray())];
            }
        }
    }

    private static (double Share, double OfBand) Worst(Metric metric, int m, double[][] values, double[][] finest)
    {
        double share = 0, ofBand = 0;
        for (int n = 0; n < values.Length; n++)
        {
            double was = finest[n][m], change = Math.Abs(values[n][m] - was);
            if (double.IsNaN(was) && double.IsNaN(values[n][m])) continue;
            // an event that comes at one step and not at another is as wrong as can be
            if (double.IsNaN(change)) return (double.PositiveInfinity, double.PositiveInfinity);
            if (change == 0) continue;
            share = Math.Max(share, change / Math.Abs(was));
            ofBand = Math.Max(ofBand, change / Math.Max(0.05 * Math.Abs(was), metric.Floor));
        }
        return (share, ofBand);
    }

    private static PilotProfile Profile(int stepRate, int loopRate)
    {
        PilotProfile usual = new();
        return usual with
        {
            StepRate = stepRate,
            StepsPerLoop = stepRate / loopRate,
            StepsPerStickReading = (int)Math.Round(stepRate * usual.StickPeriod),
        };
    }
}
