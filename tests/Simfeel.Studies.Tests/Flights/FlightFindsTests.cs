using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Flights;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Flights;

/// <summary>Finds against the metrics of the same flights, and against motions whose answer is known in closed form.</summary>
public class FlightFindsTests
{
    private const double Period = 1e-3, Degree = Math.PI / 180, G = 9.80665;

    private static readonly CraftCondition Flying = new() { Armed = true };

    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    [InlineData("sanderling")]
    public void A_stop_flown_as_the_drill_gives_the_metrics(string build)
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Stop, Starters.Get(build), Starters.Profile);
        FlightFinds finds = Fed(log);
        Assert.Equal(1000 * Metric("stop_time", log), A(finds, "sharpest stop"), 6);
        Assert.Equal(Metric("bounce_back", log) / Degree, A(finds, "its bounce-back"), 6);
        Assert.Equal(log.Largest(0, s => s.State.w_WB_B.X) / Degree, A(finds, "fastest roll"), 9);
    }

    [Fact]
    public void A_roll_flown_as_the_drill_gives_the_metric()
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Roll, Starters.Get("wagtail"), Starters.Profile);
        Assert.Equal(Metric("peak_roll_acceleration", log) / Degree, A(Fed(log), "highest roll acceleration"), 6);
    }

    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    public void A_punch_flown_as_the_drill_gives_the_metric(string build)
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Punch, Starters.Get(build), Starters.Profile);
        FlightFinds finds = Fed(log);
        // both craft settle by a millimetre or so before the throttle opens, which the metric counts in
        Assert.Equal(Metric("climb_in_1_s", log), A(finds, "hardest punch"), 0.005);
        Assert.Equal(log.Largest(0, s => s.State.v_WB.Length), A(finds, "top speed"), 9);
        Assert.Equal(-log.Largest(0, s => -s.PackVoltage), A(finds, "lowest pack voltage"), 9);
    }

    [Fact]
    public void A_drop_flown_as_the_drill_gives_the_metric()
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Drop, Starters.Get("wagtail"), Starters.Profile);
        FlightFinds finds = Fed(log);
        Assert.Equal(Metric("settled_fall_speed", log), A(finds, "fastest fall"), 0.01);
        // all of the fall but the 32 ms in which the throttle closes
        Assert.Equal(log.Samples[^1].State.p_WB.Z, A(finds, "biggest drop"), 0.02);
    }

    [Fact]
    public void A_stop_is_timed_from_the_stick_and_its_bounce_is_the_angle_turned_back()
    {
        // 14 rad/s until 0.5 s, then an exponential of 20 ms; 0.2 s later a half sine back of 0.1 s: area 2 A / w
        static double Rate(double t) => t < 0.5 ? 14 : t < 0.7 ? 14 * Math.Exp(-(t - 0.5) / 0.02) : t < 0.8 ? -2 * Math.Sin(Math.PI * (t - 0.7) / 0.1) : 0;
        static double Stick(double t) => Math.Clamp((0.52 - t) / 0.02, 0, 1);
        foreach (Vec3 axis in new Vec3[] { new(1, 0, 0), new(-1, 0, 0), new(0, 1, 0), new(0, -1, 0) })
        {
            FlightFinds finds = Flown(1.2, t => (Rate(t) * axis, default), t => new(axis.X * Stick(t), axis.Y * Stick(t), 0, 0.4));
            Assert.Equal(1000 * 0.02 * Math.Log(10), A(finds, "sharpest stop"), 1.0);
            Assert.Equal(2 * 2 * 0.1 / Math.PI / Degree, A(finds, "its bounce-back"), 0.02);
        }
    }

    [Fact]
    public void A_slow_turn_and_a_turn_the_other_way_are_no_stops()
    {
        static double Fall(double t) => t < 0.5 ? 1 : Math.Exp(-(t - 0.5) / 0.02);
        static double Stick(double t) => Math.Clamp((0.52 - t) / 0.02, 0, 1);
        double slow = 0.99 * StopFind.LeastRate;
        Assert.Null(Find(Flown(1.2, t => (new(slow * Fall(t), 0, 0), default), t => new(Stick(t), 0, 0, 0.4)), "sharpest stop").A);
        // stick from one side to the other in 20 ms
        FlightFinds reversal = Flown(1.2, t => (new(14 * ((2 * Fall(t)) - 1), 0, 0), default), t => new((2 * Stick(t)) - 1, 0, 0, 0.4));
        Assert.Null(Find(reversal, "sharpest stop").A);
        Assert.Null(Find(reversal, "its bounce-back").A);
    }

    [Fact]
    public void The_sharpest_of_several_stops_is_kept_with_its_own_bounce()
    {
        // three stops of 30, 10 and 20 ms time constant, a second apart; only the middle one swings back
        double[] lag = [0.03, 0.01, 0.02];
        double Rate(double t)
        {
            int n = Math.Min((int)t, 2);
            double since = t - n - 0.4;
            double back = n == 1 && since is > 0.1 and < 0.2 ? -Math.Sin(Math.PI * (since - 0.1) / 0.1) : 0;
            return (since < 0 ? 10 : 10 * Math.Exp(-since / lag[n])) + back;
        }
        static double Stick(double t) => t % 1 < 0.4 ? 0.8 : 0;
        FlightFinds finds = Flown(3, t => (new(Rate(t), 0, 0), default), t => new(Stick(t), 0, 0, 0.4));
        Assert.Equal(1000 * 0.01 * Math.Log(10), A(finds, "sharpest stop"), 1.0);
        Assert.Equal(2 * 0.1 / Math.PI / Degree, A(finds, "its bounce-back"), 0.05);
    }

    [Fact]
    public void A_punch_counts_what_the_climb_at_its_start_does_not_give()
    {
        // climbing at 2 m/s, the throttle open from 0.5 s on: 30 m/s^2 for a second lift 15 m
        static Vec3 Velocity(double t) => new(0, 0, -2 - (30 * Math.Clamp(t - 0.5, 0, 1)));
        FlightFinds finds = Flown(2, t => (default, Velocity(t)), t => new(0, 0, 0, t < 0.5 - 1e-9 ? 0.4 : 1));
        Assert.Equal(15, A(finds, "hardest punch"), 0.05);
        FlightFinds fast = Flown(2, t => (default, Velocity(t) + new Vec3(0, 0, 9)), t => new(0, 0, 0, t < 0.5 - 1e-9 ? 0.4 : 1));
        Assert.Null(Find(fast, "hardest punch").A);
        FlightFinds half = Flown(2, t => (default, Velocity(t)), t => new(0, 0, 0, t < 0.5 ? 0.4 : 0.9));
        Assert.Null(Find(half, "hardest punch").A);
        FlightFinds brief = Flown(2, t => (default, Velocity(t)), t => new(0, 0, 0, t is < 0.5 or > 1.4 ? 0.4 : 1));
        Assert.Null(Find(brief, "hardest punch").A);
    }

    [Fact]
    public void The_biggest_drop_ends_where_the_throttle_opens_or_the_craft_is_put_elsewhere()
    {
        // thrown up at 5 m/s with the throttle closed: falls from the top, 1 s long
        FlightFinds finds = Flown((5 / G) + 1, t => (default, new(0, 0, (G * t) - 5)), _ => default);
        Assert.Equal(G / 2, A(finds, "biggest drop"), 0.02);
        Assert.Equal(G, A(finds, "fastest fall"), 0.02);
        FlightFinds two = Flown(2, t => (default, new(0, 0, 10)), t => new(0, 0, 0, t is > 1.2 and < 1.3 ? 0.3 : 0));
        Assert.Equal(12, A(two, "biggest drop"), 0.02);

        // as a restart would: 300 m in one reading, at 0.8 s of 1.6 s
        FlightFinds jump = new();
        for (int n = 0; n < 1600; n++)
        {
            if (n == 800) jump.Interrupt(0);
            jump.Take(0, At(new(0, 0, (0.01 * n) + (n < 800 ? 0 : 300)), new(0, 0, 10), default), default, Flying, Period, PilotSwitches.Armed);
        }
        Assert.Equal(8, A(jump, "biggest drop"), 0.02);
    }

    [Fact]
    public void A_hover_is_one_g_and_a_fall_none()
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Hover, Starters.Get("wagtail"), Starters.Profile);
        FlightFinds finds = Fed(log);
        Assert.Equal(1, A(finds, "highest g"), 0.02);
        Assert.Equal(0, A(finds, "time saturated"));
        Assert.InRange(A(finds, "least torque reserve up"), 0.9 * Metric("torque_reserve_up", log), Metric("torque_reserve_up", log) * 1.0001);

        FlightFinds fall = new();
        fall.Take(0, At(default, default, default) with { a_WB = new(0, 0, G) }, default, Flying, Period, PilotSwitches.Armed);
        Assert.Equal(0, A(fall, "highest g"), 12);
    }

    [Fact]
    public void Full_throttle_leaves_no_torque_reserve_and_counts_as_saturated()
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Punch, Starters.Get("wagtail"), Starters.Profile);
        FlightFinds finds = Fed(log);
        double duty = log.Samples.Count(s => s.Duty[0] >= 1 || s.Duty[1] >= 1 || s.Duty[2] >= 1 || s.Duty[3] >= 1) * log.Period;
        Assert.True(duty > 1);
        // the current limit may hold a motor back that is not yet at full duty
        Assert.InRange(A(finds, "time saturated"), duty - 1e-9, 2);
        Assert.Equal(0, A(finds, "least torque reserve up"), 4);
    }

    [Fact]
    public void Nothing_is_found_while_disarmed_crashed_touched_or_short_of_a_rotor()
    {
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Flip, Starters.Get("wagtail"), Starters.Profile);
        CraftCondition[] grounded =
        [
            Flying with { Armed = false },
            Flying with { Crashed = true },
            Flying with { Touching = true },
            Flying with { StruckRotors = 4 },
        ];
        FlightFinds finds = new();
        foreach (CraftCondition condition in grounded) Feed(finds, 0, log, condition);
        Assert.All(finds.Rows(), row => Assert.Null(row.A));
        Feed(finds, 0, log, Flying);
        Assert.NotNull(Find(finds, "fastest pitch").A);
    }

    [Fact]
    public void Both_builds_stand_side_by_side_until_cleared()
    {
        FlightFinds finds = new();
        Feed(finds, 0, DrillRunner.Fly(DrillCatalogue.Yaw, Starters.Get("wagtail"), Starters.Profile), Flying);
        Assert.All(finds.Rows(), row => Assert.Null(row.B));
        FlightLog other = DrillRunner.Fly(DrillCatalogue.Yaw, Starters.Get("curlew"), Starters.Profile);
        Feed(finds, 1, other, Flying);
        Assert.Equal(other.Largest(0, s => Math.Abs(s.State.w_WB_B.Z)) / Degree, Find(finds, "fastest yaw").B!.Value, 9);
        Assert.NotEqual(Find(finds, "fastest yaw").A, Find(finds, "fastest yaw").B);
    }

    private static double Metric(string name, FlightLog log) => MetricCatalogue.All.Single(metric => metric.Name == name).Read(log);

    private static FindRow Find(FlightFinds finds, string name) => finds.Rows().Single(row => row.Name == name);

    private static double A(FlightFinds finds, string name) => Find(finds, name).A!.Value;

    private static FlightFinds Fed(FlightLog log)
    {
        FlightFinds finds = new();
        Feed(finds, 0, log, Flying);
        return finds;
    }

    private static void Feed(FlightFinds finds, int craft, FlightLog log, CraftCondition condition)
    {
        finds.Interrupt(craft);
        for (int row = 0; row < log.Samples.Count; row++) finds.Take(craft, log.Samples[row], log.Sticks[row], condition, log.Period, PilotSwitches.Armed);
    }

    /// <summary>A flight by formula: rates (rad/s) and velocity (m/s) over time.</summary>
    private static FlightFinds Flown(double duration, Func<double, (Vec3 Rate, Vec3 Velocity)> motion, Func<double, Flight.Sticks> sticks)
    {
        FlightFinds finds = new();
        Vec3 place = default;
        for (int n = 0; n <= (int)Math.Round(duration / Period); n++)
        {
            (Vec3 rate, Vec3 velocity) = motion(n * Period);
            finds.Take(0, At(place, velocity, rate), sticks(n * Period), Flying, Period, PilotSwitches.Armed);
            place += Period * velocity;
        }
        return finds;
    }

    private static Sample At(Vec3 place, Vec3 velocity, Vec3 rate) => new()
    {
        State = new CraftState { q_WB = Quat.Identity, p_WB = place, v_WB = velocity, w_WB_B = rate },
        a_WB = Vec3.Zero,
        PackVoltage = 24,
    };
}
