using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Plots;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>What growing a part would do, and where the cure stops working.</summary>
internal static class GrowthSection
{
    public static Section Of(FeelSheet sheet) => new("growth", "Where the cure stops working",
    [
        .. sheet.Growth.Count == 0 ? (Block[])[new Paragraph("No growth curve was asked for.")] : [],
        .. sheet.Growth.SelectMany(curve => Blocks(sheet, curve)),
    ]);

    private static IEnumerable<Block> Blocks(FeelSheet sheet, GrowthCurve curve)
    {
        yield return new Heading($"{Words.Capital(curve.Metric.Title)} against the {curve.Knob.Title} of {curve.Build}");
        Block words = new BulletList(curve.Sentences);
        if (curve.Points.All(point => double.IsNaN(point.Value)))
        {
            yield return words;
            yield break;
        }
        yield return new Beside([Drawing(sheet, curve), words]);
    }

    private static Figure Drawing(FeelSheet sheet, GrowthCurve curve)
    {
        Metric metric = curve.Metric;
        double unit = metric.Display.PerSi;
        int look = curve.Build == sheet.Comparison.A.Unit.Name ? ChartPalette.BuildA : ChartPalette.BuildB;
        GrowthPoint[] valid = [.. curve.Points.Where(point => !double.IsNaN(point.Value))];
        List<ChartSeries> series =
        [
            .. curve.Variants.Select((variant, n) => ChartSeries.Line(
                variant.Name, 3 + (n % 3),
                curve.Points.Zip(variant.Values, (point, value) => (point.Factor, value * unit)).Where(point => !double.IsNaN(point.Item2)))),
            ChartSeries.Line(curve.Build, look, valid.Select(point => (point.Factor, point.Value * unit))),
        ];
        List<ChartNote> notes = [];
        GrowthPoint own = valid.FirstOrDefault(point => point.Factor == 1);
        bool bestIsOwn = curve.Best is { Factor: 1 };
        if (own.Factor == 1) Mark(own, bestIsOwn ? "as built, and best" : "as built", look);
        if (curve.Best is GrowthPoint best && !bestIsOwn) Mark(best, curve.InnerOptimum ? "best" : "best in this range", 0);
        string x = Numbers.Axis($"{curve.Knob.Title}, times its own", ""), y = Numbers.Axis(metric.Title, metric.Display.Symbol);
        string label = $"{metric.Title} of {curve.Build} against the {curve.Knob.Title}";
        Chart chart = new("", new(x), new(y), series) { Notes = notes };
        return new(
            label,
            curve.Variants.Count > 0
                ? $"{curve.Build} put together, tuned and flown at every size. Other lines: one consequence of growing switched off."
                : $"{curve.Build} put together, tuned and flown at every size.",
            [x, y], prefix => ChartSvg.Of(chart, label, prefix, 480, 360), Table(curve));

        void Mark(GrowthPoint point, string text, int style)
        {
            series.Add(ChartSeries.Points("", style, [(point.Factor, point.Value * unit)]));
            notes.Add(new(text, point.Factor, point.Value * unit));
        }
    }

    private static DataTable Table(GrowthCurve curve)
    {
        Metric metric = curve.Metric;
        string unit = metric.Display.Symbol.Length > 0 ? metric.Display.Symbol : "ratio";
        return new(
            $"{metric.Title} of {curve.Build}, {unit}, by size",
            [new("factor"), new(curve.Knob.Unit.Length > 0 ? $"size {curve.Knob.Unit}" : "size"), new("value"), .. curve.Variants.Select(variant => new Column(variant.Name)), new("note", true)],
            [
                .. curve.Points.Select((point, n) => new Row(
                [
                    $"{point.Factor:F2}", Numbers.Plain(point.Size), metric.Display.Number(point.Value),
                    .. curve.Variants.Select(variant => new Cell(metric.Display.Number(variant.Values[n]))),
                    point.Factor == 1 ? "as built" : point.Factor == curve.Best?.Factor ? "best" : point.Refusal,
                ])),
            ]);
    }
}
