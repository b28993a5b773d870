using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Reference;

/// <summary>A ball turns evenly about any axis: q = (cos a, n sin a) with a half the angle turned.</summary>
public class QuickTurnTests
{
    /// <summary>
    /// A whole radian in one step: series up to the sixth power of a = 1/2 leave a^6 / 720 of the cosine and a^7 / 5040 of the sine, 1.1e-5
    /// of the attitude.
    /// </summary>
    [Theory]
    [InlineData(1, 0, 0)]
    [InlineData(0, -1, 0)]
    [InlineData(0, 0, 1)]
    [InlineData(0.6, 0, -0.8)]
    public void Half_the_angle_is_that_of_the_closed_form(double x, double y, double z)
    {
        Craft ball = TestCraft.RigidBody(1, Mat3.Diagonal(1e-2, 1e-2, 1e-2));
        Quat q = TestCraft.Fly(ball, TestCraft.RigidStart(ball, new(20 * x, 20 * y, 20 * z)), Integrator.Midpoint, 0.05, 1).q_WB;
        double sine = Math.Sin(0.5);
        Assert.Equal(Math.Cos(0.5), q.W, 2e-5);
        Assert.Equal(x * sine, q.X, 2e-5);
        Assert.Equal(y * sine, q.Y, 2e-5);
        Assert.Equal(z * sine, q.Z, 2e-5);
    }

    /// <summary>What a step leaves behind for the next one is forgotten where the integrator changes in between.</summary>
    [Fact]
    public void A_step_after_one_of_another_kind_is_that_of_a_fresh_start()
    {
        Craft craft = TestCraft.Quad(TestCraft.Irregular);
        CraftState start = CraftState.AtRest(craft, 0.9) with { v_WB = new(3, -1, 0.5), w_WB_B = new(2, -3, 1), RotorSpeeds = PerRotor.All(900) };
        using CraftBatch<Lane1> mixed = TestCraft.Batch(craft, start, 1.2, 9.81, duty: 0.5);
        mixed.Step(Integrator.Midpoint, 1e-3);
        mixed.Step(Integrator.RungeKutta, 1e-3);
        using CraftBatch<Lane1> fresh = TestCraft.Batch(craft, mixed.GetState(0), 1.2, 9.81, duty: 0.5);
        mixed.Step(Integrator.Midpoint, 1e-3);
        fresh.Step(Integrator.Midpoint, 1e-3);
        Assert.Equal(fresh.Hash(0), mixed.Hash(0));
    }
}
