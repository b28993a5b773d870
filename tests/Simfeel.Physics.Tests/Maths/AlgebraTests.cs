using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Maths;

/// <summary>Vectors, matrices and quaternions against the laws that define them, on numbers without any symmetry.</summary>
public class AlgebraTests
{
    private static readonly Vec3 A = new(2, -3, 5), B = new(7, 11, -13), C = new(-17, 19, 23);
    private static readonly Mat3 M = new(2, -3, 5, 7, 11, -13, -17, 19, 23);

    // Lagrange's identity and the anticommuting unit vectors fix the vector product; the rest is counted by hand.
    [Fact]
    public void Vectors()
    {
        Assert.Equal(new Vec3(9, 8, -8), A + B);
        Assert.Equal(new Vec3(-5, -14, 18), A - B);
        Assert.Equal(new Vec3(-2, 3, -5), -A);
        Assert.Equal(new Vec3(4, -6, 10), 2 * A);
        Assert.Equal(new Vec3(4, -6, 10), A * 2);
        Assert.Equal(new Vec3(0.5, -0.75, 1.25), A / 4);
        Assert.Equal(14 - 33 - 65, Vec3.Dot(A, B));
        Assert.Equal(Math.Sqrt(38), A.Length);
        Assert.Equal(Vec3.UnitZ, Vec3.Cross(Vec3.UnitX, Vec3.UnitY));
        Assert.Equal(Vec3.UnitX, Vec3.Cross(Vec3.UnitY, Vec3.UnitZ));
        Assert.Equal(Vec3.UnitY, Vec3.Cross(Vec3.UnitZ, Vec3.UnitX));
        Assert.Equal(
            (Vec3.Dot(A, C) * Vec3.Dot(B, A)) - (Vec3.Dot(A, A) * Vec3.Dot(B, C)),
            Vec3.Dot(Vec3.Cross(A, B), Vec3.Cross(C, A)));
    }

    // The determinant is the triple product of the rows; an inverse undoes its matrix from both sides.
    [Fact]
    public void Matrices()
    {
        Assert.Equal(Vec3.Dot(A, Vec3.Cross(B, C)), M.Determinant);
        Assert.Equal(new Vec3(Vec3.Dot(A, B), Vec3.Dot(B, B), Vec3.Dot(C, B)), M * B);
        Assert.Equal(36, M.Trace);
        Assert.Equal(M.Determinant * M.Determinant, (M * M.Transpose).Determinant);
        AssertNear(Mat3.Identity, M * M.Inverse, 1e-14);
        AssertNear(Mat3.Identity, M.Inverse * M, 1e-14);
        AssertNear(Mat3.Zero, M + (-1 * M), 0);
        AssertNear(Mat3.Zero, (2 * M) - M - M, 0);
        // (a b^T) c = a (b . c)
        Assert.Equal(A * Vec3.Dot(B, C), Mat3.Outer(A, B) * C);
    }

    // Hamilton, Broom Bridge 1843: i^2 = j^2 = k^2 = ijk = -1.
    [Fact]
    public void Quaternion_units()
    {
        Quat i = new(0, 1, 0, 0), j = new(0, 0, 1, 0), k = new(0, 0, 0, 1), minusOne = new(-1, 0, 0, 0);
        Assert.Equal(minusOne, i * i);
        Assert.Equal(minusOne, j * j);
        Assert.Equal(minusOne, k * k);
        Assert.Equal(minusOne, i * j * k);
        Quat p = new(2, -3, 5, -7);
        Assert.Equal(p, p * Quat.Identity);
        Assert.Equal(p, Quat.Identity * p);
        Assert.Equal(new Quat(87, 0, 0, 0), p * p.Conjugate);
        Assert.Equal(Math.Sqrt(87), p.Norm);
    }

    // Rodrigues 1840: v' = v cos a + (n x v) sin a + n (n . v) (1 - cos a).
    [Theory]
    [InlineData(0.7)]
    [InlineData(-2.3)]
    public void Rotation_about_an_axis(double angle)
    {
        Vec3 n = A / A.Length;
        Vec3 expected = (B * Math.Cos(angle)) + (Vec3.Cross(n, B) * Math.Sin(angle)) + (n * (Vec3.Dot(n, B) * (1 - Math.Cos(angle))));
        Vec3 found = Quat.FromAxisAngle(n, angle).Rotate(B);
        Assert.Equal(0, (expected - found).Length, 1e-13);
        Quat other = Quat.FromAxisAngle(C / C.Length, 1.1);
        Vec3 inTurn = Quat.FromAxisAngle(n, angle).Rotate(other.Rotate(B));
        Assert.Equal(0, (inTurn - (Quat.FromAxisAngle(n, angle) * other).Rotate(B)).Length, 1e-13);
    }

    // ISO 1151: yaw about z, then pitch about the new y, then roll about the new x; nose up and right wing down are positive.
    [Fact]
    public void Angles_of_attitude()
    {
        Quat q = Quat.FromEuler(0.4, -0.9, 2.5);
        (double roll, double pitch, double yaw) = q.ToEuler();
        Assert.Equal(0.4, roll, 1e-14);
        Assert.Equal(-0.9, pitch, 1e-14);
        Assert.Equal(2.5, yaw, 1e-14);
        Vec3 nose = q.Rotate(Vec3.UnitX);
        Assert.Equal(Math.Cos(-0.9) * Math.Cos(2.5), nose.X, 1e-14);
        Assert.Equal(Math.Cos(-0.9) * Math.Sin(2.5), nose.Y, 1e-14);
        Assert.Equal(-Math.Sin(-0.9), nose.Z, 1e-14);
        Assert.Equal(Math.Sin(0.4) * Math.Cos(-0.9), q.Rotate(Vec3.UnitY).Z, 1e-14);
        Assert.Equal(Math.PI / 2, new Quat(Math.Sqrt(0.5), 0, Math.Sqrt(0.5), 0).ToEuler().Pitch, 1e-7);
    }

    [Fact]
    public void Components_by_number()
    {
        Assert.Equal([2, -3, 5], [A[0], A[1], A[2]]);
        Assert.Throws<ArgumentOutOfRangeException>(() => A[3]);
    }

    private static void AssertNear(Mat3 expected, Mat3 found, double tolerance)
    {
        for (int axis = 0; axis < 3; axis++)
        {
            Vec3 unit = new(axis == 0 ? 1 : 0, axis == 1 ? 1 : 0, axis == 2 ? 1 : 0);
            Assert.True(((expected * unit) - (found * unit)).Length <= tolerance, $"{found} is not {expected}.");
        }
    }
}
