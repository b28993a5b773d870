using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Tests.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>No state that a flight can reach, and many that none can, gives a number that is not finite.</summary>
public class FiniteTests
{
    [Fact]
    public void Derivative_is_finite_at_any_state()
    {
        Random random = new(4);
        using CraftBatch<Lane8> batch = HashRun.Batch<Lane8>(0);
        for (int n = 0; n < 100_000 / 8; n++)
        {
            for (int lane = 0; lane < 8; lane++) Throw(batch, lane, random, n);
            batch.Evaluate();
            for (int lane = 0; lane < 8; lane++)
            {
                Sample s = batch.GetSample(lane);
                bool finite = Finite(s.a_WB) && Finite(s.AngularAcceleration_B) && Finite(s.AirForce_B)
                    && double.IsFinite(s.PackVoltage) && double.IsFinite(s.PackCurrent);
                for (int k = 0; k < 4; k++)
                {
                    finite &= double.IsFinite(s.AirTorque[k]) && double.IsFinite(s.MotorTorque[k])
                        && double.IsFinite(s.MotorCurrent[k]) && double.IsFinite(s.ReserveUp[k]) && double.IsFinite(s.ReserveDown[k]);
                }
                Assert.True(finite, $"{s.State}");
            }
        }
    }

    private static RotorTable RealTable { get; } = RotorTableBuilder.Build(Specimens.Default(2), Specimens.SeaLevel);

    // 48 states, one second at 8 kHz: rotors end in what air, losses and motors allow
    [Theory]
    [InlineData(Integrator.Midpoint, RotorModel.Table)]
    [InlineData(Integrator.Midpoint, RotorModel.Polynomials)]
    [InlineData(Integrator.RungeKutta, RotorModel.Table)]
    public void Rotors_thrown_at_any_state_stay_bounded(Integrator integrator, RotorModel rotors)
    {
        Random random = new(5);
        double fastest = 0, turning = 0;
        for (int round = 0; round < 6; round++)
        {
            using CraftBatch<Lane8> batch = HashRun.Batch<Lane8>(8 * (round & 1));
            batch.SetRotorModel(rotors);
            // slopes at random would carry polynomials anywhere
            if (rotors == RotorModel.Polynomials)
            {
                for (int lane = 0; lane < 8; lane++) batch.SetCraft(lane, TestCraft.Quad(RealTable, lane));
            }
            for (int lane = 0; lane < 8; lane++) Throw(batch, lane, random, round);
            for (int n = 0; n < 8000; n++)
            {
                batch.Step(integrator, 1.0 / 8000);
                if (n % 400 != 399) continue;
                for (int lane = 0; lane < 8; lane++)
                {
                    CraftState s = batch.GetState(lane);
                    Assert.True(Finite(s.p_WB) && Finite(s.v_WB) && Finite(s.w_WB_B), $"{s}");
                    Assert.Equal(1, s.q_WB.Norm, 1e-12);
                    turning = Math.Max(turning, s.w_WB_B.Length);
                    for (int k = 0; k < 4; k++) fastest = Math.Max(fastest, Math.Abs(s.RotorSpeeds[k]));
                    for (int k = 0; k < 4; k++) Assert.True(double.IsFinite(s.RotorSpeeds[k]));
                }
            }
        }
        Bound.Check($"fastest rotor, rad/s, {integrator}, {rotors}", fastest, 6500);
        Bound.Check($"fastest turning, rad/s, {integrator}, {rotors}", turning, 3000);
    }

    private static void Throw(CraftBatch<Lane8> batch, int lane, Random random, int n)
    {
        CraftState state = new()
        {
            q_WB = Quat.FromEuler(Spread(3), Spread(1.5), Spread(3)),
            v_WB = Within(80),
            w_WB_B = Within(100),
            Charge = n % 4 == 0 ? 0 : 4000 * random.NextDouble(),
            PairVoltage = 0.5 * random.NextDouble(),
        };
        for (int k = 0; k < 4; k++) state.RotorSpeeds[k] = random.Next(10) == 0 ? 0 : -500 + (6500 * random.NextDouble());
        if (n % 7 == 0) state.v_WB = Vec3.Zero;
        if (n % 7 < 2) state.w_WB_B = Vec3.Zero;
        batch.SetState(lane, state);
        for (int k = 0; k < 4; k++) batch.SetCommand(lane, k, random.Next(3) switch { 0 => 0, 1 => 1, _ => random.NextDouble() });

        double Spread(double size) => size * ((2 * random.NextDouble()) - 1);
        Vec3 Within(double size)
        {
            Vec3 v = new(Spread(size), Spread(size), Spread(size));
            return v.Length > size ? v * (size / v.Length) : v;
        }
    }

    private static bool Finite(Vec3 v) => double.IsFinite(v.X) && double.IsFinite(v.Y) && double.IsFinite(v.Z);
}
