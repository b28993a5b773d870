using Simfeel.Flight.Drills;
using Simfeel.Studies.Flights;

namespace Simfeel.Studies.Tests.Flights;

/// <summary>
/// Stops of straight pieces of rate, a reading every hundredth of a second: the level is passed on a straight line between two
/// readings, and angles are trapezoids.
/// </summary>
public class StopFindTests
{
    private const double Period = 0.01;

    /// <summary>Let go at 10 rad/s, a tenth of which is passed half way between the fourth reading, 2, and the fifth, 0.</summary>
    private static readonly double[] Falling = [8, 6, 4, 2, 0];

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void The_time_counts_from_the_stick_to_the_level_between_two_readings(int side)
    {
        StopFind find = Turning(10, side);
        LetGo(find, 10, side);
        Assert.Null(find.Time);
        Feed(find, 0, side, Falling);
        Assert.Equal(0.045, find.Time!.Value, 12);
        Assert.Equal(0, find.BounceBack);
    }

    /// <summary>Rates 2, -2, -2, 0 behind the stop: on by 0.01 rad, back by 0.03; then on beyond that place, so that nothing is turned back.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void The_bounce_is_the_angle_back_from_the_furthest_place(int side)
    {
        StopFind find = Stopped(side);
        Feed(find, 0, side, 2, -2);
        Assert.Equal(0, find.BounceBack, 12);
        Feed(find, 0, side, -2, 0);
        Assert.Equal(0.03, find.BounceBack, 12);
        // swinging on again, not yet to the furthest place
        Feed(find, 0, side, 3);
        Assert.Equal(0.03, find.BounceBack, 12);
        Feed(find, 0, side, 5);
        Assert.Equal(0, find.BounceBack, 12);
        Feed(find, 0, side, -5, -5);
        Assert.Equal(0.05, find.BounceBack, 12);
    }

    [Fact]
    public void A_reading_just_at_the_level_is_the_stop()
    {
        StopFind find = Turning(10, 1);
        LetGo(find, 10, 1);
        Feed(find, 0, 1, 5, 1);
        Assert.Equal(0.02, find.Time!.Value, 12);
        // from 1 to -2 rad/s in a reading: back by half a hundredth
        Feed(find, 0, 1, -2);
        Assert.Equal(0.005, find.BounceBack, 12);
    }

    [Theory]
    [InlineData(1, true)]
    [InlineData(0.999, false)]
    public void The_least_rate_counts(double share, bool stops)
    {
        double rate = share * StopFind.LeastRate;
        StopFind find = Turning(rate, 1);
        LetGo(find, rate, 1);
        Feed(find, 0, 1, 0);
        Assert.Equal(stops, find.Time is not null);
    }

    [Fact]
    public void What_turns_against_its_stick_or_is_pushed_on_does_not_stop()
    {
        // turning left under a stick to the right
        StopFind against = Turning(-10, 1);
        LetGo(against, -10, 1);
        Feed(against, 0, -1, Falling);
        Assert.Null(against.Time);
        // from half a stick to the whole, then the rate breaks down
        StopFind pushed = new();
        for (int n = 0; n < 6; n++) pushed.Take(10, 0.5, Period);
        Feed(pushed, 1, 1, [10, .. Falling]);
        Assert.Null(pushed.Time);
        // pushed on and let go at once: the time counts from letting go
        StopFind both = new();
        for (int n = 0; n < 6; n++) both.Take(10, 0.5, Period);
        Feed(both, 1, 1, 10, 10);
        Feed(both, 0, 1, [10, .. Falling]);
        Assert.Equal(0.045, both.Time!.Value, 12);
        // out of the centre
        StopFind begun = Turning(10, 0);
        Feed(begun, -1, 1, [10, .. Falling]);
        Assert.Null(begun.Time);
    }

    /// <summary>A stop is one with the stick at the centre, trembling included, when the rate has gone.</summary>
    [Theory]
    [InlineData(StopFind.Centred, true)]
    [InlineData(-StopFind.Centred, true)]
    [InlineData(0.06, false)]
    [InlineData(-0.06, false)]
    public void The_stick_has_to_be_at_the_centre(double stick, bool stops)
    {
        StopFind find = Turning(10, 1);
        Feed(find, stick, 1, [10, .. Falling]);
        Assert.Equal(stops, find.Time is not null);
    }

