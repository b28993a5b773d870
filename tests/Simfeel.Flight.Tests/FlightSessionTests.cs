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
        ulong[] hashes = new ulong[2];
        for (int run = 0; run < 2; run++)
        {
            for (int n = 0; n < 200; n++) session.Fly(Input(new(0.5, 0, 0, 0.3), n == 0 ? PilotSwitches.Restart : PilotSwitches.None));
            hashes[run] = session.Hash();
            Assert.Equal(0.2, session.Time, 12);
        }
        Assert.Equal(hashes[0], hashes[1]);
        Assert.Equal(400, session.Readings);
    }

    [Fact]
    public void A_swap_in_place_keeps_place_speed_and_attitude()
    {
        using FlightSession swapped = New(), stayed = New();
        for (int n = 0; n < 300; n++)
        {
            swapped.Fly(Input(new(0.3, 0.2, 0, 0.5)));
            stayed.Fly(Input(new(0.3, 0.2, 0, 0.5)));
        }
        CraftState before = swapped.State(0);
        swapped.Fly(Input(new(0.3, 0.2, 0, 0.5), PilotSwitches.SwapInPlace));
        CraftState after = swapped.State(1);
        Assert.Equal(1, swapped.Flown);
        // one reading later: at most 1 ms of flight apart
        Assert.True((after.p_WB - before.p_WB).Length < 0.02);
        Assert.True((after.v_WB - before.v_WB).Length < 0.1);
        Assert.True((after.w_WB_B - before.w_WB_B).Length < 1);
        Assert.Equal(before.p_WB, swapped.State(0).p_WB);
        Assert.NotEqual(stayed.Hash(), swapped.Hash());
    }

    [Fact]
    public void A_shadow_flies_as_it_would_alone()
    {
        using FlightSession together = New(), alone = New();
        double hover = together.Unit(0).Throttle.HoverStick;
        // the craft differ in hover stick, so both hear the same sticks only after the radio's delay has passed
        for (int n = 0; n < 308; n++)
        {
            Sticks sticks = n < 8 ? new(0, 0, 0, hover) : new(0.4, 0, 0.1, 0.4);
            together.Fly(Input(sticks, PilotSwitches.Shadow));
            alone.Fly(Input(sticks, n == 0 ? PilotSwitches.SwapFromStart : PilotSwitches.None));
        }
        double apart = (together.State(1).p_WB - alone.State(1).p_WB).Length;
        Assert.True(apart < 0.01, $"{apart} m apart");
        Assert.NotEqual(together.State(0).p_WB, together.State(1).p_WB);
        Assert.Equal(0, alone.State(0).w_WB_B.Length);
    }

    [Fact]
    public void A_shadow_that_joins_in_flight_sets_out_beside_the_flown_craft()
    {
        using FlightSession session = New();
        for (int n = 0; n < 500; n++) session.Fly(Input(new(0, -0.1, 0, 0.5)));
        session.Fly(Input(new(0, -0.1, 0, 0.5), PilotSwitches.Shadow));

        Assert.True((session.State(0).p_WB - session.State(1).p_WB).Length < 0.01);
        Assert.True((session.State(0).v_WB - session.State(1).v_WB).Length < 0.1);
        Assert.True(session.State(0).p_WB.Length > 0.1);
    }

    private static FlightSession New() => new(Starters.Get("wagtail"), Starters.Get("curlew"), Starters.Profile, new());

    private static ulong Fly(int seed)
    {
        using FlightSession session = New();
        Random random = new(seed);
        for (int n = 0; n < 400; n++)
        {
            Sticks sticks = new(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble());
            session.Fly(Input(sticks, n == 150 ? PilotSwitches.SwapInPlace | PilotSwitches.Shadow : PilotSwitches.Shadow));
        }
        return session.Hash();
    }

    private static PilotInput Input(Sticks sticks, PilotSwitches switches = PilotSwitches.None) => PilotInput.Of(sticks, switches);
}
