using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Application.Offscreen;

/// <summary>A framebuffer of fixed size in place of the window's, for pictures and videos that nobody watches.</summary>
internal sealed unsafe class PictureTarget : IDisposable
{
    private readonly GL _gl;
    private readonly uint _colour, _depth;

    /// <summary>A framebuffer.</summary>
    public PictureTarget(GL gl, int width, int height)
    {
        _gl = gl;
        Width = width;
        Height = height;
        _colour = gl.GenTexture();
        gl.BindTexture(TextureTarget.Texture2D, _colour);
        gl.TexImage2D(TextureTarget.Texture2D, 0, InternalFormat.Rgba8, (uint)width, (uint)height, 0, PixelFormat.Rgba, PixelType.UnsignedByte, null);
        gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMinFilter, (int)GLEnum.Nearest);
        _depth = gl.GenRenderbuffer();
        gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _depth);
        gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Depth24Stencil8, (uint)width, (uint)height);
        Framebuffer = gl.GenFramebuffer();
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, Framebuffer);
        gl.FramebufferTexture2D(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, TextureTarget.Texture2D, _colour, 0);
        gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.DepthStencilAttachment, RenderbufferTarget.Renderbuffer, _depth);
    }

    /// <summary>Its name in OpenGL.</summary>
    public uint Framebuffer { get; }

    /// <summary>Width, pixels.</summary>
    public int Width { get; }

    /// <summary>Height, pixels.</summary>
    public int Height { get; }

    /// <inheritdoc/>
    public void Dispose()
    {
        _gl.DeleteFramebuffer(Framebuffer);
        _gl.DeleteRenderbuffer(_depth);
        _gl.DeleteTexture(_colour);
    }
}
