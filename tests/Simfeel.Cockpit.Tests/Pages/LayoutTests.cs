using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Pages.Widgets;
using SkiaSharp;

namespace Simfeel.Cockpit.Tests.Pages;

/// <summary>Nothing overlaps and nothing is cut, on every page, at every text scale and size of window.</summary>
public class LayoutTests
{
    private static readonly (int Width, int Height)[] Sizes = [(640, 360), (1280, 720), (1920, 1080)];
    private static readonly double[] Scales = [0.75, 1, 1.5, 2];

    public static TheoryData<string> AllPages => [.. Samples.Names];

    [Theory]
    [MemberData(nameof(AllPages))]
    public void Texts_stay_in_their_boxes_and_apart(string name)
    {
        foreach ((int width, int height) in Sizes)
        {
            foreach (double scale in Scales)
            {
                using Canvases canvas = new(width, height, scale);
                PageStack stack = new();
                Page page = new Samples().Page(name);
                stack.Open(page);
                canvas.Pen.Fill(new(0, 0, width, height), new SKColor(0x8F, 0xB4, 0xC8));
                stack.Draw(canvas.Pen, width, height);
                canvas.Store(name);
                string at = FormattableString.Invariant($"{name} at {width}x{height}, text {scale}");

                Assert.True(canvas.Texts.Count >= 3, at);
                AssertTexts(canvas.Texts, at);
                Widget[] leaves = [.. page.All.Where(widget => widget.Children.Count == 0 && widget.Bounds.Height > 0)];
                foreach (Widget widget in leaves)
                {
                    Assert.True(widget.Bounds.Left >= 0 && widget.Bounds.Right <= width, $"{at}: {widget.Bounds}");
                    Assert.True(widget.Bounds.Bottom <= page.ContentHeight, $"{at}: {widget.Bounds}");
                }
                for (int i = 0; i < leaves.Length; i++)
                {
                    for (int j = 0; j < i; j++) AssertApart(leaves[i].Bounds, leaves[j].Bounds, $"{at}: widgets {j} and {i}");
                }
            }
        }
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(false, true)]
    [InlineData(true, false)]
    [InlineData(true, true)]
    public void Texts_in_flight_stay_in_their_boxes_in_the_window_and_apart(bool busy, bool flyB)
    {
        foreach ((int width, int height) in Sizes)
        {
            foreach (double scale in Scales)
            {
                using Canvases canvas = new(width, height, scale);
                canvas.Pen.Fill(new(0, 0, width, height), new SKColor(0x8F, 0xB4, 0xC8));
                FlightReadout readout = Samples.Readout(busy);
                readout.Flown = flyB ? 1 : 0;
                FlightOverlay overlay = new();
                Samples.Fly(readout, overlay);
                overlay.Draw(canvas.Pen, readout, width, height, 1);
                canvas.Store($"flight-{(busy ? "busy" : "calm")}-{(flyB ? "B" : "A")}");
                string at = FormattableString.Invariant($"flight at {width}x{height}, text {scale}");
                AssertTexts(canvas.Texts, at);
                foreach (TextPlaced text in canvas.Texts)
                {
                    Assert.True(
                        text.Area.Left >= 0 && text.Area.Right <= width && text.Area.Bottom <= height + 1, $"{at}: {text}");
                }
                Assert.Contains(canvas.Texts, text => text.Text == (flyB ? "Curlew" : "Wagtail"));
                Assert.Contains(canvas.Texts, text => text.Text == "you fly this one");
                if (!busy) continue;
                Assert.Contains(canvas.Texts, text => text.Text == "recording");
                // the side panel leaves the middle of the picture free
                Assert.All(
                    canvas.Texts.Where(text => text.Text is "roll rate" or "now"),
                    text => Assert.True(text.Area.Left > 0.6 * width, $"{at}: {text}"));
            }
        }
    }

    [Theory]
    [MemberData(nameof(AllPages))]
    public void Going_down_brings_every_line_and_every_focus_into_sight(string name)
    {
        using Canvases canvas = new(640, 360, 2);
        PageStack stack = new();
        Page page = new Samples().Page(name);
        stack.Open(page);
        stack.Draw(canvas.Pen, 640, 360);
        for (int k = 0; k < 60; k++)
        {
            stack.Handle(new(UiInputKind.Up));
            stack.Draw(canvas.Pen, 640, 360);
        }
        Assert.Equal(0, page.Sight.Top);
        canvas.Texts.Clear();
        stack.Draw(canvas.Pen, 640, 360);
        List<TextPlaced> lines = [.. canvas.Texts.Where(text => text.Part == "page")];
        (Widget? Focus, (float, float) Sight) last = default;
        for (int k = 0; k < 200 && last != (page.Focused, page.Sight); k++)
        {
            Widget? before = page.Focused;
            last = (before, page.Sight);
            (float top, float bottom) = page.Sight;
            lines.RemoveAll(line => line.Area.Top >= top - 1 && line.Area.Bottom <= bottom + 1);
            stack.Handle(new(UiInputKind.Down));
            stack.Draw(canvas.Pen, 640, 360);
            if (page.Focused == before) continue;
            SKRect area = page.Focused!.FocusArea;
            (top, bottom) = page.Sight;
            Assert.True(area.Top >= top - 0.5f, $"{name} {k}: {area} in {top}..{bottom}");
            Assert.True(area.Bottom <= bottom + 0.5f || area.Height > bottom - top - 60, $"{name} {k}: {area} in {top}..{bottom}");
        }
        Assert.Equal(page.Focusable[^1], page.Focused);
        // a picked row of a table opens its sentence and moves what is below by its height
        if (name != "results") Assert.Empty(lines.Select(line => line.Text));
    }

    private static void AssertTexts(List<TextPlaced> texts, string at)
    {
        foreach (TextPlaced text in texts)
        {
            SKRect box = text.Box;
            box.Inflate(1, 1);
            Assert.True(box.Contains(text.Area), $"{at}: \"{text.Text}\" {text.Area} leaves {text.Box}");
        }
        for (int i = 0; i < texts.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (texts[i].Part == texts[j].Part)
                    AssertApart(texts[i].Area, texts[j].Area, $"{at}: \"{texts[j].Text}\" and \"{texts[i].Text}\"");
            }
        }
    }

    private static void AssertApart(SKRect one, SKRect other, string what)
    {
        float wide = Math.Min(one.Right, other.Right) - Math.Max(one.Left, other.Left);
        float tall = Math.Min(one.Bottom, other.Bottom) - Math.Max(one.Top, other.Top);
        // line boxes may touch; half of the leading may lie over each other
        Assert.False(wide > 1 && tall > 0.2f * Math.Min(one.Height, other.Height), $"{what}: {one} over {other}");
    }
}
