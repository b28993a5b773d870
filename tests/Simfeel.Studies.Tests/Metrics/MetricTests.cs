using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Metrics;

/// <summary>Metrics against motions whose answer is known in closed form.</summary>
public class MetricTests
{
    private const double G = 9.80665;

    [Fact]
    public void Fall_in_one_second_of_a_free_fall_is_half_g()
    {
        FlightLog log = SyntheticLog.Of(5.2, height: t => t < Drill.LeadIn ? 0 : -G / 2 * Square(t - Drill.LeadIn));
        Assert.Equal(G / 2, Read("fall_in_1_s", log), 9);
    }

    [Fact]
    public void Catch_time_and_height_of_a_steady_braking()
    {
        // sinking at 8 m/s when the throttle opens, braked at 40 m/s^2: 0.2 s and 0.8 m
        double open = Drill.LeadIn + DrillCatalogue.FallBeforeCatch;
        FlightLog log = SyntheticLog.Of(
            2.7,
            height: t => t < open ? 0 : (-8 * (t - open)) + (20 * Square(t - open)),
            climb: t => t < open ? -8 : -8 + (40 * (t - open)));
        Assert.Equal(0.2, Read("catch_time", log), 6);
        Assert.Equal(0.8, Read("catch_height", log), 4);
    }

    [Fact]
    public void Stop_time_of_an_exponential_is_ln_10_time_constants()
    {
        double release = Drill.LeadIn + DrillCatalogue.TurnBeforeStop;
        FlightLog log = SyntheticLog.Of(1.5, rate: t => new(t < release ? 14 : 14 * Math.Exp(-(t - release) / 0.02), 0, 0));
        Assert.Equal(0.02 * Math.Log(10), Read("stop_time", log), 4);
        Assert.Equal(0, Read("bounce_back", log), 9);
    }

    [Fact]
    public void Bounce_back_is_the_angle_turned_back()
    {
        // a half sine of negative rate after the stop: area 2 A / w
        double release = Drill.LeadIn + DrillCatalogue.TurnBeforeStop;
        FlightLog log = SyntheticLog.Of(1.5, rate: t =>
        {
            if (t < release) return new(14, 0, 0);
            double since = t - release - 0.05;
            return new(since is > 0 and < 0.1 ? -2 * Math.Sin(Math.PI * since / 0.1) : 0, 0, 0);
        });
        Assert.Equal(2 * 2 * 0.1 / Math.PI, Read("bounce_back", log), 4);
    }

    [Fact]
    public void Roll_times_of_a_first_order_rate()
    {
        double end = Starters.Profile.RollPitch.EndRate;
        FlightLog log = SyntheticLog.Of(1.0, rate: t => new(t < Drill.LeadIn ? 0 : end * (1 - Math.Exp(-(t - Drill.LeadIn) / 0.03)), 0, 0));
        Assert.Equal(0.03 * Math.Log(10), Read("roll_rise_time", log), 4);
        // angle end (t - 0.03 (1 - e^(-t/0.03))) = 2 pi
        Assert.Equal((2 * Math.PI / end) + 0.03, Read("time_to_360_deg", log), 4);
    }

    /// <summary>A craft that stays below the commanded rate never gets to nine tenths of it.</summary>
    [Fact]
    public void A_roll_that_never_gets_up_to_speed_has_no_rise_time()
    {
        double weak = 0.8 * Starters.Profile.RollPitch.EndRate;
        Assert.True(double.IsNaN(Read("roll_rise_time", SyntheticLog.Of(1.0, rate: _ => new(weak, 0, 0)))));
    }

    [Fact]
    public void An_event_that_never_comes_is_not_a_number()
    {
        FlightLog log = SyntheticLog.Of(1.5, rate: _ => new(14, 0, 0));
        Assert.True(double.IsNaN(Read("stop_time", log)));
    }

    [Fact]
    public void Names_are_unique_and_every_drill_is_measured()
    {
        Assert.Equal(MetricCatalogue.All.Count, MetricCatalogue.All.Select(metric => metric.Name).Distinct().Count());
        Assert.Empty(DrillCatalogue.All.Except(MetricCatalogue.All.Select(metric => metric.Drill)));
    }

    /// <summary>Endurance against the kernel: the pack is drained at the hover's power until a fifth is left.</summary>
    [Fact]
    public void Hover_endurance_is_how_long_the_flown_battery_lasts()
    {
        TunedUnit unit = Starters.Get("wagtail");
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Hover, unit, Starters.Profile);
        double power = Read("hover_power", log);
        Craft craft = unit.Unit.Craft with
        {
            Battery = unit.Unit.Craft.Battery with { ElectronicsPower = power },
        };
        using CraftBatch<Lane1> batch = new(craft.Rotors.Count);
        batch.SetCraft(0, craft);
        batch.SetField(0, 0, 0);
        batch.SetState(0, CraftState.AtRest(craft));
        double time = 0;
        for (; batch.GetState(0).Charge > 0.2 * craft.Battery.Capacity; time += 0.05) batch.Step(Integrator.Midpoint, 0.05);
        Assert.Equal(time, Read("hover_endurance", log), 0.01 * time);
    }

    private static double Read(string name, FlightLog log) =>
        MetricCatalogue.All.Single(metric => metric.Name == name).Read(log);

    private static double Square(double x) => x * x;
}