    [Fact]
    public void Trembling_about_the_centre_changes_nothing_and_a_move_ends_the_watch()
    {
        StopFind find = Turning(10, 1);
        LetGo(find, 10, 1);
        double[] trembling = [0.05, -0.05, 0.05, 0, 0.05];
        for (int n = 0; n < Falling.Length; n++) find.Take(Falling[n], trembling[n], Period);
        Assert.Equal(0.045, find.Time!.Value, 12);
        Feed(find, -0.05, 1, -2);
        Assert.Equal(0.01, find.BounceBack, 12);
        // the stick moves: what is turned now is asked for
        Feed(find, -0.5, 1, -2, -2);
        Assert.Equal(0.01, find.BounceBack, 12);

        // creeping out of the centre the way it came ends it as well
        StopFind creeping = Turning(10, 1);
        Feed(creeping, 0, 1, 10, 5, 0);
        Feed(creeping, -0.06, 1, -2);
        Feed(creeping, 0, 1, -2, -2);
        Assert.Equal(0, creeping.BounceBack);
    }

    /// <summary>A stick that is pushed against the turn in between has not simply been let go.</summary>
    [Fact]
    public void A_push_in_between_makes_it_no_stop()
    {
        foreach (double push in (double[])[-0.5, 0.5])
        {
            StopFind find = Turning(10, 1);
            Feed(find, 0, 1, 10, 10, 10, 10, 10, 10, 10);
            Feed(find, push, 1, 10);
            // back at the centre, and turning too slowly for a stop of that
            Feed(find, 0, 1, [5, 4, 2, 0, 0]);
            Assert.Null(find.Time);
        }
    }

    /// <summary>Readings count up to the drill's time of watching, 0.6 s after letting go: 60 of them.</summary>
    [Fact]
    public void Watching_ends_with_the_drills_time()
    {
        int readings = (int)Math.Round(DrillCatalogue.WatchAfterStop / Period);
        StopFind find = Stopped(1);
        for (int n = Falling.Length + 1; n < readings; n++) Feed(find, 0, 1, 0);
        Feed(find, 0, 1, -2);
        Assert.Equal(0.01, find.BounceBack, 12);
        Feed(find, 0, 1, -2);
        Assert.Equal(0.01, find.BounceBack, 12);

        // and what has not stopped by then has not stopped
        StopFind slow = Turning(10, 1);
        LetGo(slow, 10, 1);
        for (int n = 0; n < readings; n++) Feed(slow, 0, 1, 9);
        Feed(slow, 0, 1, 0);
        Assert.Null(slow.Time);
    }

    [Fact]
    public void A_sharper_stop_brings_its_own_bounce_and_an_equal_or_slower_one_none()
    {
        StopFind find = Stopped(1);
        Feed(find, 0, 1, 4, -4, -4, 0);
        Assert.Equal(0.06, find.BounceBack, 12);
        foreach (double[] later in (double[][])[Falling, [9, 8, 6, 4, 2, 0]])
        {
            Again(find, later);
            Feed(find, 0, 1, -2, 0);
            Assert.Equal((0.045, 0.06), (Math.Round(find.Time!.Value, 12), Math.Round(find.BounceBack, 12)));
        }
        // 5 to -4: a tenth of the rate is passed after 4/9 of the second reading
        Again(find, [5, -4]);
        Assert.Equal(Period * (1 + (4 / 9.0)), find.Time!.Value, 12);
        Assert.Equal(0, find.BounceBack);
        Feed(find, 0, 1, 0);
        Assert.Equal(0.02, find.BounceBack, 12);
    }

    [Fact]
    public void Nothing_spans_an_interruption()
    {
        StopFind find = Turning(10, 1);
        LetGo(find, 10, 1);
        find.Interrupt();
        Feed(find, 0, 1, Falling);
        Assert.Null(find.Time);
        // nor is a stick that stands elsewhere afterwards a move
        StopFind moved = Turning(10, 1);
        moved.Interrupt();
        Feed(moved, 0, 1, [10, .. Falling]);
        Assert.Null(moved.Time);
    }

    /// <summary>Rate and stick held for six readings.</summary>
    private static StopFind Turning(double rate, double stick)
    {
        StopFind find = new();
        for (int n = 0; n < 6; n++) find.Take(rate * (stick == 0 ? 1 : stick), stick, Period);
        return find;
    }

    private static StopFind Stopped(int side)
    {
        StopFind find = Turning(10, side);
        LetGo(find, 10, side);
        Feed(find, 0, side, Falling);
        return find;
    }

    private static void LetGo(StopFind find, double rate, int side) => Feed(find, 0, side, rate);

    private static void Again(StopFind find, double[] rates)
    {
        for (int n = 0; n < 6; n++) find.Take(10, 1, Period);
        Feed(find, 0, 1, [10, .. rates]);
    }

    private static void Feed(StopFind find, double stick, int side, params double[] rates)
    {
        foreach (double rate in rates) find.Take(side * rate, side * stick, Period);
    }
}
