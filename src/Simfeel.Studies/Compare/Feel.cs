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
}

/// <summary>The bands of <see cref="Feel"/>.</summary>
public static class FeelBands
{
    /// <summary>Upper end of "not felt", percent.</summary>
    public const double NotFeltBelow_Percent = 5;

    /// <summary>Upper end of "perhaps", percent.</summary>
    public const double FeltAbove_Percent = 15;

    /// <summary>The band of a difference.</summary>
    public static Feel Of(double a, double b, double differencePercent, double floor)
    {
        if (double.IsNaN(differencePercent)) return Feel.Unknown;
        double size = Math.Abs(differencePercent);
        if (size < NotFeltBelow_Percent || Math.Abs(b - a) < floor) return Feel.NotFelt;
        return size > FeltAbove_Percent ? Feel.Felt : Feel.Perhaps;
    }

    /// <summary>In words.</summary>
    public static string Word(Feel feel) => feel switch
    {
        Feel.NotFelt => "not felt",
        Feel.Perhaps => "perhaps",
        Feel.Felt => "felt",
        _ => "unknown",
    };
}
