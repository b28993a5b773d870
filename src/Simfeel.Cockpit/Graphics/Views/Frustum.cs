using System.Numerics;

namespace Simfeel.Cockpit.Graphics.Views;

/// <summary>What lies inside a picture.</summary>
internal static class Frustum
{
    /// <summary>Sides of a view; far and near are left out, since haze and size take care of them.</summary>
    public static void Planes(in Matrix4x4 m, Span<Vector4> planes)
    {
        Vector4 x = new(m.M11, m.M21, m.M31, m.M41), y = new(m.M12, m.M22, m.M32, m.M42), w = new(m.M14, m.M24, m.M34, m.M44);
        planes[0] = Unit(w + x);
        planes[1] = Unit(w - x);
        planes[2] = Unit(w + y);
        planes[3] = Unit(w - y);
    }

    /// <summary>Whether a sphere (centre, radius) reaches into the view.</summary>
    public static bool Touches(ReadOnlySpan<Vector4> planes, Vector4 sphere)
    {
        foreach (Vector4 plane in planes)
        {
            if ((plane.X * sphere.X) + (plane.Y * sphere.Y) + (plane.Z * sphere.Z) + plane.W < -sphere.W) return false;
        }
        return true;
    }

    private static Vector4 Unit(Vector4 plane) => plane / MathF.Sqrt((plane.X * plane.X) + (plane.Y * plane.Y) + (plane.Z * plane.Z));
}
