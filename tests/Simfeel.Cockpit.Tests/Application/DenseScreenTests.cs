using Simfeel.Cockpit.Application.Offscreen;
using Simfeel.Cockpit.Drawing;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>A desktop scaled to 200 %: twice the pixels each way, and all texts twice as many pixels large.</summary>
[Collection(WindowFixture.Collection)]
public class DenseScreenTests(WindowFixture fixture)
{
    [Fact]
    public void Twice_the_pixels_show_the_same_page_twice_as_large() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window);
        // the page says which builds are still being loaded
        foreach (string build in (string[])["wagtail", "curlew"]) run.App.Rack.Wait(run.App.Rack.IndexOf(build));
        using PictureTarget dense = new(fixture.Window.Gl, 1280, 720);
        List<TextPlaced> usual = TextsOf(run);
        run.App.DrawInto(dense, density: 2);
        List<TextPlaced> twice = TextsOf(run);

        Assert.True(usual.Count > 20, $"{usual.Count} texts");
        Assert.Equal(usual.Select(text => text.Text), twice.Select(text => text.Text));
        foreach ((TextPlaced one, TextPlaced two) in usual.Zip(twice))
        {
            // letters stand on whole pixels, so that a long text is a few wider or narrower
            Assert.InRange(two.Area.Left, (2 * one.Area.Left) - 8, (2 * one.Area.Left) + 8);
            Assert.InRange(two.Area.Top, (2 * one.Area.Top) - 8, (2 * one.Area.Top) + 8);
            Assert.InRange(two.Area.Height / one.Area.Height, 1.9, 2.1);
        }
    });

    /// <summary>The texts of the last time that the page was drawn.</summary>
    private static List<TextPlaced> TextsOf(AppRun run)
    {
        List<TextPlaced> texts = [];
        run.Frames(0.5);
        run.App.Painter.Layer.Pen.Log = texts.Add;
        run.App.Pages.Invalidate();
        run.Frames(AppRun.Period / 2);
        run.App.Painter.Layer.Pen.Log = null;
        return texts;
    }
}
