using System.Numerics;
using Simfeel.Builds;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Physics;
using Simfeel.Physics.Mass;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>What the mass view shows of a craft, in body axes from the centre of gravity.</summary>
internal static class MassInstances
{
    // Spheres have this density, kg/m^3, so that their volume goes with the mass of the part.
    private const double SphereDensity = 1400;

    /// <summary>Length of an arrow for a force of the craft's weight, m.</summary>
    public const double ArrowOfWeight = 0.2;

    /// <summary>Arrow colours: thrust and weight, linear.</summary>
    public static Vector3 Thrust { get; } = LinearColour.Of(0x009E73);

    /// <inheritdoc cref="Thrust"/>
    public static Vector3 Weight { get; } = LinearColour.Of(0xCC79A7);

    /// <summary>Diameter of the sphere that stands for a mass, m.</summary>
    public static double Diameter(double mass) => 2 * Math.Cbrt(3 * mass / (4 * Math.PI * SphereDensity));

    /// <summary>A sphere for every part.</summary>
    public static Instance[] Spheres(AssembledBuild build) =>
    [
        .. build.Parts.Where(p => p.Mass.Mass > 0).Select(part =>
        {
            float d = (float)Diameter(part.Mass.Mass);
            Vector3 p = GraphicsFrame.Body(part.Mass.p_OBcm_O - build.p_OBcm);
            return Instance.Of(Matrix4x4.CreateScale(d) * Matrix4x4.CreateTranslation(p), Livery.Of(part.Group), 0.5f);
        }),
    ];

    /// <summary>
    /// The ellipsoid of uniform density that has the craft's mass and moments of inertia: its half axes are
    /// a_i^2 = 5/(2 m) (I_j + I_k - I_i), from I_i = m (a_j^2 + a_k^2)/5 of a solid ellipsoid (any handbook of mechanics).
    /// </summary>
    public static Vec3 HalfAxes(Craft craft)
    {
        ArgumentNullException.ThrowIfNull(craft);
        Vec3 moments = PrincipalInertia.Of(craft.I_BBcm_B).Moments;
        double sum = moments.X + moments.Y + moments.Z;
        return new(Half(moments.X), Half(moments.Y), Half(moments.Z));

        double Half(double own) => Math.Sqrt(Math.Max(0, 5 / (2 * craft.Mass) * (sum - (2 * own))));
    }

    /// <summary>The ellipsoid along the principal axes.</summary>
    public static Instance Ellipsoid(Craft craft)
    {
        Vec3 half = HalfAxes(craft);
        Matrix4x4 place = Matrix4x4.CreateScale(2 * GraphicsFrame.Body(half)) * GraphicsFrame.Placed(PrincipalInertia.Of(craft.I_BBcm_B).R_OP, Vec3.Zero);
        return Instance.Of(place, LinearColour.Of(0x8FC7E8));
    }

    /// <summary>Shaft and head of an arrow along a unit direction; nothing where it has no length.</summary>
    public static (Instance Shaft, Instance Head) Arrow(Vector3 from, Vector3 direction, float length, float thickness, Vector3 colour)
    {
        float head = MathF.Min(3.2f * thickness, length), shaft = length - head;
        Matrix4x4 turn = Upright(direction);
        return (
            Instance.Of(Matrix4x4.CreateScale(thickness, thickness, shaft) * Matrix4x4.CreateTranslation(0, 0, shaft / 2) * turn * Matrix4x4.CreateTranslation(from), colour, 0.2f),
            Instance.Of(Matrix4x4.CreateScale(2.6f * thickness, 2.6f * thickness, head) * Matrix4x4.CreateTranslation(0, 0, shaft + (head / 2)) * turn * Matrix4x4.CreateTranslation(from), colour, 0.2f));
    }

    /// <summary>Turns z into a unit direction.</summary>
    private static Matrix4x4 Upright(Vector3 d)
    {
        Vector3 x = Vector3.Normalize(MathF.Abs(d.X) < 0.9f ? Vector3.Cross(Vector3.UnitX, d) : Vector3.Cross(Vector3.UnitY, d)), y = Vector3.Cross(d, x);
        return new(x.X, x.Y, x.Z, 0, y.X, y.Y, y.Z, 0, d.X, d.Y, d.Z, 0, 0, 0, 0, 1);
    }
}
