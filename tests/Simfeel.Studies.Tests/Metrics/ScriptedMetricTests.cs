using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Metrics;

/// <summary>Metrics of the scripted drills against straight lines and steps, whose answers are exact.</summary>
public class ScriptedMetricTests
{
    private const double Start = Drill.LeadIn;

    [Fact]
    public void Speeds_of_a_fall_and_a_climb()
    {
        Assert.Equal(6, Read("settled_fall_speed", Log(2, t => Moving(climb: -3 * t))), 9);
        Assert.Equal(30 * 1.2, Read("climb_in_1_s", Log(2, t => Moving(height: 30 * t))), 9);
        Assert.Equal(0.5, Read("time_to_15_m_s", Log(2, t => Moving(climb: 30 * (t - Start)))), 9);
        Assert.True(double.IsNaN(Read("time_to_15_m_s", Log(2, _ => Moving(climb: 14.9)))));
    }

    /// <summary>Force along the motion: (1, 2, 3) and (4, 5, 6) N against (1, 1, 2) m/s are 9 and 21 W.</summary>
    [Fact]
    public void The_rotors_share_of_the_drag_is_taken_along_the_motion_at_the_end() => Assert.Equal(9 / 21.0, Read("rotor_drag_share", Log(
        1, t => new() { AirVelocity_B = t < 0.9995 ? new(1, 0, 0) : new(1, 1, 2), RotorForce_B = new(1, 2, 3), AirForce_B = new(4, 5, 6) })), 12);

    /// <summary>Four rotors of 3, 4, 5 and 6 N: 18 N; what they gave before the throttle opens does not count.</summary>
    [Fact]
    public void Thrust_to_weight_is_the_largest_sum_of_the_thrusts()
    {
        double mass = Starters.Get("wagtail").Unit.Craft.Mass;
        Assert.Equal(18 / (mass * 9.80665), Read("thrust_to_weight", Log(1, t => Rotors((ref Sample sample, int k) => sample.Thrust[k] = t < 0.1 ? 50 : t is > 0.5 and < 0.6 ? 3 + k : 1))), 9);
    }

    /// <summary>10 A for every second: from 2 to 12 A in the second after the first movement.</summary>
    [Fact]
    public void Pack_current_is_a_mean_of_the_first_second() => Assert.Equal(7, Read("climb_pack_current", Log(3, t => new() { PackCurrent = 10 * t })), 9);

    [Theory]
    [InlineData(1.2, 0.2)]
    [InlineData(1, 0)]
    [InlineData(0.8, 0)]
    public void Overshoot_is_what_the_largest_rate_has_over_the_commanded_one(double share, double overshoot) =>
        Assert.Equal(overshoot, Read("roll_overshoot", Log(1, t => Turning(t is > 0.5 and < 0.6 ? share * Commanded : 0.5 * Commanded))), 9);

    /// <summary>A third of a second too slow or too fast by more than a tenth, then within it.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.89, 0.91)]
    [InlineData(1.11, 1.09)]
    [InlineData(2, 1)]
    public void A_roll_is_steady_once_it_stays_within_a_tenth(double before, double behind)
    {
        Assert.Equal(0.3, Read("roll_settling_time", Log(1, t => Turning((t < Start + 0.2995 ? before : behind) * Commanded))), 9);
        Assert.True(double.IsNaN(Read("roll_settling_time", Log(1, t => Turning((t < Start + 0.2995 ? behind : before) * Commanded)))));
        Assert.True(double.IsNaN(Read("roll_settling_time", Log(1, _ => Turning(behind * Commanded)))));
    }

    [Fact]
    public void Peaks_of_acceleration_are_each_of_its_axis_and_from_the_first_movement_on()
    {
        FlightLog log = Log(1, t => new() { AngularAcceleration_B = t < 0.1 ? new(900, 900, 900) : t is > 0.5 and < 0.52 ? new(7, 8, 9) : new(-50, -50, -50) });
        Assert.Equal(7, Read("peak_roll_acceleration", log));
        Assert.Equal(9, Read("peak_yaw_acceleration", log));
    }

