using Simfeel.Physics.Maths;

namespace Simfeel.Builds;

/// <summary>Shapes that stand for parts, for mass properties and for drawing.</summary>
public enum ShapeKind
{
    /// <summary>A mass point.</summary>
    Point,

    /// <summary>A box; size is length, width, height.</summary>
    Box,

    /// <summary>A solid cylinder about its own z; size is diameter, diameter, height.</summary>
    Cylinder,

    /// <summary>A thin-walled or thick ring about its own z; size is outer diameter, inner diameter, height.</summary>
    Ring,

    /// <summary>A slender rod along its own x; size is length, 0, 0.</summary>
    Rod,

    /// <summary>A sphere; size is diameter, diameter, diameter.</summary>
    Sphere,

    /// <summary>A thin disc about its own z; size is diameter, diameter, 0.</summary>
    Disc,
}

/// <summary>A shape with its place and attitude on the craft.</summary>
/// <param name="Kind">Shape.</param>
/// <param name="Size">Size as <see cref="ShapeKind"/> says, m.</param>
/// <param name="p_OC">Centre from the build's origin, body axes, m.</param>
/// <param name="R_OP">Turns components of the part's own axes into body axes.</param>
public sealed record PartShape(ShapeKind Kind, Vec3 Size, Vec3 p_OC, Mat3 R_OP);
