using Simfeel.Flight;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Flights;
using Simfeel.Studies.Tests.Approved;

namespace Simfeel.Studies.Tests.Flights;

/// <summary>Extremes of single readings, and the rows that show them; numbers by hand.</summary>
public class CraftFindsTests
{
    private const double Period = 0.25, Degree = Math.PI / 180;

    private static readonly CraftCondition Flying = new() { Armed = true };

    [Fact]
    public void Extremes_are_kept_each_by_itself_and_either_way()
    {
        CraftFinds finds = new();
        Assert.False(finds.Flew);
        Take(finds, Reading(w: new(1, -5, 2), acceleration: -30, v: new(2, -3, 6), a: default, volts: 15));
        Take(finds, Reading(w: new(-4, 2, 1), acceleration: 20, v: new(0, 0, 1), a: new(0, 3, 5.80665), volts: 14));
        Take(finds, Reading(w: new(3, 1, -3), acceleration: 10, v: default, a: new(0, 0, 9.80665), volts: 16));
        Assert.True(finds.Flew);
        Assert.Equal(new Vec3(4, 5, 3), finds.Rate);
        Assert.Equal(30, finds.RollAcceleration);
        Assert.Equal(7, finds.Speed, 12);
        Assert.Equal(14, finds.PackVoltage);
        // what an accelerometer feels: the acceleration less that of free fall; 1 g in a hover
        Assert.Equal(9.80665, finds.Load, 12);
        Take(finds, Reading(a: new(12, 0, 4.80665)));
        Assert.Equal(13, finds.Load, 12);
    }

    [Fact]
    public void The_torque_reserve_is_that_of_the_busiest_rotor_that_turns()
    {
        CraftFinds finds = new();
        Take(finds, Reading(speeds: [100, 100, 100, 0], torques: [1, 1, 1, 1], reserves: [0.5, 0.3, 0.4, 0.1]));
        Assert.Equal(0.3, finds.ReserveUp);
        Take(finds, Reading(speeds: [100, 100, 100, 100], torques: [1, 1, 1, 1], reserves: [0.5, 0.6, 0.4, 0.7]));
        Assert.Equal((0.3, 0.0), (finds.ReserveUp, finds.SaturatedTime));
        // less than none is none
        Take(finds, Reading(speeds: [100, 100, 100, 100], torques: [1, 1, 1, 1], reserves: [0.5, 0.6, 0.4, -0.1]));
        Assert.Equal((0, Period), (finds.ReserveUp, finds.SaturatedTime));
    }

    /// <summary>A thousandth of the torque in use, 2 N m, is none; so is everything below, and a rotor that stands has nothing to give.</summary>
    [Theory]
    [InlineData(2, 0.002, true)]
    [InlineData(-2, 0.002, true)]
    [InlineData(2, 0.00201, false)]
    [InlineData(2, 0, true)]
    [InlineData(0, 0, true)]
    [InlineData(2, 0.1, false)]
    public void Saturated_is_a_rotor_with_nothing_left(double torque, double reserve, bool saturated)
    {
        CraftFinds last = new(), standing = new();
        Take(last, Reading(speeds: [100, 100, 100, 100], torques: [1, 1, 1, torque], reserves: [1, 1, 1, reserve]));
        Assert.Equal(saturated ? Period : 0, last.SaturatedTime);
        Take(last, Reading(speeds: [100, 100, 100, 100], torques: [torque, torque, 1, 1], reserves: [reserve, reserve, 1, 1]));
        Assert.Equal(saturated ? 2 * Period : 0, last.SaturatedTime);
        Take(standing, Reading(speeds: [100, 100, 100, 0], torques: [1, 1, 1, torque], reserves: [1, 1, 1, reserve]));
        Assert.Equal(0, standing.SaturatedTime);
    }

