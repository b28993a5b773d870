using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Mass;

/// <summary>Refusals that must hold along every axis and at any size, and which way principal axes point.</summary>
public class MassLimitTests
{
    // R R^T = 1: a matrix that shrinks one axis only is no rotation, though its determinant is above 0.
    [Theory]
    [InlineData(0.5, 1, 1)]
    [InlineData(1, 0.5, 1)]
    [InlineData(1, 1, 0.5)]
    public void A_matrix_that_shrinks_one_axis_is_no_rotation(double x, double y, double z) =>
        Assert.Throws<ArgumentException>(() => MassProperties.Box(1, 0.1, 0.2, 0.3).Rotated(Mat3.Diagonal(x, y, z)));

    // A tensor is symmetric; how much rounding is forgiven must scale with it.
    [Theory]
    [InlineData(1e-7)]
    [InlineData(1)]
    [InlineData(1e7)]
    public void Asymmetry_is_judged_against_the_size_of_the_tensor(double size)
    {
        Assert.False(Body(size, 1e-9).IsPhysical);
        Assert.True(Body(size, 1e-13).IsPhysical);

        static MassProperties Body(double size, double asymmetry) =>
            new(1, Vec3.Zero, size * new Mat3(2, 0.1, 0, 0.1 + asymmetry, 2, 0, 0, 0, 2));
    }

    // The first two axes point so that their largest component is positive, and I axis = moment axis.
    [Fact]
    public void Principal_axes_point_along_their_largest_component()
    {
        Random random = new(7);
        for (int n = 0; n < 200; n++)
        {
            Mat3 turn = Quat.FromEuler(6 * random.NextDouble(), 6 * random.NextDouble(), 6 * random.NextDouble()).ToMatrix();
            Mat3 tensor = turn * Mat3.Diagonal(1, 1.6, 2.1) * turn.Transpose;
            PrincipalInertia principal = PrincipalInertia.Of(tensor);
            Assert.Equal(0, (principal.Moments - new Vec3(1, 1.6, 2.1)).Length, 1e-14);
            for (int axis = 0; axis < 3; axis++)
            {
                Vec3 v = principal.Axis(axis);
                Assert.Equal(0, ((tensor * v) - (principal.Moments[axis] * v)).Length, 1e-14);
                if (axis < 2) Assert.True(new[] { v.X, v.Y, v.Z }.MaxBy(Math.Abs) > 0, $"{v}");
            }
            Assert.Equal(1, principal.R_OP.Determinant, 1e-14);
        }
    }
}
