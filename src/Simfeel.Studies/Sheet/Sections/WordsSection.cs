using Simfeel.Studies.Blame;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>All that a reader needs to choose and to say why.</summary>
internal static class WordsSection
{
    private static readonly string[] Answers = ["felt", "perhaps", "not felt", "undecided", "unknown"];

    public static Section Of(FeelSheet sheet)
    {
        List<Block> blocks = [new Heading("What you would notice"), new BulletList(Telling(sheet)), new Paragraph(Count(sheet))];
        if (sheet.Styles.Count > 0)
        {
            blocks.Add(new Heading("Which one for which flying"));
            blocks.Add(new BulletList([.. sheet.Styles.Select(style => style.Verdict)]));
        }
        if (sheet.Blame.Count > 0)
        {
            blocks.Add(new Heading("What is to blame"));
            blocks.Add(new BulletList([.. sheet.Blame.Select(ledger => Strongest(sheet, ledger))]));
            if (sheet.Blame.Any(ledger => ledger.Shares.Sum(share => Math.Abs(share.Share)) > 2 * Math.Abs(ledger.Difference)))
                blocks.Add(new Paragraph("A share may be larger than the whole difference: parts pull both ways, and what is left over is what flies."));
        }
        GrowthCurve[] growth = [.. sheet.Growth.Where(curve => curve.Sentences.Count > 0)];
        if (growth.Length > 0)
        {
            // of each part the best size, and what it would take to be like the other build
            blocks.Add(new Heading("What to change, and where the cure stops working"));
            blocks.Add(new BulletList([.. growth.Select(curve => curve.Sentences.Count > 1 ? $"{curve.Sentences[0]} {curve.Sentences[^1]}" : curve.Sentences[0])]));
        }
        blocks.Add(new Heading("How sure this is"));
        blocks.Add(new BulletList([.. Sure(sheet)]));
        return new("words", "In plain words", blocks);
    }

    /// <summary>Only what is decided is told: a sentence that the parts' numbers do not bear out would mislead.</summary>
    public static IReadOnlyList<string> Telling(FeelSheet sheet)
    {
        Comparison decided = sheet.Comparison with { Metrics = [.. sheet.Comparison.Metrics.Where(pair => !sheet.Undecided(pair))] };
        if (decided.Metrics.Any(sheet.Tells) || decided.Metrics.Count == sheet.Comparison.Metrics.Count) return TellingSentences.Of(decided);
        return [$"No difference between {sheet.Comparison.Names.A} and {sheet.Comparison.Names.B} that would be felt is certain, given what is known of their parts."];
    }

    private static string Count(FeelSheet sheet)
    {
        string[] words = [.. sheet.Comparison.Metrics.Where(pair => pair.Feel != Feel.Reading).Select(pair => sheet.Word(pair))];
        string[] parts =
        [
            .. Answers
                .Select(word => (word, Count: words.Count(found => found == word)))
                .Where(pair => pair.Count > 0)
                .Select(pair => $"{pair.Count} {pair.word}"),
        ];
        return $"Of {words.Length} things that a pilot could notice: {string.Join(", ", parts)}. The table below has them all.";
    }

    /// <summary>Who is most to blame for a difference, and what pulls the other way.</summary>
    public static string Strongest(FeelSheet sheet, BlameLedger ledger)
    {
        (string a, string b) = sheet.Comparison.Names;
        string what = Words.Capital(ledger.Metric.Title);
        if (ledger.Gap is string gap) return $"{what}: no blame can be shared out. {Words.Capital(gap)}";
        string start = $"{what}, {Numbers.DifferenceOf(ledger.Metric, ledger.Difference)} from {a} to {b}: ";
        BlameShare[] with = [.. ledger.Ranked.Where(share => share.Share * ledger.Difference > 0)];
        BlameShare[] against = [.. ledger.Ranked.Where(share => share.Share * ledger.Difference < 0)];
        if (with.Length == 0) return start + "the builds differ in no part that matters here.";
        bool outweighed = against.Length > 0 && Math.Abs(against[0].Share) > Math.Abs(with[0].Share);
        string causes = (outweighed ? "" : "mostly ") + Said(with[0]);
        if (with.Length > 1 && Math.Abs(with[1].Share) >= 0.1 * Math.Abs(with[0].Share)) causes += $", then {Said(with[1])}";
        string other = outweighed
            ? $"; the largest share of all, {Said(against[0])}, works the other way"
            : against.Length > 0 && Math.Abs(against[0].Share) > 0.1 * Math.Abs(ledger.Difference)
            ? $"; {Said(against[0])} works the other way"
            : "";
        string felt = sheet.Word(sheet.Comparison.Metrics.Single(pair => pair.Metric.Name == ledger.Metric.Name)) switch
        {
            "undecided" => " Whether there is a difference at all is undecided.",
            "not felt" => " A pilot would not feel it.",
            _ => "",
        };
        return $"{start}{causes}{other}.{felt}";

        string Said(BlameShare share) => $"{PartGroupNames.Title(share.Group)} ({Numbers.DifferenceOf(ledger.Metric, share.Share)})";
    }

    private static IEnumerable<string> Sure(FeelSheet sheet)
    {
        string[] undecided =
        [
            .. sheet.Comparison.Metrics
                .Where(pair => pair.Feel is Feel.Felt or Feel.Perhaps or Feel.NotFelt && sheet.Undecided(pair))
                .Select(pair => pair.Metric.Title),
        ];
        yield return undecided.Length == 0
            ? "Every difference that would be felt, where it was drawn, keeps its sign in at least nine of ten draws of what is not known of the parts."
            : $"Undecided, since too little is known of the parts: {string.Join("; ", undecided)}.";
        string[] notDrawn =
        [
            .. sheet.Comparison.Metrics
                .Where(pair => pair.Feel is Feel.Felt or Feel.Perhaps && sheet.Uncertainty.Of(pair.Metric.Name) is null)
                .Select(pair => pair.Metric.Title),
        ];
        if (notDrawn.Length > 0)
            yield return $"Not drawn, so less sure, since their drills are long: {string.Join("; ", notDrawn)}.";
        MetricPair[] changed = [.. sheet.Comparison.Metrics.Where(Changes)];
        yield return changed.Length == 0
            ? $"Flown with the tuning policy {sheet.OtherPolicy.Policy} in place of {sheet.Comparison.Policy}, the same things would be felt."
            : $"Tuning counts: with the policy {sheet.OtherPolicy.Policy} in place of {sheet.Comparison.Policy} the answer changes for {string.Join("; ", changed.Select(Change))}.";
        yield return "Differences between builds are steadier than each build's own numbers: what the model gets wrong, it gets wrong for both.";
        if (Cautions.Of(sheet.Comparison).Count > 0) yield return "There are cautions to read under \u201CHow it was flown\u201D.";

        bool Changes(MetricPair pair)
        {
            MetricPair other = sheet.Other(pair.Metric);
            if (other.Feel == Feel.Unknown || pair.Feel is Feel.Unknown or Feel.Reading) return false;
            // felt as much, but of the other build
            return pair.Feel != other.Feel || (pair.Feel is Feel.Felt or Feel.Perhaps && pair.Difference * other.Difference < 0);
        }

        string Change(MetricPair pair) =>
            $"{pair.Metric.Title} ({FeelBands.Word(pair.Feel)}, then {FeelBands.Word(sheet.Other(pair.Metric).Feel)}{(pair.Difference * sheet.Other(pair.Metric).Difference < 0 ? ", the other way round" : "")})";
    }
}
