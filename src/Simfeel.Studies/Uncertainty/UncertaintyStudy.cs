using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Uncertainty;

/// <summary>What lies between the 5th and the 95th percentile of the draws, and the median; SI.</summary>
/// <param name="Low">5th percentile.</param>
/// <param name="Middle">Median.</param>
/// <param name="High">95th percentile.</param>
public readonly record struct Band(double Low, double Middle, double High)
{
    /// <summary>Whether 0 lies within.</summary>
    public bool CoversZero => Low <= 0 && High >= 0;
}

/// <summary>Whose input it is.</summary>
public enum InputOwner
{
    /// <summary>Build A's own.</summary>
    A,

    /// <summary>Build B's own.</summary>
    B,

    /// <summary>One error for both: the same rule of estimate, or the same part.</summary>
    Both,
}

/// <summary>One number that is not known well.</summary>
/// <param name="Key">Full key of the build file.</param>
/// <param name="Owner">Whose it is.</param>
/// <param name="Why">"stated band" or the rule of the estimate.</param>
public sealed record UncertainInput(string Key, InputOwner Owner, string Why);

/// <summary>What the difference B - A of a metric becomes when one input stands at an end of its band, all else typical; SI.</summary>
/// <param name="Input">The input.</param>
/// <param name="AtLow">Difference with the input at its low end.</param>
/// <param name="AtHigh">Difference with the input at its high end.</param>
public sealed record TornadoBar(UncertainInput Input, double AtLow, double AtHigh)
{
    /// <summary>Length of the bar.</summary>
    public double Swing => Math.Abs(AtHigh - AtLow);
}

/// <summary>What is known of one metric, given what is known of the parts.</summary>
public sealed record UncertainMetric
{
    /// <summary>What was measured.</summary>
    public required Metric Metric { get; init; }

    /// <summary>Of build A.</summary>
    public required Band A { get; init; }

    /// <summary>Of build B.</summary>
    public required Band B { get; init; }

    /// <summary>B - A of the same draw (common random numbers), not of the two bands.</summary>
    public required Band Difference { get; init; }

    /// <summary>Draws in which both builds reached the event.</summary>
    public required int Draws { get; init; }

    /// <summary>Which inputs matter, longest bar first; empty where it was not asked for.</summary>
    public IReadOnlyList<TornadoBar> Tornado { get; init; } = [];

    /// <summary>True where the band of the difference covers zero: what is known of the parts does not say which build has more.</summary>
    public bool Undecided => Difference.CoversZero;
}

/// <summary>Two builds flown with many draws of what is not known well about their parts.</summary>
public sealed record UncertaintyStudy
{
    /// <summary>The metrics, in the order asked for.</summary>
    public required IReadOnlyList<UncertainMetric> Metrics { get; init; }

    /// <summary>Number of draws.</summary>
    public required int Draws { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required int Seed { get; init; }

    /// <summary>Draws left out since a build was refused or could not hover with those numbers.</summary>
    public required int Refused { get; init; }

    /// <summary>The inputs that were drawn.</summary>
    public required IReadOnlyList<UncertainInput> Inputs { get; init; }

    /// <summary>What is known of a metric; null where it was not asked for.</summary>
    public UncertainMetric? Of(string metric) => Metrics.FirstOrDefault(known => known.Metric.Name == metric);
}
