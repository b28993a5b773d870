using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Graphics.OpenGl;

namespace Simfeel.Cockpit.Graphics;

/// <summary>Depth from the sun: once over the whole field, and about each craft anew for every picture.</summary>
internal sealed unsafe class ShadowMaps
{
    // From clip space to texture space.
    private static readonly Matrix4x4 Half = Matrix4x4.CreateScale(0.5f) * Matrix4x4.CreateTranslation(0.5f, 0.5f, 0.5f);

    private readonly GL _gl;
    private readonly uint _field, _craft, _framebuffer;
    private readonly int _fieldSize, _craftSize;

    /// <summary>Makes the textures and draws the field's.</summary>
    public ShadowMaps(GlStore store, FieldModel field, bool fine)
    {
        _gl = store.Gl;
        (_fieldSize, _craftSize) = fine ? (4096, 1024) : (2048, 512);
        _field = Depth(store, _fieldSize, _fieldSize);
        _craft = Depth(store, SceneRenderer.Slots * _craftSize, _craftSize);
        _framebuffer = store.Framebuffer();
        float radius = 0.71f * field.Edge;
        Matrix4x4 light = Light(new(field.Centre, 0), radius);
        FieldLight = light * Half;
        Begin(_field, 0, 0, _fieldSize, clear: true);
        _gl.PolygonOffset(2, 4);
        field.DrawDepth(light);
        _gl.Disable(EnableCap.PolygonOffsetFill);
    }

    /// <summary>From G to the field's texture.</summary>
    public Matrix4x4 FieldLight { get; }

    /// <summary>Draws the depth of a craft.</summary>
    /// <param name="slot">Its slot; the first that is drawn clears both.</param>
    /// <param name="craft">The craft.</param>
    /// <param name="pose">Its pose.</param>
    /// <param name="clear">Whether it is the first.</param>
    /// <returns>From G to the craft's texture.</returns>
    public Matrix4x4 DrawCraft(int slot, CraftModel craft, in CraftPose pose, bool clear)
    {
        Matrix4x4 light = Light(GraphicsFrame.Of(pose.p_WB), 1.05f * craft.Reach);
        Begin(_craft, slot * _craftSize, 0, _craftSize, clear);
        _gl.PolygonOffset(2, 6);
        craft.DrawDepth(pose, light);
        _gl.Disable(EnableCap.PolygonOffsetFill);
        float share = 1f / SceneRenderer.Slots;
        return light * Half * Matrix4x4.CreateScale(share, 1, 1) * Matrix4x4.CreateTranslation(slot * share, 0, 0);
    }

    /// <summary>Makes the textures readable for the shaders.</summary>
    public void Bind()
    {
        _gl.Bind(TextureSlot.FieldShadow, _field);
        _gl.Bind(TextureSlot.CraftShadow, _craft);
    }

    private void Begin(uint texture, int x, int y, int size, bool clear)
    {
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        _gl.FramebufferTexture2D(FramebufferTarget.Framebuffer, FramebufferAttachment.DepthAttachment, TextureTarget.Texture2D, texture, 0);
        _gl.DrawBuffer(DrawBufferMode.None);
        _gl.ReadBuffer(ReadBufferMode.None);
        _gl.Viewport(x, y, (uint)size, (uint)size);
        if (clear) _gl.Clear(ClearBufferMask.DepthBufferBit);
        _gl.Enable(EnableCap.PolygonOffsetFill);
    }

    /// <summary>Looks from the sun at a sphere.</summary>
    private static Matrix4x4 Light(Vector3 centre, float radius) =>
        Matrix4x4.CreateLookAt(centre + (2 * radius * Daylight.Sun), centre, Vector3.UnitZ) * GraphicsFrame.Parallel(radius, radius, radius, 3 * radius);

    private static uint Depth(GlStore store, int width, int height)
    {
        uint texture = store.Texture(width, height, InternalFormat.DepthComponent24, PixelFormat.DepthComponent, PixelType.UnsignedInt, default, repeat: false, mipmaps: false);
        store.Gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureCompareMode, (int)GLEnum.CompareRefToTexture);
        store.Gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureCompareFunc, (int)GLEnum.Lequal);
        return texture;
    }
}
