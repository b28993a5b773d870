using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Lanes;

/// <summary>The kernel's table coordinates and lookup against <see cref="RotorTableGrid"/> and <see cref="RotorTable.At"/>.</summary>
public class TableLookupTests
{
    private const double Radius = 0.0635, Density = 1.2, DiscArea = Math.PI * Radius * Radius;

    // Thrust, torque and in-plane coefficients equal to the node indices: interpolation gives the index coordinates back.
    // The kernel keeps them 1e-5 below the last node, and 1e-9 m/s (m^2/s^2) keep its divisions finite: that shows in the
    // angle (66 nodes a unit) where axial and tip speed are both below a few cm/s.
    [Fact]
    public void Coordinates_are_those_of_the_grid()
    {
        RotorTable table = TestCraft.Filled((i, j, k) => new(i, j, k, 1));
        double inside = 0, all = 0, pitch = 0;
        foreach ((double w, Vec3 v) in States())
        {
            RotorCoefficients got = Measured(table, w, v);
            (double a, double b, double c) = RotorTableGrid.IndicesOf(w, Radius, -v.Z, Math.Sqrt((v.X * v.X) + (v.Y * v.Y)));
            (double, double, int)[] pairs = [(got.Thrust, a, RotorTableGrid.AngleCells), (got.Torque, b, RotorTableGrid.InPlaneCells), (got.InPlane, c, RotorTableGrid.SpeedCells)];
            foreach ((double kernel, double grid, int cells) in pairs)
            {
                if (double.IsNaN(kernel)) continue;
                double error = Math.Abs(kernel - grid);
                all = Math.Max(all, error);
                if (grid < cells - 1e-4) inside = Math.Max(inside, error);
            }
            if (!double.IsNaN(got.Pitch)) pitch = Math.Max(pitch, Math.Abs(got.Pitch - 1));
        }
        Bound.Check("table coordinates", inside, 1e-5);
        Bound.Check("table coordinates, last nodes", all, 1.2e-5);
        Bound.Check("pitch coefficient", pitch, 1e-9);
    }

    [Fact]
    public void Lookup_is_the_trilinear_form_of_the_nodes()
    {
        double worst = 0;
        foreach ((double w, Vec3 v) in States())
        {
            RotorCoefficients got = Measured(TestCraft.Irregular, w, v);
            RotorCoefficients at = TestCraft.Irregular.At(w, Radius, -v.Z, Math.Sqrt((v.X * v.X) + (v.Y * v.Y)));
            foreach (double error in new[] { got.Thrust - at.Thrust, got.Torque - at.Torque, got.InPlane - at.InPlane, got.Pitch - at.Pitch })
            {
                if (!double.IsNaN(error)) worst = Math.Max(worst, Math.Abs(error));
            }
        }
        // 1e-5 of a cell at the last nodes, times the 0.06 between neighbours
        Bound.Check("lookup against the nodes", worst, 1e-6);
    }

    /// <summary>Random working states, and the corners: at rest, backwards, pure climb, pure descent, edgewise.</summary>
    private static IEnumerable<(double W, Vec3 V)> States()
    {
        Random random = new(31);
        for (int n = 0; n < 20_000; n++)
        {
            double size = Math.Pow(10, 2.2 * random.NextDouble());
            yield return (
                random.Next(6) == 0 ? 0 : ((6500 * random.NextDouble()) - 500) * size / 80,
                new(
                    random.Next(6) == 0 ? 0 : size * ((2 * random.NextDouble()) - 1),
                    random.Next(3) == 0 ? 0 : size * ((2 * random.NextDouble()) - 1),
                    random.Next(6) == 0 ? 0 : size * ((2 * random.NextDouble()) - 1)));
        }
        foreach (double w in new double[] { 0, 1000, -300 })
            foreach (Vec3 v in new Vec3[] { new(0, 0, 9), new(0, 0, -9), new(12, 0, 0), new(0, 5, 0), new(1e-3, 0, 30) })
            {
                yield return (w, v);
            }
    }

    /// <summary>Coefficients that the kernel used, from its loads; NaN for those that the state does not show.</summary>
    private static RotorCoefficients Measured(RotorTable table, double w, Vec3 v)
    {
        Craft craft = new()
        {
            Mass = 1,
            I_BBcm_B = Mat3.Identity,
            Rotors = [TestCraft.SilentRotor(1, 1e-9) with { Table = table, Radius = Radius }],
            Battery = TestCraft.FlatBattery(16, 0.02),
        };
        CraftState state = CraftState.AtRest(craft);
        state.v_WB = v;
        state.RotorSpeeds[0] = w;
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, state, Density);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);
        double u2 = (w * w * Radius * Radius) + Vec3.Dot(v, v);
        if (u2 < 1) return new(double.NaN, double.NaN, double.NaN, double.NaN);
        double flow = Density * DiscArea * Math.Sqrt(u2);
        bool edge = Math.Abs(v.X) > 0.1;
        return new(
            sample.Thrust[0] / (Density * DiscArea * u2),
            sample.AirTorque[0] / (Density * DiscArea * Radius * u2),
            edge ? -sample.AirForce_B.X / (flow * v.X) : double.NaN,
            edge ? sample.AngularAcceleration_B.Y / (flow * Radius * v.X) : double.NaN);
    }
}