    [Fact]
    public void The_sharper_stop_of_the_two_axes_is_shown()
    {
        Assert.Null(new CraftFinds().SharpestStop);
        foreach ((int roll, int pitch, bool isRoll) in new[] { (3, 0, true), (0, 3, false), (3, 4, true), (4, 3, false), (3, 3, true) })
        {
            CraftFinds finds = new();
            for (int n = 0; n < 8; n++) Take(finds, Reading(w: new(10, 10, 0)), new(1, 1, 0, 0.4), 0.01);
            for (int n = 0; n < 12; n++)
                Take(finds, Reading(w: new(Rate(n, roll), Rate(n, pitch), 0)), new(roll > 0 ? 0 : 1, pitch > 0 ? 0 : 1, 0, 0.4), 0.01);
            Assert.Same(isRoll ? finds.RollStop : finds.PitchStop, finds.SharpestStop);
            Assert.Equal(0.01 * Math.Max(1, isRoll ? roll : pitch), finds.SharpestStop!.Time!.Value, 0.0011);
        }

        // down to nothing at a reading; never where there is no stop
        static double Rate(int n, int stop) => stop == 0 || n < stop ? 10 : 0;
    }

    /// <summary>Letting go of the stick of a craft that levels itself begins a turn back and ends none.</summary>
    [Fact]
    public void A_craft_that_levels_itself_has_no_stops()
    {
        foreach (bool levels in new[] { true, false })
        {
            CraftFinds finds = new();
            for (int n = 0; n < 20; n++)
                finds.Take(Reading(w: new(n < 10 ? 10 : 0, 0, 0)), new(n < 8 ? 1 : 0, 0, 0, 0.4), Flying, 0.01, levels ? PilotSwitches.Level : default);
            Assert.Equal(levels, finds.SharpestStop is null);
            Assert.Equal(10, finds.Rate.X);
        }
    }

    /// <summary>The throttle stick of a craft that holds a climb rate is not its throttle: opened it makes no punch, closed no drop.</summary>
    [Fact]
    public void A_craft_that_holds_a_climb_rate_has_no_punch_and_no_drop()
    {
        foreach (bool holds in new[] { true, false })
        {
            PilotSwitches switches = holds ? PilotSwitches.Climb : default;
            CraftFinds punch = new(), drop = new();
            for (int n = 0; n < 150; n++)
            {
                punch.Take(Reading(v: new(0, 0, -2)), new(0, 0, 0, n < 10 ? 0.4 : 1), Flying, 0.01, switches);
                drop.Take(Reading(v: new(0, 0, 2)), new(0, 0, 0, n < 10 ? 0.4 : 0), Flying, 0.01, switches);
            }
            Assert.Equal((holds, holds), (punch.Punch.Gain is null, drop.Drop.Lost is null));
        }
    }

    /// <summary>What is not flying finds nothing, and what was begun before is not gone on with.</summary>
    [Fact]
    public void Being_touched_breaks_off_whatever_was_begun()
    {
        CraftFinds finds = new();
        for (int n = 0; n < 8; n++) Take(finds, Reading(w: new(10, 10, 0), v: new(0, 0, 5)), new(1, 1, 0, 0), 0.0625);
        finds.Take(Reading(w: new(10, 10, 0), v: new(0, 0, 5)), new(1, 1, 0, 0), Flying with { Touching = true }, 0.0625, PilotSwitches.Armed);
        // stops, a drop of 0.5 s and a punch would be found from here on
        for (int n = 0; n < 8; n++) Take(finds, Reading(w: n == 0 ? new(10, 10, 0) : default, v: new(0, 0, 5)), new(0, 0, 0, 0), 0.0625);
        Assert.Null(finds.SharpestStop);
        Assert.Null(finds.Drop.Lost);
        CraftFinds opening = new();
        for (int n = 0; n < 4; n++) Take(opening, Reading(), new(0, 0, 0, 0.3), 0.0625);
        Take(opening, Reading(), new(0, 0, 0, 0.9), 0.0625);
        opening.Take(Reading(), new(0, 0, 0, 1), Flying with { Crashed = true }, 0.0625, PilotSwitches.Armed);
        for (int n = 0; n < 20; n++) Take(opening, Reading(), new(0, 0, 0, 1), 0.0625);
        Assert.Null(opening.Punch.Gain);
    }

