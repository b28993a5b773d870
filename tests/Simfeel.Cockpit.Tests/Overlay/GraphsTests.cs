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
