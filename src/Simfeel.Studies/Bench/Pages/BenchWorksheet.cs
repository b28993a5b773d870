using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>
/// A sheet to print and fill in at the bench. It tells nothing of what the model thinks the results are, but for the period to
/// expect, so that nobody reads towards an answer.
/// </summary>
public static class BenchWorksheet
{
    /// <summary>One page of HTML that needs no other file; prints on A4 without colour.</summary>
    public static string Html(BenchPlan plan) => HtmlPage.Write(Page(plan), BenchStyle.Css);

    /// <summary>The same as Markdown, without the sketches.</summary>
    public static string Markdown(BenchPlan plan) => MarkdownPage.Write(Page(plan));

    private static SheetPage Page(BenchPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        string name = plan.Build.Build.Name;
        return new($"{name} on the bench", "Weigh it, swing it, balance it. Write down what you read; every part can be left out but the cautions.",
        [
            new("head", "Bench worksheet", [Row("Which craft, and with what", "today", "date", "name", "scale, smallest step", "watch")]),
            new("cautions", "Before you touch it", [new BulletList(BenchWords.Cautions)]),
            new("needs", "What you need",
            [
                new BulletList(
                [
                    "The craft ready to fly, all of it: propellers, antennas, strap, the pack strapped in where it flies, unplugged.",
                    "Two equal thin wires or strong, unstretchable threads; a firm beam; a thin, straight, light stick (a skewer or a carbon rod), weighed and measured; tape. The stick should weigh less than a fiftieth of the craft.",
                    "A ruler in millimetres, a plumb line (a thread with a nut), a watch that stops; filming it and counting pictures is better still.",
                    "A scale that reads a five-hundredth of the craft's mass or finer, two for the balance test; a sharp edge such as a steel ruler on end; two pencils or bars as supports.",
                    "Something soft to put below, and somebody who holds the craft while you tie it.",
                ]),
            ]),
            new("weigh", "1. Weigh it",
            [
                new Paragraph("Level scale, nothing touching the table. Weigh three times and turn the craft between. The mass goes straight into every inertia: one percent there is one percent here."),
                Row("May be off by 1 g or 0.2 %, whichever is less", "mass, g", "first", "second", "third", "mean"),
            ]),
            new("exact", "How exact to read", [SwingSection.Costs(plan)]),
            SwingSection.Of(plan),
            BalanceSection.Of(plan),
            new("then", "What it is for",
            [
                new BulletList(
                [
                    "The inertias say how much the craft resists rolling, pitching and yawing; the balance point says which motors work harder in hover. Simfeel adds both up from the parts; this is how you find out whether it is right for yours.",
                    "Write the readings into the readings file (bench with --template makes an empty one), then run bench with --results. You get model against measurement with bands, and which part to look at where they disagree; with --out a copy of the build that flies with your numbers.",
                    "A result that disagrees is more often a miscounted swing, a leaning axis or a wrong sign than a wrong part. Measure again before you change the build.",
                ]),
            ]),
        ]);
    }

    /// <summary>Boxes side by side under their names.</summary>
    internal static DataTable Row(string caption, string what, params string[] names) =>
        new(caption, [new("write here"), .. names.Select(name => new Column(name, true))], [new Row([what, .. names.Select(_ => Blank)])]);

    /// <summary>A box to write into.</summary>
    internal static Cell Blank { get; } = new("", Tone.Blank);
}
