using Simfeel.Cockpit.Graphics.OpenGl;

namespace Simfeel.Cockpit.Graphics.Aircraft;

/// <summary>Shaders that all craft share.</summary>
internal sealed class CraftPrograms
{
    /// <summary>Compiles them.</summary>
    public CraftPrograms(GlStore store, ReadOnlySpan<string> defines)
    {
        Solid = new(store, "solid.vert", "solid.frag", defines);
        Ellipsoid = new(store, "solid.vert", "solid.frag", "ELLIPSOID");
        Disc = new(store, "disc.vert", "disc.frag", defines);
        Depth = new(store, "depth.vert", "depth.frag");
        (SolidModel, SolidFade) = (Solid.Location("uModel"), Solid.Location("uFade"));
        (EllipsoidModel, EllipsoidFade) = (Ellipsoid.Location("uModel"), Ellipsoid.Location("uFade"));
        (DiscModel, DiscColour, DiscBlades) = (Disc.Location("uModel"), Disc.Location("uColour"), Disc.Location("uBlades"));
        DepthModel = Depth.Location("uModel");
        Square = VertexLayout.Square(store);
    }

    /// <summary>Programs and the places of their uniforms.</summary>
    public ShaderProgram Solid { get; }

    /// <inheritdoc cref="Solid"/>
    public ShaderProgram Ellipsoid { get; }

    /// <inheritdoc cref="Solid"/>
    public ShaderProgram Disc { get; }

    /// <inheritdoc cref="Solid"/>
    public ShaderProgram Depth { get; }

    /// <inheritdoc cref="Solid"/>
    public int SolidModel { get; }

    /// <inheritdoc cref="Solid"/>
    public int SolidFade { get; }

    /// <inheritdoc cref="Solid"/>
    public int EllipsoidModel { get; }

    /// <inheritdoc cref="Solid"/>
    public int EllipsoidFade { get; }

    /// <inheritdoc cref="Solid"/>
    public int DiscModel { get; }

    /// <inheritdoc cref="Solid"/>
    public int DiscColour { get; }

    /// <inheritdoc cref="Solid"/>
    public int DiscBlades { get; }

    /// <inheritdoc cref="Solid"/>
    public int DepthModel { get; }

    /// <summary>A square of half edge 1, six corners.</summary>
    public uint Square { get; }
}
