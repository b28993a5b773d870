using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Pages.Flights;
using Simfeel.Cockpit.Pages.Lessons;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Cockpit.Platform;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Pages;

/// <summary>Every page works by keyboard, by pad and by mouse alone, and can be left.</summary>
public class NavigationTests
{
    public static TheoryData<string> AllPages => [.. Samples.Names];

    [Theory]
    [MemberData(nameof(AllPages))]
    public void Every_widget_is_reached_by_arrow_keys_alone_and_by_tab(string name)
    {
        using Desk arrows = new(new Samples().Page(name));
        AssertReachesAll(arrows, () => arrows.Press(Down), () => arrows.Press(Up));
        using Desk tab = new(new Samples().Page(name));
        AssertReachesAll(tab, () => tab.Press(Tab), () => tab.Press(Tab, shift: true));
    }

    [Theory]
    [MemberData(nameof(AllPages))]
    public void Every_widget_is_reached_by_the_hat_or_the_stick_of_a_pad_alone(string name)
    {
        using Desk hat = new(new Samples().Page(name));
        AssertReachesAll(hat, () => hat.Hat(4), () => hat.Hat(1));
        using Desk stick = new(new Samples().Page(name));
        AssertReachesAll(stick, () => stick.Stick(32767), () => stick.Stick(-32768));
    }

    [Theory]
    [MemberData(nameof(AllPages))]
    public void Every_widget_in_sight_takes_the_pointer(string name)
    {
        using Desk desk = new(new Samples().Page(name));
        foreach (Widget widget in desk.Page.Focusable.ToArray())
        {
            desk.Hear(new(WindowEventKind.PointerMove, X: (int)widget.Bounds.MidX, Y: (int)(widget.Bounds.MidY - desk.Page.Sight.Top)));
            if (widget.Bounds.MidY < desk.Page.Sight.Bottom) Assert.Same(widget, desk.Page.Focused);
        }
    }

    [Theory]
    [MemberData(nameof(AllPages))]
    public void Back_leads_out_by_key_and_by_pad(string name)
    {
        string[] ways = name switch { "start" => ["quit"], "pause" => ["resume"], "wizard" or "wizard-done" => ["cancel"], "message" => ["wait"], _ => [] };
        foreach (bool pad in (bool[])[false, true])
        {
            Samples samples = new();
            using Desk desk = new(samples.Page(name));
            for (int k = 0; k < 2 && desk.Stack.Count > 0; k++)
            {
                if (pad) desk.Hear(new(WindowEventKind.ButtonDown, 1));
                else desk.Press(Escape);
            }
            if (name is "start" or "pause") Assert.Contains(ways[0], samples.Called);
            else Assert.Equal(0, desk.Stack.Count);
            if (ways.Length > 0) Assert.Contains(ways[0], samples.Called);
        }
    }

    [Fact]
    public void The_start_page_flies_the_picked_builds_with_keys_alone()
    {
        Samples samples = new();
        using Desk desk = new(samples.Page("start"));
        desk.Press(Right);
        Assert.Equal(1, samples.Start.Picked[0]);
        desk.Press(Down);
        desk.Press(Left);
        Assert.Equal(0, samples.Start.Picked[1]);
        desk.Press(Down);
        desk.Press(Right);
        Assert.Equal(1, samples.Start.Field);
        desk.Press(Down);
        desk.Press(Enter);
        Assert.Equal("sticks", samples.Called[^1]);
        desk.Press(Down);
        desk.Press(Enter);
        Assert.Equal("fly", samples.Called[^1]);
    }

    [Fact]
    public void The_list_of_builds_picks_one_and_closes()
    {
        Samples samples = new();
        using Desk desk = new(samples.Page("start"));
        desk.Press(Enter);
        Assert.Equal(2, desk.Stack.Count);
        desk.Press(Down);
        desk.Press(Down);
        desk.Press(Enter);
        Assert.Equal(1, desk.Stack.Count);
        Assert.Equal(2, samples.Start.Picked[0]);
    }

    [Fact]
    public void A_build_with_a_fault_is_not_flown_but_explained()
    {
        Samples samples = new();
        samples.Start.Picked[1] = 3;
        using Desk desk = new(samples.Page("start"));
        for (int k = 0; k < 4; k++) desk.Press(Down);
        desk.Press(Enter);
        Assert.DoesNotContain("fly", samples.Called);
        Assert.IsType<MessagePage>(desk.Stack.Top);
        Assert.Contains(desk.Texts, text => text.StartsWith("broken.toml, line 12", StringComparison.Ordinal));
    }

    [Fact]
    public void Settings_change_by_keys_stay_in_their_range_and_are_told()
    {
        Samples samples = new();
        using Desk desk = new(samples.Page("settings"));
        desk.Press(Down);
        for (int k = 0; k < 40; k++) desk.Press(Right);
        Assert.Equal(2, samples.Settings.TextScale, 12);
        for (int k = 0; k < 40; k++) desk.Press(Left);
        Assert.Equal(0.75, samples.Settings.TextScale, 12);
        Assert.Equal(20 + 25, samples.Called.Count(call => call == "settings changed"));
        desk.Press(Down);
        desk.Press(Enter);
        Assert.False(samples.Settings.SpeedInKilometresPerHour);
    }

