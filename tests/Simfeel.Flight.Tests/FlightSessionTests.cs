using Simfeel.Physics;

namespace Simfeel.Flight.Tests;

public class FlightSessionTests
{
    [Fact]
    public void The_same_sticks_give_the_same_bits()
    {
        Assert.Equal(Fly(seed: 3), Fly(seed: 3));
        Assert.NotEqual(Fly(seed: 3), Fly(seed: 4));
    }

    [Fact]
    public void A_restart_flies_again_from_the_same_start()
    {
        using FlightSession session = New();
        for (int n = 0; n < 200; n++) session.Fly(new(0.5, 0, 0, 0.3));
        ulong first = session.Hash();
        session.Restart();
        for (int n = 0; n < 200; n++) session.Fly(new(0.5, 0, 0, 0.3));
        Assert.Equal(first, session.Hash());
        Assert.Equal(0.2, session.Time, 12);
    }

    [Fact]
    public void A_swap_in_place_keeps_place_speed_and_attitude()
    {
        using FlightSession session = New();
        for (int n = 0; n < 300; n++) session.Fly(new(0.3, 0.2, 0, 0.5));
        CraftState before = session.Sample(0).State;
        session.SwapInPlace();
        CraftState after = session.Sample(1).State;
        Assert.Equal(1, session.Flown);
        Assert.Equal(before.p_WB, after.p_WB);
        Assert.Equal(before.v_WB, after.v_WB);
        Assert.Equal(before.q_WB, after.q_WB);
        Assert.Equal(before.w_WB_B, after.w_WB_B);
    }

    [Fact]
    public void A_shadow_flies_as_it_would_alone()
    {
        using FlightSession together = New(), alone = New();
        together.Shadow = true;
        alone.SwapFromStart();
        double hover = together.Unit(0).Throttle.HoverStick;
        together.Restart();
        // the craft differ in hover stick, so both hear the same sticks only after the radio's delay has passed
        for (int n = 0; n < 8; n++)
        {
            together.Fly(new(0, 0, 0, hover));
            alone.Fly(new(0, 0, 0, hover));
        }
        for (int n = 0; n < 300; n++)
        {
            together.Fly(new(0.4, 0, 0.1, 0.4));
            alone.Fly(new(0.4, 0, 0.1, 0.4));
        }
        double apart = (together.Sample(1).State.p_WB - alone.Sample(1).State.p_WB).Length;
        Assert.True(apart < 0.01, $"{apart} m apart");
        Assert.NotEqual(together.Sample(0).State.p_WB, together.Sample(1).State.p_WB);
    }

    private static FlightSession New() => new(Starters.Get("wagtail"), Starters.Get("curlew"), Starters.Profile, new());

    private static ulong Fly(int seed)
    {
        using FlightSession session = New();
        session.Shadow = true;
        Random random = new(seed);
        for (int n = 0; n < 400; n++)
        {
            if (n == 150) session.SwapInPlace();
            session.Fly(new(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble()));
        }
        return session.Hash();
    }
}
