using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tests;
using Simfeel.Physics;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests;

/// <summary>What wakes and idling rotors do to the starter builds.</summary>
public class WakeAndDropTests
{
    /// <summary>
    /// Descending at constant rotor speed, mean thrust is least between 1.1 and 1.4 of the hover induced velocity: where
    /// small rotors were found to lose most (as the design has it for 4 to 6 inch; helicopter rotors likewise, Washizu and others,
    /// J. Aircraft 3(3), 1966, from memory).
    /// </summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("wagtail-swept")]
    [InlineData("pipit")]
    [InlineData("avocet")]
    [InlineData("redshank")]
    [InlineData("greenshank")]
    public void Thrust_loss_peaks_a_little_above_the_hover_induced_velocity(string name)
    {
        TunedUnit unit = Starters.Get(name);
        double[] loss = [.. Enumerable.Range(0, 41).Select(n => Loss(unit, 0.05 * n, AirEffects.Wake))];
        double worst = 0.05 * Array.IndexOf(loss, loss.Max());
        Assert.InRange(worst, 1.1, 1.4);
        Assert.InRange(loss.Max(), 0.05, 0.2);
        // the steady loads alone lose 3 to 10 %, the low-pitched propellers most
        double steady = Enumerable.Range(0, 41).Max(n => Loss(unit, 0.05 * n, AirEffects.None));
        Assert.InRange(steady, 0, 0.75 * loss.Max());
    }

    /// <summary>
    /// A hover a little above the ground: thrust goes with the square of the rotor speed, so that square falls by the ratio of
    /// Cheeseman and Bennett at the rotors' height.
    /// </summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("gannet")]
    public void Hover_near_the_ground_takes_slower_rotors(string name)
    {
        TunedUnit unit = Starters.Get(name);
        RotorConstants rotor = unit.Unit.Craft.Rotors[0];
        double height = rotor.Radius + rotor.p_BcmR_B.Z;
        double near = Speed(new() { StartHeight = height }), free = Speed(new());
        FlightLog log = DrillRunner.Fly(DrillCatalogue.Hover, unit, Starters.Profile, 1, new() { StartHeight = height });
        double kept = (height - log.Samples[^1].State.p_WB.Z - rotor.p_BcmR_B.Z) / rotor.Radius;
        Assert.InRange(kept, 1, 1.3);
        Assert.Equal(GroundEffect.ThrustRatio(kept, 0), free * free / (near * near), 0.01);

        double Speed(FieldConditions field) =>
            DrillRunner.Fly(DrillCatalogue.Hover, unit, Starters.Profile, 1, field).Samples[^1].State.RotorSpeeds[0];
    }

    /// <summary>Mean thrust lost at a descent over the hover induced velocity, at the rotor speed of hover.</summary>
    private static double Loss(TunedUnit unit, double descent, AirEffects effects)
    {
        Craft craft = unit.Unit.Craft with
        {
            Mass = 1e9,
            I_BBcm_B = Mat3.Diagonal(1e9, 1e9, 1e9),
            Rotors = [unit.Unit.Craft.Rotors[0] with { SpinInertia = 1e6, p_BcmR_B = Vec3.Zero }],
        };
        double radius = craft.Rotors[0].Radius, thrust = unit.Hover.Rotor.Thrust;
        double induced = MomentumTheory.HoverInducedVelocity(thrust, unit.Density, Math.PI * radius * radius);
        CraftState state = CraftState.AtRest(craft);
        state.v_WB = new(0, 0, descent * induced);
        state.RotorSpeeds = PerRotor.All(unit.Hover.Rotor.Speed);
        using CraftBatch<Lane1> batch = new(1);
        batch.SetEffects(effects);
        batch.SetCraft(0, craft);
        batch.SetField(0, unit.Density, 0);
        batch.SetState(0, state);
        double sum = 0;
        const int count = 20000;
        for (int n = 0; n < count; n++)
        {
            batch.RefreshSurroundings(1, n, 0.001);
            batch.Evaluate();
            sum += batch.GetSample(0).Thrust[0];
        }
        return 1 - (sum / count / thrust);
    }

    /// <summary>
    /// In a fall at idle the rotors, held near idle speed by their motors, make 29 to 40 % of the drag. Stopped dead, they are a few
    /// narrow plates: their share falls and the craft falls faster.
    /// </summary>
    [Theory]
    [InlineData("knot")]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    [InlineData("gannet")]
    public void Stopped_rotors_hold_a_falling_craft_back_less(string name)
    {
        TunedUnit unit = Starters.Get(name);
        FlightLog idling = DrillRunner.Fly(DrillCatalogue.Drop, unit, Starters.Profile);
        double share = Read("rotor_drag_share", idling), speed = Read("settled_fall_speed", idling);
        Assert.InRange(share, 0.2, 0.6);

        Sample stopped = FallWithStoppedRotors(unit);
        Assert.True(LogReading.RotorDragShare(LogRows.Of([stopped], 4)[0]) < 0.95 * share, $"not under 0.95 of {share:F2}");
        Assert.True(stopped.State.v_WB.Z > 1.02 * speed, $"{stopped.State.v_WB.Z:F1} of {speed:F1} m/s");

        static double Read(string metric, FlightLog log) => MetricCatalogue.All.Single(m => m.Name == metric).Read(log);
    }

    private static Sample FallWithStoppedRotors(TunedUnit unit)
    {
        Craft craft = unit.Unit.Craft;
        Craft jammed = craft with
        {
            I_BBcm_B = Mat3.Diagonal(1e9, 1e9, 1e9),
            Rotors = [.. craft.Rotors.Select(rotor => rotor with { SpinInertia = 1e6 })],
        };
        using CraftBatch<Lane1> batch = new(craft.Rotors.Count);
        batch.SetCraft(0, jammed);
        batch.SetField(0, unit.Density, unit.Gravity);
        batch.SetState(0, CraftState.AtRest(jammed));
        for (int step = 0; step < 5 * 8000; step++) batch.Step(Integrator.Midpoint, 1 / 8000.0);
        batch.Evaluate();
        return batch.GetSample(0);
    }
}
