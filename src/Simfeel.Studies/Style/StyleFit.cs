using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Style;

/// <summary>What a style of flying asks of one metric.</summary>
/// <param name="Metric">The metric.</param>
/// <param name="Weight">How much it matters beside the others; above 0.</param>
/// <param name="MoreIsBetter">Whether a larger value suits the style.</param>
public sealed record StyleWeight(Metric Metric, double Weight, bool MoreIsBetter);

/// <summary>One metric's say in which build suits a style.</summary>
/// <param name="Asked">What the style asks.</param>
/// <param name="Pair">Both builds.</param>
/// <param name="Points">
/// Weight times the natural logarithm of the ratio, in percent: positive favours build B; 0 where the difference is not felt or
/// undecided, or where a build never reached the event.
/// </param>
/// <param name="Why">Why it counts nothing; empty where it counts.</param>
public sealed record StyleLine(StyleWeight Asked, MetricPair Pair, double Points, string Why);

/// <summary>Which build suits a style of flying, and every number behind that.</summary>
/// <param name="Name">Style, such as "flips and stops".</param>
/// <param name="Lines">The metrics.</param>
/// <param name="Verdict">One sentence naming the build and the metrics that decide.</param>
public sealed record StyleFit(string Name, IReadOnlyList<StyleLine> Lines, string Verdict)
{
    /// <summary>Sum of the points over the sum of the weights: positive favours build B.</summary>
    public double Total => Lines.Sum(line => line.Points) / Lines.Sum(line => line.Asked.Weight);
}
