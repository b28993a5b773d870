using System.Collections.Concurrent;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Trim;

namespace Simfeel.Flight.Tests.Drills;

/// <summary>Drills of the virtual pilot against the flight mechanics of steady flight.</summary>
public class CourseDrillTests
{
    private static readonly ConcurrentDictionary<(string, string, double), FlightLog> Flown = new();

    public static TheoryData<string> Names => [.. Starters.Names];

    /// <summary>
    /// Steady from the first row: less than 0.01 m/s^2 and 0.1 rad/s^2, a ten-thousandth of what the rotors can do. Wakes, which begin
    /// with the flight, are left out.
    /// </summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Starts_in_level_flight_are_trimmed(string name)
    {
        TunedUnit unit = Starters.Get(name);
        FieldConditions field = new() { Effects = AirEffects.DynamicInflow };
        foreach (Drill drill in CourseDrills.All)
        {
            foreach (double effort in new[] { 0.25, 1 })
            {
                double speed = drill.StartSpeed?.Invoke(effort) ?? 0;
                FlightLog log = DrillRunner.Fly(drill with { Duration = 0.002 }, unit, Starters.Profile, effort, field);
                Assert.Equal(speed, log.Samples[0].State.v_WB.Length, 12);
                // in hover the start leaves an off-centre load to the lead-in
                if (speed == 0) continue;
                Assert.InRange(log.Samples[0].a_WB.Length, 0, 0.01);
                Assert.InRange(log.Samples[0].AngularAcceleration_B.Length, 0, 0.1);
            }
        }
    }

    /// <summary>No tumbling, no fall, no drift away from the speed or the course asked for: every starter, three efforts.</summary>
    [Fact]
    public void Every_starter_finishes_every_course()
    {
        var pieces = from drill in CourseDrills.All
                     from effort in new[] { 0.25, 0.5, 1 }
                     from alike in Starters.Names.Select(Starters.Get).GroupBy(unit => unit.Unit.Craft.Rotors.Count)
                     from units in alike.Chunk(DrillBatch.Width)
                     select (drill, effort, units);
        Parallel.ForEach(pieces.ToList(), piece =>
        {
            foreach (FlightLog log in DrillBatch.Fly(piece.drill, piece.units, Starters.Profile, piece.effort, new()))
                Finishes(piece.drill, piece.effort, log);
        });
    }

    private static void Finishes(Drill drill, double effort, FlightLog log)
    {
        string what = $"{log.Unit.Unit.Name}, {drill.Name} at {effort}";
        // at full throttle the nose points at the ground, nearly
        double most = Math.Cos((drill == CourseDrills.Dash ? 100 : 85) * Math.PI / 180);
        Assert.True(log.Samples.Min(sample => sample.State.q_WB.ToMatrix().M22) > most, what + " tilts too far");
        Assert.True(log.Samples.Max(sample => Math.Abs(sample.State.p_WB.Z)) < (drill == CourseDrills.Dash ? 12 : 4), what + " leaves its height");
        CraftState end = log.Samples[^1].State;
        if (drill == CourseDrills.Brake) Assert.True(end.v_WB.Length < 1, what + " does not stop");
        if (drill == CourseDrills.Cruise) Assert.Equal(CourseDrills.CruiseSpeed(effort), end.v_WB.X, 0.02 * CourseDrills.CruiseSpeed(effort));
        if (drill == CourseDrills.Turn)
        {
            Assert.InRange(end.v_WB.X, -1.1 * CourseDrills.Speed, -0.9 * CourseDrills.Speed);
            Assert.Equal(2 * CourseDrills.TurnRadius(effort, log.Unit.Gravity), end.p_WB.Y, 1.5);
        }
        if (drill == CourseDrills.Slalom)
        {
            Assert.True(end.p_WB.X > CourseDrills.SlalomStart(effort) + (CourseDrills.Poles * CourseDrills.PoleSpacing), what + " is not through");
            Assert.Equal(CourseDrills.SlalomSpeed(effort), end.v_WB.Length, 0.1 * CourseDrills.SlalomSpeed(effort));
        }
    }

