using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Cockpit.Tests.Input;
using SkiaSharp;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>A lesson from the start page to its result and its sheet, by keyboard alone and by pad alone, at text size 200 %.</summary>
[Collection(WindowFixture.Collection)]
public class LessonTests(WindowFixture fixture)
{
    private const string LargeText = "text_scale = 2\n";

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_lesson_by_keyboard_alone(bool large) => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, settings: large ? LargeText : null);
        Assert.Equal(large ? 2 : 1, run.App.Settings.TextScale);
        Fly(run, Keyboard(run), large ? "keys-200" : "keys");
    });

    [Fact]
    public void A_lesson_by_pad_alone() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, settings: LargeText);
        using VirtualStick pad = new(VirtualStick.Gamepad, 6, 15, 1);
        run.Frames(0.2);
        Fly(run, new(() => Hat(4), () => Hat(1), () => Button(0), () => Hat(8), () => Button(1)), "pad-200");

        void Hat(byte way)
        {
            pad.Hat(0, way);
            run.Frames(0.05);
            pad.Hat(0, 0);
            run.Frames(0.05);
        }

        void Button(int button)
        {
            pad.Button(button, true);
            run.Frames(0.05);
            pad.Button(button, false);
            run.Frames(0.05);
        }
    });

    [Fact]
    public void The_craft_of_a_lesson_are_flown_by_hand_and_the_bench_leaves_them_alone() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window);
        Hands hands = ShowWithoutAnswer(run, "Ballast from the middle to the arm tips");
        // what was watched to its end is told by itself
        Assert.False(run.App.Lessons.Stage!.Seen);
        run.Until(() => run.App.Lessons.Stage!.Seen, 10, "it was not seen to its end");
        run.Frames(0.2);
        Assert.Contains(run.App.Pages.Top!.Focusable, widget => widget is Slider);
        Open(run, hands, "Fly both yourself");
        Outing outing = run.App.Outing!;
        Assert.Equal(("lead in the middle", "lead at the arm tips"), (outing.Build(0).Name, outing.Build(1).Name));
        Assert.Equal(outing.Build(0).Unit.Unit.Craft.Mass, outing.Build(1).Unit.Unit.Craft.Mass, 1e-12);
        run.Frames(0.2);
        run.Press(B);
        Assert.Equal("", run.App.PageName);
        Assert.Contains("lesson", run.App.Readout.Notice, StringComparison.Ordinal);
        run.App.EndFlight();
        Assert.Equal("ResultsPage", run.App.PageName);
    });

    [Fact]
    public void A_second_lesson_waits_for_its_answers_before_its_sheet_is_written() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window);
        Hands hands = ShowWithoutAnswer(run, "Ballast from the middle to the arm tips");
        run.Until(() => run.App.Lessons.SheetFile.Length > 0, 30, "the first sheet was not written");
        hands.Back();
        Open(run, hands, "Mass in the middle");
        run.Until(() => run.App.Lessons.Result is not null, 30, "the second lesson was not flown");
        run.Frames(0.3);
        Assert.Equal("LessonQuestionPage", run.App.PageName);
        Assert.Equal("", run.App.Lessons.SheetFile);
        Open(run, hands, "A   About the same");
        Open(run, hands, "Show it");
        run.Until(() => run.App.Lessons.SheetFile.Length > 0, 30, "the second sheet was not written");
        Assert.Contains("The answer given beforehand was right", File.ReadAllText(run.App.Lessons.SheetFile), StringComparison.Ordinal);
    });

    [Fact]
    public void A_lesson_to_be_felt_is_flown_blind() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window);
        Hands hands = ShowWithoutAnswer(run, "A late picture");
        Assert.DoesNotContain(run.App.Pages.Top!.Focusable, widget => widget is Button { Text: "Fly both yourself" });
        Open(run, hands, "Fly both blind");
        Assert.True(run.App.Blind.IsOn);
        HashSet<double> delays = [];
        for (int flight = 0; flight < 16 && run.App.Blind.IsOn; flight++)
        {
            delays.Add(run.App.Blind.Late);
            run.Hover();
            run.Press(Tab);
            delays.Add(run.App.Blind.Late);
            run.Hover();
            run.Press(T);
            run.Press(Enter);
        }
        Assert.Equal([0, 0.08], delays.Order());
        Assert.Equal("BlindResultPage", run.App.PageName);
        Assert.Equal(8, run.App.Blind.Session!.Voted);
    });

    private static Hands Keyboard(AppRun run) =>
        new(() => run.Press(Down), () => run.Press(Up), () => run.Press(Enter), () => run.Press(Left), () => run.Press(Escape));

    private static Hands ShowWithoutAnswer(AppRun run, string lesson)
    {
        Hands hands = Keyboard(run);
        Open(run, hands, "Lessons");
        Open(run, hands, lesson);
        Open(run, hands, "Show it without an answer");
        Await(run);
        return hands;
    }

    private static void Fly(AppRun run, Hands hands, string name)
    {
        run.Frames(0.1);
        Assert.Equal("StartPage", run.App.PageName);
        Open(run, hands, "Lessons");
        Assert.Equal("LessonListPage", run.App.PageName);
        Store(run, name + "-list");
        Reach(run, hands, widget => widget is Toggle);
        hands.Accept();
        Open(run, hands, "Ballast from the middle to the arm tips");
        Assert.Equal("LessonQuestionPage", run.App.PageName);
        // nothing is shown before the answer
        Assert.Null(run.App.Lessons.Page);
        Open(run, hands, "C   Much slower, by more than a quarter");
        Assert.Equal("LessonQuestionPage", run.App.PageName);
        Store(run, name + "-question");
        Open(run, hands, "Show it");
        Assert.Equal("LessonShowPage", run.App.PageName);
        Await(run);
        run.Frames(0.6);
        // first it is seen, then it is told
        Store(run, name + "-seen");
        Assert.DoesNotContain(run.App.Pages.Top!.Focusable, widget => widget is Slider);
        Open(run, hands, "Tell the result");
        run.Frames(0.2);
        Store(run, name + "-shown");
        Assert.Equal(2, run.App.Lessons.Result!.RightChoice);
        Assert.True(run.App.Lessons.Stage!.Time > 0.05);

        // change it oneself: less ballast at the tips, a smaller difference
        double before = run.App.Lessons.Result.B.Number;
        Reach(run, hands, widget => widget is Slider);
        hands.Less();
        hands.Less();
        run.Until(() => run.App.Lessons.Result!.B.Number > before, 20, "the other value was not flown");
        run.Frames(0.3);
        Store(run, name + "-own");

        run.Until(() => run.App.Lessons.SheetFile.Length > 0, 30, "the sheet was not written");
        string sheet = File.ReadAllText(run.App.Lessons.SheetFile);
        foreach (string part in (string[])["Two craft of exactly the same mass", "1 hand", "The answer given beforehand was right", "% less", "<svg", "What resists being turned"])
            Assert.Contains(part, sheet, StringComparison.Ordinal);
        Assert.Contains("ballast-to-the-tips,Wagtail,C,\"Much slower, by more than a quarter\",1,yes", File.ReadAllText(run.App.Lessons.AnswersFile), StringComparison.Ordinal);
        hands.Back();
        Assert.Equal("LessonListPage", run.App.PageName);
        hands.Back();
        Assert.Equal("StartPage", run.App.PageName);
    }

    private static void Await(AppRun run) => run.Until(() => run.App.Lessons is { Page: not null, Stage: not null }, 30, "the lesson was not flown");

    /// <summary>Goes through the page until a button of a text has the focus, and presses it.</summary>
    private static void Open(AppRun run, Hands hands, string text)
    {
        Reach(run, hands, widget => widget is Button button && button.Text == text);
        hands.Accept();
    }

    private static void Reach(AppRun run, Hands hands, Func<Widget, bool> wanted)
    {
        run.Frames(0.05);
        Widget target = run.App.Pages.Top!.Focusable.First(wanted);
        for (int n = 0; n < 300 && (run.App.Pages.Top!.Focused != target || !InSight(run)); n++)
        {
            Page page = run.App.Pages.Top!;
            int at = Place(page, page.Focused!), to = Place(page, target);
            if (at < to || (at == to && target.FocusArea.Top >= page.Sight.Bottom)) hands.Next();
            else hands.Before();
        }
        Assert.Same(target, run.App.Pages.Top!.Focused);
    }

    private static int Place(Page page, Widget widget) => page.Focusable.ToList().IndexOf(widget);

    private static bool InSight(AppRun run)
    {
        Page page = run.App.Pages.Top!;
        SKRect area = page.Focused!.FocusArea;
        return area.Top < page.Sight.Bottom && area.Bottom > page.Sight.Top;
    }

    /// <summary>Keeps a picture for those who want to look: SIMFEEL_PICTURES=FOLDER.</summary>
    private static void Store(AppRun run, string name)
    {
        if (Environment.GetEnvironmentVariable("SIMFEEL_PICTURES") is string folder) run.App.WritePng(Path.Combine(folder, $"lesson-{name}.png"));
    }

    /// <summary>What a pair of hands can do.</summary>
    private sealed record Hands(Action Next, Action Before, Action Accept, Action Less, Action Back);
}
