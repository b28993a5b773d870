using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Compare;

/// <summary>
/// Whether a pilot would feel a difference. The bands are our inference, not a published threshold: under 5 % not felt,
/// 5 to 15 % perhaps, above that felt.
/// </summary>
public enum Feel
{
    /// <summary>Under 5 %, or under the metric's floor.</summary>
    NotFelt,

    /// <summary>5 to 15 %.</summary>
    Perhaps,

    /// <summary>Above 15 %.</summary>
    Felt,

    /// <summary>One build or both never reached the event.</summary>
    Unknown,

    /// <summary>A figure of an instrument: it explains, but nobody feels it by itself.</summary>
    Reading,
}

/// <summary>The bands of <see cref="Feel"/>.</summary>
public static class FeelBands
{
    /// <summary>Upper end of "not felt", percent.</summary>
    public const double NotFeltBelow_Percent = 5;

    /// <summary>Upper end of "perhaps", percent.</summary>
    public const double FeltAbove_Percent = 15;

    /// <summary>The band of a difference in a metric.</summary>
    public static Feel Of(Metric metric, double a, double b, double differencePercent)
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
