using System.Numerics;
using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>Texture units; the samplers of the shaders carry these names after a u.</summary>
internal enum TextureSlot
{
    /// <summary>Colour of the land and its baked shadows, over the whole field.</summary>
    LandColour,

    /// <summary>Grain of grass, gravel and rock, repeated.</summary>
    Grain,

    /// <summary>Slopes of the waves, repeated.</summary>
    Waves,

    /// <summary>Distance from the coast, over the whole field.</summary>
    Coast,

    /// <summary>Panorama of the sky.</summary>
    Sky,

    /// <summary>Depth from the sun over the whole field.</summary>
    FieldShadow,

    /// <summary>Depth from the sun about each craft.</summary>
    CraftShadow,

    /// <summary>Pictures that the lens bends.</summary>
    Picture,
}
