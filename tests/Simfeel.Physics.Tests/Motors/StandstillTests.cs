using Simfeel.Physics.Motors;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Motors;

/// <summary>A motor that stands still does not know which way is forward: its torque is odd in its current.</summary>
public class StandstillTests
{
    [Theory]
    [InlineData(5)]
    [InlineData(60)]
    [InlineData(400)]
    public void Torque_at_rest_is_odd_in_current(double current)
    {
        RotorConstants motor = TestCraft.SilentRotor(1, 1e-5) with { Kt = 0.005, TorqueLimit = 0.3 };
        double torque = MotorModel.MagneticTorque(motor, current, 0);
        Assert.Equal(-torque, MotorModel.MagneticTorque(motor, -current, 0));
        Assert.InRange(torque, 0, Math.Min(0.3, 0.005 * current) * (1 + 1e-15));
    }
}
