using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>What a sheet knows of a metric.</summary>
internal static class Known
{
    /// <summary>
    /// Whether what is known of the parts leaves the answer open: the band of the difference covers zero, and either the difference
    /// itself would be felt or an end of the band would. A narrow band about zero is no open question: it is not felt.
    /// </summary>
    public static bool Undecided(this FeelSheet sheet, MetricPair pair)
    {
        if (sheet.Uncertainty.Of(pair.Metric.Name) is not { Undecided: true } known) return false;
        double mean = (Math.Abs(pair.A) + Math.Abs(pair.B)) / 2;
        return pair.Feel is Feel.Felt or Feel.Perhaps || Felt(known.Difference.Low) || Felt(known.Difference.High);

        bool Felt(double difference) => mean > 0 && pair.Bands.Of(pair.Metric, 0, difference, 100 * difference / mean) == Feel.Felt;
    }

    /// <summary>Whether a difference would be felt, perhaps or surely, and is decided.</summary>
    public static bool Tells(this FeelSheet sheet, MetricPair pair) =>
        pair.Feel is Feel.Felt or Feel.Perhaps && !sheet.Undecided(pair);

    /// <summary>The word of the table for a metric: felt, perhaps, not felt, undecided, a reading, unknown.</summary>
    public static string Word(this FeelSheet sheet, MetricPair pair) => Signs.Of(pair.Feel, sheet.Undecided(pair)).Text.Split(' ', 2)[1];

    /// <summary>The same metric under the other policy.</summary>
    public static MetricPair Other(this FeelSheet sheet, Metric metric) =>
        sheet.OtherPolicy.Metrics.FirstOrDefault(pair => pair.Metric.Name == metric.Name) is { Metric: not null } found
            ? found
            : new(metric, double.NaN, double.NaN, sheet.OtherPolicy.Bands);
}
