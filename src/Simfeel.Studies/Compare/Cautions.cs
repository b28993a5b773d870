using Simfeel.Flight;

namespace Simfeel.Studies.Compare;

/// <summary>What a comparison has to warn of.</summary>
public static class Cautions
{
    /// <summary>
    /// One sentence for each build whose pack gives more current over the first second of a climb than it is rated for, and one
    /// where drills went below the ground, which stops nothing yet.
    /// </summary>
    public static IReadOnlyList<string> Of(Comparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        MetricPair climb = comparison.Metrics.Single(pair => pair.Metric.Name == "climb_pack_current");
        return [.. new[] { Overload(comparison.A, climb.A), Overload(comparison.B, climb.B), BelowGround(comparison) }.OfType<string>().Distinct()];
    }

    private static string? BelowGround(Comparison comparison)
    {
        double ground = comparison.Field.StartHeight;
        string[] drills = [.. comparison.Logs
            .Where(pair => pair.A.Samples.Concat(pair.B.Samples).Any(sample => sample.State.p_WB.Z > ground))
            .Select(pair => pair.A.Drill)];
        return drills.Length == 0
            ? null
            : $"Caution: nothing stops a craft at the ground yet; it was passed in {string.Join(", ", drills)}, whose numbers are as over a pit.";
    }

    private static string? Overload(TunedUnit unit, double current)
    {
        double rating = unit.Unit.PackCurrentRating;
        return current > rating
            ? $"Caution: {unit.Unit.Name}'s pack is rated for {rating:F0} A and gives {current:F0} A in a climb; held for long, that overheats a lithium battery."
            : null;
    }
}
