using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Motors;

/// <summary>
/// Spin-up through the whole kernel against closed forms (DC motor textbook; M. Drela, MIT 2007). Two equal rotors turn
/// against each other, so the body stays at rest. The pack's resistance carries both motors' current: at full duty each
/// motor sees R + 2 R0, which is made the 0.07 ohm of the formulas.
/// </summary>
public class SpinUpTests
{
    private const double Voltage = 14.8, R = 0.07, R0 = 0.01, J = 1.2e-5, I0 = 1.1, Load = 2.1e-9, Radius = 0.0635;

    private static readonly double Kt = 60 / (2 * Math.PI * 1950);

    [Fact]
    public void Unloaded_motor_follows_the_exponential_with_J_R_over_Kt2()
    {
        double tau = J * R / (Kt * Kt);
        Assert.Equal(0.035027226, tau, 1e-9);
        Craft craft = Pair(TestCraft.NoAir, 0);
        foreach (int n in new[] { 100, 350, 1000, 3000 })
        {
            CraftState end = TestCraft.Fly(craft, CraftState.AtRest(craft), Integrator.RungeKutta, 1e-4, n, duty: 1);
            double exact = Voltage / Kt * (1 - Math.Exp(-n * 1e-4 / tau));
            Bound.Check($"unloaded spin-up, {n} steps, relative", Math.Abs((end.RotorSpeeds[0] / exact) - 1), 1e-9);
            Assert.Equal(end.RotorSpeeds[0], end.RotorSpeeds[1]);
        }
    }

    [Fact]
    public void Loaded_motor_follows_the_riccati_solution_and_settles_at_the_published_point()
    {
        // J w' = a - b w - c w^2 with a = Kt (v/R - i0), b = Kt^2/R, c = kq and roots w1 > 0 > w2:
        // (w - w1)/(w - w2) decays with the rate c (w1 - w2)/J
        Craft craft = Pair(LoadTable(), I0);
        double a = Kt * ((Voltage / R) - I0), b = Kt * Kt / R;
        double root = Math.Sqrt((b * b) + (4 * Load * a)), w1 = (root - b) / (2 * Load), w2 = (-root - b) / (2 * Load);
        CraftState start = CraftState.AtRest(craft);
        const double first = 100;
        start.RotorSpeeds = PerRotor.All(first);
        foreach (int n in new[] { 100, 400, 1000 })
        {
            CraftState state = TestCraft.Fly(craft, start, Integrator.RungeKutta, 1e-4, n, density: 1.225, duty: 1);
            double ratio = (first - w1) / (first - w2) * Math.Exp(-root / J * n * 1e-4);
            double exact = (w1 - (ratio * w2)) / (1 - ratio);
            Bound.Check($"loaded spin-up, {n} steps, relative", Math.Abs((state.RotorSpeeds[0] / exact) - 1), 1e-9);
        }

        // w 2953.034388 rad/s, i 4.839551623 A, Q = (i - i0) Kt = kq w^2 = 0.018312865410 N m, computed from the closed form
        CraftState settled = TestCraft.Fly(craft, start, Integrator.RungeKutta, 1e-4, 20_000, density: 1.225, duty: 1);
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, settled, 1.225, duty: 1);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);
        Bound.Check("settled speed, rad/s", Math.Abs(settled.RotorSpeeds[0] - 2953.034388), 1e-6);
        Bound.Check("settled current, A", Math.Abs(sample.MotorCurrent[0] - 4.839551623), 1e-9);
        Bound.Check("settled torque, N m", Math.Abs(sample.AirTorque[0] - 0.018312865410), 1e-11);
        Bound.Check("settled balance, N m", Math.Abs(sample.AirTorque[0] - sample.MotorTorque[0]), 1e-12);
    }

    [Fact]
    public void Small_disturbance_of_the_loaded_motor_decays_with_the_linear_time_constant()
    {
        // J / (Kt^2/R + 2 kq w) = 0.033803446 s
        Craft craft = Pair(LoadTable(), I0);
        double b = Kt * Kt / R, a = Kt * ((Voltage / R) - I0), w1 = (Math.Sqrt((b * b) + (4 * Load * a)) - b) / (2 * Load);
        double tau = J / (b + (2 * Load * w1));
        Assert.Equal(0.033803446, tau, 1e-9);
        CraftState start = CraftState.AtRest(craft);
        start.RotorSpeeds = PerRotor.All(w1 + 0.01);
        CraftState end = TestCraft.Fly(craft, start, Integrator.RungeKutta, 1e-4, 338, density: 1.225, duty: 1);
        double measured = 0.0338 / Math.Log(0.01 / (end.RotorSpeeds[0] - w1));
        Bound.Check("linear time constant, relative", Math.Abs((measured / tau) - 1), 1e-6);
    }

    [Fact]
    public void Coasting_motor_slows_by_its_loss_torques_only()
    {
        // J w' = -L0 - L1 w: w = (w0 + L0/L1) exp(-L1 t / J) - L0/L1 while above the fade
        Craft craft = Pair(TestCraft.NoAir, I0);
        craft = craft with
        {
            Rotors = [.. craft.Rotors.Select(r => r with { BrakeCurrentLimit = 0, LossTorquePerSpeed = 2e-6 })],
        };
        CraftState start = CraftState.AtRest(craft);
        start.RotorSpeeds = PerRotor.All(2500);
        CraftState end = TestCraft.Fly(craft, start, Integrator.RungeKutta, 1e-3, 1000);
        double ratio = Kt * I0 / 2e-6;
        Bound.Check("coasting, relative", Math.Abs((end.RotorSpeeds[0] / (((2500 + ratio) * Math.Exp(-2e-6 / J)) - ratio)) - 1), 1e-9);
        Assert.Equal(start.Charge, end.Charge);
    }

    /// <summary>Torque kq w^2 in air of 1.225 kg/m^3: kq = C rho pi R^5.</summary>
    private static RotorTable LoadTable() => TestCraft.Constant(0, Load / (1.225 * Math.PI * Math.Pow(Radius, 5)), 0, 0);

    private static Craft Pair(RotorTable table, double noLoadCurrent)
    {
        RotorConstants rotor = TestCraft.SilentRotor(1, J) with
        {
            Radius = Radius,
            Table = table,
            Kt = Kt,
            Resistance = R - (2 * R0),
            CurrentLimit = 1e6,
            BrakeCurrentLimit = 1e6,
            TorqueLimit = 1e6,
            LossTorque = Kt * noLoadCurrent,
        };
        return new()
        {
            Mass = 0.5,
            I_BBcm_B = Mat3.Diagonal(1e-3, 1e-3, 2e-3),
            Rotors = [rotor, rotor with { Spin = -1 }],
            Battery = TestCraft.FlatBattery(Voltage, R0),
        };
    }
}
