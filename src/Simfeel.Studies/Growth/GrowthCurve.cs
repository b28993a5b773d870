using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Growth;

/// <summary>One build along a growth curve.</summary>
/// <param name="Factor">Size of what grows over the build's own.</param>
/// <param name="Size">Size in the knob's unit.</param>
/// <param name="Value">The metric, SI; NaN where that build cannot be made or flown, or never reached the event.</param>
/// <param name="Refusal">Why there is no value; empty where there is one.</param>
public readonly record struct GrowthPoint(double Factor, double Size, double Value, string Refusal = "");

/// <summary>The same growth with one of its consequences switched off, at the same factors.</summary>
/// <param name="Name">What is switched off, such as "bell inertia stays".</param>
/// <param name="Values">The metric at each point, SI.</param>
/// <param name="BestFactor">Where its best value lies.</param>
public sealed record GrowthVariant(string Name, IReadOnlyList<double> Values, double BestFactor);

/// <summary>A metric against the growth of one part.</summary>
public sealed record GrowthCurve
{
    /// <summary>Name of the build that grows.</summary>
    public required string Build { get; init; }

    /// <summary>What grows.</summary>
    public required GrowthKnob Knob { get; init; }

    /// <summary>What was measured.</summary>
    public required Metric Metric { get; init; }

    /// <summary>The points, smallest factor first.</summary>
    public required IReadOnlyList<GrowthPoint> Points { get; init; }

    /// <summary>The same with consequences switched off, one at a time.</summary>
    public IReadOnlyList<GrowthVariant> Variants { get; init; } = [];

    /// <summary>The best point; null where no point has a value, or where neither more nor less is better.</summary>
    public GrowthPoint? Best { get; init; }

    /// <summary>True where the best point lies inside the range: there the cure stops working.</summary>
    public bool InnerOptimum { get; init; }

    /// <summary>Factors between which the metric is within a twentieth of the best: how flat the optimum is.</summary>
    public (double From, double To) FlatRange { get; init; }

    /// <summary>What the curve says, in plain sentences.</summary>
    public IReadOnlyList<string> Sentences { get; init; } = [];
}
