using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>Closed systems: without air and gravity nothing from outside acts, so momentum and energy are accounts that must balance.</summary>
public class ConservationTests
{
    [Theory]
    [InlineData(Integrator.Midpoint)]
    [InlineData(Integrator.RungeKutta)]
    public void Yaw_kick_of_a_spin_up_balances_exactly(Integrator integrator)
    {
        // From rest, with axes of inertia along the body's: the body can only turn about z, total momentum
        // Izz wz + sum s J w is linear in the state, and both methods keep linear invariants to rounding.
        Craft craft = TestCraft.Quad(TestCraft.NoAir);
        craft = craft with { I_BBcm_B = Mat3.Diagonal(2.5e-3, 2.1e-3, 4.3e-3) };
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, CraftState.AtRest(craft));
        double worst = 0, largest = 0;
        for (int n = 0; n < 4000; n++)
        {
            for (int k = 0; k < 4; k++) batch.SetCommand(0, k, n / 500 % 2 == k % 2 ? 0.9 : 0.1);
            batch.Step(integrator, 1.0 / 8000);
            CraftState s = batch.GetState(0);
            Vec3 momentum = TestCraft.Momentum_W(craft, s);
            worst = Math.Max(worst, momentum.Length);
            largest = Math.Max(largest, craft.I_BBcm_B.M22 * Math.Abs(s.w_WB_B.Z));
            Assert.Equal(0, s.w_WB_B.X);
            Assert.Equal(0, s.w_WB_B.Y);
        }
        Assert.True(largest > 0.02, $"The body's own share reached {largest} N m s only.");
        Bound.Check($"yaw kick, {integrator}, N m s of {largest:g2}", worst, 1e-14);
    }

    // Tumbling at 20 rad/s while all motors spin up: the momentum vector in the world stays.
    [Theory]
    [InlineData(Integrator.RungeKutta, 4, 1e-10)]
    [InlineData(Integrator.Midpoint, 2, 2e-5)]
    public void Momentum_of_body_and_rotors_stays_while_motors_spin_up(Integrator integrator, double order, double bound)
    {
        Craft craft = Unlimited(TestCraft.Quad(TestCraft.NoAir));
        CraftState start = CraftState.AtRest(craft);
        start.w_WB_B = new(12, -14, 8);
        for (int k = 0; k < 4; k++) start.RotorSpeeds[k] = 300;
        double coarse = Drift(1e-3), fine = Drift(5e-4);
        Bound.Check($"momentum, {integrator}, relative, 0.5 ms", fine, bound);
        Assert.True(Math.Log2(coarse / fine) > order - 0.3, $"ratio {coarse / fine}");

        double Drift(double step)
        {
            using CraftBatch<Lane1> batch = TestCraft.Batch(craft, start);
            for (int k = 0; k < 4; k++) batch.SetCommand(0, k, 0.3 + (0.1 * k));
            for (int n = 0; n < 0.5 / step; n++) batch.Step(integrator, step);
            Vec3 before = TestCraft.Momentum_W(craft, start);
            return (TestCraft.Momentum_W(craft, batch.GetState(0)) - before).Length / before.Length;
        }
    }

    // Battery: Voc I = V I + R0 I^2 + V1 I; V I = electronics + sum i^2 R + Kt i w; the shaft gets Q w, the rest of Kt i w
    // is iron, friction and saturation; V1 I = V1^2 / R1 + d(C1 V1^2 / 2)/dt. Without air all shaft work is kinetic energy.
    [Fact]
    public void Battery_energy_is_heat_plus_loss_plus_kinetic_energy()
    {
        Craft craft = Unlimited(TestCraft.Quad(TestCraft.NoAir));
        CraftState start = CraftState.AtRest(craft, 0.85);
        start.w_WB_B = new(3, -2, 1);
        for (int k = 0; k < 4; k++) start.RotorSpeeds[k] = 400;
        Ledger coarse = Run(craft, start, 1e-3), fine = Run(craft, start, 5e-4);

        Bound.Check("energy, battery against all, J", Math.Abs(fine.Battery - fine.Everything), 1e-7);
        Assert.True(Math.Abs(coarse.Battery - coarse.Everything) > 8 * Math.Abs(fine.Battery - fine.Everything));
        Assert.True(fine.Kinetic > 20 && fine.Copper > 5 && fine.Loss > 1 && fine.Pair > 0.05, fine.ToString());
    }

    private sealed record Ledger(double Battery, double Copper, double Loss, double Electronics, double Pair, double Kinetic)
    {
        public double Everything => Copper + Loss + Electronics + Pair + Kinetic;
    }

    /// <summary>Powers at every step summed by Simpson's rule over pairs of steps of the fourth-order method.</summary>
    private static Ledger Run(Craft craft, CraftState start, double step)
    {
        BatteryConstants battery = craft.Battery;
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, start);
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, 0.5 + (0.1 * k));
        int steps = (int)Math.Round(0.3 / step);
        double source = 0, copper = 0, loss = 0, electronics = 0, pair = 0;
        for (int n = 0; n <= steps; n++)
        {
            batch.Evaluate();
            Sample s = batch.GetSample(0);
            double weight = step / 3 * (n == 0 || n == steps ? 1 : (n & 1) == 1 ? 4 : 2);
            double i = s.PackCurrent, v1 = s.State.PairVoltage;
            source += weight * i * (s.PackVoltage + (battery.SeriesResistance * i) + v1);
            copper += weight * battery.SeriesResistance * i * i;
            pair += weight * v1 * v1 / battery.PairResistance;
            electronics += weight * battery.ElectronicsPower;
            for (int k = 0; k < 4; k++)
            {
                RotorConstants rotor = craft.Rotors[k];
                double motor = s.MotorCurrent[k], w = s.State.RotorSpeeds[k];
                copper += weight * motor * motor * rotor.Resistance;
                loss += weight * w * ((rotor.Kt * motor) - s.MotorTorque[k]);
            }
            if (n < steps) batch.Step(Integrator.RungeKutta, step);
        }
        CraftState end = batch.GetState(0);
        pair += 0.5 * battery.PairCapacitance * end.PairVoltage * end.PairVoltage;
        return new(source, copper, loss, electronics, pair, TestCraft.KineticEnergy(craft, end) - TestCraft.KineticEnergy(craft, start));
    }

    private static Craft Unlimited(Craft craft) => craft with
    {
        Rotors = [.. craft.Rotors.Select(r => r with { CurrentLimit = 1e4, BrakeCurrentLimit = 1e4, TorqueLimit = 2 })],
    };
}
