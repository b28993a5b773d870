using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Mass;

public class MassPropertiesTests
{
    [Fact]
    public void Worked_composite_comes_out_to_the_last_printed_digit()
    {
        MassProperties craft = MassProperties.Combine(WorkedParts());
        Mat3 i = craft.I_BBcm_O;
        PrincipalInertia principal = craft.Principal();

        // Worked apart from this project from the handbook formulas; printed to eleven digits.
        Assert.Equal(0.452, craft.Mass, 1e-12);
        MassAssert.Equal(new(-1.548672566e-3, 0, 7.230088496e-3), craft.p_OBcm_O, 1e-12);
        Assert.Equal(1.0139672475e-3, i.M00, 1e-13);
        Assert.Equal(1.2133831767e-3, i.M11, 1e-13);
        Assert.Equal(1.9876116159e-3, i.M22, 1e-13);
        Assert.Equal(5.3138938053e-5, i.M02, 1e-13);
        Assert.Equal(5.3138938053e-5, i.M20, 1e-13);
        Assert.Equal(0, i.M01, 1e-17);
        Assert.Equal(0, i.M12, 1e-17);
        MassAssert.Equal(new(1.0110756522e-3, 1.2133831767e-3, 1.9905032111e-3), principal.Moments, 1e-13);
        Assert.True(craft.IsPhysical);
    }

    [Fact]
    public void Rotation_and_placement_agree_with_sampled_points()
    {
        Mat3 turnBox = Quat.FromEuler(0.4, -0.7, 1.9).ToMatrix();
        Mat3 turnTube = Quat.FromEuler(-1.1, 0.2, 0.5).ToMatrix();
        Vec3 atBox = new(0.03, -0.05, 0.02);
        Vec3 atTube = new(-0.06, 0.01, -0.04);
        MassProperties body = MassProperties.Combine(
        [
            MassProperties.Box(0.2, 0.08, 0.04, 0.02).Rotated(turnBox).Translated(atBox),
            MassProperties.HollowCylinder(0.1, 0.01, 0.02, 0.05).Rotated(turnTube).Translated(atTube),
        ]);
        PointCloud cloud = PointCloud.Fill(0.2, new(0.04, 0.02, 0.01), 60, _ => true).Placed(turnBox, atBox)
            .With(PointCloud.Fill(0.1, new(0.02, 0.02, 0.025), 60, p => Math.Sqrt((p.X * p.X) + (p.Y * p.Y)) is >= 0.01 and <= 0.02)
                .Placed(turnTube, atTube));
        double scale = body.I_BBcm_O.Trace;

        // The grid leaves out 1/n^2 of a box and a little at a curved edge: measured under 2e-5 of the trace.
        MassAssert.Equal(cloud.Sum(), body, position: 1e-12, inertia: 1e-4 * scale);
        Vec3 far = new(0.3, -0.2, 0.5);
        MassAssert.Equal(cloud.InertiaAbout(far), body.InertiaAbout(far), 1e-4 * scale);
    }

    [Fact]
    public void Rotated_turns_the_centre_about_the_origin()
    {
        MassProperties body = MassProperties.Box(1, 0.1, 0.2, 0.3).Translated(new(1, 0, 0));
        MassProperties turned = body.Rotated(Quat.FromAxisAngle(Vec3.UnitZ, Math.PI / 2).ToMatrix());

        MassAssert.Equal(new(0, 1, 0), turned.p_OBcm_O, 1e-15);
        // A quarter turn about z swaps the moments about x and y.
        Assert.Equal(body.I_BBcm_O.M00, turned.I_BBcm_O.M11, 1e-15);
        Assert.Equal(body.I_BBcm_O.M11, turned.I_BBcm_O.M00, 1e-15);
    }

