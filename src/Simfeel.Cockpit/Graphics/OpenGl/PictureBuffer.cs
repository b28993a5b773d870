using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>A framebuffer of our own with depth, that grows when a larger picture is asked for.</summary>
internal sealed unsafe class PictureBuffer
{
    private readonly GL _gl;
    private readonly uint _framebuffer, _colour, _depth;
    private readonly uint _samples;

    /// <summary>Makes it, empty.</summary>
    /// <param name="store">Owner.</param>
    /// <param name="samples">0: the colour is a texture; more: a multisampled buffer to be resolved.</param>
    public PictureBuffer(GlStore store, int samples)
    {
        _gl = store.Gl;
        _samples = (uint)samples;
        _framebuffer = store.Framebuffer();
        _depth = store.Renderbuffer();
        if (samples > 0) _colour = store.Renderbuffer();
        else Texture = store.Texture(1, 1, InternalFormat.Rgba8, PixelFormat.Rgba, PixelType.UnsignedByte, default, repeat: false, mipmaps: false);
    }

    /// <summary>Colour as a texture; 0 when multisampled.</summary>
    public uint Texture { get; }

    /// <summary>Width there is room for, pixels.</summary>
    public int Width { get; private set; }

    /// <summary>Height there is room for, pixels.</summary>
    public int Height { get; private set; }

    /// <summary>The framebuffer with room for a picture.</summary>
    public uint Sized(int width, int height)
    {
        if (width <= Width && height <= Height) return _framebuffer;
        (Width, Height) = (Math.Max(width, Width), Math.Max(height, Height));
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        _gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _depth);
        _gl.RenderbufferStorageMultisample(RenderbufferTarget.Renderbuffer, _samples, InternalFormat.DepthComponent24, (uint)Width, (uint)Height);
        _gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.DepthAttachment, RenderbufferTarget.Renderbuffer, _depth);
        if (_samples > 0)
        {
            _gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _colour);
            _gl.RenderbufferStorageMultisample(RenderbufferTarget.Renderbuffer, _samples, InternalFormat.Rgba8, (uint)Width, (uint)Height);
            _gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, RenderbufferTarget.Renderbuffer, _colour);
        }
        else
        {
            _gl.ActiveTexture(TextureUnit.Texture0 + (int)TextureSlot.Picture);
            _gl.BindTexture(TextureTarget.Texture2D, Texture);
            _gl.TexImage2D(TextureTarget.Texture2D, 0, InternalFormat.Rgba8, (uint)Width, (uint)Height, 0, PixelFormat.Rgba, PixelType.UnsignedByte, null);
            _gl.FramebufferTexture2D(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, TextureTarget.Texture2D, Texture, 0);
        }
        return _framebuffer;
    }
}
