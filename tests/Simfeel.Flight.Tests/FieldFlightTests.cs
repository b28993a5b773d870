using Simfeel.Flight.Fields;
using Simfeel.Physics;

namespace Simfeel.Flight.Tests;

/// <summary>Sessions over a field: arming, taking off, landing, crashing, assists.</summary>
public class FieldFlightTests
{
    private const PilotSwitches Assisted = PilotSwitches.Armed | PilotSwitches.Level | PilotSwitches.Climb;

    /// <summary>A meadow of 400 m with one wall ahead, the sea around it.</summary>
    private static FieldMap Meadow { get; } = new()
    {
        Name = "Meadow",
        StartHeading = Math.PI / 2,
        PilotEye = new(0, -5, -1.7),
        Land = [new(-200, -200, 0), new(200, -200, 0), new(200, 200, 0), new(-200, 200, 0)],
        SeaDepth = 9,
        Solids = [new(SolidKind.Wall, SolidShape.Box, new(0, 30, -2), new(40, 0.2, 4), 0)],
        Gates = [],
        Marks = [],
    };

    public static TheoryData<string> Builds => ["wagtail", "curlew", "knot", "sanderling"];

    [Theory]
    [MemberData(nameof(Builds))]
    public void Both_craft_stand_still_on_the_pad(string build)
    {
        using FlightSession session = New(build);
        double height = session.Unit(0).Unit.Body!.RestHeight;
        Fly(session, 2, new(0, 0, 0, 0), PilotSwitches.None);

        CraftState state = session.State(0);
        Assert.InRange(-state.p_WB.Z, height - 0.002, height + 0.002);
        Assert.True(state.v_WB.Length < 0.01, $"{state.v_WB}");
        Assert.True(state.q_WB.ToMatrix().M22 > 0.9, "it tipped over");
        Assert.False(session.Condition(0).Crashed);
        Assert.False(session.Condition(0).Armed);
        Assert.InRange(state.q_WB.ToEuler().Yaw, (Math.PI / 2) - 0.02, (Math.PI / 2) + 0.02);
    }

    [Theory]
    [MemberData(nameof(Builds))]
    public void It_takes_off_climbs_by_the_stick_and_lands_softly(string build)
    {
        using FlightSession session = New(build);
        double hover = session.Unit(0).Throttle.HoverStick;
        Fly(session, 0.5, new(0, 0, 0, 0), Assisted);
        Assert.True(session.Condition(0).Armed);
        Fly(session, 1, new(0, 0, 0, hover + ((1 - hover) / 2)), Assisted);
        Fly(session, 2, new(0, 0, 0, hover + ((1 - hover) / 2)), Assisted);
        // half the stick above hover is half the full climb of 4 m/s, less what a loop without an integral leaves
        Assert.InRange(-session.State(0).v_WB.Z, 1.6, 2.1);
        Fly(session, 2, new(0, 0, 0, hover), Assisted);
        Assert.InRange(-session.State(0).v_WB.Z, -0.3, 0.3);
        Assert.InRange(-session.State(0).p_WB.Z, 3, 9);

        double impact = 0;
        for (int n = 0; n < 9000; n++)
        {
            session.Fly(PilotInput.Of(new(0, 0, 0, 0.03), Assisted));
            impact = Math.Max(impact, session.Condition(0).ImpactSpeed);
        }
        Fly(session, 1, new(0, 0, 0, 0), PilotSwitches.None);

        Assert.InRange(impact, 0.5, 3);
        CraftCondition condition = session.Condition(0);
        Assert.False(condition.Crashed);
        Assert.Equal(0, condition.StruckRotors);
        Assert.True(condition.Touching);
        Assert.True(session.State(0).v_WB.Length < 0.05);
    }

    [Fact]
    public void A_full_throttle_does_not_arm_and_neither_does_a_crashed_craft()
    {
        using FlightSession session = New("wagtail");
        Fly(session, 0.5, new(0, 0, 0, 1), PilotSwitches.Armed);
        Assert.False(session.Condition(0).Armed);
        Fly(session, 0.5, new(0, 0, 0, 0), PilotSwitches.Armed);
        Assert.True(session.Condition(0).Armed);

        // full throttle for a second, then let it fall
        Fly(session, 1, new(0, 0, 0, 1), PilotSwitches.Armed);
        Fly(session, 12, new(0, 0, 0, 0), PilotSwitches.None);
        Assert.True(session.Condition(0).Crashed);
        Fly(session, 1, new(0, 0, 0, 0), PilotSwitches.Armed);
        Assert.False(session.Condition(0).Armed);

        session.Fly(PilotInput.Of(new(0, 0, 0, 0), PilotSwitches.Armed | PilotSwitches.Restart));
        Fly(session, 0.1, new(0, 0, 0, 0), PilotSwitches.Armed);
        Assert.True(session.Condition(0).Armed);
        Assert.False(session.Condition(0).Crashed);
    }