    [Fact]
    public void One_toggle_sets_palette_and_text_for_a_projector_and_each_can_be_changed_after_it()
    {
        Samples samples = new();
        using Desk desk = new(samples.Page("settings"));
        for (int k = 0; k < 4; k++) desk.Press(Down);
        desk.Press(Enter);
        Assert.Equal((PaletteKind.Projector, 1.5), (samples.Settings.Palette, samples.Settings.TextScale));
        // the text's size by its own slider: the palette stays
        for (int k = 0; k < 3; k++) desk.Press(Up);
        for (int k = 0; k < 4; k++) desk.Press(Left);
        Assert.Equal(1.3, samples.Settings.TextScale, 12);
        Assert.True(samples.Settings.ForProjector);
        // the palette by its own choice: the text stays
        for (int k = 0; k < 4; k++) desk.Press(Down);
        desk.Press(Right);
        Assert.Equal(PaletteKind.Usual, samples.Settings.Palette);
        Assert.Equal(1.3, samples.Settings.TextScale, 12);
        Assert.False(samples.Settings.ForProjector);
        desk.Press(Up);
        desk.Press(Enter);
        desk.Press(Enter);
        Assert.Equal((PaletteKind.Usual, 1.0), (samples.Settings.Palette, samples.Settings.TextScale));
    }

    [Fact]
    public void A_slider_follows_the_pointer_also_outside_its_track()
    {
        Samples samples = new();
        using Desk desk = new(samples.Page("bench"));
        Widget slider = desk.Page.Focusable[0];
        int y = (int)(slider.Bounds.Top + 20);
        desk.Hear(new(WindowEventKind.PointerDown, 1, X: (int)slider.Bounds.MidX + 60, Y: y));
        desk.Hear(new(WindowEventKind.PointerMove, X: 5000, Y: 5));
        Assert.Equal(400, samples.Items[0].Value);
        Assert.Equal("frame.wheelbase_mm 400", samples.Called[^1]);
        desk.Hear(new(WindowEventKind.PointerUp, 1, X: 5000, Y: 5));
        desk.Hear(new(WindowEventKind.PointerMove, X: 0, Y: y));
        Assert.Equal(400, samples.Items[0].Value);
    }

    [Fact]
    public void An_action_takes_another_key_and_another_button_and_escape_keeps_the_old_one()
    {
        Samples samples = new();
        using Desk desk = new(samples.Page("keys"));
        desk.Press(Enter);
        Assert.True(desk.Stack.IsCapturing);
        Assert.Contains("press a key", desk.Texts);
        desk.Press(Down);
        Assert.Equal($"Arm key {Down}", samples.Called[^1]);
        Assert.False(desk.Stack.IsCapturing);

        desk.Press(Right);
        desk.Press(Enter);
        desk.Press(Down);
        Assert.True(desk.Stack.IsCapturing);
        desk.Hear(new(WindowEventKind.ButtonDown, 7));
        Assert.Equal("Arm pad 7", samples.Called[^1]);

        desk.Press(Enter);
        desk.Press(Escape);
        Assert.False(desk.Stack.IsCapturing);
        Assert.Equal(2, samples.Called.Count);
        Assert.Equal(1, desk.Stack.Count);
    }

    [Fact]
    public void The_wizard_takes_answers_follows_new_questions_and_stores_once()
    {
        Samples samples = new();
        using Desk desk = new(samples.Page("wizard"));
        desk.Press(Down);
        desk.Press(Enter);
        Assert.Equal("choice 1", samples.Called[^1]);
        (samples.Wizard.Title, samples.Wizard.Choices, samples.Wizard.Done) = ("All set", [], true);
        desk.Draw();
        Assert.Contains("All set", desk.Texts);
        desk.Press(Up);
        desk.Press(Enter);
        Assert.Equal(["choice 1", "store"], samples.Called);
        Assert.Equal(0, desk.Stack.Count);
    }

    [Fact]
    public void Results_show_what_the_picked_row_means_and_say_in_words_which_is_greater()
    {
        using Desk desk = new(new Samples().Page("results"));
        Assert.Contains(desk.Texts, text => text.StartsWith("Highest roll rate", StringComparison.Ordinal));
        desk.Press(Down);
        Assert.Contains(desk.Texts, text => text.StartsWith("From leaving the stick", StringComparison.Ordinal));
        Assert.DoesNotContain(desk.Texts, text => text.StartsWith("Highest roll rate", StringComparison.Ordinal));
        Assert.Contains("◀ A greater by 24 %", desk.Texts);
        Assert.Contains("only one flew it", desk.Texts);
        Assert.Equal("the same", ResultsPage.Greater(3, 3));
        // percent of the mean of both, as compare has it: 1 of 2 less 3 of 2
        Assert.Equal("B greater ▶ by 100 %", ResultsPage.Greater(1, 3));
        Assert.Equal("B greater ▶", ResultsPage.Greater(0, 2));
    }

