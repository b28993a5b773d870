using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Compare;

/// <summary>
/// Whether a pilot would feel a difference; see <see cref="FeelBands"/>. The usual bands are our inference, not a published threshold.
/// </summary>
public enum Feel
{
    /// <summary>Under the lower band, or under the metric's floor.</summary>
    NotFelt,

    /// <summary>Between the bands.</summary>
    Perhaps,

    /// <summary>Above the upper band.</summary>
    Felt,

    /// <summary>One build or both never reached the event, or touched the ground in the drill.</summary>
    Unknown,

    /// <summary>A figure of an instrument: it explains, but nobody feels it by itself.</summary>
    Reading,
}

/// <summary>The bands of <see cref="Feel"/>: up to where a difference is not felt and from where it is, in percent of the mean.</summary>
/// <param name="NotFeltBelow_Percent">Upper end of "not felt".</param>
/// <param name="FeltAbove_Percent">Upper end of "perhaps"; not less.</param>
public sealed record FeelBands(double NotFeltBelow_Percent, double FeltAbove_Percent)
{
    /// <summary>Our inference: 5 and 15 %.</summary>
    public static FeelBands Usual { get; } = new(5, 15);

    /// <summary>The band of a difference in a metric.</summary>
    public Feel Of(Metric metric, double a, double b, double differencePercent)
    {
        ArgumentNullException.ThrowIfNull(metric);
        if (double.IsNaN(differencePercent)) return Feel.Unknown;
        if (metric.Instrument) return Feel.Reading;
        double size = Math.Abs(differencePercent);
        if (size < NotFeltBelow_Percent || Math.Abs(b - a) < metric.Floor) return Feel.NotFelt;
        return size > FeltAbove_Percent ? Feel.Felt : Feel.Perhaps;
    }

    /// <summary>In words.</summary>
    public static string Word(Feel feel) => feel switch
    {
        Feel.NotFelt => "not felt",
        Feel.Perhaps => "perhaps",
        Feel.Felt => "felt",
        Feel.Reading => "a reading",
        _ => "unknown",
    };
}
