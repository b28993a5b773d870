using Simfeel.Flight;

namespace Simfeel.Studies.Compare;

/// <summary>What a comparison has to warn of.</summary>
public static class Cautions
{
    /// <summary>
    /// One sentence for each build whose pack gives more current over the first second of a climb than it is rated for, and one
    /// for each build that touched the ground in a drill.
    /// </summary>
    public static IReadOnlyList<string> Of(Comparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        MetricPair climb = comparison.Metrics.Single(pair => pair.Metric.Name == "climb_pack_current");
        return
        [
            .. new[]
            {
                Overload(comparison.A, climb.A), Overload(comparison.B, climb.B),
                Touches(comparison.A, comparison.Work.Where(work => work.ATouches)), Touches(comparison.B, comparison.Work.Where(work => work.BTouches)),
            }.OfType<string>().Distinct(),
        ];
    }

    private static string? Touches(TunedUnit unit, IEnumerable<DrillWork> touching)
    {
        string drills = string.Join(", ", touching.Select(work => work.Drill.Name));
        return drills.Length == 0 ? null : $"Caution: {unit.Unit.Name} touches the ground in {drills}; their numbers tell of the ground, too, and nothing is said of what a pilot would feel.";
    }

    private static string? Overload(TunedUnit unit, double current)
    {
        double rating = unit.Unit.PackCurrentRating;
        return current > rating
            ? $"Caution: {unit.Unit.Name}'s pack is rated for {rating:F0} A and gives {current:F0} A in a climb; held for long, that overheats a lithium battery."
            : null;
    }
}
