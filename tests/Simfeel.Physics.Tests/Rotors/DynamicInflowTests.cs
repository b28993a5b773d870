using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>Lag of the induced velocity.</summary>
public class DynamicInflowTests
{
    private const double Radius = 0.0635, Density = 1.225, Speed = 1100;

    /// <summary>A rotor whose section has no stall and no Reynolds effect near hover: its damping is known in closed form.</summary>
    private static readonly RotorGeometry Blade = Specimens.Untwisted(2 * Radius, 3, 0.16, Specimens.Radians(10), 0.15, new Attached());

    private static readonly RotorTable Table = RotorTableBuilder.Build(Blade, Specimens.SeaLevel);

    private sealed class Attached : SectionPolar
    {
        public override SectionCoefficients At(double angle, double reynolds, double mach) =>
            new(5.7 * Math.Sin(2 * angle) / 2, 0.02 + (0.5 * Math.Sin(angle) * Math.Sin(angle)));
    }

    /// <summary>
    /// At constant thrust the lag is 0.849 / (4 lambda w) (Pitt and Peters, Vertica 5, 1981; from memory: 0.849 = 8/(3 pi)), and
    /// the apparent mass is 63.7 % of the sphere of air around the disc (Carpenter and Fridovich, NACA TN 3044, 1953; from
    /// memory).
    /// </summary>
    [Fact]
    public void Lag_and_mass_are_the_classical_ones()
    {
        Assert.Equal(0.849 / (4 * 0.07 * 900), HoverLag(0.1, 900, 0.07, 0), 1e-3 * 0.849 / (4 * 0.07 * 900));
        Assert.Equal(0.637, DynamicInflow.ApparentMassFactor / (4.0 / 3 * Math.PI), 5e-4);
    }

    /// <summary>K / (rho A wR) = B a (integral of c/R r/R dr/R) / (2 pi): strip theory with lift slope a, no tip loss.</summary>
    [Fact]
    public void Damping_read_off_the_table_is_that_of_the_blades()
    {
        double strip = 3 * 5.7 * 0.16 * (1 - (0.15 * 0.15)) / 2 / (2 * Math.PI);
        Assert.InRange(DynamicInflow.LiftDamping(Table) / strip, 0.6, 1.0); // less by tip loss and uneven inflow
    }

    /// <summary>A table whose slope no blades can have must not make a rotor of endless damping, which no step could follow.</summary>
    [Fact]
    public void Damping_stays_within_what_blades_can_have()
    {
        for (int seed = 0; seed < 20; seed++)
            Assert.InRange(DynamicInflow.LiftDamping(TestCraft.MakeIrregular(seed)), 0, DynamicInflow.MostDamping);
        Assert.Equal(0, DynamicInflow.LiftDamping(TestCraft.NoAir));
    }

    /// <summary>
    /// Start with the inflow of hover and a slow climb switched on: the thrust falls at once by K dV and comes part of the way
    /// back as the inflow falls, with the time constant (8/3) rho R^3 / (K + 4 rho A v).
    /// </summary>
    [Fact]
    public void Thrust_overshoots_and_settles_with_the_lag()
    {
        const double climb = 0.3;
        using CraftBatch<Lane1> batch = Pinned(AirEffects.DynamicInflow, climb);
        (double first, double last, List<(double Time, double Thrust)> log) = Follow(batch);

        double damping = DynamicInflow.LiftDamping(Table), inflow = DynamicInflow.HoverInflow(Table);
        double area = Math.PI * Radius * Radius, tip = Speed * Radius;
        double hover = Static(0).Thrust, steady = Static(climb).Thrust;
        Assert.Equal(steady, last, 1e-3 * steady);
        Assert.InRange((hover - first) / (damping * Density * area * tip * climb), 0.85, 1.15);
        Assert.True(first < steady && steady < hover, $"{first} {steady} {hover}");

        double lag = HoverLag(Radius, Speed, inflow, damping);
        double third = log.First(row => row.Thrust - last > (first - last) / Math.E).Time;
        Assert.InRange(third / lag, 0.8, 1.2);
    }

