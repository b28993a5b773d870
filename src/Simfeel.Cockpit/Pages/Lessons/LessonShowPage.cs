using System.Globalization;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Cockpit.Stage;
using Simfeel.Studies.Lessons;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>
/// The result of a lesson in three views that show one moment: the scene with both craft, the plot, the one number. Below them why it is
/// so, and a control to change it oneself.
/// </summary>
/// <param name="model">What it shows and does.</param>
public sealed class LessonShowPage(LessonShowModel model) : Page
{
    private const int PlotPoints = 160;

    private SceneHole? _hole;
    private PlotView? _plot;
    private float _tallest;
    private bool _told;
    private LessonResult? _shown;
    private PlotData? _drawn;

    /// <inheritdoc/>
    public override bool IsLive => true;

    /// <summary>Where the scene shows through, pixels of the window; empty where it is scrolled away or not there yet.</summary>
    internal SKRect SceneArea
    {
        get
        {
            if (_shown is null || _hole is null) return SKRect.Empty;
            SKRect area = _hole.Bounds;
            area.Offset(0, -Sight.Top);
            return area.Bottom <= 0 || area.Top >= Sight.Bottom - Sight.Top ? SKRect.Empty : area;
        }
    }

    private protected override IReadOnlyList<Widget> Build()
    {
        List<Widget> widgets = [new Label(model.Lesson.Title, TextStyle.Heading), new Label(model.State, TextStyle.Body, Palette.Warning)];
        _told = model.Seen();
        if (_shown is not LessonResult result)
        {
            widgets.Add(new Button("Other lesson", Leave));
            return widgets;
        }
        _hole = new(() => [_shown!.A.Name, _shown.B.Name]) { Tallest = _tallest };
        _plot = new(() => _drawn, model.Time, model.Seen) { Tallest = _tallest };
        widgets.Add(new Flow([_hole, _plot], 300));
        // what came out and what changes it stand where the picture is still in sight
        if (_told)
        {
            widgets.Add(new Label(() => LessonWords.Outcome(_shown!), TextStyle.Heading, Palette.Ink));
            widgets.Add(new Flow([Own(), Moment()], 330));
        }
        else
        {
            widgets.Add(new Button("Tell the result", model.Tell, "or watch both to the end first", main: true));
        }
        widgets.Add(new Flow(
            [
                new Button("Play or hold", model.PlayOrHold),
                new Button("Speed of time", model.NextSpeed, Speed()),
                new Toggle("Masses and arrows", model.ShowsMasses, model.ShowMasses),
            ],
            200));
        if (_told) widgets.AddRange(Words(result));
        List<Widget> ways = [];
        if (model.FlyBoth is Action fly) ways.Add(new Button("Fly both yourself", fly, "swap them with one key"));
        if (model.FlyBlind is Action blind) ways.Add(new Button("Fly both blind", blind, "can you feel it without knowing?"));
        ways.Add(new Button("Other lesson", Leave));
        widgets.Add(new Flow(ways, 250));
        if (_told) widgets.Add(new Label(() => model.SheetFile().Length > 0 ? "Sheet for the class: " + model.SheetFile() : "", TextStyle.Small, Palette.Quiet));
        widgets.Add(Label.Quiet(model.Lesson.Care.Length > 0 ? model.Lesson.Care : LessonWords.Safety));
        return widgets;
    }

    private List<Widget> Words(LessonResult result)
    {
        List<Widget> words = [new Label(LessonWords.Right(result), TextStyle.Body)];
        if (model.Answers.Count > 0 && !result.IsOwnValue)
            words.Add(new Label($"{LessonWords.Class(result, model.Answers)} Hands: {LessonWords.Hands(model.Answers)}.", TextStyle.Body));
        if (LessonWords.ClaimMissed(result) is { Length: > 0 } missed) words.Add(new Label(() => "! " + missed, TextStyle.Small, Palette.Warning));
        words.Add(new Label(model.Lesson.Explanation, TextStyle.Body));
        words.Add(new Label("Change it yourself: " + model.Lesson.Try.Text, TextStyle.Body));
        return words;
    }

    private Slider Moment() => new("Moment", new(0, model.Length(), model.Length() / 100), model.Time, model.Seek, seconds => FormattableString.Invariant($"{seconds:F2} s"));

    private protected override void Fit(int width, int height)
    {
        _tallest = 0.42f * height;
        if (_hole is not null) _hole.Tallest = _tallest;
        if (_plot is not null) _plot.Tallest = _tallest;
    }

    private protected override void Follow()
    {
        if (_told != model.Seen()) Rebuild();
        if (ReferenceEquals(_shown, model.Result())) return;
        _shown = model.Result();
        _drawn = _shown is LessonResult result ? Drawn(result) : null;
        Rebuild();
    }

    /// <summary>The lesson's plot, but to the end of the moment, whatever part of it a sheet shows.</summary>
    private static PlotData Drawn(LessonResult result)
    {
        double end = LessonStage.LengthOf(result.A, result.B);
        LessonResult whole = result with { Lesson = result.Lesson with { Plot = result.Lesson.Plot with { To = end } } };
        return new(
            $"{LessonChart.Title(result)}, {result.Lesson.Plot.Channel.Display.Symbol}",
            [result.A.Name, result.B.Name],
            [[.. LessonChart.Points(whole, result.A, PlotPoints)], [.. LessonChart.Points(whole, result.B, PlotPoints)]],
            end,
            result.Lesson.Plot.Channel.Display.Decimals);
    }

    private string Speed() => string.Create(CultureInfo.InvariantCulture, $"now {model.Speed():0.##} of real time");

    private Widget Own()
    {
        LessonKey key = model.Lesson.Change.Key;
        if (key.Words.Count > 0) return new Choice(key.Meaning, () => key.Words, () => (int)model.Own(), word => model.SetOwn(word));
        (double from, double to) = (model.Lesson.Try.From, model.Lesson.Try.To);
        return new Slider(
            key.Meaning, new(from, to, (to - from) / 20), model.Own, model.SetOwn,
            value => (model.Lesson.Change.B with { Number = Math.Round(value, 4) }).Text(key.Unit), "of the second craft");
    }
}
