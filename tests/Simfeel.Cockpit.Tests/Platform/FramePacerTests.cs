using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Stage;

namespace Simfeel.Cockpit.Tests.Platform;

/// <summary>Pacing on a clock of the test's own, whose sleeps last too long as real ones do.</summary>
public class FramePacerTests
{
    [Fact]
    public void A_thousand_frames_do_not_drift()
    {
        FakeClock clock = new();
        FramePacer pacer = new(60, clock);
        pacer.Wait();
        long start = clock.Now;
        for (int n = 0; n < 6000; n++)
        {
            clock.Work(4_000_000 + (n % 7 * 1_000_000));
            pacer.Wait();
        }
        // 6000 frames of 1/60 s are 100 s; a spin of the clock is 50 ns
        Assert.InRange(clock.Now - start, 100_000_000_000, 100_000_000_100);
        Assert.Equal(0, pacer.LeftOut);
        Assert.Equal(1 / 60.0, pacer.Frames.Median_s, 1e-6);
        Assert.Equal(1 / 60.0, pacer.Frames.Percentile_s(99), 1e-6);
        Assert.True(clock.Sleeps > 10_000);
    }

    [Fact]
    public void After_a_long_frame_nothing_is_hurried()
    {
        FakeClock clock = new();
        FramePacer pacer = new(100, clock);
        pacer.Wait();
        clock.Work(75_000_000);
        // the slots at 10 to 60 ms are gone, the one at 70 ms is shown late, and the grid goes on at 80 ms
        Assert.Equal(0.075, pacer.Wait(), 1e-6);
        Assert.Equal(6, pacer.LeftOut);
        Assert.Equal(0.005, pacer.Wait(), 1e-6);
        for (int n = 0; n < 20; n++)
        {
            clock.Work(1_000_000);
            Assert.Equal(0.01, pacer.Wait(), 1e-6);
        }
        Assert.Equal(6, pacer.LeftOut);
    }

    [Fact]
    public void A_frame_that_is_a_little_late_is_made_up_for()
    {
        FakeClock clock = new();
        FramePacer pacer = new(100, clock);
        pacer.Wait();
        clock.Work(13_000_000);
        Assert.Equal(0.013, pacer.Wait(), 1e-6);
        clock.Work(1_000_000);
        Assert.Equal(0.007, pacer.Wait(), 1e-6);
        Assert.Equal(0, pacer.LeftOut);
    }

    /// <summary>An hour forwards or backwards, between frames or while one is awaited: at most one odd frame, then the grid goes on.</summary>
    [Theory]
    [InlineData(1, false)]
    [InlineData(-1, false)]
    [InlineData(1, true)]
    [InlineData(-1, true)]
    public void A_clock_that_jumps_is_neither_waited_for_nor_hurried_after(int hours, bool whileWaiting)
    {
        FakeClock clock = new();
        clock.Work(7_200_000_000_000);
        FramePacer pacer = new(100, clock);
        FlightClock flight = new(0.001);
        for (int n = 0; n < 10; n++) flight.Due(pacer.Wait());
        long jump = hours * 3_600_000_000_000;
        if (whileWaiting) clock.JumpInSleep = jump;
        else clock.Work(jump);
        int sleeps = clock.Sleeps, odd = flight.Due(pacer.Wait());
        Assert.InRange(odd, 0, 100);
        Assert.InRange(clock.Sleeps - sleeps, 0, 20);
        long readings = 0;
        for (int n = 0; n < 101; n++) readings += flight.Due(pacer.Wait());
        // a second and the frame that finds the grid again, which may be short
        Assert.InRange(readings, 990, 1020);
        Assert.Equal(0.01, pacer.Wait(), 1e-6);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1001)]
    [InlineData(double.NaN)]
    public void A_rate_out_of_range_is_refused(double rate) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new FramePacer(rate));

    [Fact]
    public void The_real_clock_paces_too_and_nothing_is_allocated()
    {
        FramePacer pacer = new(500);
        for (int n = 0; n < 5; n++) pacer.Wait();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int n = 0; n < 50; n++) pacer.Wait();
        _ = pacer.Frames.Median_s;
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(54, pacer.Frames.Count);
    }

    [Fact]
    public void A_ring_keeps_the_last_1024()
    {
        TimeRing ring = new();
        Assert.True(double.IsNaN(ring.Median_s));
        for (int n = 1; n <= 3000; n++) ring.Add(n);
        // 1977 to 3000 are kept; nearest rank
        Assert.Equal(3000, ring.Count);
        Assert.Equal(3000, ring.Percentile_s(100));
        Assert.Equal(1976 + 512, ring.Median_s);
        Assert.Equal(1976 + 1014, ring.Percentile_s(99));
        Assert.Equal(1977, ring.Percentile_s(0));
        ring.Clear();
        ring.Add(7);
        Assert.Equal(7, ring.Percentile_s(100));
    }

    private sealed class FakeClock : FrameClock
    {
        private long _now = 12_345;

        public int Sleeps { get; private set; }

        /// <summary>By how much time jumps in the next sleep, ticks.</summary>
        public long JumpInSleep { get; set; }

        public override long Frequency => 1_000_000_000;

        public override long Now => _now;

        public void Work(long ticks) => _now += ticks;

        public override void Sleep()
        {
            Sleeps++;
            _now += 1_070_000 + (Sleeps % 5 * 20_000) + JumpInSleep;
            JumpInSleep = 0;
        }

        public override void Spin() => _now += 50;
    }
}