    /// <summary>
    /// Level turn: load factor 1 / cos(bank) and radius v^2 / (g tan(bank)) (any handbook of flight mechanics), means of the middle of
    /// the turn. The bank is read off the attitude, the load off the acceleration square to the track, the radius off the path.
    /// </summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    [InlineData("sanderling")]
    public void A_turn_has_the_radius_and_load_of_its_bank(string name)
    {
        FlightLog log = Fly(CourseDrills.Turn, name, 0.25);
        double g = log.Unit.Gravity, sideways = 0, up = 0, speed = 0, leaning = 0, upright = 0;
        int first = (int)(1.5 / log.Period), last = (int)(4.5 / log.Period);
        for (int row = first; row < last; row++)
        {
            Sample sample = log.Samples[row];
            double flat = double.Hypot(sample.State.v_WB.X, sample.State.v_WB.Y);
            sideways += ((sample.a_WB.Y * sample.State.v_WB.X) - (sample.a_WB.X * sample.State.v_WB.Y)) / flat / (last - first);
            Vec3 thrust = sample.State.q_WB.Rotate(-Vec3.UnitZ);
            leaning += ((thrust.Y * sample.State.v_WB.X) - (thrust.X * sample.State.v_WB.Y)) / flat;
            upright -= thrust.Z;
            up += (g - sample.a_WB.Z) / (last - first);
            speed += flat / (last - first);
        }
        double turned = Track(log.Samples[last]) - Track(log.Samples[first]);
        double radius = speed * (last - first) * log.Period / turned, bank = Math.Atan2(leaning, upright);
        Assert.Equal(speed * speed / (g * Math.Tan(bank)), radius, 0.05 * radius);
        Assert.Equal(1 / Math.Cos(bank), double.Hypot(sideways, up) / g, 0.03);
        // and it is the turn that was declared
        Assert.Equal(CourseDrills.TurnRadius(0.25, g), radius, 0.05 * radius);
        Assert.Equal(CourseDrills.Bank(0.25), bank, 3 * Math.PI / 180);

        static double Track(Sample sample) => Math.Atan2(sample.State.v_WB.Y, sample.State.v_WB.X);
    }

    /// <summary>Energy bounds a dash: what is over the top speed of level flight was bought with height, or with a pack not yet sagging.</summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    [InlineData("fulmar")]
    [InlineData("dunlin")]
    public void A_dash_is_no_faster_than_level_flight_at_full_throttle(string name)
    {
        TunedUnit unit = Starters.Get(name);
        double top = LevelFlight.Top(unit.Unit.Craft, unit.Density, unit.Gravity, Starters.Profile.StateOfCharge).Speed;
        double high = 0;
        foreach (Sample sample in Fly(CourseDrills.Dash, name, 1).Samples)
        {
            high = Math.Max(high, -sample.State.p_WB.Z);
            double bought = 2 * unit.Gravity * (high + sample.State.p_WB.Z);
            Assert.InRange(sample.State.v_WB.Length, 0, Math.Sqrt((1.02 * top * 1.02 * top) + bought));
        }
        Assert.True(Fly(CourseDrills.Dash, name, 1).Samples[^1].State.v_WB.X > 0.9 * top);
    }

    /// <summary>No shorter than v^2 / 2a with the largest deceleration there was (kinematics), and longer by the reaction to no more than twice.</summary>
    [Theory]
    [InlineData("wagtail", 0.25)]
    [InlineData("wagtail", 1)]
    [InlineData("gannet", 1)]
    [InlineData("sanderling", 1)]
    public void Braking_takes_the_distance_of_its_deceleration(string name, double effort)
    {
        FlightLog log = Fly(CourseDrills.Brake, name, effort);
        double from = Drill.LeadIn * CourseDrills.Speed, hardest = log.Samples.Max(sample => -sample.a_WB.X);
        double distance = log.Samples.Max(sample => sample.State.p_WB.X) - from, least = CourseDrills.Speed * CourseDrills.Speed / 2 / hardest;
        Assert.InRange(distance, least, 3 * least);
        Assert.True(hardest < 1.6 * (CourseDrills.HardestBrake(effort, log.Unit.Gravity) + (9.80665 * Math.Tan(0.7))));
    }

