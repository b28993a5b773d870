using Simfeel.Physics.Kernel;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Reference;

/// <summary>
/// Falls at constant drag coefficient in uniform air: v = vt tanh(g t / vt), z = (vt^2 / g) ln cosh(g t / vt),
/// vt = sqrt(2 m g / (rho Cd A)) (textbook). Coefficients after S. F. Hoerner, Fluid-Dynamic Drag, 1965 (from memory);
/// rho 1.225 kg/m^3, g 9.80665 m/s^2.
/// </summary>
public class BluffBodyFallTests
{
    // terminal speed, v(1 s), z(1 s), v(3 s) computed from the closed form
    [Theory]
    [InlineData("sphere", 0.5, 0.47, 0.00785398163397448, 46.569162086, 9.664217357, 4.867508214, 26.044004431)]
    [InlineData("cube", 0.5, 1.05, 0.01, 27.611985961, 9.414113177, 4.803582176, 21.751377128)]
    [InlineData("plate", 0.1, 1.18, 0.01, 11.648400320, 8.000212751, 4.414392777, 11.500230049)]
    public void Fall_follows_the_closed_form(
        string body, double mass, double dragCoefficient, double area, double terminal, double v1, double z1, double v3)
    {
        Assert.Equal(terminal, Math.Sqrt(2 * mass * 9.80665 / (1.225 * dragCoefficient * area)), 1e-8);
        double drag = dragCoefficient * area;
        Craft craft = TestCraft.RigidBody(mass, 1e-3 * Mat3.Identity, new(drag, drag, drag));
        foreach (Integrator integrator in Enum.GetValues<Integrator>())
        {
            // 0.5 ms: truncation of the second-order method below the tolerance
            CraftState one = Fall(integrator, 2000), three = Fall(integrator, 6000);
            Bound.Check($"{body}, v(1 s), {integrator}", Math.Abs(one.v_WB.Z - v1), 1e-6);
            Bound.Check($"{body}, z(1 s), {integrator}", Math.Abs(one.p_WB.Z - z1), 1e-6);
            Bound.Check($"{body}, v(3 s), {integrator}", Math.Abs(three.v_WB.Z - v3), 1e-6);
            CraftState settled = Fall(integrator, 60_000);
            Bound.Check($"{body}, terminal, {integrator}", Math.Abs(settled.v_WB.Z - (terminal * Math.Tanh(9.80665 * 30 / terminal))), 1e-6);
        }

        CraftState Fall(Integrator integrator, int steps) =>
            TestCraft.Fly(craft, CraftState.AtRest(craft), integrator, 5e-4, steps, density: 1.225, gravity: 9.80665);
    }

    // oblique fall: drag acts along each body axis with its own area, F_i = -rho/2 (CdA)_i |v| v_i
    [Fact]
    public void Drag_acts_along_body_axes_and_turns_with_the_attitude()
    {
        Vec3 area = new(0.01, 0.02, 0.03), velocity_W = new(3, -4, 12), wind_W = new(1, 2, -0.5);
        Craft craft = TestCraft.RigidBody(2, 1e-3 * Mat3.Identity, area);
        CraftState state = CraftState.AtRest(craft);
        state.q_WB = Quat.FromEuler(0.4, -0.3, 1.1);
        state.v_WB = velocity_W;
        using var batch = TestCraft.Batch(craft, state, 1.1, 9.7, wind_W);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);

        Vec3 air_B = state.q_WB.ToMatrix().Transpose * (velocity_W - wind_W);
        Vec3 force_B = -0.5 * 1.1 * air_B.Length * new Vec3(area.X * air_B.X, area.Y * air_B.Y, area.Z * air_B.Z);
        Bound.Check("oblique drag, air velocity", (sample.AirVelocity_B - air_B).Length, 1e-13);
        Bound.Check("oblique drag, force", (sample.AirForce_B - force_B).Length, 1e-13);
        Vec3 acceleration_W = (state.q_WB.Rotate(force_B) / 2) + new Vec3(0, 0, 9.7);
        Bound.Check("oblique drag, acceleration", (sample.a_WB - acceleration_W).Length, 1e-13);
    }

    // Euler: a force off the centre of gravity turns a body at rest by I w' = p x F.
    [Fact]
    public void Drag_off_the_centre_turns_the_body()
    {
        Vec3 area = new(0.01, 0.02, 0.03), point = new(0.05, -0.03, 0.07), air = new(5, -7, 11);
        Mat3 inertia = new(3e-3, -2e-4, 1e-4, -2e-4, 4e-3, 3e-4, 1e-4, 3e-4, 6e-3);
        Craft craft = TestCraft.RigidBody(2, inertia, area) with { p_BcmD_B = point };
        CraftState state = CraftState.AtRest(craft);
        state.v_WB = air;
        using var batch = TestCraft.Batch(craft, state, 1.1, 9.7, Vec3.Zero);
        batch.Evaluate();

        Vec3 force = -0.5 * 1.1 * air.Length * new Vec3(area.X * air.X, area.Y * air.Y, area.Z * air.Z);
        Vec3 moment = inertia * batch.GetSample(0).AngularAcceleration_B;
        Bound.Check("drag off the centre", (moment - Vec3.Cross(point, force)).Length / moment.Length, 1e-13);
    }
}
