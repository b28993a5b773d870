using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Metrics;

/// <summary>Metrics of the drills over the ground against motions whose answer is known in closed form.</summary>
public class CourseMetricTests
{
    private const double Start = Drill.LeadIn, V = CourseDrills.Speed;

    /// <summary>Steady braking at 6 m/s^2: 1 m/s is left after 11/6 s and (144 - 1) / 12 m.</summary>
    [Fact]
    public void Braking_evenly()
    {
        FlightLog log = Log(3, t => t < Start ? (new(V * t, 0, 0), new(V, 0, 0)) : (new((V * t) - (3 * (t - Start) * (t - Start)), 0, 0), new(V - (6 * (t - Start)), 0, 0)));
        Assert.Equal(11 / 6.0, Read("brake_time", log), 4);
        Assert.Equal(143 / 12.0, Read("brake_distance", log), 3);
    }

    /// <summary>A speed that is taken up with a time constant of 2 s towards 40 m/s: 15 m/s after 2 ln(40 / 25).</summary>
    [Fact]
    public void Dash_of_first_order()
    {
        FlightLog log = Log(Start + 5, t => (default, new(t < Start ? 0 : 40 * (1 - Math.Exp((Start - t) / 2)), 0, 0)));
        Assert.Equal(2 * Math.Log(40 / 25.0), Read("dash_time_to_15_m_s", log), 4);
        Assert.Equal(40 * (1 - Math.Exp(-2.5)), Read("dash_speed", log), 6);
    }

    /// <summary>A half circle of 10 m at 12 m/s that sinks by 0.2 m/s; 175 degrees of it take r (175 pi / 180) / v.</summary>
    [Fact]
    public void Half_a_circle()
    {
        const double r = 10;
        FlightLog log = Log(Start + 4, t =>
        {
            double angle = Math.Clamp((t - Start) * V / r, 0, Math.PI), along = V * Math.Min(t, Start);
            return (new(along + (r * Math.Sin(angle)), r * (1 - Math.Cos(angle)), 0.2 * Math.Max(0, t - Start)), new(V * Math.Cos(angle), V * Math.Sin(angle), 0));
        });
        Assert.Equal(r * (175 * Math.PI / 180) / V, Read("turn_time", log), 4);
        Assert.Equal(r, Read("turn_radius", log), 3);
        Assert.Equal(0.8, Read("turn_height_change", log), 6);
    }

    /// <summary>On the slalom's line but for 0.3 m to the right between its poles, and 3 m before and behind them; the stick swings by 0.5 each way twice a second: 2 full sticks a second.</summary>
    [Fact]
    public void Slalom_beside_its_line()
    {
        double speed = CourseDrills.SlalomSpeed(1), begin = CourseDrills.SlalomStart(1);
        double end = (CourseDrills.Poles + 0.5) * CourseDrills.PoleSpacing;
        FlightLog log = Log(
            Start + 8,
            t => (new(speed * t, CourseDrills.SlalomLine((speed * t) - begin) + (speed * t < begin || (speed * t) - begin > end ? 3 : 0.3), 0), new(speed, 0, 0)),
            t => new(Math.Abs((4 * t % 4) - 2) / 4, 0, 0, 0));
        Assert.Equal(0.3, Read("slalom_miss", log), 9);
        Assert.Equal(CourseDrills.Poles * CourseDrills.PoleSpacing / speed, Read("slalom_time", log), 4);
        Assert.Equal(1, Read("slalom_stick_work", log), 2);
    }

    /// <summary>15 m/s on 90 W: a sixth of a metre for a joule, 600 m for a watt hour.</summary>
    [Fact]
    public void Range_is_speed_by_power()
    {
        FlightLog log = Log(Start + 3, t => (new(15 * t, 0, 0), new(15, 0, 0)), power: 90);
        Assert.Equal(90, Read("cruise_power", log), 9);
        Assert.Equal(1 / 6.0, Read("specific_range", log), 9);
        Metric metric = MetricCatalogue.All.Single(m => m.Name == "specific_range");
        Assert.Equal("600", metric.Display.Number(1 / 6.0));
    }

    /// <summary>What could not start at the drill's speed is not compared with what did.</summary>
    [Theory]
    [InlineData("brake_time")]
    [InlineData("turn_radius")]
    [InlineData("slalom_miss")]
    [InlineData("cruise_power")]
    public void A_slower_start_has_no_number(string name) => Assert.True(double.IsNaN(Read(name, Log(Start + 4, t => (new(5 * t, 0, 0), new(5, 0, 0)), power: 50))));

    /// <summary>Every starter has every number, but for a speed in the dash that the smallest never reach at little throttle.</summary>
    [Theory]
    [InlineData(0.25)]
    [InlineData(1)]
    public void Starters_have_all_numbers(double effort)
    {
        Parallel.ForEach(Starters.Names, name =>
        {
            foreach (IGrouping<Drill, Metric> alike in MetricCatalogue.All.Where(metric => CourseDrills.All.Contains(metric.Drill)).GroupBy(metric => metric.Drill))
            {
                FlightLog log = DrillRunner.Fly(alike.Key, Starters.Get(name), Starters.Profile, effort);
                foreach (Metric metric in alike)
                    Assert.True(double.IsFinite(metric.Read(log)) || metric.Name == "dash_time_to_15_m_s", $"{name} {metric.Name}");
            }
        });
    }

    private static FlightLog Log(double duration, Func<double, (Vec3 Place, Vec3 Velocity)> motion, Func<double, Sticks>? sticks = null, double power = 0)
    {
        FlightLog log = SyntheticLog.Of(duration);
        Sample[] samples = [.. log.Samples.Select(row => row.ToSample())];
        for (int row = 0; row < samples.Length; row++)
        {
            (Vec3 place, Vec3 velocity) = motion(row * log.Period);
            samples[row].State = samples[row].State with { p_WB = place, v_WB = velocity };
            (samples[row].PackVoltage, samples[row].PackCurrent) = (10, power / 10);
        }
        Sticks[] moved = [.. Enumerable.Range(0, samples.Length).Select(row => sticks?.Invoke(row * log.Period) ?? default)];
        return new() { Drill = log.Drill, Unit = log.Unit, Profile = log.Profile, Field = log.Field, Effort = 1, Samples = LogRows.Of(samples, log.Samples.RotorCount), Sticks = moved };
    }

    private static double Read(string name, FlightLog log) => MetricCatalogue.All.Single(metric => metric.Name == name).Read(log);
}
