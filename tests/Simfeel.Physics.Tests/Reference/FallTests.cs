using Simfeel.Physics.Air;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Reference;

/// <summary>
/// Check cases of NASA/TM-2015-218675 (D. G. Murri, E. B. Jackson, R. O. Shelton, 2015): bodies released at 30 000 ft,
/// 30 s. The report gives results of several codes and no tolerance; ours are absolute, about three times what separates
/// an independent reproduction from the published end states.
/// </summary>
public class FallTests
{
    private const double Foot = 0.3048, Slug = 14.593902937, SlugFoot2 = 1.3558179483;
    private const double Mu = 3.986004418e14, SphereEarth = 6371007.1809, Start_m = 30000 * Foot;
    private const double Equator = 6378137.0, J2 = 0.00108262982, EarthRate = 7.292115e-5;
    private const double Degree = Math.PI / 180;

    [Theory]
    [InlineData(Integrator.Midpoint)]
    [InlineData(Integrator.RungeKutta)]
    public void Dragless_fall_in_a_uniform_field_is_the_parabola(Integrator integrator)
    {
        Craft craft = TestCraft.RigidBody(Slug, Mat3.Diagonal(3.6 * SlugFoot2, 3.6 * SlugFoot2, 3.6 * SlugFoot2));
        CraftState end = TestCraft.Fly(craft, CraftState.AtRest(craft), integrator, 1.0 / 1024, 30 * 1024, gravity: 9.80665);
        // both methods are exact here but for the rounding of 30 720 additions
        Bound.Check($"parabola, {integrator}, m", Math.Abs(end.p_WB.Z - (0.5 * 9.80665 * 900)), 1e-8);
        Bound.Check($"parabola, {integrator}, m/s", Math.Abs(end.v_WB.Z - (9.80665 * 30)), 2e-9);
    }

    [Theory]
    [InlineData(Integrator.Midpoint)]
    [InlineData(Integrator.RungeKutta)]
    public void Case_1_dragless_sphere_over_the_turning_oblate_earth(Integrator integrator)
    {
        // Start on the equator at rest to the Earth (longitude and latitude 0). In the equatorial plane the radius obeys
        // r'' = -mu/r^2 (1 + 1.5 J2 (a/r)^2) + l^2/r^3 with l = Earth rate r0^2 kept, so a flat world with that
        // gravity at each height falls the same way.
        double l = EarthRate * (Equator + Start_m) * (Equator + Start_m);
        (double altitude, double speed) = Fall(integrator, Sphere(0), h =>
        {
            double r = Equator + h;
            return (Mu / (r * r) * (1 + (1.5 * J2 * (Equator / r) * (Equator / r)))) - (l * l / (r * r * r));
        }, _ => 0);
        Bound.Check($"case 1, altitude, ft, {integrator}", Math.Abs(altitude - 15598.90435), 0.01);
        Bound.Check($"case 1, speed, ft/s, {integrator}", Math.Abs(speed - 960.2930645), 5e-4);
    }

    [Theory]
    [InlineData(Integrator.Midpoint)]
    [InlineData(Integrator.RungeKutta)]
    public void Case_4_sphere_with_drag_over_the_round_still_earth(Integrator integrator)
    {
        (double altitude, double speed) = Fall(
            integrator, Sphere(0.1), h => Mu / ((SphereEarth + h) * (SphereEarth + h)), h => StandardAtmosphere.At(h).Density);
        Bound.Check($"case 4, altitude, ft, {integrator}", Math.Abs(altitude - 16231.30691), 0.01);
        Bound.Check($"case 4, speed, ft/s, {integrator}", Math.Abs(speed - 867.1047769), 5e-4);
    }

    [Fact]
    public void Case_2_brick_turns_as_published()
    {
        // inertia: tables 4 and 5 of the report. North, east and down at the start are the inertial axes; at time t the
        // local ones have turned by Earth rate t + longitude (5.7455e-5 degrees, case 1) about north
        Craft craft = TestCraft.RigidBody(
            0.155404754 * Slug, SlugFoot2 * Mat3.Diagonal(0.001894220, 0.006211019, 0.007194665));
        CraftState start = TestCraft.RigidStart(craft, new(10 * Degree, 20 * Degree, 30 * Degree));
        CraftState end = TestCraft.Fly(craft, start, Integrator.RungeKutta, 1e-3, 30_000);
        Vec3 rate = end.w_WB_B / Degree;
        double worst = Largest(rate.X - 12.61842377, rate.Y + 17.3974447, rate.Z - 31.11960301);
        Bound.Check("case 2, rates, deg/s", worst, 1e-4);

        Quat local = Quat.FromAxisAngle(Vec3.UnitX, -((EarthRate * 30) + (5.745522e-5 * Degree))) * end.q_WB;
        (double roll, double pitch, double yaw) = local.ToEuler();
        worst = Largest((roll / Degree) + 56.15127539, (pitch / Degree) + 3.819633201, (yaw / Degree) + 4.289288509);
        Bound.Check("case 2, angles, deg", worst, 2e-4);
    }

    /// <summary>Tables 1 and 2: one slug, 3.6 slug ft^2, 0.1963495 ft^2.</summary>
    private static Craft Sphere(double dragCoefficient)
    {
        double area = dragCoefficient * 0.1963495 * Foot * Foot;
        return TestCraft.RigidBody(
            Slug, 3.6 * SlugFoot2 * Mat3.Identity, new(area, area, area));
    }

    /// <summary>Height (ft) and downward speed (ft/s) after 30 s, air and gravity taken at the height of each mid-step.</summary>
    private static (double Altitude, double Speed) Fall(
        Integrator integrator, Craft craft, Func<double, double> gravity, Func<double, double> density)
    {
        const double step = 2e-3;
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, CraftState.AtRest(craft));
        for (int n = 0; n < 15_000; n++)
        {
            CraftState now = batch.GetState(0);
            double middle = Start_m - now.p_WB.Z - (0.5 * step * now.v_WB.Z);
            batch.SetField(0, density(middle), gravity(middle));
            batch.Step(integrator, step);
        }
        CraftState end = batch.GetState(0);
        return ((Start_m - end.p_WB.Z) / Foot, end.v_WB.Z / Foot);
    }

    private static double Largest(double a, double b, double c) => Math.Max(Math.Abs(a), Math.Max(Math.Abs(b), Math.Abs(c)));
}