    /// <summary>Time constant of small changes in hover, s, m / (K + 4 rho A v); damping is K / (rho A wR).</summary>
    private static double HoverLag(double radius, double speed, double inflow, double damping) =>
        DynamicInflow.ApparentMassFactor * radius / (Math.PI * speed * radius * (damping + (4 * inflow)));

    [Fact]
    public void Without_the_effect_thrust_is_steady_at_once()
    {
        using CraftBatch<Lane1> batch = Pinned(AirEffects.None, 0.3);
        (double first, double last, _) = Follow(batch);
        Assert.Equal(last, first, 1e-9 * last);
        Assert.Equal(Static(0.3).Thrust, last, 1e-9 * last);
    }

    /// <summary>The smallest and fastest rotors and the wildest states stay bounded.</summary>
    [Fact]
    public void Never_blows_up()
    {
        Random random = new(3);
        for (int n = 0; n < 200; n++)
        {
            double radius = 0.012 + (0.1 * random.NextDouble()), speed = 300 / radius * ((2.4 * random.NextDouble()) - 1.2);
            using CraftBatch<Lane1> batch = Pinned(AirEffects.DynamicInflow, 0, radius, speed);
            CraftState state = batch.GetState(0);
            state.v_WB = new(60 * (random.NextDouble() - 0.5), 0, 80 * (random.NextDouble() - 0.5));
            state.InducedVelocities = PerRotor.All(40 * (random.NextDouble() - 0.5));
            batch.SetState(0, state);
            for (int step = 0; step < 400; step++) batch.Step(Integrator.Midpoint, 1 / 8000.0);
            batch.Evaluate();
            Sample sample = batch.GetSample(0);
            double table = Table.At(speed, radius, -state.v_WB.Z, state.v_WB.X).Thrust
                * Density * Math.PI * radius * radius * ((speed * speed * radius * radius) + Vec3.Dot(state.v_WB, state.v_WB));
            Assert.InRange(sample.Thrust[0], table - (0.01 * Math.Abs(table)) - 1e-3, table + (0.01 * Math.Abs(table)) + 1e-3);
        }
    }

    private static (double First, double Last, List<(double Time, double Thrust)> Log) Follow(CraftBatch<Lane1> batch)
    {
        const double step = 1 / 80000.0;
        List<(double Time, double Thrust)> log = [];
        for (int n = 0; n < 2000; n++)
        {
            batch.Evaluate();
            log.Add((n * step, batch.GetSample(0).Thrust[0]));
            batch.Step(Integrator.RungeKutta, step);
        }
        return (log[0].Thrust, log[^1].Thrust, log);
    }

    /// <summary>A rotor of constant speed on a craft of constant velocity, with the inflow of hover.</summary>
    private static CraftBatch<Lane1> Pinned(AirEffects effects, double climb, double radius = Radius, double speed = Speed)
    {
        RotorConstants rotor = TestCraft.SilentRotor(1, 1e6) with { Table = Table, Radius = radius };
        Craft craft = new() { Mass = 1e9, I_BBcm_B = Mat3.Diagonal(1e9, 1e9, 1e9), Rotors = [rotor], Battery = TestCraft.FlatBattery(16, 0.02) };
        CraftState state = CraftState.AtRest(craft);
        state.v_WB = new(0, 0, -climb);
        state.RotorSpeeds = PerRotor.All(speed);
        state.InducedVelocities = PerRotor.All(MomentumTheory.HoverInducedVelocity(Static(0).Thrust, Density, Math.PI * Radius * Radius));
        CraftBatch<Lane1> batch = TestCraft.Batch(craft, state, Density);
        batch.SetEffects(effects);
        return batch;
    }

    private static (double Thrust, double Torque) Static(double climb)
    {
        RotorCoefficients c = Table.At(Speed, Radius, climb, 0);
        double pressure = Density * Math.PI * Radius * Radius * ((Speed * Speed * Radius * Radius) + (climb * climb));
        return (c.Thrust * pressure, c.Torque * pressure * Radius);
    }
}
