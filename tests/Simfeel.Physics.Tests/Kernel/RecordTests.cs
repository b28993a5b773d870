using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Rows that a batch writes as whole vectors hold the numbers that <see cref="CraftBatch{T}.GetSample"/> gives.</summary>
public class RecordTests
{
    [Fact]
    public void Rows_hold_the_samples()
    {
        for (int craft = 1; craft <= 8; craft++) Check<Lane8>(craft);
        for (int craft = 1; craft <= 4; craft++) Check<Lane4>(craft);
        Check<Lane1>(1);
        Check<LaneF16>(3);
        Check<LaneF16>(16);
    }

    [Fact]
    public void Too_short_a_row_is_refused()
    {
        using CraftBatch<Lane8> batch = Flying<Lane8>();
        double[] row = new double[CraftBatch<Lane8>.RoomFor(RowIndex.States(4), 3) - 1];
        Assert.Throws<ArgumentException>(() => batch.RecordStates(3, row));
        Assert.Throws<ArgumentException>(() => batch.RecordLoads(3, row));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.RecordStates(9, new double[9999]));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.RecordLoads(0, new double[9999]));
    }

    private static void Check<T>(int craft)
        where T : unmanaged, ILane<T>
    {
        using CraftBatch<T> batch = Flying<T>();
        batch.Evaluate();
        double[] states = new double[CraftBatch<T>.RoomFor(RowIndex.States(4), craft)], loads = new double[CraftBatch<T>.RoomFor(RowIndex.Loads(4), craft)];
        batch.RecordStates(craft, states);
        batch.RecordLoads(craft, loads);
        for (int lane = 0; lane < craft; lane++)
        {
            Sample sample = batch.GetSample(lane);
            Span<double> block = new double[StateIndex.Stride];
            StateBlock.Write(sample.State, 4, block);
            for (int n = 0; n < RowIndex.Duty(4); n++) Assert.Equal(block[n], states[(n * craft) + lane]);
            Assert.Equal(batch.Hash(lane), StateBlock.Mix(StateHash.Start, sample.State, 4, true));
            Vec3[] vectors = [sample.a_WB, sample.AngularAcceleration_B, sample.AirVelocity_B, sample.AirForce_B, sample.RotorForce_B];
            for (int n = 0; n < 15; n++) Assert.Equal(vectors[n / 3][n % 3], Load(n));
            Assert.Equal((sample.PackVoltage, sample.PackCurrent), (Load(RowIndex.PackVoltage), Load(RowIndex.PackCurrent)));
            PerRotor[] rotors =
            [
                sample.Thrust, sample.ThrustFactor, sample.AirTorque, sample.MotorTorque, sample.MotorCurrent, sample.ReserveUp, sample.ReserveDown,
            ];
            for (int k = 0; k < 4; k++)
            {
                Assert.Equal(sample.Duty[k], states[((RowIndex.Duty(4) + k) * craft) + lane]);
                for (int n = 0; n < rotors.Length; n++)
                {
                    Assert.Equal(rotors[n][k], Load(RowIndex.PerRotor + (4 * n) + k));
                    Assert.True(n > 2 || rotors[n][k] != 0);
                }
            }

            double Load(int number) => loads[(number * craft) + lane];
        }
    }

    /// <summary>Force on the rotors: all but the body's drag, -1/2 rho |v| A v along each axis.</summary>
    [Fact]
    public void Force_of_the_rotors_is_what_the_bodys_drag_leaves_over()
    {
        using CraftBatch<Lane1> batch = Flying<Lane1>();
        batch.Evaluate();
        Sample sample = batch.GetSample(0);
        Vec3 v = sample.AirVelocity_B, area = TestCraft.Quad(TestCraft.Irregular).DragArea;
        Vec3 drag = -0.5 * 1.2 * v.Length * new Vec3(area.X * v.X, area.Y * v.Y, area.Z * v.Z);
        Bound.Check("rotor force", (sample.AirForce_B - drag - sample.RotorForce_B).Length / sample.AirForce_B.Length, 1e-14);
    }

    /// <summary>A table with factors flies as one whose nodes were multiplied.</summary>
    [Fact]
    public void A_scaled_table_flies_as_one_with_scaled_nodes()
    {
        const double lift = 0.9, drag = 1.15;
        double[] nodes = TestCraft.Irregular.Nodes.ToArray();
        for (int n = 0; n < nodes.Length; n++) nodes[n] *= (n % 4) is 0 or 3 ? lift : drag;
        RotorTable scaled = TestCraft.Irregular.Scaled(lift, drag), made = new(nodes);
        RotorCoefficients a = scaled.At(1500, 0.0635, 3, 4), b = made.At(1500, 0.0635, 3, 4), plain = TestCraft.Irregular.At(1500, 0.0635, 3, 4);
        Assert.Equal(b.Thrust, a.Thrust, 14);
        Assert.Equal(b.Torque, a.Torque, 14);
        Assert.Equal(b.InPlane, a.InPlane, 14);
        Assert.Equal(b.Pitch, a.Pitch, 14);
        Assert.True(Math.Abs(a.Torque - plain.Torque) > 0.1 * Math.Abs(plain.Torque));
        CraftState one = End(scaled), other = End(made), unscaled = End(TestCraft.Irregular);
        Assert.True((one.p_WB - other.p_WB).Length < 1e-10, $"{(one.p_WB - other.p_WB).Length} m apart");
        Assert.True((one.w_WB_B - other.w_WB_B).Length < 1e-8, $"{(one.w_WB_B - other.w_WB_B).Length} rad/s apart");
        Assert.True((one.p_WB - unscaled.p_WB).Length > 1e-3);
        Assert.Throws<ArgumentException>(() => scaled.Scaled(double.NaN, 1));
        Assert.Throws<ArgumentException>(() => scaled.Scaled(1, double.PositiveInfinity));

        static CraftState End(RotorTable table)
        {
            Craft craft = TestCraft.Quad(table);
            return TestCraft.Fly(craft, CraftState.AtRest(craft), Integrator.Midpoint, 1.0 / 4000, 800, 1.2, 9.80665, duty: 0.5);
        }
    }

    private static CraftBatch<T> Flying<T>()
        where T : unmanaged, ILane<T>
    {
        CraftBatch<T> batch = new(4);
        batch.SetEffects(AirEffects.All, 30);
        for (int lane = 0; lane < T.Width; lane++)
        {
            Craft craft = TestCraft.Quad(TestCraft.Irregular, lane);
            batch.SetCraft(lane, craft);
            batch.SetField(lane, 1.2, 9.80665, new(1, -2, 0.3));
            CraftState state = CraftState.AtRest(craft, 0.8);
            (state.p_WB, state.v_WB, state.w_WB_B) = (new(1, 2, -3 - lane), new(3, -1, 4), new(1, 2, -0.5));
            batch.SetState(lane, state);
            for (int k = 0; k < 4; k++) batch.SetCommand(lane, k, 0.4 + (0.05 * k));
        }
        for (int n = 0; n < 200; n++)
        {
            if (n % 4 == 0) batch.RefreshSurroundings(1, n / 4, 0.001);
            batch.Step(Integrator.Midpoint, 1.0 / 4000);
        }
        return batch;
    }
}
