using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Fields;

/// <summary>A gate to fly through; its bars are among the solids.</summary>
/// <param name="Name">Short name.</param>
/// <param name="p_WC">Centre of the opening in the world, m.</param>
/// <param name="Heading">Direction in which one flies through, from north towards east, rad.</param>
/// <param name="Width">Width of the opening, m.</param>
/// <param name="Height">Height of the opening, m.</param>
public sealed record FieldGate(string Name, Vec3 p_WC, double Heading, double Width, double Height);

/// <summary>A ring or a line painted on the ground, of known size, to judge speed and height by.</summary>
/// <param name="From">One end of a line or the centre of a ring: north and east, m (z is 0).</param>
/// <param name="To">The other end of a line; for a ring the same point.</param>
/// <param name="Radius">Radius of a ring, m; 0 for a line.</param>
/// <param name="Width">Width of the paint, m.</param>
public sealed record FieldMark(Vec3 From, Vec3 To, double Radius, double Width);

/// <summary>
/// A field to fly over. World W: north, east, down from the middle of the start pad; flat ground at z = 0 on the land,
/// the sea beyond it. Immutable, shared by threads.
/// </summary>
public sealed record FieldMap
{
    /// <summary>Name, shown to users.</summary>
    public required string Name { get; init; }

    /// <summary>Direction the craft look at their start, from north towards east, rad.</summary>
    public required double StartHeading { get; init; }

    /// <summary>Eye of the pilot who stands on the ground, in the world, m.</summary>
    public required Vec3 PilotEye { get; init; }

    /// <summary>Corners of the land, north and east (z is 0), in order, at least three; simple polygon.</summary>
    public required IReadOnlyList<Vec3> Land { get; init; }

    /// <summary>How far the sea lies below the land, m; above 0.</summary>
    public required double SeaDepth { get; init; }

    /// <summary>Solid things.</summary>
    public required IReadOnlyList<FieldSolid> Solids { get; init; }

    /// <summary>Gates.</summary>
    public required IReadOnlyList<FieldGate> Gates { get; init; }

    /// <summary>Paint on the ground.</summary>
    public required IReadOnlyList<FieldMark> Marks { get; init; }
}
