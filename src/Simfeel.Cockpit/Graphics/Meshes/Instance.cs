using System.Numerics;
using System.Runtime.InteropServices;

namespace Simfeel.Cockpit.Graphics.Meshes;

/// <summary>One unit mesh placed, sized and coloured; as <c>solid.vert</c> reads it.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct Instance
{
    /// <summary>Rows of the affine matrix from the mesh's axes.</summary>
    public Vector4 Row0, Row1, Row2;

    /// <summary>Colour, linear; w gloss, 0 to 1.</summary>
    public Vector4 Colour;

    /// <summary>Colour of every other band (or of joints), linear; w period of the bands along the mesh's z, m, 0 for none.</summary>
    public Vector4 Second;

    /// <summary>An instance in one colour.</summary>
    /// <param name="place">From the unit mesh to where it stands.</param>
    /// <param name="colour">Linear colour.</param>
    /// <param name="gloss">0 to 1.</param>
    public static Instance Of(in Matrix4x4 place, Vector3 colour, float gloss = 0) => new()
    {
        Row0 = new(place.M11, place.M21, place.M31, place.M41),
        Row1 = new(place.M12, place.M22, place.M32, place.M42),
        Row2 = new(place.M13, place.M23, place.M33, place.M43),
        Colour = new(colour, gloss),
    };

    /// <summary>The same with bands along its z.</summary>
    public readonly Instance Banded(Vector3 second, float period) => this with { Second = new(second, period) };

    /// <summary>Centre and radius of a sphere about the instance; the unit meshes lie within 0.87 of their origin.</summary>
    public readonly Vector4 Bounds()
    {
        Vector3 x = new(Row0.X, Row1.X, Row2.X), y = new(Row0.Y, Row1.Y, Row2.Y), z = new(Row0.Z, Row1.Z, Row2.Z);
        float radius = 0.5f * MathF.Sqrt(x.LengthSquared() + y.LengthSquared() + z.LengthSquared());
        return new(Row0.W, Row1.W, Row2.W, radius);
    }
}
