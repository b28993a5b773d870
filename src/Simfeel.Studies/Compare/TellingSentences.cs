using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Compare;

/// <summary>
/// The most telling differences in plain sentences: felt ones first, then by size in percent weighted by what a pilot notices,
/// and no two about the same thing while others are left to tell.
/// </summary>
public static class TellingSentences
{
    /// <summary>Up to a number of sentences, the most telling first; one that says so where nothing can be felt.</summary>
    public static IReadOnlyList<string> Of(Comparison comparison, int most = 3)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        (string a, string b) = comparison.Names;
        List<string> sentences = [.. Ranked(comparison).Take(most).Select(pair => Sentence(pair, a, b))];
        if (sentences.Count == 0)
        {
            sentences.Add(comparison.Metrics.All(pair => pair.A.Equals(pair.B))
                ? $"{a} and {b} fly exactly alike in every drill."
                : $"A pilot would not feel the difference between {a} and {b} in these drills.");
        }
        return sentences;
    }

    /// <summary>What can be felt, the most telling first: one of each topic, then the rest.</summary>
    public static IEnumerable<MetricPair> Ranked(Comparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        MetricPair[] ranked =
        [
            .. comparison.Metrics
                .Where(pair => pair.Metric.Weight > 0 && pair.Feel is Feel.Felt or Feel.Perhaps)
                .OrderByDescending(pair => pair.Feel == Feel.Felt)
                .ThenByDescending(pair => pair.Metric.Weight * Math.Abs(pair.DifferencePercent)),
        ];
        return ranked.DistinctBy(pair => pair.Metric.Topic).Concat(ranked).DistinctBy(pair => pair.Metric.Name);
    }

    private static string Sentence(MetricPair pair, string a, string b)
    {
        Metric metric = pair.Metric;
        bool bMore = pair.B > pair.A;
        double larger = Math.Max(pair.A, pair.B), smaller = Math.Min(pair.A, pair.B);
        string said = metric.Say(new(
            bMore ? b : a, bMore ? a : b, metric.Display.Number(larger), metric.Display.Number(smaller),
            smaller > 0 ? (larger / smaller).ToString("F1") + " times" : "many times"));
        return pair.Feel == Feel.Felt ? said : said + " A pilot may or may not feel that.";
    }
}
