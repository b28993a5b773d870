using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Tests;

/// <summary>Tables of the starter builds and of propellers of any size and shape that a build file may state.</summary>
public class RandomPropellerTests
{
    private const int Count = 200;

    private static readonly AirState SeaLevel = StandardAtmosphere.At(0);

    [Fact]
    public void Tables_of_all_starter_builds_are_sound()
    {
        foreach (string file in Directory.GetFiles(BuildText.StarterDirectory(), "*.toml"))
        {
            Build build = BuildReader.Read(file).Build!;
            PropellerBlades blades = build.Propeller.Blades;
            RotorGeometry geometry = blades.Geometry();
            RotorConstants rotor = BuildAssembler.Assemble(build, SeaLevel).Craft.Rotors[0];
            TableChecks.All(Path.GetFileName(file), geometry, rotor.Table, 200);
            Thrown(Path.GetFileName(file), rotor);
        }
    }

    [Fact]
    public void Tables_of_two_hundred_random_propellers_are_sound()
    {
        Parallel.For(0, Count, n =>
        {
            Random random = new(1000 + n);
            double diameter = 0.03 * Math.Pow(10, 1.1 * random.NextDouble());
            double ratio = 0.25 + (1.05 * random.NextDouble()), chord = 0.6 + (1.2 * random.NextDouble());
            int blades = random.Next(2, 7);
            RotorGeometry geometry = RotorGeometry.FromPitch(diameter, ratio * diameter, blades, chord);
            RotorTable table = RotorTableBuilder.Build(geometry, SeaLevel, threads: 1);
            string name = FormattableString.Invariant($"{1000 * diameter:F0} mm, pitch ratio {ratio:F2}, {blades} blades, chord {chord:F2}");
            TableChecks.All(name, geometry, table, 180);
            Thrown(name, Rotor(diameter / 2, table));
        });
    }

    /// <summary>
    /// A rotor thrown at any state (turning either way, in a gale from anywhere, at any duty) stays bounded: its speed ends
    /// below what flow and voltage can drive it to.
    /// </summary>
    private static void Thrown(string name, RotorConstants rotor)
    {
        const double voltage = 25, gale = 60;
        Craft craft = new()
        {
            Mass = 1e9,
            I_BBcm_B = Mat3.Diagonal(1e9, 1e9, 1e9),
            Rotors = [rotor with { p_BcmR_B = Vec3.Zero }],
            Battery = new()
            {
                OpenCircuitVoltage = [.. BatteryConstants.ChargeNodes.Select(_ => voltage)],
                Capacity = 1e6,
                SeriesResistance = 0.02,
            },
        };
        double most = voltage / rotor.Kt;
        Random random = new(7);
        using CraftBatch<Lane8> batch = new(1);
        batch.SetEffects(AirEffects.DynamicInflow);
        double[] start = new double[8];
        for (int lane = 0; lane < 8; lane++)
        {
            CraftState state = CraftState.AtRest(craft);
            state.v_WB = new(gale * ((2 * random.NextDouble()) - 1), 0, gale * ((2 * random.NextDouble()) - 1));
            start[lane] = 1.3 * most * ((2 * random.NextDouble()) - 1);
            state.RotorSpeeds = PerRotor.All(start[lane]);
            batch.SetCraft(lane, craft);
            batch.SetField(lane, 1.225, 0);
            batch.SetState(lane, state);
            batch.SetCommand(lane, 0, lane == 0 ? 0 : random.NextDouble());
        }
        for (int step = 0; step < 2000; step++) batch.Step(Integrator.Midpoint, 1 / 8000.0);
        // no propeller is driven by the flow to tips of more than ten times the flow's speed
        double bound = Math.Max(1.3 * most, 10 * gale * Math.Sqrt(2) / rotor.Radius);
        for (int lane = 0; lane < 8; lane++)
        {
            double end = batch.GetState(lane).RotorSpeeds[0];
            Assert.True(Math.Abs(end) <= bound, $"{name}: from {start[lane]:F0} to {end:F0} rad/s");
        }
    }

    /// <summary>A motor that suits the propeller: as strong as the air at a tip speed of 150 m/s asks for.</summary>
    private static RotorConstants Rotor(double radius, RotorTable table)
    {
        double torque = 1.225 * Math.PI * Math.Pow(radius, 3) * 150 * 150 * table.At(150, 1, 0, 0).Torque, kt = 25 * radius / 220;
        return new()
        {
            p_BcmR_B = Vec3.Zero,
            Spin = 1,
            Radius = radius,
            Table = table,
            // as a propeller of 2 g at 65 mm radius and its bell, and as R^5 for others
            SpinInertia = 7e-6 * Math.Pow(radius / 0.065, 5),
            Kt = kt,
            Resistance = 0.25 * 25 * kt / torque / 4,
            CurrentLimit = 2 * torque / kt,
            BrakeCurrentLimit = 2 * torque / kt,
            TorqueLimit = 3 * torque,
        };
    }
}
