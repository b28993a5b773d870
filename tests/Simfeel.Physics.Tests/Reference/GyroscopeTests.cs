using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Reference;

/// <summary>
/// Symmetric top, gyrostat and gyroscopic torque (H. Goldstein, Classical Mechanics, chapter 5; P. C. Hughes, Spacecraft
/// Attitude Dynamics, 1986, chapter 3, from memory): with A = Ixx = Iyy, C = Izz (rotors locked) and rotor momentum h
/// along z relative to the body, wx = w cos(lambda t), wy = w sin(lambda t), lambda = ((C - A) wz + h) / A.
/// </summary>
public class GyroscopeTests
{
    private const double A = 0.006, C = 0.010;

    private static readonly Vec3 Rate = new(0.8, 0, 12);

    // lambda and the rates at t = 0.3 s, computed from the closed form
    [Theory]
    [InlineData(0, 8.0, -0.589914972433, 0.540370544421)]
    [InlineData(0.0025, 8.4166666667, -0.652682813069, 0.462606901725)]
    public void Symmetric_body_and_gyrostat_turn_at_the_closed_form_rate(double h, double lambda, double wx, double wy)
    {
        CraftState end = Spin(h, 0.3);
        Assert.Equal(lambda, (((C - A) * Rate.Z) + h) / A, 1e-10);
        Assert.Equal(wx, end.w_WB_B.X, 1e-9);
        Assert.Equal(wy, end.w_WB_B.Y, 1e-9);
        Assert.Equal(Rate.Z, end.w_WB_B.Z, 1e-12);
    }

    [Fact]
    public void Reversing_the_rotors_slows_the_turn()
    {
        double lambda = (((C - A) * Rate.Z) - 0.0025) / A;
        CraftState end = Spin(-0.0025, 0.3);
        Assert.Equal(0.8 * Math.Cos(lambda * 0.3), end.w_WB_B.X, 1e-9);
        Assert.Equal(0.8 * Math.Sin(lambda * 0.3), end.w_WB_B.Y, 1e-9);
    }

    [Fact]
    public void Axis_of_the_top_circles_the_momentum_at_L_over_A()
    {
        // L/A = 20.0159936051 rad/s; angles of L to z 2.2906100426 and of w to z 3.8140748343 degrees
        const double time = 0.25, rate = 20.0159936051;
        Craft craft = Body(0);
        Vec3 momentum_W = TestCraft.Momentum_W(craft, Start(craft, 0));
        Assert.Equal(rate, momentum_W.Length / A, 1e-9);
        Assert.Equal(2.2906100426, Degrees(Math.Atan2(A * Rate.X, C * Rate.Z)), 1e-9);
        Assert.Equal(3.8140748343, Degrees(Math.Atan2(Rate.X, Rate.Z)), 1e-9);

        Vec3 axis_W = Spin(0, time).q_WB.Rotate(Vec3.UnitZ);
        Quat turn = Quat.FromAxisAngle(momentum_W / momentum_W.Length, momentum_W.Length / A * time);
        Assert.Equal(0, (axis_W - turn.Rotate(Vec3.UnitZ)).Length, 1e-9);
    }

    // J 3e-5 kg m^2 at 2000 rad/s, pitched at 5 rad/s: 0.300 N m, tau = -w x h, so -x for a rotor about +z
    [Theory]
    [InlineData(1, -0.3)]
    [InlineData(-1, 0.3)]
    public void Pitching_a_rotor_gives_the_gyroscopic_torque(int spin, double torque)
    {
        Craft craft = new()
        {
            Mass = 1,
            I_BBcm_B = Mat3.Diagonal(0.004, 0.005, 0.007),
            Rotors = [TestCraft.SilentRotor(spin, 3e-5)],
            Battery = TestCraft.FlatBattery(16, 0.02),
        };
        CraftState state = CraftState.AtRest(craft);
        state.w_WB_B = new(0, 5, 0);
        state.RotorSpeeds[0] = 2000;
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, state);
        batch.Evaluate();
        Vec3 acceleration = batch.GetSample(0).AngularAcceleration_B;
        Assert.Equal(torque, 0.004 * acceleration.X, 1e-12);
        Assert.Equal(0, acceleration.Y, 1e-12);
        Assert.Equal(0, acceleration.Z, 1e-12);
    }

    private static double Degrees(double radians) => radians * 180 / Math.PI;

    private static Craft Body(double h) => new()
    {
        Mass = 1,
        I_BBcm_B = Mat3.Diagonal(A, A, C),
        Rotors = [TestCraft.SilentRotor(Math.Sign(h) < 0 ? -1 : 1, 2e-5), TestCraft.SilentRotor(Math.Sign(h) < 0 ? -1 : 1, 3e-5)],
        Battery = TestCraft.FlatBattery(16, 0.02),
    };

    /// <summary>Two unequal rotors share h equally; wz stays constant here, so their relative speeds do too.</summary>
    private static CraftState Start(Craft craft, double h)
    {
        CraftState state = CraftState.AtRest(craft);
        state.w_WB_B = Rate;
        for (int k = 0; k < 2; k++) state.RotorSpeeds[k] = Math.Abs(h) / 2 / craft.Rotors[k].SpinInertia;
        return state;
    }

    private static CraftState Spin(double h, double time)
    {
        Craft craft = Body(h);
        return TestCraft.Fly(craft, Start(craft, h), Integrator.RungeKutta, time / 2000, 2000);
    }
}
