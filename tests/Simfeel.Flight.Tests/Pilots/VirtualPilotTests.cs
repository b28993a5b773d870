using Simfeel.Flight.Drills;
using Simfeel.Flight.Pilots;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tests.Pilots;

public class VirtualPilotTests
{
    private static readonly FlightWish Stay = new(0, 0, 0, 0, 0, 30, 1);

    public static TheoryData<string, Vec3, Vec3> Steps => new()
    {
        { "pushed to the right", new(0, 1, 0), default },
        { "pushed back", new(-1, 0, 0), default },
        { "lifted", default, new(0, 0, -0.5) },
    };

    /// <summary>Whatever happens to the craft, no stick answers before the reaction time is over, and then one does.</summary>
    [Theory]
    [MemberData(nameof(Steps))]
    public void No_stick_moves_before_the_reaction_time(string what, Vec3 velocity, Vec3 place)
    {
        (VirtualPilot pilot, Sight calm) = Hovering("wagtail");
        Sight pushed = calm with { v_WB = velocity, p_WB = place };
        double period = Starters.Profile.StickPeriod;
        int before = 500, reaction = (int)Math.Round(VirtualPilot.ReactionTime / period);
        Sticks rest = default;
        for (int row = 0; row < before; row++) rest = pilot.Fly(calm, Stay);
        for (int row = 0; row < reaction; row++) Assert.Equal(rest, pilot.Fly(pushed, Stay));
        Assert.True(pilot.Fly(pushed, Stay) != rest, what);
    }

    [Fact]
    public void Sticks_answer_the_way_a_pilot_would()
    {
        Assert.True(After(new(0, 1, 0), default).Roll < -0.01);
        Assert.True(After(new(1, 0, 0), default).Pitch > 0.01);
        double hover = Starters.Get("wagtail").Throttle.HoverStick;
        Assert.True(After(default, new(0, 0, 1)).Throttle > hover + 0.01);
        Assert.True(After(default, new(0, 0, -1)).Throttle < hover - 0.01);
    }

    /// <summary>Known to the pilot is only how a craft hovers: two with the same hover get the same sticks from the same sight.</summary>
    [Fact]
    public void Rates_asked_for_do_not_depend_on_the_craft()
    {
        Sticks a = After(new(0.3, 1, 0), default, "wagtail"), b = After(new(0.3, 1, 0), default, "fulmar"), c = After(new(0.3, 1, 0), default, "sanderling");
        Assert.NotEqual(0, a.Roll);
        Assert.Equal((a.Roll, a.Pitch, a.Yaw), (b.Roll, b.Pitch, b.Yaw));
        Assert.Equal((a.Roll, a.Pitch, a.Yaw), (c.Roll, c.Pitch, c.Yaw));
    }

    [Fact]
    public void Steering_and_flying_allocate_nothing()
    {
        (VirtualPilot pilot, Sight calm) = Hovering("wagtail");
        calm = calm with { v_WB = new(9, 0, 0) };
        Steering steering = new([(0, 0), (10, 0), (10, 30), (1000, 30)], 1);
        for (int row = 0; row < 1000; row++) Once();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int row = 0; row < 1000; row++) Once();
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);

        void Once()
        {
            (double track, double sideways, double turnRate) = steering.Towards(pilot.Seen, 9.80665);
            pilot.Fly(calm, Stay with { Track = track, Speed = 9, Sideways = sideways, TurnRate = turnRate });
        }
    }

    /// <summary>On a circle through the aim point the acceleration is v^2 / r of that circle (Park and others, 2004).</summary>
    [Theory]
    [InlineData(9, 15)]
    [InlineData(12, 30)]
    public void Steering_on_a_circle_asks_for_its_centripetal_acceleration(double speed, double radius)
    {
        const int corners = 720;
        (double, double)[] circle =
        [
            .. Enumerable.Range(0, corners).Select(n => 2 * Math.PI * n / corners).Select(angle => (radius * Math.Sin(angle), radius * (1 - Math.Cos(angle)))),
        ];
        // seen a reaction time ago: back on the straight line that leads to the start of the circle
        Sight seen = new() { q_WB = Quat.Identity, p_WB = new(-speed * VirtualPilot.ReactionTime, 0, 0), v_WB = new(speed, 0, 0) };
        (_, double sideways, double turnRate) = new Steering(circle, 1.2).Towards(seen, 9.80665);
        Assert.Equal(speed * speed / radius, sideways, 0.02 * speed * speed / radius);
        Assert.Equal(sideways / speed, turnRate, 12);
    }

    [Fact]
    public void Steering_never_asks_for_more_than_its_bank()
    {
        Sight seen = new() { q_WB = Quat.Identity, v_WB = new(15, 0, 0) };
        (_, double sideways, _) = new Steering([(0, 0), (0, 100)], Math.PI / 4).Towards(seen, 9.80665);
        Assert.Equal(9.80665, sideways, 9);
    }

    /// <summary>Sticks a little over a reaction time after a push (m/s) or a shift (m) out of hover.</summary>
    private static Sticks After(Vec3 velocity, Vec3 place, string name = "wagtail")
    {
        (VirtualPilot pilot, Sight sight) = Hovering(name);
        sight = sight with { v_WB = velocity, p_WB = place };
        (_, Sight calm) = Hovering(name);
        pilot.Fly(calm, Stay);
        Sticks sticks = default;
        int rows = (int)Math.Round(VirtualPilot.ReactionTime / Starters.Profile.StickPeriod) + 1;
        for (int row = 0; row < rows; row++) sticks = pilot.Fly(sight, Stay);
        return sticks;
    }

    private static (VirtualPilot Pilot, Sight Calm) Hovering(string name)
    {
        TunedUnit unit = Starters.Get(name);
        CraftState hover = unit.Hover.State;
        return (new(unit, Starters.Profile, DrillStart.Hover(unit)), new(hover.p_WB, hover.v_WB, hover.q_WB, Vec3.Zero));
    }
}
