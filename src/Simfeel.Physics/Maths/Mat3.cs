namespace Simfeel.Physics.Maths;

/// <summary>A 3 x 3 matrix, element Mrc in row r and column c, counted from 0.</summary>
public readonly record struct Mat3(
    double M00, double M01, double M02,
    double M10, double M11, double M12,
    double M20, double M21, double M22)
{
    /// <summary>The zero matrix.</summary>
    public static Mat3 Zero => default;

    /// <summary>The unit matrix.</summary>
    public static Mat3 Identity => Diagonal(1, 1, 1);

    /// <summary>A diagonal matrix.</summary>
    public static Mat3 Diagonal(double a, double b, double c) => new(a, 0, 0, 0, b, 0, 0, 0, c);

    /// <summary>The outer product a b^T.</summary>
    public static Mat3 Outer(Vec3 a, Vec3 b) => new(
        a.X * b.X, a.X * b.Y, a.X * b.Z,
        a.Y * b.X, a.Y * b.Y, a.Y * b.Z,
        a.Z * b.X, a.Z * b.Y, a.Z * b.Z);

    /// <summary>Sum.</summary>
    public static Mat3 operator +(Mat3 a, Mat3 b) => new(
        a.M00 + b.M00, a.M01 + b.M01, a.M02 + b.M02,
        a.M10 + b.M10, a.M11 + b.M11, a.M12 + b.M12,
        a.M20 + b.M20, a.M21 + b.M21, a.M22 + b.M22);

    /// <summary>Difference.</summary>
    public static Mat3 operator -(Mat3 a, Mat3 b) => a + (-1 * b);

    /// <summary>Product with a scalar.</summary>
    public static Mat3 operator *(double s, Mat3 a) => new(
        s * a.M00, s * a.M01, s * a.M02,
        s * a.M10, s * a.M11, s * a.M12,
        s * a.M20, s * a.M21, s * a.M22);

    /// <summary>Product with a column vector.</summary>
    public static Vec3 operator *(Mat3 a, Vec3 v) => new(
        (a.M00 * v.X) + (a.M01 * v.Y) + (a.M02 * v.Z),
        (a.M10 * v.X) + (a.M11 * v.Y) + (a.M12 * v.Z),
        (a.M20 * v.X) + (a.M21 * v.Y) + (a.M22 * v.Z));

    /// <summary>Matrix product.</summary>
    public static Mat3 operator *(Mat3 a, Mat3 b)
    {
        Vec3 c0 = a * new Vec3(b.M00, b.M10, b.M20);
        Vec3 c1 = a * new Vec3(b.M01, b.M11, b.M21);
        Vec3 c2 = a * new Vec3(b.M02, b.M12, b.M22);
        return new(c0.X, c1.X, c2.X, c0.Y, c1.Y, c2.Y, c0.Z, c1.Z, c2.Z);
    }

    /// <summary>Transpose.</summary>
    public Mat3 Transpose => new(M00, M10, M20, M01, M11, M21, M02, M12, M22);

    /// <summary>Sum of the diagonal.</summary>
    public double Trace => M00 + M11 + M22;

    /// <summary>Determinant.</summary>
    public double Determinant =>
        (M00 * ((M11 * M22) - (M12 * M21))) - (M01 * ((M10 * M22) - (M12 * M20))) + (M02 * ((M10 * M21) - (M11 * M20)));

    /// <summary>Inverse by cofactors; the elements of a singular matrix come out infinite or NaN.</summary>
    public Mat3 Inverse => (1 / Determinant) * new Mat3(
        (M11 * M22) - (M12 * M21), (M02 * M21) - (M01 * M22), (M01 * M12) - (M02 * M11),
        (M12 * M20) - (M10 * M22), (M00 * M22) - (M02 * M20), (M02 * M10) - (M00 * M12),
        (M10 * M21) - (M11 * M20), (M01 * M20) - (M00 * M21), (M00 * M11) - (M01 * M10));

    // The text that a record makes by itself would print Transpose, whose text prints its Transpose, without end.

    /// <summary>The rows in brackets.</summary>
    public override string ToString() => $"[{M00}, {M01}, {M02}; {M10}, {M11}, {M12}; {M20}, {M21}, {M22}]";
}