    /// <summary>
    /// Steady flight at one speed costs what the balance says: the flown power is within 2 % that of the trim, which the first ten
    /// milliseconds hardly leave.
    /// </summary>
    [Theory]
    [InlineData("wagtail", 1)]
    [InlineData("curlew", 0.5)]
    [InlineData("dunlin", 0.25)]
    public void Cruise_stays_at_its_speed_and_power(string name, double effort)
    {
        FieldConditions field = new() { Effects = AirEffects.DynamicInflow };
        FlightLog log = DrillRunner.Fly(CourseDrills.Cruise, Starters.Get(name), Starters.Profile, effort, field);
        foreach (Sample sample in log.Samples)
        {
            Assert.Equal(CourseDrills.CruiseSpeed(effort), sample.State.v_WB.X, 0.005 * CourseDrills.CruiseSpeed(effort));
            Assert.Equal(0, sample.State.p_WB.Z, 0.05);
        }
        double flown = log.Samples[^1].PackVoltage * log.Samples[^1].PackCurrent, trim = log.Samples[10].PackVoltage * log.Samples[10].PackCurrent;
        Assert.Equal(trim, flown, 0.02 * trim);
    }

    /// <summary>Close to top speed the trim meets <see cref="LevelFlight"/>, which finds tilt and speed at full throttle by flying.</summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("sanderling")]
    [InlineData("fulmar")]
    public void The_trim_agrees_with_level_flight_at_full_throttle(string name)
    {
        TunedUnit unit = Starters.Get(name);
        LevelFlight top = LevelFlight.Top(unit.Unit.Craft, unit.Density, unit.Gravity, Starters.Profile.StateOfCharge);
        DrillStart near = DrillStart.Level(unit, 0.97 * top.Speed, AirEffects.None);
        Assert.Equal(0.97 * top.Speed, near.State.v_WB.X, 9);
        double tilt = Math.Acos(near.State.q_WB.ToMatrix().M22);
        Assert.Equal(top.Tilt, tilt, 4 * Math.PI / 180);
        Assert.True(tilt < top.Tilt);
        for (int k = 0; k < unit.Unit.Craft.Rotors.Count; k++) Assert.InRange(near.Duty[k], 0.85, 1);
        // and beyond it there is none: the start is slower than asked for
        Assert.True(DrillStart.Level(unit, 1.05 * top.Speed, AirEffects.None).State.v_WB.X < top.Speed);
    }

    [Fact]
    public void Order_and_width_of_lanes_change_no_bit()
    {
        TunedUnit a = Starters.Get("wagtail"), b = Starters.Get("curlew"), c = Starters.Get("knot");
        foreach (Drill drill in new[] { CourseDrills.Slalom, CourseDrills.Brake })
        {
            ulong[] alone = [.. new[] { a, b, c }.Select(unit => DrillRunner.Fly(drill, unit, Starters.Profile).Hash())];
            Assert.Equal(3, alone.Distinct().Count());
            Assert.Equal([alone[2], alone[0], alone[1]], DrillRunner.FlyLanes<Lane4>(drill, [c, a, b], Starters.Profile).Select(log => log.Hash()));
            Assert.Equal([alone[1], alone[1], alone[2], alone[0]], DrillRunner.FlyLanes<Lane8>(drill, [b, b, c, a], Starters.Profile).Select(log => log.Hash()));
        }
    }

    private static FlightLog Fly(Drill drill, string name, double effort) =>
        Flown.GetOrAdd((drill.Name, name, effort), _ => DrillRunner.Fly(drill, Starters.Get(name), Starters.Profile, effort));
}
