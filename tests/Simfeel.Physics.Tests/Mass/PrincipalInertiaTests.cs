using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Mass;

public class PrincipalInertiaTests
{
    [Fact]
    public void Diagonal_tensor_is_sorted_by_moment()
    {
        PrincipalInertia principal = PrincipalInertia.Of(Mat3.Diagonal(3, 1, 2));

        Assert.Equal(new Vec3(1, 2, 3), principal.Moments);
        Assert.Equal(Vec3.UnitY, principal.Axis(0));
        Assert.Equal(Vec3.UnitZ, principal.Axis(1));
        Assert.Equal(Vec3.UnitX, principal.Axis(2));
    }

    [Fact]
    public void Textbook_matrix_has_its_textbook_eigenvalues()
    {
        // The second-difference matrix of size 3: eigenvalues 2 - 2 cos(k pi / 4), k = 1..3; eigenvector of the
        // smallest (1, sqrt 2, 1) / 2.
        PrincipalInertia principal = PrincipalInertia.Of(new(2, -1, 0, -1, 2, -1, 0, -1, 2));

        MassAssert.Equal(new(2 - Math.Sqrt(2), 2, 2 + Math.Sqrt(2)), principal.Moments, 1e-15);
        MassAssert.Equal(new(0.5, Math.Sqrt(0.5), 0.5), principal.Axis(0), 1e-15);
    }

    [Fact]
    public void Equal_moments_still_give_a_right_handed_frame()
    {
        PrincipalInertia principal = PrincipalInertia.Of(7e-4 * Mat3.Identity);

        Assert.Equal(new Vec3(7e-4, 7e-4, 7e-4), principal.Moments);
        Assert.Equal(1, principal.R_OP.Determinant, 1e-15);
    }

    [Fact]
    public void Tiny_product_of_inertia_is_not_lost()
    {
        // To first order the axes turn by Ixy / (Ixx - Iyy).
        PrincipalInertia principal = PrincipalInertia.Of(new(1, 1e-9, 0, 1e-9, 2, 0, 0, 0, 3));

        Assert.Equal(-1e-9, principal.Axis(0).Y, 1e-17);
    }

    [Fact]
    public void Zero_tensor_and_bad_arguments()
    {
        Assert.Equal(Vec3.Zero, PrincipalInertia.Of(Mat3.Zero).Moments);
        Assert.Throws<ArgumentException>(() => PrincipalInertia.Of(Mat3.Diagonal(1, double.NaN, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => PrincipalInertia.Of(Mat3.Identity).Axis(3));
    }
}
