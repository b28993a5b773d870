using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>
/// Order of accuracy of the integrators on a flight where everything moves and everything is smooth: rotors spinning up
/// at unequal duties, tumbling, drag, wind, battery draining; constant rotor coefficients, no limit touched.
/// The order is log2 of the ratio of the changes that two halvings of the step make (Richardson).
/// </summary>
public class ConvergenceTests
{
    private const double Duration = 0.256;

    [Theory]
    [InlineData(Integrator.Midpoint, 64, 2)]
    [InlineData(Integrator.RungeKutta, 32, 4)]
    public void Error_falls_with_the_order_of_the_method(Integrator integrator, int steps, double order)
    {
        double[] coarse = Flown(integrator, steps), middle = Flown(integrator, 2 * steps);
        double[] fine = Flown(integrator, 4 * steps), finest = Flown(integrator, 8 * steps);
        // measured: midpoint 1.986, 1.993; Runge-Kutta 4.124, 4.064
        Bound.Between($"order of {integrator}, first", Math.Log2(Distance(coarse, middle) / Distance(middle, fine)), order - 0.2, order + 0.2);
        Bound.Between($"order of {integrator}, second", Math.Log2(Distance(middle, fine) / Distance(fine, finest)), order - 0.2, order + 0.2);
    }

    [Fact]
    public void Both_methods_go_to_the_same_limit()
    {
        double[] reference = Flown(Integrator.RungeKutta, 2048);
        Bound.Check("midpoint against Runge-Kutta, 1/16 ms", Distance(Flown(Integrator.Midpoint, 4096), reference), 5e-7);
        Bound.Check("Runge-Kutta, 1 ms", Distance(Flown(Integrator.RungeKutta, 256), reference), 5e-9);
    }

    /// <summary>Largest difference, each kind of number scaled by its size in this flight.</summary>
    private static double Distance(double[] a, double[] b)
    {
        double[] scale = [1, 1, 1, 10, 10, 10, 1, 1, 1, 1, 10, 10, 10, 10, 0.1, 2000, 2000, 2000, 2000];
        double worst = 0;
        for (int n = 0; n < a.Length; n++) worst = Math.Max(worst, Math.Abs(a[n] - b[n]) / scale[n]);
        return worst;
    }

    private static double[] Flown(Integrator integrator, int steps)
    {
        Craft craft = SmoothCraft();
        CraftState start = CraftState.AtRest(craft, 0.85);
        start.q_WB = Quat.FromEuler(0.3, -0.2, 0.7);
        start.v_WB = new(6, -3, 2);
        start.w_WB_B = new(4, -3, 2);
        for (int k = 0; k < 4; k++) start.RotorSpeeds[k] = 700 + (60 * k);
        using var batch = TestCraft.Batch(craft, start, 1.2, 9.81, new(2, 1, -0.5));
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, 0.55 + (0.02 * k));
        for (int n = 0; n < steps; n++) batch.Step(integrator, Duration / steps);
        return Numbers(batch.GetState(0));
    }

    /// <summary>Limits out of reach, one slope of open-circuit voltage, coefficients the same everywhere.</summary>
    private static Craft SmoothCraft()
    {
        RotorTable table = TestCraft.Constant(0.018, 0.0022, 0.03, 0.004);
        Craft quad = TestCraft.Quad(table);
        return quad with
        {
            Rotors = [.. quad.Rotors.Select(r => r with { CurrentLimit = 1e4, BrakeCurrentLimit = 1e4, TorqueLimit = 2 })],
        };
    }

    private static double[] Numbers(CraftState s) =>
    [
        s.p_WB.X, s.p_WB.Y, s.p_WB.Z, s.v_WB.X, s.v_WB.Y, s.v_WB.Z, s.q_WB.W, s.q_WB.X, s.q_WB.Y, s.q_WB.Z,
        s.w_WB_B.X, s.w_WB_B.Y, s.w_WB_B.Z, s.Charge, s.PairVoltage,
        s.RotorSpeeds[0], s.RotorSpeeds[1], s.RotorSpeeds[2], s.RotorSpeeds[3],
    ];
}
