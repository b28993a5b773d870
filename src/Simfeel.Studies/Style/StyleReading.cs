using Simfeel.Studies.Compare;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Style;

/// <summary>Weighs a comparison by a style of flying.</summary>
public static class StyleReading
{
    /// <summary>A lead smaller than this, in percent, is none; from the second on it is a clear one. Our judgement.</summary>
    public const double SmallestLead_Percent = 5, ClearLead_Percent = 15;

    /// <summary>Which build suits a style.</summary>
    /// <param name="style">The style.</param>
    /// <param name="comparison">Both builds.</param>
    /// <param name="uncertainty">What is known of the metrics; null leaves that out.</param>
    public static StyleFit Of(FlyingStyle style, Comparison comparison, UncertaintyStudy? uncertainty = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        ArgumentNullException.ThrowIfNull(comparison);
        StyleLine[] lines = [.. style.Asks.Select(ask => Line(ask, comparison, uncertainty))];
        return new(style.Name, lines, Verdict(style, lines, comparison));
    }

    private static StyleLine Line(StyleWeight ask, Comparison comparison, UncertaintyStudy? uncertainty)
    {
        MetricPair pair = comparison.Metrics.Single(known => known.Metric.Name == ask.Metric.Name);
        string why = pair.Feel switch
        {
            Feel.Unknown => "a build never gets there",
            Feel.NotFelt => "not felt",
            _ => uncertainty?.Of(ask.Metric.Name) is { Undecided: true } ? "undecided" : "",
        };
        // the logarithm treats twice as long and half as long alike, whichever build comes first
        double points = why.Length > 0 ? 0 : 100 * ask.Weight * Math.Log(Size(pair.B) / Size(pair.A)) * (ask.MoreIsBetter ? 1 : -1);
        return new(ask, pair, points, why);

        // less than what can be felt counts as that: a rebound of nothing is not infinitely better than a small one
        double Size(double value) => Math.Max(Math.Abs(value), ask.Metric.Floor);
    }

    private static string Verdict(FlyingStyle style, StyleLine[] lines, Comparison comparison)
    {
        (string a, string b) = comparison.Names;
        StyleLine[] deciding = [.. lines.Where(line => line.Points != 0).OrderByDescending(line => Math.Abs(line.Points))];
        if (deciding.Length == 0) return $"For {style.Name}: no difference that would be felt for certain; either build will do.";
        double total = lines.Sum(line => line.Points) / lines.Sum(line => line.Asked.Weight);
        if (Math.Abs(total) < SmallestLead_Percent)
        {
            string For(bool ofB) => string.Join(", ", deciding.Where(line => line.Points > 0 == ofB).Take(2).Select(line => line.Asked.Metric.Title));
            return $"For {style.Name}: about even, it depends on what you want: {b} is ahead in {Or(For(true))}, {a} in {Or(For(false))}.";
        }
        string best = total > 0 ? b : a, other = total > 0 ? a : b;
        string reasons = string.Join("; ", deciding.Where(line => line.Points > 0 == total > 0).Take(2).Select(line => Reason(line, total > 0)));
        StyleLine? against = deciding.FirstOrDefault(line => line.Points > 0 != total > 0);
        string lead = Math.Abs(total) < ClearLead_Percent ? "by a little" : "clearly";
        return $"For {style.Name}: {best}, {lead}. {Words.Capital(reasons)}."
            + (against is null ? "" : $" What speaks for {other}: {Reason(against, total <= 0)}.");

        static string Or(string text) => text.Length == 0 ? "nothing that is felt" : text;
    }

    private static string Reason(StyleLine line, bool forB)
    {
        MetricPair pair = line.Pair;
        double better = forB ? pair.B : pair.A, worse = forB ? pair.A : pair.B;
        return $"{pair.Metric.Title} {pair.Metric.Display.WithSymbol(better)} against {pair.Metric.Display.WithSymbol(worse)}";
    }
}
