using System.Numerics;
using System.Runtime.CompilerServices;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>Rays from the ground to the sun.</summary>
internal static class SunRay
{
    /// <summary>Whether a solid stands between a place on the ground (in G) and the sun.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool Hits(FieldSolid solid, Vector2 place)
    {
        Vector3 c = GraphicsFrame.Of(solid.p_WC), s = Daylight.Sun, from = new Vector3(place, 0) - c;
        Vector3 half = new((float)solid.Size.X / 2, (float)solid.Size.Y / 2, (float)solid.Size.Z / 2);
        if (solid.Shape == SolidShape.Capsule) return HitsCapsule(from, s, half.X, half.Z);
        (float sin, float cos) = MathF.SinCos((float)solid.Heading);
        Vector3 o = new((from.Y * cos) + (from.X * sin), (from.X * cos) - (from.Y * sin), from.Z);
        Vector3 d = new((s.Y * cos) + (s.X * sin), (s.X * cos) - (s.Y * sin), s.Z);
        Vector3 a = (-half - o) / d, b = (half - o) / d;
        Vector3 near = Vector3.Min(a, b), far = Vector3.Max(a, b);
        float enter = MathF.Max(near.X, MathF.Max(near.Y, near.Z)), leave = MathF.Min(far.X, MathF.Min(far.Y, far.Z));
        return leave > MathF.Max(enter, 0);
    }

    /// <summary>Closest approach of the ray to the capsule's axis, where the ray passes at the axis's height.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool HitsCapsule(Vector3 from, Vector3 s, float radius, float halfHeight)
    {
        float level = (s.X * s.X) + (s.Y * s.Y);
        float t = MathF.Max(0, -((from.X * s.X) + (from.Y * s.Y)) / level);
        float axis = MathF.Max(0, halfHeight - radius);
        // the best point of the axis moves with the ray; three steps bring both together
        for (int k = 0; k < 3; k++)
        {
            float z = Math.Clamp(from.Z + (t * s.Z), -axis, axis);
            t = MathF.Max(0, -Vector3.Dot(from - new Vector3(0, 0, z), s));
        }
        Vector3 p = from + (t * s);
        return Vector3.Distance(p, new(0, 0, Math.Clamp(p.Z, -axis, axis))) < radius;
    }
}