    [Fact]
    public void Matrix_that_is_no_rotation_is_refused()
    {
        MassProperties box = MassProperties.Box(1, 0.1, 0.2, 0.3);

        Assert.Throws<ArgumentException>(() => box.Rotated(2 * Mat3.Identity));
        Assert.Throws<ArgumentException>(() => box.Rotated(Mat3.Diagonal(1, 1, -1)));
        Assert.Throws<ArgumentException>(() => box.Rotated(Mat3.Diagonal(double.NaN, 1, 1)));
    }

    [Fact]
    public void Parts_without_mass_do_not_make_a_body()
    {
        Assert.Throws<ArgumentException>(() => MassProperties.Combine([]));
        ArgumentException error = Assert.Throws<ArgumentException>(() => MassProperties.Combine([MassProperties.Point(0)]));

        Assert.Contains("0 kg", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Impossible_bodies_are_told_from_possible_ones()
    {
        static MassProperties Body(double mass, Mat3 inertia) => new(mass, Vec3.Zero, inertia);

        Assert.True(MassProperties.Box(0.5, 0.1, 0.2, 0.01).IsPhysical);
        Assert.True(MassProperties.Disc(0.1, 0.05).Rotated(Quat.FromEuler(0.3, 0.4, 0.5).ToMatrix()).IsPhysical);
        Assert.True(Body(1, new(2, 0.5, 0, 0.5, 2, 0, 0, 0, 2)).IsPhysical);
        Assert.False(MassProperties.Point(1).IsPhysical);
        Assert.False(MassProperties.Rod(1, 1).IsPhysical);
        Assert.False(Body(1, Mat3.Diagonal(1, 1, 2.001)).IsPhysical);
        Assert.False(Body(1, Mat3.Diagonal(-1, 1, 1)).IsPhysical);
        // The diagonal looks right; the product of inertia makes one moment negative.
        Assert.False(Body(1, new(2, 2.1, 0, 2.1, 2, 0, 0, 0, 3)).IsPhysical);
        Assert.False(Body(1, new(2, 0.1, 0, 0, 2, 0, 0, 0, 2)).IsPhysical);
        Assert.False(Body(0, Mat3.Identity).IsPhysical);
        Assert.False(Body(-1, Mat3.Identity).IsPhysical);
        Assert.False(Body(double.NaN, Mat3.Identity).IsPhysical);
        Assert.False(Body(1, Mat3.Diagonal(1, double.NaN, 1)).IsPhysical);
        Assert.False(Body(1, Mat3.Diagonal(1, 1, double.PositiveInfinity)).IsPhysical);
        Assert.False(new MassProperties(1, new(double.NaN, 0, 0), Mat3.Identity).IsPhysical);
    }

    /// <summary>A five-inch craft in eleven parts: plate, battery, four arms, four motors, camera.</summary>
    private static MassProperties[] WorkedParts()
    {
        List<MassProperties> parts =
        [
            MassProperties.Box(0.080, 0.100, 0.040, 0.020),
            MassProperties.Box(0.180, 0.075, 0.035, 0.030).Translated(new(-0.010, 0, 0.025)),
            MassProperties.Box(0.020, 0.020, 0.020, 0.020)
                .Rotated(Quat.FromAxisAngle(Vec3.UnitY, -Math.PI / 6).ToMatrix())
                .Translated(new(0.055, 0, -0.012)),
        ];
        for (int arm = 0; arm < 4; arm++)
        {
            double azimuth = Math.PI * ((2 * arm) + 1) / 4;
            Vec3 outward = new(Math.Cos(azimuth), Math.Sin(azimuth), 0);
            Mat3 turn = Quat.FromAxisAngle(Vec3.UnitZ, azimuth).ToMatrix();
            parts.Add(MassProperties.Rod(0.012, 0.085).Rotated(turn).Translated(0.0625 * outward));
            parts.Add(MassProperties.Cylinder(0.031, 0.0139, 0.018).Translated((0.110 * outward) + new Vec3(0, 0, -0.008)));
        }
        return [.. parts];
    }
}
