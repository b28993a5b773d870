using CsCheck;
using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Mass;

/// <summary>Laws that hold for every body, tried on random composites of all shapes in all attitudes.</summary>
public class CompositePropertyTests
{
    // Rounding of a dozen terms, with room: 3e-15 held in 30 000 composites.
    private const double Rounding = 1e-13;

    private const int Composites = 2000;

    private static readonly Gen<double> Size = Gen.Double[0.002, 0.3];

    private static readonly Gen<Vec3> Place = Gen.Select(
        Gen.Double[-0.5, 0.5], Gen.Double[-0.5, 0.5], Gen.Double[-0.5, 0.5], (x, y, z) => new Vec3(x, y, z));

    private static readonly Gen<Mat3> Turn = Gen.Select(
        Gen.Double[-Math.PI, Math.PI], Gen.Double[-1.5, 1.5], Gen.Double[-Math.PI, Math.PI],
        (roll, pitch, yaw) => Quat.FromEuler(roll, pitch, yaw).ToMatrix());

    private static readonly Gen<MassProperties> Shape = Gen.Select(
        Gen.Int[0, 6], Gen.Double[0.001, 0.5], Size, Size, Size,
        (kind, mass, a, b, c) => kind switch
        {
            0 => MassProperties.Box(mass, a, b, c),
            1 => MassProperties.Cylinder(mass, a, b),
            2 => MassProperties.HollowCylinder(mass, Math.Min(a, b), Math.Max(a, b), c),
            3 => MassProperties.Rod(mass, a),
            4 => MassProperties.Disc(mass, a),
            5 => MassProperties.Sphere(mass, a),
            _ => MassProperties.Point(mass),
        });

    private static readonly Gen<MassProperties> Part = Gen.Select(
        Shape, Turn, Place, (shape, turn, place) => shape.Rotated(turn).Translated(place));

    // One solid box is always there: rods and points alone need not fill space.
    private static readonly Gen<MassProperties[]> Parts = Gen.Select(
        Gen.Double[0.01, 0.5], Size, Size, Size, Part.Array[0, 11],
        (mass, x, y, z, others) => (MassProperties[])[MassProperties.Box(mass, x, y, z), .. others]);

    [Fact]
    public void Tensor_is_symmetric_and_positive_definite() => Parts.Sample(parts =>
    {
        Mat3 i = MassProperties.Combine(parts).I_BBcm_O;

        Assert.Equal(i.Transpose, i);
        // Sylvester's criterion: leading minors above 0.
        Assert.True(i.M00 > 0 && (i.M00 * i.M11) - (i.M01 * i.M10) > 0 && i.Determinant > 0);
    }, iter: Composites);

    [Fact]
    public void Moments_meet_the_triangle_inequality_in_any_axes() => Gen.Select(Parts, Turn).Sample((parts, turn) =>
    {
        MassProperties body = MassProperties.Combine(parts).Rotated(turn);
        Mat3 i = body.I_BBcm_O;

        Assert.True(i.M00 + i.M11 > i.M22 && i.M11 + i.M22 > i.M00 && i.M22 + i.M00 > i.M11);
        Assert.True(body.IsPhysical);
    }, iter: Composites);

    [Fact]
    public void Order_of_the_parts_changes_rounding_only() => Gen.Select(Parts, Gen.Int[0, int.MaxValue]).Sample((parts, seed) =>
    {
        MassProperties[] shuffled = [.. parts];
        new Random(seed).Shuffle(shuffled);

        AssertSame(MassProperties.Combine(parts), MassProperties.Combine(shuffled));
    }, iter: Composites);

    [Fact]
    public void Grouping_of_the_parts_changes_rounding_only() => Gen.Select(Parts, Parts).Sample((left, right) =>
    {
        MassProperties nested = MassProperties.Combine([MassProperties.Combine(left), MassProperties.Combine(right)]);

        AssertSame(MassProperties.Combine([.. left, .. right]), nested);
    }, iter: Composites);

    [Fact]
    public void Turning_every_part_turns_the_body_and_keeps_its_principal_moments() => Gen.Select(Parts, Turn).Sample((parts, turn) =>
    {
        MassProperties body = MassProperties.Combine(parts);
        MassProperties turned = MassProperties.Combine(parts.Select(p => p.Rotated(turn)).ToArray());

        AssertSame(body.Rotated(turn), turned);
        MassAssert.Equal(body.Principal().Moments, turned.Principal().Moments, Rounding * Scale(body));
    }, iter: Composites);

    [Fact]
    public void Moving_every_part_moves_the_centre_and_keeps_the_tensor() => Gen.Select(Parts, Place).Sample((parts, shift) =>
    {
        MassProperties body = MassProperties.Combine(parts);

        AssertSame(body.Translated(shift), MassProperties.Combine(parts.Select(p => p.Translated(shift)).ToArray()));
    }, iter: Composites);

    [Fact]
    public void Inertia_about_a_point_is_the_sum_over_the_parts() => Gen.Select(Parts, Place).Sample((parts, point) =>
    {
        MassProperties body = MassProperties.Combine(parts);
        Mat3 sum = parts.Aggregate(Mat3.Zero, (total, part) => total + part.InertiaAbout(point));

        MassAssert.Equal(sum, body.InertiaAbout(point), Rounding * Scale(body));
    }, iter: Composites);

    [Fact]
    public void Principal_axes_rebuild_the_tensor() => Parts.Sample(parts =>
    {
        MassProperties body = MassProperties.Combine(parts);
        PrincipalInertia principal = body.Principal();
        Vec3 m = principal.Moments;
        Mat3 r = principal.R_OP;

        Assert.True(m.X <= m.Y && m.Y <= m.Z);
        MassAssert.Equal(Mat3.Identity, r * r.Transpose, Rounding);
        Assert.Equal(1, r.Determinant, Rounding);
        MassAssert.Equal(body.I_BBcm_O, r * Mat3.Diagonal(m.X, m.Y, m.Z) * r.Transpose, Rounding * Scale(body));
        MassAssert.Equal(m.Y * principal.Axis(1), body.I_BBcm_O * principal.Axis(1), Rounding * Scale(body));
    }, iter: Composites);

    /// <summary>Mass times the square of the largest distance that these generators produce (about 1 m), or its inertia.</summary>
    private static double Scale(MassProperties body) => body.Mass + body.I_BBcm_O.Trace;

    private static void AssertSame(MassProperties expected, MassProperties actual) =>
        MassAssert.Equal(expected, actual, position: Rounding, inertia: Rounding * Scale(expected));
}
