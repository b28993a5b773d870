using Simfeel.Studies.Flights;

namespace Simfeel.Studies.Tests.Flights;

/// <summary>Punches and drops of a few readings, by hand.</summary>
public class PunchAndDropTests
{
    /// <summary>The sixteenth reading is a second behind the first, and the first comes within the time of opening.</summary>
    private const double Period = 1.0 / 16;

    /// <summary>Climbing at 2 m/s when it opens, 20 m higher a second later, 2 of which it would have climbed anyway.</summary>
    [Theory]
    [InlineData(0, 20)]
    [InlineData(2, 18)]
    [InlineData(3, 17)]
    [InlineData(-3, 23)]
    public void A_punch_is_the_height_of_a_second_over_that_of_its_first_climb(double climb, double gain)
    {
        PunchFind find = Held(5, climb);
        Rise(find, 5, climb, 20);
        Assert.Equal(gain, find.Gain!.Value, 12);
    }

    [Theory]
    [InlineData(3.001)]
    [InlineData(-3.001)]
    public void A_punch_does_not_start_out_of_a_fast_climb_or_fall(double climb)
    {
        PunchFind find = Held(0, climb);
        Rise(find, 0, climb, 20);
        Assert.Null(find.Gain);
    }

    [Fact]
    public void It_is_known_after_a_second_and_not_before_or_behind()
    {
        PunchFind find = Held(0, 0);
        Take(find, 0, 0, 0.5);
        for (int n = 1; n < 16; n++)
        {
            Take(find, n, 0, 1);
            Assert.Null(find.Gain);
        }
        Take(find, 16, 0, 1);
        Assert.Equal(16, find.Gain);
        for (int n = 17; n < 40; n++) Take(find, n, 0, 1);
        Assert.Equal(16, find.Gain);
    }

    /// <summary>Readings 0.06 s apart: the seventeenth, after 1.02 s, in which a climb of 2 m/s alone gives 2.04 m.</summary>
    [Fact]
    public void It_is_read_at_the_reading_nearest_to_a_second()
    {
        PunchFind find = new();
        for (int n = 0; n < 6; n++) find.Take(default, new(0, 0, -2), 0.3, 0.06);
        for (int n = 0; n < 30; n++) find.Take(new(0, 0, -n), new(0, 0, -2), 1, 0.06);
        Assert.Equal(17 - 2.04, find.Gain!.Value, 12);
    }

    [Fact]
    public void The_best_of_several_is_kept_even_where_none_gains()
    {
        PunchFind find = Held(0, 0);
        Rise(find, 0, 0, -7);
        Assert.Equal(-7, find.Gain);
        foreach ((double rise, double best) in new[] { (4.0, 4.0), (9, 9), (6, 9) })
        {
            for (int n = 0; n < 4; n++) Take(find, 0, 0, 0.3);
            Rise(find, 0, 0, rise);
            Assert.Equal(best, find.Gain);
        }
    }

    /// <summary>Half open at the first reading is soon enough; at the second it has to be over the limit, and to stay there.</summary>
    [Theory]
    [InlineData(new[] { 0.5, 0.96 }, true)]
    [InlineData(new[] { 0.5, PunchFind.Open }, false)]
    [InlineData(new[] { 0.5, 0.9, 1 }, false)]
    [InlineData(new[] { 1, 1, 1, 1, 1, 1, 1, 1, 1, 0.94, 1 }, false)]
    public void The_throttle_is_thrown_open_and_stays(double[] throttle, bool punches)
    {
        PunchFind find = Held(0, 0);
        Take(find, 0, 0, 0.4);
        for (int n = 0; n < 20; n++) Take(find, n + 1, 0, n < throttle.Length ? throttle[n] : 1);
        Assert.Equal(punches, find.Gain is not null);
    }

    /// <summary>With readings as far apart as the time of opening the first has to be over the limit.</summary>
    [Fact]
    public void At_the_time_of_opening_it_has_to_be_open()
    {
        foreach ((double first, bool punches) in new[] { (0.9, false), (0.97, true) })
        {
            PunchFind find = new();
            foreach (double throttle in (double[])[0.3, 0.4, first, .. Enumerable.Repeat(1.0, 20)])
                find.Take(default, default, throttle, PunchFind.OpeningTime);
            Assert.Equal(punches, find.Gain is not null);
        }
    }

