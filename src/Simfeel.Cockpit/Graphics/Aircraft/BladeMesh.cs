using System.Numerics;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>One blade along x in units of the tip radius, from its chords and twists; it moves towards +y and lifts towards -z.</summary>
internal static class BladeMesh
{
    private const int Parts = 10;

    // Thickness over chord of the drawn section.
    private const float Thickness = 0.10f;

    /// <summary>The mesh of a propeller's blade.</summary>
    public static Mesh Of(RotorGeometry geometry)
    {
        Mesh mesh = new();
        double root = Math.Max(geometry.RootCutOut, 0.06);
        for (int k = 0; k < Parts; k++)
        {
            Section a = At(geometry, root, k), b = At(geometry, root, k + 1);
            mesh.Flat(b.Front, b.Top, a.Top, a.Front);
            mesh.Flat(b.Top, b.Back, a.Back, a.Top);
            mesh.Flat(a.Front, a.Back, b.Back, b.Front);
        }
        return mesh;
    }

    /// <summary>Share of the circle at three quarters of the radius that the blades cover.</summary>
    public static float Solidity(RotorGeometry geometry) => (float)(geometry.Blades * geometry.At(0.75).Chord / (2 * Math.PI * 0.75));

    private static Section At(RotorGeometry geometry, double root, int k)
    {
        double share = (double)k / Parts, r = root + (share * (1 - root));
        BladeStation station = geometry.At(r);
        // tips are round
        double chord = station.Chord * (k == Parts ? 0.35 : 1);
        (double sin, double cos) = Math.SinCos(station.Twist);
        Vector3 forward = new(0, (float)(chord * cos), (float)(-chord * sin)), quarter = new((float)r, 0, 0);
        Vector3 top = new(0, (float)(-Thickness * chord * sin), (float)(-Thickness * chord * cos));
        return new(quarter + (0.3f * forward), quarter - (0.05f * forward) + top, quarter - (0.7f * forward));
    }

    private readonly record struct Section(Vector3 Front, Vector3 Top, Vector3 Back);
}
