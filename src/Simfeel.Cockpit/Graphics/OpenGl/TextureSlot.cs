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

/// <summary>Puts textures where the shaders look for them.</summary>
internal static class TextureSlots
{
    /// <summary>Binds a texture to the unit of a slot, read by its own parameters.</summary>
    public static void Bind(this GL gl, TextureSlot slot, uint texture)
    {
        gl.ActiveTexture(TextureUnit.Texture0 + (int)slot);
        gl.BindTexture(TextureTarget.Texture2D, texture);
        gl.BindSampler((uint)slot, 0);
    }
}