    [Fact]
    public void Closing_the_throttle_or_being_put_elsewhere_is_no_punch()
    {
        PunchFind closing = new();
        for (int n = 0; n < 6; n++) Take(closing, 0, 0, 1);
        for (int n = 0; n < 20; n++) Take(closing, n, 0, 0.97);
        Assert.Null(closing.Gain);

        PunchFind moved = Held(0, 0);
        Take(moved, 0, 0, 0.5);
        moved.Interrupt();
        for (int n = 0; n < 20; n++) Take(moved, 100 + n, 0, 1);
        Assert.Null(moved.Gain);
    }

    /// <summary>From 100 m a metre a reading: half a second is eight of them.</summary>
    [Fact]
    public void A_drop_counts_from_half_a_second_on()
    {
        DropFind find = new();
        for (int n = 0; n < 8; n++) Drop(find, 100 - n, 3, 0);
        Assert.Null(find.Lost);
        Assert.Null(find.Speed);
        Drop(find, 92, 8, 0);
        Assert.Equal((8.0, 8.0), (find.Lost, find.Speed));
        Drop(find, 90, 6, 0);
        Assert.Equal((10.0, 8.0), (find.Lost, find.Speed));
        // opening the throttle ends it; what it loses then does not count
        Drop(find, 60, 20, 0.5);
        Assert.Equal((10.0, 8.0), (find.Lost, find.Speed));
    }

    [Fact]
    public void The_biggest_drop_and_the_fastest_fall_are_kept_each_by_itself()
    {
        DropFind find = new();
        foreach ((double step, int steps, double lost, double speed) in new[] { (1.0, 9, 9.0, 16.0), (0.5, 20, 10, 16), (2, 7, 10, 16), (1.125, 8, 10, 18), (1.5, 8, 12, 24) })
        {
            Fall(find, 80, step, steps);
            Assert.Equal((lost, speed), (find.Lost, find.Speed));
            Drop(find, 0, -1, 0);
        }
    }

    [Theory]
    [InlineData(DropFind.Closed, 1, true)]
    [InlineData(0.03, 1, false)]
    [InlineData(0, 0, false)]
    [InlineData(0, -1, false)]
    public void A_drop_sinks_with_the_throttle_at_its_lowest(double throttle, double sink, bool drops)
    {
        DropFind find = new();
        for (int n = 0; n < 12; n++) Drop(find, -n * sink, sink, throttle);
        Assert.Equal(drops, find.Lost is not null);
    }

    [Fact]
    public void A_drop_ends_where_the_craft_is_put_elsewhere()
    {
        DropFind find = new();
        Fall(find, 100, 1, 9);
        find.Interrupt();
        Fall(find, 20, 1, 5);
        Assert.Equal(9, find.Lost);
        find.Interrupt();
        Fall(find, 20, 2, 8);
        Assert.Equal(16, find.Lost);
    }

    private static PunchFind Held(double height, double climb)
    {
        PunchFind find = new();
        for (int n = 0; n < 6; n++) Take(find, height, climb, 0.3);
        return find;
    }

    private static void Rise(PunchFind find, double height, double climb, double rise)
    {
        Take(find, height, climb, 1);
        for (int n = 1; n <= 16; n++) Take(find, height + (rise * n / 16), climb + n, 1);
    }

    private static void Take(PunchFind find, double height, double climb, double throttle) =>
        find.Take(new(0, 0, -height), new(0, 0, -climb), throttle, Period);

    private static void Drop(DropFind find, double height, double sink, double throttle) =>
        find.Take(new(3, 4, -height), new(5, 6, sink), throttle, Period);

    /// <summary>Steps down of one size, at their speed.</summary>
    private static void Fall(DropFind find, double height, double step, int steps)
    {
        for (int n = 0; n <= steps; n++) Drop(find, height - (step * n), step / Period, 0);
    }
}
