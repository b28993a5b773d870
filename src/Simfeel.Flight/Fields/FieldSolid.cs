using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Fields;

/// <summary>What a solid of a field is; says how it is drawn.</summary>
public enum SolidKind
{
    /// <summary>A house.</summary>
    Building,

    /// <summary>A tower with a lamp.</summary>
    Lighthouse,

    /// <summary>Masonry.</summary>
    Wall,

    /// <summary>A bar of a gate.</summary>
    Gate,

    /// <summary>A pole.</summary>
    Pole,

    /// <summary>Trunk of a tree.</summary>
    Trunk,

    /// <summary>Crown of a tree.</summary>
    Crown,

    /// <summary>A boulder.</summary>
    Rock,
}

/// <summary>Shape of a solid.</summary>
public enum SolidShape
{
    /// <summary>A box: <see cref="FieldSolid.Size"/> is length, width, height, turned about the vertical by the heading.</summary>
    Box,

    /// <summary>An upright capsule: <see cref="FieldSolid.Size"/> is diameter, diameter, whole height.</summary>
    Capsule,
}

/// <summary>One solid thing on a field.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Shape">Its shape.</param>
/// <param name="p_WC">Centre in the world, m.</param>
/// <param name="Size">Size as the shape says, m; every component above 0.</param>
/// <param name="Heading">Turn of its length from north towards east, rad.</param>
public sealed record FieldSolid(SolidKind Kind, SolidShape Shape, Vec3 p_WC, Vec3 Size, double Heading);
