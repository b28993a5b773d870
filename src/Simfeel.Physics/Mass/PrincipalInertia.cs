using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Mass;

/// <summary>Principal moments and axes of an inertia tensor: I_O = R_OP diag(Moments) R_OP^T.</summary>
/// <param name="Moments">Principal moments, ascending, kg m^2.</param>
/// <param name="R_OP">
/// Rotation matrix whose columns are the unit principal axes in O, right-handed. The first two point so that their
/// largest component is positive. Where moments are equal their axes are any orthogonal pair of the plane.
/// </param>
public readonly record struct PrincipalInertia(Vec3 Moments, Mat3 R_OP)
{
    // Cyclic Jacobi converges quadratically: a 3 x 3 matrix takes four to six sweeps.
    private const int MaxSweeps = 32;

    // Off-diagonal elements this small against the largest element cannot move a diagonal one.
    private const double Negligible = 1e-20;

    /// <summary>Axis 0, 1 or 2 (ascending moments), unit vector in O.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The axis is not 0, 1 or 2.</exception>
    public Vec3 Axis(int axis) => R_OP * axis switch
    {
        0 => Vec3.UnitX,
        1 => Vec3.UnitY,
        2 => Vec3.UnitZ,
        _ => throw new ArgumentOutOfRangeException(nameof(axis), axis, $"A principal axis is 0, 1 or 2, not {axis}."),
    };

    /// <summary>
    /// Principal moments and axes by cyclic Jacobi rotations (Golub and Van Loan, Matrix Computations, section
    /// "Jacobi methods" of the symmetric eigenvalue problem). Only the upper triangle of the tensor is read.
    /// </summary>
    /// <exception cref="ArgumentException">An element is not finite.</exception>
    public static PrincipalInertia Of(Mat3 I_O)
    {
        Span<double> a = [I_O.M00, I_O.M01, I_O.M02, I_O.M01, I_O.M11, I_O.M12, I_O.M02, I_O.M12, I_O.M22];
        Span<double> axes = [1, 0, 0, 0, 1, 0, 0, 0, 1];
        double largest = 0;
        foreach (double element in a)
        {
            if (!double.IsFinite(element)) throw new ArgumentException($"An element of the inertia tensor is {element}, not finite.", nameof(I_O));
            largest = Math.Max(largest, Math.Abs(element));
        }

        for (int sweep = 0; sweep < MaxSweeps; sweep++)
        {
            if (Math.Abs(a[1]) + Math.Abs(a[2]) + Math.Abs(a[5]) <= Negligible * largest) break;
            Annihilate(a, axes, 0, 1);
            Annihilate(a, axes, 0, 2);
            Annihilate(a, axes, 1, 2);
        }
        return Sorted(a, axes);
    }

    /// <summary>Turns the plane of axes p and q so that element (p, q) vanishes.</summary>
    private static void Annihilate(Span<double> a, Span<double> axes, int p, int q)
    {
        double apq = a[(3 * p) + q];
        if (apq == 0) return;
        double theta = (a[4 * q] - a[4 * p]) / (2 * apq);
        // The smaller root of t^2 + 2 theta t - 1 = 0 keeps the angle within 45 degrees, which makes the sweep converge.
        double t = Math.CopySign(1, theta) / (Math.Abs(theta) + Math.Sqrt((theta * theta) + 1));
        double c = 1 / Math.Sqrt((t * t) + 1);
        double s = t * c;

        int r = 3 - p - q;
        double arp = a[(3 * r) + p];
        double arq = a[(3 * r) + q];
        a[4 * p] -= t * apq;
        a[4 * q] += t * apq;
        a[(3 * p) + q] = a[(3 * q) + p] = 0;
        a[(3 * r) + p] = a[(3 * p) + r] = (c * arp) - (s * arq);
        a[(3 * r) + q] = a[(3 * q) + r] = (s * arp) + (c * arq);
        for (int row = 0; row < 3; row++)
        {
            double vp = axes[(3 * row) + p];
            double vq = axes[(3 * row) + q];
            axes[(3 * row) + p] = (c * vp) - (s * vq);
            axes[(3 * row) + q] = (s * vp) + (c * vq);
        }
    }

    private static PrincipalInertia Sorted(ReadOnlySpan<double> a, ReadOnlySpan<double> axes)
    {
        Span<int> order = [0, 1, 2];
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = 0; i < 2 - pass; i++)
            {
                if (a[4 * order[i]] > a[4 * order[i + 1]]) (order[i], order[i + 1]) = (order[i + 1], order[i]);
            }
        }
        Vec3 x = Upward(Column(axes, order[0]));
        Vec3 y = Upward(Column(axes, order[1]));
        Vec3 z = Vec3.Cross(x, y);
        return new(
            new(a[4 * order[0]], a[4 * order[1]], a[4 * order[2]]),
            new(x.X, y.X, z.X, x.Y, y.Y, z.Y, x.Z, y.Z, z.Z));
    }

    private static Vec3 Column(ReadOnlySpan<double> axes, int column) => new(axes[column], axes[3 + column], axes[6 + column]);

    /// <summary>The vector or its opposite, whichever has a positive largest component.</summary>
    private static Vec3 Upward(Vec3 v)
    {
        double largest = Math.Abs(v.X) >= Math.Abs(v.Y) ? v.X : v.Y;
        if (Math.Abs(v.Z) > Math.Abs(largest)) largest = v.Z;
        return largest < 0 ? -v : v;
    }
}
