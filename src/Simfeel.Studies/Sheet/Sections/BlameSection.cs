using Simfeel.Studies.Blame;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>Which part is to blame for how much.</summary>
internal static class BlameSection
{
    public static Section Of(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        return new("blame", "What is to blame",
        [
            new Paragraph(
                $"Each group of parts of {a} was exchanged for {b}'s, alone and with all others, and every such hybrid was tuned and flown. "
                    + "A group's share is the mean of what it adds over all orders of exchange (Shapley value)."),
            .. sheet.Blame.Count == 0 ? (Block[])[new Paragraph("No ledger was asked for.")] : [],
            .. sheet.Blame.SelectMany(ledger => Ledger(sheet, ledger)),
        ]);
    }

    private static IEnumerable<Block> Ledger(FeelSheet sheet, BlameLedger ledger)
    {
        (string a, string b) = sheet.Comparison.Names;
        Metric metric = ledger.Metric;
        yield return new Heading(Words.Capital(metric.Title));
        yield return new Paragraph($"{a} {Numbers.Of(metric, ledger.A)}, {b} {Numbers.Of(metric, ledger.B)}; drill {metric.Drill.Name}.");
        if (ledger.Gap is string gap)
        {
            yield return new Paragraph($"No blame can be shared out: {gap}", Tone.Warning);
            yield break;
        }
        BlameShare[] shares = [.. ledger.Ranked];
        if (shares.Length == 0)
        {
            yield return new Paragraph("The builds do not differ in any part.");
            yield break;
        }
        yield return new Beside([Bars(sheet, ledger, shares), Table(ledger, shares)]);
        yield return new Paragraph(Together(ledger, shares));
    }

    private static Figure Bars(FeelSheet sheet, BlameLedger ledger, BlameShare[] shares)
    {
        (string a, string b) = sheet.Comparison.Names;
        Metric metric = ledger.Metric;
        double unit = metric.Display.PerSi;
        string label = $"Shares of the difference in {metric.Title} between {a} and {b}";
        string axis = Numbers.Axis("share of the difference", metric.Display.Symbol);
        SignedBar[] bars =
        [
            .. shares.Select(share => new SignedBar(
                PartGroupNames.Title(share.Group), 0, share.Share * unit, Numbers.Difference(metric, share.Share))
            {
                Circle = share.OneAtATime * unit,
                Stroke = share.LastOneIn * unit,
            }),
            new("together: the difference", 0, ledger.Difference * unit, Numbers.Difference(metric, ledger.Difference)) { Sum = true },
        ];
        return new(
            label,
            $"Bar: share. Circle: exchanged alone. Upright stroke: exchanged last. Right of zero: adds to {b}'s {metric.Title}.",
            [axis],
            prefix => SignedBars.Draw(label, axis, bars, prefix));
    }

    private static DataTable Table(BlameLedger ledger, BlameShare[] shares)
    {
        Metric metric = ledger.Metric;
        return new(
            $"The same in numbers, {(metric.Display.Symbol.Length > 0 ? metric.Display.Symbol : "ratio")}; {ledger.Hybrids} hybrids flown.",
            [new("group of parts"), new("share"), new("alone"), new("last")],
            [
                .. shares.Select(share => new Row(
                [
                    PartGroupNames.Title(share.Group), Numbers.Difference(metric, share.Share), Numbers.Difference(metric, share.OneAtATime),
                    Numbers.Difference(metric, share.LastOneIn),
                ])),
                new Row(["together", Numbers.Difference(metric, ledger.Difference), Numbers.Difference(metric, ledger.Difference - ledger.Interaction), ""], true),
            ]);
    }

    /// <summary>That the shares add up, and how much the groups need each other.</summary>
    private static string Together(BlameLedger ledger, BlameShare[] shares)
    {
        Metric metric = ledger.Metric;
        string sum = $"The shares add up to {Numbers.DifferenceOf(metric, shares.Sum(share => share.Share))}, the whole difference.";
        string alone = Numbers.DifferenceOf(metric, ledger.Difference - ledger.Interaction);
        return Math.Abs(ledger.Interaction) < 0.1 * Math.Abs(ledger.Difference)
            ? $"{sum} Each alone, the groups would make {alone}: they hardly depend on each other."
            : $"{sum} Each alone, the groups would make {alone}; the other {Numbers.DifferenceOf(metric, ledger.Interaction)} comes of what they do together.";
    }
}
