using Simfeel.Flight.Drills;

namespace Simfeel.Studies.Compare;

/// <summary>What a comparison has to warn of.</summary>
public static class Cautions
{
    /// <summary>One sentence for each build whose pack gives more current in a drill than it is rated for.</summary>
    public static IReadOnlyList<string> Of(Comparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return [.. new[] { comparison.Logs.Select(pair => pair.A), comparison.Logs.Select(pair => pair.B) }.SelectMany(Overload).Distinct()];
    }

    private static IEnumerable<string> Overload(IEnumerable<FlightLog> logs)
    {
        FlightLog worst = logs.MaxBy(Peak)!;
        double rating = worst.Unit.Unit.PackCurrentRating, peak = Peak(worst);
        if (peak <= rating) yield break;
        yield return $"Caution: {worst.Unit.Unit.Name}'s pack is rated for {rating:F0} A and gives {peak:F0} A at the peak of {worst.Drill}; held for long, that overheats a lithium battery.";
    }

    private static double Peak(FlightLog log) => log.Samples.Max(sample => sample.PackCurrent);
}
