using Simfeel.Cockpit.Stage;

namespace Simfeel.Cockpit.Tests.Stage;

public class FlightClockTests
{
    [Theory]
    [InlineData(60)]
    [InlineData(144)]
    [InlineData(7001)]
    public void Readings_add_up_to_the_time_whatever_the_frame_rate(int rate)
    {
        FlightClock clock = new(0.001);
        int sum = 0;

        for (int n = 0; n < 10 * rate; n++) sum += clock.Due(1.0 / rate);

        Assert.InRange(sum, 9999, 10000);
        Assert.InRange(clock.Fraction, 0, 1);
    }

    [Fact]
    public void Slow_motion_goes_down_to_a_tenth_and_back_up_to_real_time()
    {
        FlightClock clock = new(0.001);
        for (int n = 0; n < 9; n++) clock.Slower();
        Assert.Equal(0.1, clock.Speed);

        int sum = 0;
        for (int n = 0; n < 600; n++) sum += clock.Due(1 / 60.0);
        Assert.InRange(sum, 999, 1000);

        for (int n = 0; n < 9; n++) clock.Faster();
        Assert.Equal(1, clock.Speed);
    }

    [Fact]
    public void A_frame_that_took_too_long_is_not_caught_up_with()
    {
        FlightClock clock = new(0.001);

        Assert.InRange(clock.Due(5), 99, 100);
        Assert.Equal(4.9, clock.Dropped, 9);
    }

    [Fact]
    public void Held_time_brings_nothing_and_keeps_the_rest()
    {
        FlightClock clock = new(0.001);
        clock.Due(0.0015);
        double fraction = clock.Fraction;
        clock.Paused = true;

        Assert.Equal(0, clock.Due(1));

        Assert.Equal(fraction, clock.Fraction);
    }
}
