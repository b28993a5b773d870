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
        return new()
        {
            ["drill"] = pair.Metric.Drill.Name,
            ["name"] = pair.Metric.Name,
            ["unit"] = pair.Metric.Unit,
            ["a"] = pair.A,
            ["b"] = pair.B,
            ["difference"] = pair.Difference,
            ["difference_percent"] = pair.DifferencePercent,
            ["floor"] = pair.Metric.Floor,
            ["feel"] = FeelBands.Word(pair.Feel),
            ["undecided"] = sheet.Undecided(pair),
            ["difference_band"] = known is null ? null : StudiesJson.Of(known.Difference),
            ["other_policy"] = new Dictionary<string, object?>
            {
                ["a"] = other.A,
                ["b"] = other.B,
                ["difference_percent"] = other.DifferencePercent,
                ["feel"] = FeelBands.Word(other.Feel),
            },
        };
    }
}
