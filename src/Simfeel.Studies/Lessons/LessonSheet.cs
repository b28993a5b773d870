using System.Xml.Linq;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Plots;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Lessons;

/// <summary>A lesson on paper: for the class with blanks, or with the answers, what the class said, and the plot.</summary>
/// <param name="Result">What came out.</param>
/// <param name="Trials">What the values to try oneself give.</param>
/// <param name="Answers">What a class answered beforehand; null where nobody was asked.</param>
/// <param name="Date">The day.</param>
/// <param name="Version">Version of the program.</param>
public sealed record LessonSheet(LessonResult Result, IReadOnlyList<LessonTrial> Trials, ClassAnswers? Answers, DateOnly Date, string Version)
{
    private const string Blank = "_______________";

    private Lesson Lesson => Result.Lesson;

    /// <summary>One page of HTML that needs no other file.</summary>
    /// <param name="withAnswers">False for the sheet that pupils fill in.</param>
    /// <exception cref="PlotFontException">The font of the charts is missing.</exception>
    public string Html(bool withAnswers) => HtmlPage.Write(Page(withAnswers));

    /// <summary>The same as Markdown.</summary>
    /// <param name="withAnswers">False for the sheet that pupils fill in.</param>
    public string Markdown(bool withAnswers) => MarkdownPage.Write(Page(withAnswers));

    private SheetPage Page(bool withAnswers) => new(
        Lesson.Title, Lesson.Idea,
        [
            new("plates", $"Lesson: {Lesson.Topic}{(withAnswers ? "" : " (sheet to fill in)")}", [Plate(Result.A, false, withAnswers), Plate(Result.B, true, withAnswers)]),
            new("question", "Before anything is shown", Question(withAnswers)),
            new("flown", "What is flown",
            [
                new Paragraph(LessonWords.Change(Result)),
                new Paragraph(LessonWords.Flown(Result)),
            ]),
            new("result", "What came out", withAnswers ? Outcome() : ToFillIn()),
            new("own", "Change it yourself",
            [
                // what to look for says too much before the class has seen it
                new Paragraph(withAnswers ? Lesson.Try.Text : "Change the one thing yourself and write down what comes out."),
                new Paragraph($"On the command line: ./simfeel lesson {Lesson.Name} --value {LessonWords.ValueForm(Lesson)}; in the window: the slider of the lesson.", Tone.Quiet),
                OwnTable(withAnswers),
            ]),
            new("care", "With a real craft",
            [
                .. Lesson.Care.Length > 0 ? [new Paragraph(Lesson.Care, Tone.Warning)] : Array.Empty<Block>(),
                new Paragraph(LessonWords.Safety, Tone.Warning),
                new Paragraph($"Computed by Simfeel {Version} on {Date:yyyy-MM-dd} from the build {Result.A.Assembled.Build.Name}; nobody has flown this.", Tone.Quiet),
            ]),
        ]);

    /// <summary>Pupils see the mass alone: the inertia would answer half of the questions.</summary>
    private static Plate Plate(LessonFlight flight, bool isB, bool withAnswers)
    {
        Mat3 inertia = flight.Assembled.Craft.I_BBcm_B;
        return new(
            flight.Name, $"Made from {flight.Assembled.Build.Name}.",
            [
                ("mass", $"{flight.Assembled.Craft.Mass * 1000:F0} g"),
                .. withAnswers
                    ?
                    [
                        ("inertia about roll", $"{inertia.M00 * 1000:G4} g m\u00B2"),
                        ("about pitch", $"{inertia.M11 * 1000:G4} g m\u00B2"),
                        ("about yaw", $"{inertia.M22 * 1000:G4} g m\u00B2"),
                    ]
                    : Array.Empty<(string, string)>(),
            ],
            isB);
    }

    private List<Block> Question(bool withAnswers)
    {
        List<Block> blocks = [new Paragraph(Lesson.Question)];
        bool counted = withAnswers && Answers is { Count: > 0 };
        blocks.Add(new DataTable(
            counted ? $"What was answered before anything was shown, {Answers!.Count} {(Answers.Count == 1 ? "hand" : "hands")}" : "Answers",
            [new("answer", true), new("", true), new(counted ? "hands" : withAnswers ? "" : "my answer")],
            [
                .. Lesson.Choices.Select((choice, n) => new Row(
                [
                    $"{Lesson.Letter(n)}", choice.Text, counted ? $"{Answers!.Hands[n]}" : withAnswers ? "" : "\u2610",
                ])),
            ]));
        if (!withAnswers) blocks.AddRange(new Paragraph($"Because: {Blank}{Blank}{Blank}"), new Paragraph($"{Blank}{Blank}{Blank}{Blank}"));
        return blocks;
    }