    /// <summary>10 rad/s of pitch from the first movement on: 300 degrees after pi/6 s; from 0.8 s on slower by 20 rad/s2, so at 1 rad/s 0.45 s later.</summary>
    [Fact]
    public void A_flip_ends_where_a_tenth_of_its_rate_is_left_late_in_it()
    {
        static double Rate(double t) => t < Start ? 0 : t < Start + 0.8 ? 10 : 10 - (20 * (t - Start - 0.8));
        Assert.Equal(0.8 + 0.45, Read("flip_time", Log(2, t => Turning(pitch: Rate(t)))), 6);
        // slow at first, which is not the end
        Assert.Equal(0.8 + 0.45, Read("flip_time", Log(2, t => Turning(pitch: t < Start + 0.05 ? 0.1 : Rate(t)))), 6);
        Assert.Equal(2, Read("flip_height_lost", Log(2, t => Moving(height: t < Start ? -9 : Math.Abs(t - 1) - 2))), 9);
    }

    /// <summary>2 rad/s of yaw: a right angle after pi/4 s. Let go at 10 rad/s, an exponential of 50 ms.</summary>
    [Fact]
    public void Yaw_is_timed_over_a_right_angle_and_to_a_tenth_of_its_rate()
    {
        Assert.Equal(Math.PI / 4, Read("yaw_time_to_90_deg", Log(2, _ => Turning(yaw: 2))), 9);
        const double release = Start + DrillCatalogue.TurnBeforeYawStop;
        Assert.Equal(0.05 * Math.Log(10), Read("yaw_stop_time", Log(1.6, t => Turning(yaw: t < release ? 10 : 10 * Math.Exp(-(t - release) / 0.05)))), 4);
    }

    [Fact]
    public void Shaking_is_a_root_mean_square_of_roll_and_pitch_together()
    {
        Assert.Equal(5, Read("wash_rate", Log(1.2, t => Turning(t < Start - 0.001 ? 50 : 3, 4, 7))), 9);
        // half of the time 6 and 8, half of it nothing
        Assert.Equal(10 / Math.Sqrt(2), Read("wash_rate", Log(1.2, t => t < Start + 0.4995 ? Turning(6, 8) : default)), 0.01);
    }

    /// <summary>Read at the end of the hover; rotors of 100, 200, 300 and 400 have a mean of 250.</summary>
    [Fact]
    public void A_hover_is_read_at_its_end()
    {
        FlightLog log = Log(1, t =>
        {
            double share = t < 0.9995 ? 0 : 1;
            Sample sample = Rotors((ref Sample one, int k) =>
            {
                one.ReserveUp[k] = share * (k + 1);
                one.ReserveDown[k] = share * (10 * (k + 1));
            });
            CraftState state = default;
            for (int k = 0; k < 4; k++) state.RotorSpeeds[k] = share * 100 * (k + 1);
            return sample with { State = state, PackVoltage = share * 15, PackCurrent = 8 };
        });
        Assert.Equal(120, Read("hover_power", log), 9);
        Assert.Equal(250, Read("hover_rotor_speed", log), 9);
        Assert.Equal(2.5, Read("torque_reserve_up", log), 9);
        Assert.Equal(25, Read("torque_reserve_down", log), 9);
        Assert.Equal(log.Unit.Hover.TimeConstant, Read("rotor_time_constant", log));
    }

    private delegate void OfRotor(ref Sample sample, int rotor);

    private static double Commanded => Starters.Profile.RollPitch.EndRate;

    private static Sample Rotors(OfRotor set)
    {
        Sample sample = default;
        for (int k = 0; k < 4; k++) set(ref sample, k);
        return sample;
    }

    private static Sample Moving(double height = 0, double climb = 0) => new() { State = new CraftState { p_WB = new(0, 0, -height), v_WB = new(0, 0, -climb) } };

    private static Sample Turning(double roll = 0, double pitch = 0, double yaw = 0) => new() { State = new CraftState { w_WB_B = new(roll, pitch, yaw) } };

    private static FlightLog Log(double duration, Func<double, Sample> at)
    {
        FlightLog log = SyntheticLog.Of(duration);
        Sample[] samples = [.. Enumerable.Range(0, log.Samples.Count).Select(row => at(row * log.Period))];
        return new() { Drill = log.Drill, Unit = log.Unit, Profile = log.Profile, Field = log.Field, Effort = 1, Samples = LogRows.Of(samples, 4), Sticks = log.Sticks };
    }

    private static double Read(string name, FlightLog log) => MetricCatalogue.All.Single(metric => metric.Name == name).Read(log);
}
