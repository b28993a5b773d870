using Simfeel.Studies.Compare;
using Simfeel.Studies.Sheet.Sections;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sheet.Json;

/// <summary>The metrics for machines, each in its own SI unit.</summary>
internal static class MetricsJson
{
    public static object Of(FeelSheet sheet) => sheet.Comparison.Metrics.Select(pair => One(sheet, pair)).ToList();

    private static Dictionary<string, object?> One(FeelSheet sheet, MetricPair pair)
    {
        MetricPair other = sheet.Other(pair.Metric);
        UncertainMetric? known = sheet.Uncertainty.Of(pair.Metric.Name);
        Dictionary<string, object?> metric = ComparisonJson.Metric(pair);
        metric["undecided"] = sheet.Undecided(pair);
        metric["difference_band"] = known is null ? null : StudiesJson.Of(known.Difference);
        metric["other_policy"] = new Dictionary<string, object?>
        {
            ["a"] = other.A,
            ["b"] = other.B,
            ["difference_percent"] = other.DifferencePercent,
            ["feel"] = FeelBands.Word(other.Feel),
        };
        return metric;
    }
}
