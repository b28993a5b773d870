using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Mass;

public class ShapeTests
{
    // Points along an axis of the sampling grid. A box of n layers lacks 1/n^2 of its moment; a curved edge adds the
    // noise of the points that the grid puts on the wrong side. Largest difference measured: 2.7e-4 of the trace (disc).
    private const int PerAxis = 80;
    private const double Tolerance = 3e-4;

    [Fact]
    public void Box_matches_sampled_points() => AssertSampled(
        MassProperties.Box(0.18, 0.075, 0.035, 0.030), new(0.0375, 0.0175, 0.015), _ => true);

    [Fact]
    public void Cylinder_matches_sampled_points() => AssertSampled(
        MassProperties.Cylinder(0.031, 0.0139, 0.018), new(0.0139, 0.0139, 0.009), p => Radius(p) <= 0.0139);

    [Fact]
    public void Hollow_cylinder_matches_sampled_points() => AssertSampled(
        MassProperties.HollowCylinder(0.02, 0.009, 0.0139, 0.018), new(0.0139, 0.0139, 0.009), p => Radius(p) is >= 0.009 and <= 0.0139);

    [Fact]
    public void Sphere_matches_sampled_points() => AssertSampled(
        MassProperties.Sphere(0.05, 0.02), new(0.02, 0.02, 0.02), p => p.Length <= 0.02);

    [Fact]
    public void Rod_matches_sampled_points() => AssertSampled(
        MassProperties.Rod(0.012, 0.085), new(0.0425, 0, 0), _ => true);

    [Fact]
    public void Disc_matches_sampled_points() => AssertSampled(
        MassProperties.Disc(0.004, 0.0635), new(0.0635, 0.0635, 0), p => Radius(p) <= 0.0635);

    [Fact]
    public void Point_has_no_inertia_of_its_own_and_m_r_squared_elsewhere()
    {
        MassProperties point = MassProperties.Point(0.3);

        Assert.Equal(Mat3.Zero, point.I_BBcm_O);
        Assert.Equal(Vec3.Zero, point.p_OBcm_O);
        // m (r^2 E - r r^T) written out for r = (1, 2, 3): 0.3 x (13, 10, 5) and products 2, 3, 6.
        MassAssert.Equal(
            0.3 * new Mat3(13, -2, -3, -2, 10, -6, -3, -6, 5),
            point.Translated(new(1, 2, 3)).InertiaAbout(Vec3.Zero),
            1e-15);
    }

    [Fact]
    public void Limits_of_the_shapes_meet()
    {
        Assert.Equal(MassProperties.Cylinder(2, 0.3, 0.4), MassProperties.HollowCylinder(2, 0, 0.3, 0.4));
        Assert.Equal(MassProperties.Disc(2, 0.3), MassProperties.Cylinder(2, 0.3, 0));
        Assert.Equal(MassProperties.Rod(2, 0.3), MassProperties.Box(2, 0.3, 0, 0));
        // A thin ring: m r^2 about its axis, half of it about a diameter.
        MassAssert.Equal(Mat3.Diagonal(0.09, 0.09, 0.18), MassProperties.HollowCylinder(2, 0.3, 0.3, 0).I_BBcm_O, 1e-15);
    }

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Negative_or_endless_numbers_are_refused_by_name(double bad)
    {
        AssertRefused("mass", bad, () => MassProperties.Box(bad, 1, 1, 1));
        AssertRefused("x", bad, () => MassProperties.Box(1, bad, 1, 1));
        AssertRefused("y", bad, () => MassProperties.Box(1, 1, bad, 1));
        AssertRefused("z", bad, () => MassProperties.Box(1, 1, 1, bad));
        AssertRefused("mass", bad, () => MassProperties.Cylinder(bad, 1, 1));
        AssertRefused("radius", bad, () => MassProperties.Cylinder(1, bad, 1));
        AssertRefused("height", bad, () => MassProperties.Cylinder(1, 1, bad));
        AssertRefused("mass", bad, () => MassProperties.HollowCylinder(bad, 1, 1, 1));
        AssertRefused("inner", bad, () => MassProperties.HollowCylinder(1, bad, 1, 1));
        AssertRefused("outer", bad, () => MassProperties.HollowCylinder(1, 0, bad, 1));
        AssertRefused("height", bad, () => MassProperties.HollowCylinder(1, 1, 1, bad));
        AssertRefused("mass", bad, () => MassProperties.Rod(bad, 1));
        AssertRefused("length", bad, () => MassProperties.Rod(1, bad));
        AssertRefused("mass", bad, () => MassProperties.Disc(bad, 1));
        AssertRefused("radius", bad, () => MassProperties.Disc(1, bad));
        AssertRefused("mass", bad, () => MassProperties.Sphere(bad, 1));
        AssertRefused("radius", bad, () => MassProperties.Sphere(1, bad));
        AssertRefused("mass", bad, () => MassProperties.Point(bad));
    }

    [Fact]
    public void Bore_wider_than_the_cylinder_is_refused()
    {
        ArgumentOutOfRangeException error =
            Assert.Throws<ArgumentOutOfRangeException>(() => MassProperties.HollowCylinder(1, 0.021, 0.02, 0.1));

        Assert.Equal("inner", error.ParamName);
        Assert.Contains("0.021 m", error.Message, StringComparison.Ordinal);
        Assert.Contains("0.02 m", error.Message, StringComparison.Ordinal);
    }

    private static void AssertSampled(MassProperties solid, Vec3 half, Func<Vec3, bool> inside)
    {
        MassProperties sampled = PointCloud.Fill(solid.Mass, half, PerAxis, inside).Sum();

        MassAssert.Equal(sampled, solid, position: 1e-12, inertia: Tolerance * sampled.I_BBcm_O.Trace);
    }

    private static double Radius(Vec3 p) => Math.Sqrt((p.X * p.X) + (p.Y * p.Y));

    private static void AssertRefused(string name, double value, Func<MassProperties> make)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => make());

        Assert.Equal(name, error.ParamName);
        Assert.Equal(value, error.ActualValue);
        Assert.Contains("0 ", error.Message, StringComparison.Ordinal);
        Assert.Contains("or more", error.Message, StringComparison.Ordinal);
    }
}
