using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Tests.Pages;

namespace Simfeel.Cockpit.Tests.Overlay;

public class GraphsTests
{
    [Theory]
    [InlineData(50, 12, 50)]
    [InlineData(50, 51, 100)]
    [InlineData(50, 612, 1000)]
    [InlineData(2, 2.1, 5)]
    [InlineData(20, 130, 200)]
    [InlineData(5, 16.8, 20)]
    public void Axes_end_at_round_numbers_that_hold_every_value(double least, double peak, double high)
    {
        GraphScale scale = new(least, true);
        scale.Hold(peak);
        Assert.Equal(high, scale.High, 9);
        Assert.Equal(-high, scale.Low, 9);
        scale.Hold(0);
        Assert.Equal(least, scale.High);
        Assert.Equal(0, new GraphScale(least, false).Low);
    }

    [Fact]
    public void The_packs_axis_goes_from_empty_to_full_of_both_packs()
    {
        // 4 and 6 cells in series: a scale from nought would leave a flight's whole sag a fifteenth of its height
        GraphScale scale = new(5, false);
        scale.Hold(13.2, 25.2, 14.5, 22.1);
        Assert.Equal((13.2, 25.2), (scale.Low, scale.High));
        scale.Hold(13.2, 25.2, 11.6, 22.1);
        Assert.Equal((11, 25.2), (scale.Low, scale.High));

        using Canvases canvas = new(1280, 720, 1);
        FlightReadout readout = Samples.Readout();
        readout.ShowGraphs = true;
        FlightOverlay overlay = new();
        Samples.Fly(readout, overlay);
        overlay.Draw(canvas.Pen, readout, 1280, 720, 0);
        Assert.Contains(canvas.Texts, text => text.Text == "16.8");
        Assert.Contains(canvas.Texts, text => text.Text == "13.2");
    }

    [Fact]
    public void Names_of_axes_stand_beside_the_graphs()
    {
        using Canvases canvas = new(1280, 720, 1);
        FlightReadout readout = Samples.Readout();
        (readout.ShowGraphs, readout.Axes.Shown) = (true, true);
        readout.Axes.Put(1, 0.9f, 0.4f, inSight: true);
        FlightOverlay overlay = new();
        Samples.Fly(readout, overlay);
        overlay.Draw(canvas.Pen, readout, 1280, 720, 0);
        TextPlaced name = Assert.Single(canvas.Texts, text => text.Text == "right"), graph = Assert.Single(canvas.Texts, text => text.Text == "roll rate");
        Assert.True(name.Area.Right < graph.Area.Left);
    }

    [Fact]
    public void A_trace_keeps_the_newest_values()
    {
        GraphTrace trace = new();
        for (int k = 0; k < 300; k++) trace.Add(k);
        Assert.Equal(Graphs.Room, trace.Count);
        Assert.Equal(299, trace[0]);
        Assert.Equal(299 - (Graphs.Room - 1), trace[Graphs.Room - 1]);
        Assert.Equal(299, trace.Peak());
        trace.Add(double.NaN);
        Assert.Equal(0, trace[0]);
    }

    [Theory]
    [InlineData(60)]
    [InlineData(11)]
    [InlineData(240)]
    public void Four_seconds_fill_the_graphs_whatever_the_frame_rate(int rate)
    {
        FlightReadout readout = Samples.Readout();
        FlightOverlay overlay = new();
        for (int frame = 0; frame <= 2 * rate; frame++) Samples.Step(readout, overlay, frame / (double)rate);
        Assert.InRange(overlay.Graphs.Count, 99, 101);
        for (int frame = 0; frame <= 5 * rate; frame++) Samples.Step(readout, overlay, 2 + frame / (double)rate);
        Assert.Equal(Graphs.Room, overlay.Graphs.Count);
    }

    [Fact]
    public void A_restart_and_a_swap_empty_the_graphs()
    {
        FlightReadout readout = Samples.Readout();
        FlightOverlay overlay = new();
        Samples.Fly(readout, overlay);
        Samples.Step(readout, overlay, 0);
        Assert.InRange(overlay.Graphs.Count, 0, 1);
        Samples.Fly(readout, overlay);
        readout.Flown = 1;
        Samples.Step(readout, overlay, 4.6);
        Assert.InRange(overlay.Graphs.Count, 0, 1);
    }

    [Fact]
    public void A_notice_fades_and_goes()
    {
        FlightReadout readout = Samples.Readout();
        readout.Notify("wagtail.toml changed. R flies it.", 10);
        Assert.True(FlightBanners.NoticeShows(readout, 10));
        Assert.True(FlightBanners.NoticeShows(readout, 16));
        Assert.False(FlightBanners.NoticeShows(readout, 17));
    }
}
