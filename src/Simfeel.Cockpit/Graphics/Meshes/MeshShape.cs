namespace Simfeel.Cockpit.Graphics.Meshes;

/// <summary>The unit meshes; all fit a cube of edge 1 about the origin.</summary>
internal enum MeshShape
{
    /// <summary>A cube.</summary>
    Box,

    /// <summary>An upright cylinder.</summary>
    Cylinder,

    /// <summary>An upright tower whose top is 0.64 as wide as its foot.</summary>
    Tower,

    /// <summary>An upright cone.</summary>
    Cone,

    /// <summary>A ball.</summary>
    Ball,

    /// <summary>A lumpy ball of foliage.</summary>
    Crown,

    /// <summary>A boulder with flat faces.</summary>
    Rock,

    /// <summary>A roof: ridge along x at the top.</summary>
    Roof,

    /// <summary>A pipe, 0.8 as wide inside.</summary>
    Pipe,
}
