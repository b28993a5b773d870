using Simfeel.Flight.Drills;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tests.Drills;

/// <summary>Drills that show one law each, and a picture that comes late.</summary>
public class ExperimentTests
{
    /// <summary>Projectile: thrown up at v it is back after 2 v / g (any textbook); the air takes a little of the speed.</summary>
    [Fact]
    public void A_thrown_craft_comes_back_with_its_motors_off()
    {
        FlightLog log = DrillRunner.Fly(Experiments.Tumble(2, 6), Starters.Get("wagtail"), Starters.Profile);
        double highest = log.Samples.Max(sample => -sample.State.p_WB.Z);
        Assert.InRange(highest, 0.85 * 64 / (2 * 9.80665), 64 / (2 * 9.80665));
        Assert.InRange(-log.Samples[^1].State.p_WB.Z, -1.0, 0.3);
        Assert.All(log.Samples, sample => Assert.Equal(0, sample.Duty[0]));
        Assert.All(log.Samples, sample => Assert.True(Math.Abs(sample.State.RotorSpeeds[0]) < 100));
        // the spin it was given, with its wobble
        Assert.Equal(6, log.Samples[0].State.w_WB_B.Z);
        Assert.Equal(Experiments.Wobble * 6, log.Samples[0].State.w_WB_B.X, 1e-12);
    }

    /// <summary>Angular momentum in the world is kept while nothing but its own weight acts at the centre of gravity; the air takes some.</summary>
    [Fact]
    public void A_tumble_keeps_most_of_its_angular_momentum()
    {
        TunedUnit unit = Starters.Get("wagtail");
        FlightLog log = DrillRunner.Fly(Experiments.Tumble(1, 4 * Math.PI), unit, Starters.Profile);
        double first = Momentum(0).Length, last = Momentum(log.Samples.Count - 1).Length;
        Assert.InRange(last / first, 0.8, 1.02);

        Vec3 Momentum(int row) => log.Samples[row].State.q_WB.Rotate(unit.Unit.Craft.I_BBcm_B * log.Samples[row].State.w_WB_B);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_push_moves_one_stick_for_its_time(int axis)
    {
        FlightLog log = DrillRunner.Fly(Experiments.Push(axis, 0.1), Starters.Get("wagtail"), Starters.Profile, 0.5);
        for (int row = 0; row < log.Sticks.Count; row++)
        {
            Sticks sticks = log.Sticks[row];
            double[] all = [sticks.Roll, sticks.Pitch, sticks.Yaw];
            for (int other = 0; other < 3; other++)
            {
                if (other != axis) Assert.Equal(0, all[other]);
            }
            double time = log.TimeOf(row);
            if (time < Drill.LeadIn || time > Drill.LeadIn + 0.1 + 0.02) Assert.Equal(0, all[axis], 1e-12);
        }
        Assert.Equal(0.5, log.Sticks.Max(sticks => new[] { sticks.Roll, sticks.Pitch, sticks.Yaw }[axis]), 1e-12);
    }

    [Fact]
    public void Steady_ones_hold_what_they_say()
    {
        TunedUnit unit = Starters.Get("curlew");
        FlightLog level = DrillRunner.Fly(Experiments.Level(8), unit, Starters.Profile);
        Assert.All(level.Samples, sample => Assert.InRange(sample.State.v_WB.X, 7.8, 8.2));
        Assert.All(level.Samples, sample => Assert.InRange(sample.State.p_WB.Z, -0.2, 0.2));
        FlightLog sink = DrillRunner.Fly(Experiments.Sink(0, 5), unit, Starters.Profile);
        Assert.InRange(sink.Samples[^1].State.v_WB.Z, 4, 6);
        FlightLog climb = DrillRunner.Fly(Experiments.Climb(12), unit, Starters.Profile);
        Assert.Equal(-12, climb.Samples[0].State.v_WB.Z);
        FlightLog tilted = DrillRunner.Fly(Experiments.Release(0, 0.3), unit, Starters.Profile);
        Assert.Equal(Math.Cos(0.3), tilted.Samples[0].State.q_WB.ToMatrix().M22, 1e-12);
    }

    /// <summary>A late picture changes what the pilot does and nothing that a plain script does; without delay not a bit changes.</summary>
    [Fact]
    public void A_late_picture_is_seen_by_the_pilot_alone()
    {
        TunedUnit unit = Starters.Get("wagtail");
        PilotProfile late = Starters.Profile with { DisplayDelay = 0.08 }, none = Starters.Profile with { DisplayDelay = 0 };
        Assert.Equal(DrillRunner.Fly(DrillCatalogue.Stop, unit, Starters.Profile).Hash(), DrillRunner.Fly(DrillCatalogue.Stop, unit, late).Hash());
        Assert.Equal(DrillRunner.Fly(CourseDrills.Slalom, unit, Starters.Profile).Hash(), DrillRunner.Fly(CourseDrills.Slalom, unit, none).Hash());
        Assert.True(Off(late) > 1.3 * Off(none));

        double Off(PilotProfile profile)
        {
            FlightLog log = DrillRunner.Fly(CourseDrills.Slalom, unit, profile);
            double start = CourseDrills.SlalomStart(1);
            return log.Samples.Where(sample => sample.State.p_WB.X - start is > 0 and < 80).Max(sample => Math.Abs(sample.State.p_WB.Y - CourseDrills.SlalomLine(sample.State.p_WB.X - start)));
        }
    }
}
