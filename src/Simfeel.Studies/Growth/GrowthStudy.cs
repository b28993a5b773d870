using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Growth;

/// <summary>Flies a build at many sizes of one of its parts.</summary>
public static class GrowthStudy
{
    /// <summary>Points of a curve unless told otherwise.</summary>
    public const int UsualPoints = 23;

    /// <summary>Share of the best value within which a size counts as about as good.</summary>
    private const double Flat = 0.05;

    /// <summary>One curve for each metric.</summary>
    /// <param name="build">The build that grows; read from a file.</param>
    /// <param name="knob">What grows.</param>
    /// <param name="metrics">What to measure.</param>
    /// <param name="conditions">What is the same for all.</param>
    /// <param name="range">Smallest and largest factor; the knob's usual range if null.</param>
    /// <param name="points">Number of points, 3 to 1000, in equal ratios; the build's own size is one more where it lies between.</param>
    /// <param name="progress">Told the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static IReadOnlyList<GrowthCurve> Run(
        Build build,
        BuildKnob knob,
        IReadOnlyList<Metric> metrics,
        StudyConditions conditions,
        (double From, double To)? range = null,
        int points = UsualPoints,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(knob);
        ArgumentNullException.ThrowIfNull(metrics);
        ArgumentNullException.ThrowIfNull(conditions);
        (double from, double to) = range ?? knob.UsualRange;
        double[] factors = Factors(from, to, points);
        int variants = 1 + knob.Consequences.Count;
        TunedUnit?[] units = new TunedUnit?[variants * factors.Length];
        string[] refusals = new string[units.Length];
        ParallelOptions options = new() { CancellationToken = cancellation };
        // the plain growth first: where sizes need rotor tables of their own, the variants then find them made
        for (int variant = 0; variant < variants; variant++)
        {
            int first = variant * factors.Length, without = variant - 1;
            Parallel.For(0, factors.Length, options, n => units[first + n] = Tuned(build, knob, factors[n], without, conditions, out refusals[first + n]));
        }
        double[][] values = MetricFlights.Read(units, metrics, conditions, progress, cancellation);
        double own = knob.Size(build);
        return
        [
            .. metrics.Select((metric, m) => GrowthReading.Read(
                build.Name, knob, metric,
                [.. factors.Select((factor, n) => new GrowthPoint(
                    factor, factor * own, values[n][m],
                    double.IsNaN(values[n][m]) && refusals[n].Length == 0 ? "never gets there within the drill" : refusals[n]))],
                [.. knob.Consequences.Select((consequence, v) => (
                    consequence.Name, Values: factors.Select((_, n) => values[((v + 1) * factors.Length) + n][m]).ToArray()))],
                Flat)),
        ];
    }

    /// <summary>The metric of a build with one part at some sizes; NaN where it cannot be had.</summary>
    internal static double[] At(Build build, BuildKnob knob, Metric metric, StudyConditions conditions, IReadOnlyList<double> factors)
    {
        TunedUnit?[] units = new TunedUnit?[factors.Count];
        Parallel.For(0, units.Length, n => units[n] = Tuned(build, knob, factors[n], -1, conditions, out _));
        return [.. MetricFlights.Read(units, [metric], conditions).Select(row => row[0])];
    }

    /// <param name="build">The build.</param>
    /// <param name="knob">What grows.</param>
    /// <param name="factor">By how much.</param>
    /// <param name="without">Number of the consequence to leave out; -1 for none.</param>
    /// <param name="conditions">What it flies in.</param>
    /// <param name="refusal">Why there is no craft; empty where there is.</param>
    private static TunedUnit? Tuned(Build build, BuildKnob knob, double factor, int without, StudyConditions conditions, out string refusal)
    {
        try
        {
            Build grown = factor == 1 ? build : knob.Grow(build, factor);
            if (without >= 0) grown = knob.Consequences[without].Without(build, grown);
            refusal = BuildKnob.Refusal(grown) ?? "";
            return refusal.Length > 0 ? null : conditions.Tune(grown, out refusal);
        }
        catch (InvalidOperationException error)
        {
            refusal = error.Message;
            return null;
        }
    }

    private static double[] Factors(double from, double to, int points)
    {
        if (!(from > 0 && to > from)) throw new ArgumentOutOfRangeException(nameof(from), from, "Factors rise from above 0.");
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 3);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(points, 1000);
        IEnumerable<double> factors = Enumerable.Range(0, points).Select(n => from * Math.Pow(to / from, n / (points - 1.0)));
        return [.. (from <= 1 && to >= 1 ? factors.Where(factor => Math.Abs(factor - 1) > 1e-9).Append(1) : factors).Order()];
    }
}
