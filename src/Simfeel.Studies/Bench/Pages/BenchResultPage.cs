using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>Model against measurement as a page.</summary>
public static class BenchResultPage
{
    /// <summary>One page of HTML that needs no other file.</summary>
    public static string Html(BenchReport report) => HtmlPage.Write(Page(report), BenchStyle.Css);

    /// <summary>The same as Markdown.</summary>
    public static string Markdown(BenchReport report) => MarkdownPage.Write(Page(report));

    private static SheetPage Page(BenchReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        string name = report.Build.Build.Name;
        IReadOnlyList<string> findings = BenchPlausibility.Of(report), words = BenchWords.Disagreements(report);
        return new($"{name}: model against measurement", BenchWords.Headline(report),
        [
            new("head", "Bench result", []),
            new("result", "The numbers",
            [
                .. findings.Select(finding => new Paragraph("Look again: " + finding, Tone.Warning)),
                new DataTable(
                    "Bands are 95 %. Places from the middle of the bottom plate: x forward, y right, z down",
                    [new("quantity"), Column.Unit, new("model"), new("measured"), new("95 % +-"), new("model less measured"), new("verdict", true)],
                    [.. report.Quantities.Select(quantity => new Row([.. BenchWords.Cells(quantity).Select(text => new Cell(text))]))]),
                BandFigure.Of(report),
                words.Count > 0 ? new BulletList(words) : new Paragraph("Nothing to look at: every measured number agrees."),
            ]),
            new("sure", "How sure",
            [
                new BulletList(
                [
                    .. BenchWords.Notes(report),
                    "Bands put together as the Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008) says: scatter of the timings with Student's t, stated errors of scales, rulers and angles with it. The model's own uncertainty is not in them.",
                ]),
            ]),
            new("cautions", "Before you measure again", [new BulletList(BenchWords.Cautions)]),
        ]);
    }
}
