using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Mass;

/// <summary>
/// Mass, centre of gravity and inertia tensor of a rigid body B, all in the axes of a frame O (for a craft: x forward,
/// y right, z down). The tensor is about the body's own centre of gravity; its off-diagonal elements are minus the
/// products of inertia, so the element in row x, column z is the integral of -x z over the mass.
/// </summary>
/// <param name="Mass">kg.</param>
/// <param name="p_OBcm_O">Centre of gravity from the origin of O, m.</param>
/// <param name="I_BBcm_O">Inertia tensor about the centre of gravity, kg m^2; symmetric.</param>
public readonly partial record struct MassProperties(double Mass, Vec3 p_OBcm_O, Mat3 I_BBcm_O)
{
    // How far R R^T may be from the unit matrix: rounding in a chain of products, not a typing error.
    private const double RotationTolerance = 1e-9;

    // Slack on the triangle inequality, relative to the largest moment: a flat body meets it with equality.
    private const double TriangleSlack = 1e-12;

    /// <summary>The body turned about the origin of O, its centre of gravity with it.</summary>
    /// <param name="R_OB">Rotation matrix from the present axes to the new ones: p_new = R_OB p.</param>
    /// <exception cref="ArgumentException">The matrix is not a rotation.</exception>
    public MassProperties Rotated(Mat3 R_OB)
    {
        Mat3 error = (R_OB * R_OB.Transpose) - Mat3.Identity;
        // Written so that NaN fails too.
        if (!(LargestElement(error) <= RotationTolerance && R_OB.Determinant > 0))
            throw new ArgumentException("The matrix is not a rotation: its inverse must be its transpose and its determinant 1.", nameof(R_OB));
        return new(Mass, R_OB * p_OBcm_O, Symmetrised(R_OB * I_BBcm_O * R_OB.Transpose));
    }

    /// <summary>The body moved by a vector given in O, m.</summary>
    public MassProperties Translated(Vec3 p) => this with { p_OBcm_O = p_OBcm_O + p };

    /// <summary>Inertia tensor about any point of O (m, from its origin), in the axes of O, kg m^2: parallel-axis theorem.</summary>
    public Mat3 InertiaAbout(Vec3 point) => I_BBcm_O + PointInertia(Mass, p_OBcm_O - point);

    /// <summary>
    /// Many bodies as one. The centre of gravity is found first, then every tensor is moved straight to it, so no large
    /// terms cancel wherever the origin lies. Sums run in the order given: another order changes the result by
    /// rounding only (a few units in the last place of the largest term).
    /// </summary>
    /// <exception cref="ArgumentException">The bodies have no mass together, so they have no centre of gravity.</exception>
    public static MassProperties Combine(ReadOnlySpan<MassProperties> parts)
    {
        double mass = 0;
        Vec3 moment = Vec3.Zero;
        foreach (MassProperties part in parts)
        {
            mass += part.Mass;
            moment += part.Mass * part.p_OBcm_O;
        }
        if (!(mass > 0))
            throw new ArgumentException($"The {parts.Length} parts weigh {mass} kg together; a body needs a mass above 0.", nameof(parts));

        Vec3 centre = moment / mass;
        Mat3 inertia = Mat3.Zero;
        foreach (MassProperties part in parts) inertia += part.InertiaAbout(centre);
        return new(mass, centre, inertia);
    }

    /// <summary>Principal moments about the centre of gravity and their axes.</summary>
    public PrincipalInertia Principal() => PrincipalInertia.Of(I_BBcm_O);

    /// <summary>
    /// Whether a real solid can have these numbers: mass above 0, tensor symmetric and positive definite, no principal
    /// moment larger than the sum of the two others. A thin rod or a point alone is not such a solid (a moment is 0).
    /// </summary>
    public bool IsPhysical
    {
        get
        {
            Vec3 p = p_OBcm_O;
            if (!(Mass > 0) || !double.IsFinite(Mass) || !double.IsFinite(p.X + p.Y + p.Z)) return false;
            double size = LargestElement(I_BBcm_O);
            if (!double.IsFinite(size) || LargestElement(I_BBcm_O - I_BBcm_O.Transpose) > TriangleSlack * size) return false;
            Vec3 moments = Principal().Moments;
            return moments.X > 0 && moments.X + moments.Y >= moments.Z * (1 - TriangleSlack);
        }
    }

    /// <summary>Tensor of a point mass at p about the origin: m (p.p E - p p^T).</summary>
    private static Mat3 PointInertia(double mass, Vec3 p) => mass * ((Vec3.Dot(p, p) * Mat3.Identity) - Mat3.Outer(p, p));

    private static Mat3 Symmetrised(Mat3 a) => 0.5 * (a + a.Transpose);

    /// <summary>Largest magnitude among the elements; NaN where one is NaN.</summary>
    private static double LargestElement(Mat3 a)
    {
        double row0 = Math.Max(Math.Abs(a.M00), Math.Max(Math.Abs(a.M01), Math.Abs(a.M02)));
        double row1 = Math.Max(Math.Abs(a.M10), Math.Max(Math.Abs(a.M11), Math.Abs(a.M12)));
        double row2 = Math.Max(Math.Abs(a.M20), Math.Max(Math.Abs(a.M21), Math.Abs(a.M22)));
        return Math.Max(row0, Math.Max(row1, row2));
    }
}
