using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;
using Simfeel.Physics.Trim;

namespace Simfeel.Physics.Tests.Trim;

/// <summary>Hover against Newton's laws and momentum theory: thrust carries the weight and everything that could change stands still.</summary>
public class HoverLawTests
{
    private const double Density = 1.2, Gravity = 9.8, ChargeLeft = 0.7;

    // Four rotors alike at the corners of a square: weight is shared evenly.
    private static Craft Craft()
    {
        Craft quad = TestCraft.Quad(TestCraft.Constant(0.012, 0.0012, 0.001, 0));
        RotorConstants first = quad.Rotors[0];
        return quad with
        {
            I_BBcm_B = Mat3.Diagonal(2e-3, 2e-3, 4e-3),
            p_BcmD_B = Vec3.Zero,
            Rotors = [.. Enumerable.Range(0, 4).Select(k => first with
            {
                p_BcmR_B = new(k is 0 or 3 ? 0.08 : -0.08, k < 2 ? 0.08 : -0.08, 0),
                Spin = (k & 1) == 0 ? 1 : -1,
            })],
        };
    }

    [Fact]
    public void In_hover_thrust_is_weight_and_nothing_changes()
    {
        Craft craft = Craft();
        HoverTrim hover = HoverTrim.Of(craft, Density, Gravity, ChargeLeft);
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, hover.State, Density, Gravity, Vec3.Zero);
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, hover.Rotor.Duty);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);

        Assert.Equal(craft.Mass * Gravity, 4 * hover.Rotor.Thrust, 1e-7);
        Assert.Equal(0, sample.a_WB.Length, 1e-6);
        Assert.Equal(0, sample.AngularAcceleration_B.Length, 1e-9);
        for (int k = 0; k < 4; k++) Assert.Equal(1, sample.MotorTorque[k] / sample.AirTorque[k], 1e-6);
        // the pair of resistor and capacitor carries all of the current: V = R i
        Assert.Equal(sample.PackCurrent, hover.State.PairVoltage / craft.Battery.PairResistance, 1e-6);
        Assert.Equal(sample.PackVoltage * sample.PackCurrent, hover.Rotor.PackPower, 1e-5);
        // momentum theory of the hovering disc: T = 2 rho A v^2
        double v = hover.State.InducedVelocities[0], area = Math.PI * craft.Rotors[0].Radius * craft.Rotors[0].Radius;
        Assert.Equal(hover.Rotor.Thrust, 2 * Density * area * v * v, 1e-9);
    }
}