    /// <summary>Every row in its unit: 180 deg/s, 90 and 45; 360 deg/s2; 7 m/s; 2 g; and what never came is a dash.</summary>
    [Fact]
    public void Rows_are_in_the_units_of_people()
    {
        FlightFinds finds = new();
        Sample sample = Reading(
            w: new(180 * Degree, -90 * Degree, 45 * Degree), acceleration: -360 * Degree, v: new(2, -3, 6), a: new(0, 0, -9.80665), volts: 14.25,
            speeds: [100, 100, 100, 100], torques: [1, 1, 1, 1], reserves: [0.25, 0.5, 0.5, 0.5]);
        finds.Take(0, sample, default, Flying, Period, PilotSwitches.Armed);
        Dictionary<string, FindRow> rows = finds.Rows().ToDictionary(row => row.Name);
        foreach ((string name, double? value) in new (string, double?)[]
        {
            ("fastest roll", 180), ("fastest pitch", 90), ("fastest yaw", 45), ("highest roll acceleration", 360), ("sharpest stop", null),
            ("its bounce-back", null), ("biggest drop", null), ("fastest fall", null), ("hardest punch", null), ("top speed", 7), ("highest g", 2),
            ("lowest pack voltage", 14.25), ("least torque reserve up", 0.25), ("time saturated", 0),
        })
        {
            Assert.Equal(value is null, rows[name].A is null);
            Assert.Equal(value ?? 0, rows[name].A ?? 0, 9);
            Assert.Null(rows[name].B);
        }
        finds.Take(1, Reading(), default, Flying, Period, PilotSwitches.Armed);
        // let go at 10 rad/s, nothing a reading of 10 ms later: 9 ms; then -1 rad/s for two readings: back by 0.02 rad
        for (int n = 0; n < 12; n++)
            finds.Take(1, Reading(w: new(n < 8 ? 10 : n == 9 || n == 10 ? -1 : 0, 0, 0)), new(n < 7 ? 1 : 0, 0, 0, 0.4), Flying, 0.01, PilotSwitches.Armed);
        rows = finds.Rows().ToDictionary(row => row.Name);
        Assert.Equal(9, rows["sharpest stop"].B!.Value, 9);
        Assert.Equal(0.02 / Degree, rows["its bounce-back"].B!.Value, 9);
        Assert.Equal((7, 0), (Math.Round(finds.Rows()[9].A!.Value, 9), finds.Rows()[9].B));
    }

    [Fact]
    public void Names_units_and_meanings_are_as_approved() => ApprovedPage.Check(
        "flight-finds.txt", string.Concat(new FlightFinds().Rows().Select(row => $"{row.Name} | {row.Unit} | {row.Decimals} | {row.Meaning}\n")));

    private static void Take(CraftFinds finds, in Sample sample, Simfeel.Flight.Sticks sticks = default, double period = Period) => finds.Take(sample, sticks, Flying, period, PilotSwitches.Armed);

    private static Sample Reading(
        Vec3 w = default, double acceleration = 0, Vec3 v = default, Vec3 a = default, double volts = 16,
        double[]? speeds = null, double[]? torques = null, double[]? reserves = null)
    {
        CraftState state = new() { q_WB = Quat.Identity, v_WB = v, w_WB_B = w };
        Sample sample = new() { AngularAcceleration_B = new(acceleration, 0, 0), a_WB = a, PackVoltage = volts };
        for (int k = 0; k < (speeds?.Length ?? 0); k++)
        {
            state.RotorSpeeds[k] = speeds![k];
            sample.MotorTorque[k] = torques![k];
            sample.ReserveUp[k] = reserves![k];
        }
        sample.State = state;
        return sample;
    }
}