    private List<Block> Outcome()
    {
        List<Block> blocks = [new Paragraph(LessonWords.Outcome(Result))];
        if (LessonWords.Right(Result) is { Length: > 0 } right) blocks.Add(new Paragraph(right, Tone.Felt));
        if (Answers is not null) blocks.Add(new Paragraph(LessonWords.Class(Result, Answers)));
        if (LessonWords.ClaimMissed(Result) is { Length: > 0 } missed) blocks.Add(new Paragraph(missed, Tone.Warning));
        blocks.Add(Plot());
        blocks.Add(new Heading("Why"));
        blocks.Add(new Paragraph(Lesson.Explanation));
        return blocks;
    }

    private Figure Plot()
    {
        Chart chart = LessonChart.Of(Result);
        string label = $"{Words.Capital(LessonChart.Title(Result))} of both craft over time";
        return new(label, label + ".", [chart.X.Label, chart.Y.Label], prefix => ChartSvg.Of(chart, label, prefix, 560, 340), PlotNumbers(chart));
    }

    /// <summary>The plot in eleven rows, for a medium that cannot draw.</summary>
    private DataTable PlotNumbers(Chart chart)
    {
        (ChartSeries a, ChartSeries b) = (chart.Series[0], chart.Series[1]);
        int last = Math.Min(a.X.Count, b.X.Count) - 1, decimals = Lesson.Plot.Channel.Display.Decimals;
        return new(
            chart.Y.Label, [new("time s"), new(Result.A.Name), new(Result.B.Name)],
            [.. Enumerable.Range(0, 11).Select(n => last * n / 10).Distinct().Select(row => new Row([Numbers.Fixed(a.X[row], 2), Numbers.Fixed(a.Y[row], decimals), Numbers.Fixed(b.Y[row], decimals)]))]);
    }

    private List<Block> ToFillIn() =>
    [
        new Paragraph($"{Words.Capital(Lesson.Number.Title)}, {Result.A.Name}: {Blank} {Lesson.Number.Display.Symbol}"),
        new Paragraph($"{Words.Capital(Lesson.Number.Title)}, {Result.B.Name}: {Blank} {Lesson.Number.Display.Symbol}"),
        new Paragraph($"Difference: {Blank}   Right was: {Blank}"),
        new Figure(
            "Empty axes to draw both craft into", $"Draw both: {LessonChart.Title(Result)} over time.", ["time, s", Numbers.Axis(LessonChart.Title(Result), Lesson.Plot.Channel.Display.Symbol)],
            _ => EmptyAxes()),
        new Paragraph($"It comes out so because: {Blank}{Blank}{Blank}"),
    ];

    private XElement EmptyAxes()
    {
        const int height = 230, left = 40, bottom = 190;
        return SvgParts.Root(
            "Empty axes", height,
            Enumerable.Range(1, 10).Select(n => SvgParts.Line(left + (42 * n), 15, left + (42 * n), bottom, "#d5d9de")),
            Enumerable.Range(0, 5).Select(n => SvgParts.Line(left, 15 + (35 * n), 460, 15 + (35 * n), "#d5d9de")),
            SvgParts.Line(left, 10, left, bottom, SvgParts.Ink, null, 1.5), SvgParts.Line(left, bottom, 465, bottom, SvgParts.Ink, null, 1.5),
            SvgParts.Text(250, 215, "time, s", "middle"), SvgParts.Text(left + 6, 22, Numbers.Axis(LessonChart.Title(Result), Lesson.Plot.Channel.Display.Symbol)));
    }

    private DataTable OwnTable(bool withAnswers) => new(
        $"{Words.Capital(Lesson.Change.Key.Meaning)} and the number that comes out",
        [new(Lesson.Change.Key.Path, true), new($"{Lesson.Number.Title}, {Lesson.Number.Display.Symbol}", true)],
        [
            .. Trials.Select(trial => new Row(
            [
                trial.Value.Text(Lesson.Change.Key.Unit),
                !withAnswers ? Blank : trial.Fault.Length > 0 ? trial.Fault : Lesson.Number.Display.Number(trial.Number),
            ])),
        ]);
}