    [Theory]
    [InlineData(0, 420, 0, 450, 0)]
    [InlineData(-0.3, 420, 0, 450, 0)]
    [InlineData(-200, 410, -200, 500, 0)]
    [InlineData(-420, 3, -450, 0, 0)]
    [InlineData(1, 1.04, 1, 1.04, 3)]
    [InlineData(7, 7, 7, 7.001, 3)]
    public void A_plots_axis_ends_at_round_numbers_close_to_its_values(double least, double most, double low, double high, int decimals)
    {
        (double from, double to, int digits) = PlotView.Ends([least, most]);
        Assert.Equal(low, from, 9);
        Assert.Equal(high, to, 9);
        Assert.Equal(decimals, digits);
    }

    [Fact]
    public void A_lessons_plot_goes_to_the_end_of_its_moment()
    {
        using Desk desk = new(new Samples().Page("lesson-shown"));
        // the sheet's plot of this lesson ends at 0.6 s, both flights at 0.75 s
        Assert.Contains("0.75 s", desk.Texts);
        Assert.DoesNotContain("0.60 s", desk.Texts);
    }

    [Fact]
    public void A_rate_that_nobody_flew_has_no_verdict()
    {
        Assert.Equal(14.7, ResultsPage.LeastRate, 1);
        using Desk desk = new(new ResultsPage(new()
        {
            Builds = ["Wagtail", "Curlew"],
            Rows = [new("fastest roll", "deg/s", 0.04, 0.3, ""), new("fastest pitch", "deg/s", 492, 1, ""), new("highest roll acceleration", "deg/s²", 146, 3, "")],
        }));
        Assert.Equal(2, desk.Texts.Count(text => text == "neither flew it"));
        Assert.Single(desk.Texts, text => text == "only one flew it");
        Assert.Equal(5, desk.Texts.Count(text => text == "not flown"));
        Assert.Contains(desk.Texts, text => text.Contains("no rate above 15 deg/s", StringComparison.Ordinal));
    }

    [Fact]
    public void A_resting_throttle_presses_nothing()
    {
        UiTranslator translator = new();
        Assert.Equal(UiInputKind.None, translator.Translate(new(WindowEventKind.Axis, 1, Value: -32768), false).Kind);
        translator.Translate(new(WindowEventKind.Axis, 1, Value: 0), false);
        Assert.Equal(UiInputKind.Up, translator.Translate(new(WindowEventKind.Axis, 1, Value: -32768), false).Kind);
        Assert.Equal(UiInputKind.None, translator.Translate(new(WindowEventKind.Axis, 1, Value: -32000), false).Kind);
    }

    private static void AssertReachesAll(Desk desk, Action onward, Action backward)
    {
        HashSet<Widget?> seen = [desk.Page.Focused];
        for (int k = 0; k < 60; k++)
        {
            onward();
            seen.Add(desk.Page.Focused);
        }
        Assert.Same(desk.Page.Focusable[^1], desk.Page.Focused);
        for (int k = 0; k < 60; k++)
        {
            backward();
            seen.Add(desk.Page.Focused);
        }
        Assert.All(desk.Page.Focusable, widget => Assert.Contains(widget, seen));
        Assert.Same(desk.Page.Focusable[0], desk.Page.Focused);
    }

    /// <summary>A page on a canvas, with a keyboard, a pad and a mouse.</summary>
    private sealed class Desk : IDisposable
    {
        private readonly Canvases _canvas = new(1280, 720, 1);
        private readonly UiTranslator _translator = new();

        public Desk(Page page)
        {
            Page = page;
            Stack.Open(page);
            Draw();
        }

        public PageStack Stack { get; } = new();

        public Page Page { get; }

        public IEnumerable<string> Texts => _canvas.Texts.Select(text => text.Text);

        public void Draw()
        {
            _canvas.Texts.Clear();
            Stack.Draw(_canvas.Pen, 1280, 720);
        }

        public void Hear(WindowEvent happened, bool shift = false)
        {
            Stack.Handle(_translator.Translate(happened, Stack.IsCapturing, shift));
            Draw();
        }

        public void Press(int key, bool shift = false)
        {
            Hear(new(WindowEventKind.KeyDown, key), shift);
            Hear(new(WindowEventKind.KeyUp, key));
        }

        public void Hat(int value)
        {
            Hear(new(WindowEventKind.Hat, Value: value));
            Hear(new(WindowEventKind.Hat, Value: 0));
        }

        public void Stick(int value)
        {
            Hear(new(WindowEventKind.Axis, 1, Value: 0));
            Hear(new(WindowEventKind.Axis, 1, Value: value));
        }

        public void Dispose() => _canvas.Dispose();
    }
}
