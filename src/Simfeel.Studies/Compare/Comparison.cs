using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Compare;

/// <summary>One metric of two builds.</summary>
/// <param name="Metric">What was measured.</param>
/// <param name="A">Of build A, SI; NaN where the event never came.</param>
/// <param name="B">Of build B.</param>
/// <param name="Bands">What counts as felt.</param>
public readonly record struct MetricPair(Metric Metric, double A, double B, FeelBands Bands)
{
    /// <summary>Whether a build touched the ground in the drill: then the numbers tell of the ground, and nobody can say what was felt.</summary>
    public bool TouchesGround { get; init; }

    /// <summary>B - A, SI.</summary>
    public double Difference => B - A;

    /// <summary>
    /// B - A in percent of the mean of both sizes, so that swapping the builds only changes its sign; 0 where both are 0.
    /// </summary>
    public double DifferencePercent => Percent(A, B);

    /// <summary>b - a in percent of the mean of both sizes; 0 where they are the same.</summary>
    public static double Percent(double a, double b) => a == b ? 0 : 100 * (b - a) / ((Math.Abs(a) + Math.Abs(b)) / 2);

    /// <summary>Whether a pilot would feel it.</summary>
    public Feel Feel => TouchesGround ? Feel.Unknown : Bands.Of(Metric, A, B, DifferencePercent);
}

/// <summary>Two builds flown through the drills by the same pilot, each with the gains of one tuning policy.</summary>
public sealed record Comparison
{
    /// <summary>Build A, tuned.</summary>
    public required TunedUnit A { get; init; }

    /// <summary>Build B, tuned.</summary>
    public required TunedUnit B { get; init; }

    /// <summary>What to call the builds: their names, told apart where they are the same.</summary>
    public (string A, string B) Names => ToldApart(A.Unit.Name, B.Unit.Name);

    /// <summary>Two names, with (A) and (B) where they are the same.</summary>
    public static (string A, string B) ToldApart(string a, string b) => a == b ? (a + " (A)", b + " (B)") : (a, b);

    /// <summary>Name of the tuning policy.</summary>
    public required string Policy { get; init; }

    /// <summary>The field, the same for both.</summary>
    public required FieldConditions Field { get; init; }

    /// <summary>The pilot, the same for both.</summary>
    public required PilotProfile Profile { get; init; }

    /// <summary>Stick effort, 0.25 to 1.</summary>
    public required double Effort { get; init; }

    /// <summary>What counts as felt.</summary>
    public required FeelBands Bands { get; init; }

    /// <summary>The metrics in the catalogue's order.</summary>
    public required IReadOnlyList<MetricPair> Metrics { get; init; }

    /// <summary>How hard the rotors were worked in each drill.</summary>
    public required IReadOnlyList<DrillWork> Work { get; init; }

    /// <summary>The logs behind them, of the scripted drills: A's and B's, by drill. The longer drills' are not kept.</summary>
    public required IReadOnlyList<(FlightLog A, FlightLog B)> Logs { get; init; }

    /// <summary>Flies two builds through the drills.</summary>
    /// <param name="a">Build A, tuned.</param>
    /// <param name="b">Build B, tuned by the same policy.</param>
    /// <param name="profile">The pilot.</param>
    /// <param name="effort">Stick effort, 0.25 to 1.</param>
    /// <param name="field">The field; all effects, seed 1, high above the ground if null.</param>
    /// <param name="bands">What counts as felt; <see cref="FeelBands.Usual"/> if null.</param>
    /// <exception cref="ArgumentOutOfRangeException">The effort is out of range.</exception>
    public static Comparison Run(
        TunedUnit a, TunedUnit b, PilotProfile profile, double effort = 1, FieldConditions? field = null, FeelBands? bands = null) =>
        ComparisonRun.Run([(a, b)], profile, effort, field ?? new FieldConditions(), bands ?? FeelBands.Usual)[0];
}

/// <summary>How hard both builds worked in a drill.</summary>
/// <param name="Drill">The drill.</param>
/// <param name="A">Of build A.</param>
/// <param name="B">Of build B.</param>
/// <param name="ATouches">Whether A touched the ground.</param>
/// <param name="BTouches">Whether B did.</param>
public sealed record DrillWork(Drill Drill, ControlEffort A, ControlEffort B, bool ATouches, bool BTouches);
