using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Compare;

/// <summary>One metric of two builds.</summary>
/// <param name="Metric">What was measured.</param>
/// <param name="A">Of build A, SI; NaN where the event never came.</param>
/// <param name="B">Of build B.</param>
public readonly record struct MetricPair(Metric Metric, double A, double B)
{
    /// <summary>B - A, SI.</summary>
    public double Difference => B - A;

    /// <summary>
    /// B - A in percent of the mean of both sizes, so that swapping the builds only changes its sign; 0 where both are 0.
    /// </summary>
    public double DifferencePercent
    {
        get
        {
            double mean = (Math.Abs(A) + Math.Abs(B)) / 2;
            return A == B ? 0 : 100 * (B - A) / mean;
        }
    }

    /// <summary>Whether a pilot would feel it.</summary>
    public Feel Feel => FeelBands.Of(Metric, A, B, DifferencePercent);
}

/// <summary>Two builds flown through the drills by the same pilot, each with its own matched gains.</summary>
public sealed record Comparison
{
    /// <summary>Build A, tuned.</summary>
    public required TunedUnit A { get; init; }

    /// <summary>Build B, tuned.</summary>
    public required TunedUnit B { get; init; }

    /// <summary>What to call the builds: their names, told apart where they are the same.</summary>
    public (string A, string B) Names
    {
        get
        {
            string a = A.Unit.Name, b = B.Unit.Name;
            return a == b ? (a + " (A)", b + " (B)") : (a, b);
        }
    }

    /// <summary>Name of the tuning policy.</summary>
    public required string Policy { get; init; }

    /// <summary>The field, the same for both.</summary>
    public required FieldConditions Field { get; init; }

    /// <summary>The pilot, the same for both.</summary>
    public required PilotProfile Profile { get; init; }

    /// <summary>Stick effort, 0.25 to 1.</summary>
    public required double Effort { get; init; }

    /// <summary>The metrics in the catalogue's order.</summary>
    public required IReadOnlyList<MetricPair> Metrics { get; init; }

    /// <summary>The logs behind them: A's and B's, by drill.</summary>
    public required IReadOnlyList<(FlightLog A, FlightLog B)> Logs { get; init; }

    /// <summary>Flies both builds through the drills; the drills run side by side on all cores, results stand by index.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The effort is out of range.</exception>
    public static Comparison Run(
        TunedUnit a, TunedUnit b, PilotProfile profile, double effort = 1, FieldConditions? field = null)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        field ??= new FieldConditions();
        IReadOnlyList<Drill> drills = DrillCatalogue.All;
        FlightLog[] logs = new FlightLog[2 * drills.Count];
        Parallel.For(0, logs.Length, n => logs[n] = DrillRunner.Fly(drills[n / 2], n % 2 == 0 ? a : b, profile, effort, field));

        List<(FlightLog A, FlightLog B)> pairs = [];
        for (int n = 0; n < drills.Count; n++) pairs.Add((logs[2 * n], logs[(2 * n) + 1]));
        List<MetricPair> metrics = [];
        foreach (Metric metric in MetricCatalogue.All)
        {
            (FlightLog logA, FlightLog logB) = pairs.First(pair => pair.A.Drill == metric.Drill.Name);
            metrics.Add(new(metric, metric.Read(logA), metric.Read(logB)));
        }
        return new()
        {
            A = a,
            B = b,
            Policy = "matched",
            Field = field,
            Profile = profile,
            Effort = effort,
            Metrics = metrics,
            Logs = pairs,
        };
    }
}
