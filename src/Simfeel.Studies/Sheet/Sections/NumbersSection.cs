using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet.Writing;
using Simfeel.Studies.Style;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>Every metric of both builds.</summary>
internal static class NumbersSection
{
    public static Section Of(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        Column[] columns =
        [
            new("what"), new($"{Signs.Of(false)} {a}", Tone: Tone.BuildA), new($"{Signs.Of(true)} {b}", Tone: Tone.BuildB),
            new("difference"), new("felt?", true), new("band 5-95 %"), new($"{sheet.OtherPolicy.Policy}"),
        ];
        FeelBands bands = sheet.Comparison.Bands;
        RowGroup[] groups =
        [
            .. sheet.Comparison.Metrics.GroupBy(pair => pair.Metric.Drill).Select(drill => new RowGroup(
                $"{drill.Key.Name}: {drill.Key.Purpose}", [.. drill.Select(pair => Line(sheet, pair))])),
        ];
        return new("numbers", "All numbers",
        [
            new DataTable(
                $"Difference: {b} less {a}, in percent of their mean. Band: that difference in the row's unit, from the 5th to the 95th percentile of the draws. "
                    + $"Last column: the difference when tuned by the policy {sheet.OtherPolicy.Policy}.",
                columns, groups),
            new Paragraph(
                $"Felt (\u25A0\u25A0): above {bands.FeltAbove_Percent:G4} %. Perhaps (\u25A0\u25A1): {bands.NotFeltBelow_Percent:G4} to {bands.FeltAbove_Percent:G4} %. Not felt (\u25A1\u25A1): less, or too small to notice whatever the percent. These bands are our inference. "
                    + "Undecided (?): the band of the difference covers zero and is not small enough to be called not felt. A reading (\u00B7): an instrument's figure that explains, but is not felt by itself. A dash: the craft did not get there within the drill; as a band: the drill is too long to be flown with every draw.",
                Tone.Quiet),
            .. sheet.Styles.Select(style => Weighing(sheet, style)),
        ]);
    }

    private static Row Line(FeelSheet sheet, MetricPair pair)
    {
        Metric metric = pair.Metric;
        UncertainMetric? known = sheet.Uncertainty.Of(metric.Name);
        return new(
        [
            metric.Display.Symbol.Length > 0 ? $"{metric.Title}, {metric.Display.Symbol}" : metric.Title,
            new(metric.Display.Number(pair.A), Tone.BuildA), new(metric.Display.Number(pair.B), Tone.BuildB),
            Numbers.Percent(pair.DifferencePercent), Signs.Of(pair.Feel, sheet.Undecided(pair)),
            known is null ? Numbers.Missing : Numbers.Of(metric, known.Difference),
            Numbers.Percent(sheet.Other(metric).DifferencePercent),
        ]);
    }

    private static Fold Weighing(FeelSheet sheet, StyleFit style)
    {
        (string a, string b) = sheet.Comparison.Names;
        return new(
            $"Behind the verdict: {style.Name}",
            [
                new DataTable(
                    $"Points: weight times the logarithm of the ratio, in percent. Above zero speaks for {b}, below for {a}. Weights are our judgement.",
                    [new("asked"), new("weight"), new("better", true), new($"{Signs.Of(false)} {a}"), new($"{Signs.Of(true)} {b}"), new("points"), new("counts nothing since", true)],
                    [
                        .. style.Lines.Select(line => new Row(
                        [
                            line.Asked.Metric.Title, Numbers.Plain(line.Asked.Weight), line.Asked.MoreIsBetter ? "more" : "less",
                            Numbers.Of(line.Asked.Metric, line.Pair.A), Numbers.Of(line.Asked.Metric, line.Pair.B), Numbers.Signed(line.Points, 0), line.Why,
                        ])),
                        new Row(["points by weight", Numbers.Plain(style.Lines.Sum(line => line.Asked.Weight)), "", "", "", Numbers.Signed(style.Total, 1), ""], true),
                    ]),
            ]);
    }
}