    [Fact]
    public void A_wall_stops_a_fast_craft_and_breaks_its_propellers()
    {
        using FlightSession session = New("wagtail");
        double hover = session.Unit(0).Throttle.HoverStick;
        Fly(session, 0.2, new(0, 0, 0, 0), Assisted);
        Fly(session, 0.5, new(0, 0, 0, hover + (0.4 * (1 - hover))), Assisted);
        for (int n = 0; n < 8000 && !session.Condition(0).Crashed; n++) session.Fly(PilotInput.Of(new(0, -1, 0, hover), Assisted));

        CraftCondition condition = session.Condition(0);
        Assert.True(condition.Crashed);
        Assert.NotEqual(0, condition.StruckRotors);
        Fly(session, 3, new(0, 0, 0, 0), PilotSwitches.None);
        Assert.True(session.State(0).p_WB.Y < 30, "it went through the wall");
        CraftState state = session.State(0);
        for (int k = 0; k < 4; k++)
        {
            if ((condition.StruckRotors & (1 << k)) != 0) Assert.Equal(0, state.RotorSpeeds[k]);
        }
    }

    [Fact]
    public void The_sea_takes_a_craft_that_comes_down_there()
    {
        using FlightSession session = New("wagtail");
        FieldMap islet = Meadow with { Land = [new(-3, -3, 0), new(3, -3, 0), new(3, 3, 0), new(-3, 3, 0)], Solids = [] };
        using FlightSession over = new(Starters.Get("wagtail"), Starters.Get("curlew"), Starters.Profile, new(), islet);
        double hover = over.Unit(0).Throttle.HoverStick;
        Fly(over, 0.2, new(0, 0, 0, 0), Assisted);
        Fly(over, 1, new(0, 0, 0, hover + (0.4 * (1 - hover))), Assisted);
        Fly(over, 3, new(0, -0.5, 0, hover), Assisted);
        Assert.False(over.Condition(0).Crashed);
        Fly(over, 9, new(0, 0, 0, 0.03), Assisted);

        Assert.True(over.Condition(0).Crashed);
        Assert.True(over.State(0).p_WB.Z > 8, "it came down on land");
    }

    /// <summary>The limit of 15 % is our own: what a beginner does not feel as rocking.</summary>
    [Theory]
    [MemberData(nameof(Builds))]
    public void Self_levelling_reaches_its_tilt_without_rocking(string build)
    {
        using FlightSession session = New(build);
        double hover = session.Unit(0).Throttle.HoverStick;
        Fly(session, 0.2, new(0, 0, 0, 0), Assisted);
        Fly(session, 2, new(0, 0, 0, hover + (0.5 * (1 - hover))), Assisted);
        double largest = 0;
        for (int n = 0; n < 1500; n++)
        {
            session.Fly(PilotInput.Of(new(0.6, 0, 0, hover), Assisted));
            largest = Math.Max(largest, session.State(0).q_WB.ToEuler().Roll);
        }
        double wanted = Math.Asin(0.6 * 0.766), reached = session.State(0).q_WB.ToEuler().Roll;
        Assert.InRange(reached, 0.93 * wanted, 1.07 * wanted);
        Assert.InRange(largest, reached - 1e-9, 1.15 * wanted);
        Fly(session, 2, new(0, 0, 0, hover), Assisted);
        Assert.True(session.State(0).q_WB.ToMatrix().M22 > 0.999);
    }

    [Theory]
    [MemberData(nameof(Builds))]
    public void Whatever_the_sticks_do_the_numbers_stay_finite(string build)
    {
        for (int seed = 1; seed <= 12; seed++)
        {
            using FlightSession session = New(build);
            Random random = new(seed);
            Sticks sticks = default;
            PilotSwitches switches = PilotSwitches.None;
            for (int n = 0; n < 10000; n++)
            {
                if (random.Next(40) == 0)
                    sticks = new((2 * random.NextDouble()) - 1, (2 * random.NextDouble()) - 1, (2 * random.NextDouble()) - 1, random.NextDouble());
                if (random.Next(200) == 0) switches = (PilotSwitches)random.Next(1, 128) | PilotSwitches.Armed;
                session.Fly(PilotInput.Of(sticks, switches));
                switches &= ~(PilotSwitches.Restart | PilotSwitches.SwapFromStart | PilotSwitches.SwapInPlace);
            }
            for (int craft = 0; craft < 2; craft++)
            {
                CraftState state = session.State(craft);
                Assert.True(double.IsFinite(state.p_WB.Length + state.v_WB.Length + state.w_WB_B.Length + state.q_WB.Norm), $"seed {seed}");
                Assert.InRange(state.q_WB.Norm, 1 - 1e-9, 1 + 1e-9);
                Assert.True(state.p_WB.Z < 9.2, $"seed {seed}: below the sea, at {state.p_WB}");
            }
        }
    }

    [Fact]
    public void Nothing_is_allocated_in_flight()
    {
        using FlightSession session = New("wagtail");
        Fly(session, 3, new(0, 0, 0, 0), Assisted | PilotSwitches.Shadow);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int n = 0; n < 3000; n++)
        {
            PilotSwitches pulse = n % 500 == 0 ? PilotSwitches.SwapFromStart : n % 700 == 0 ? PilotSwitches.SwapInPlace : PilotSwitches.None;
            session.Fly(PilotInput.Of(new(0.1, -0.2, 0, 0.6), Assisted | PilotSwitches.Shadow | pulse));
            _ = session.Condition(session.Flown);
            _ = session.Sample(0);
            _ = session.Hash();
        }
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    private static FlightSession New(string build) =>
        new(Starters.Get(build), Starters.Get("curlew"), Starters.Profile, new(), Meadow);

    private static void Fly(FlightSession session, double seconds, Sticks sticks, PilotSwitches switches)
    {
        for (int n = 0; n < seconds * 1000; n++) session.Fly(PilotInput.Of(sticks, switches));
    }
}
