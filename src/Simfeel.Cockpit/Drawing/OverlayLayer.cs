using Silk.NET.OpenGL;
using Simfeel.Cockpit.Platform;
using SkiaSharp;

namespace Simfeel.Cockpit.Drawing;

/// <summary>
/// A layer as large as the window that texts and plates are drawn on a few times a second and that is laid over every
/// picture. Lives on the thread of the OpenGL context; leaves framebuffer, program, texture unit 0, blending and tests
/// changed, which whoever draws the scene sets for itself.
/// </summary>
public sealed unsafe class OverlayLayer : IDisposable
{
    private readonly GL _gl;
    private readonly GRGlInterface _interface;
    private readonly GRContext _context;
    private readonly FontSet _fonts = new();
    private readonly LayerQuad _quad;
    private GRBackendRenderTarget? _target;
    private SKSurface? _surface;
    private uint _texture, _stencil, _framebuffer;
    private double _drawnAt = double.NegativeInfinity;

    /// <summary>Joins the current OpenGL context.</summary>
    /// <param name="gl">OpenGL.</param>
    /// <param name="addressOf">Address of an OpenGL function by its name, 0 if there is none.</param>
    /// <exception cref="MissingOnMachineException">The driver lacks what two-dimensional drawing needs.</exception>
    public OverlayLayer(GL gl, Func<string, nint> addressOf)
    {
        _gl = gl;
        // the library tries EGL functions that a driver may answer for but not have on a GLX context
        _interface = GRGlInterface.Create(name => name.StartsWith("egl", StringComparison.Ordinal) ? 0 : addressOf(name))
            ?? throw Lacking();
        _context = GRContext.CreateGl(_interface) ?? throw Lacking();
        _quad = new(gl);
        Pen = new(_fonts);
    }

    /// <summary>What draws on the layer, between <see cref="Begin"/> and <see cref="End"/>.</summary>
    public Pen Pen { get; }

    /// <summary>A sentence for each font that is missing on this machine; to be said once.</summary>
    public IReadOnlyList<string> MissingFonts => _fonts.Missing;

    /// <summary>Width, pixels.</summary>
    public int Width { get; private set; }

    /// <summary>Height, pixels.</summary>
    public int Height { get; private set; }

    /// <summary>Gives the layer the size of the window; what was drawn is lost where the size differs.</summary>
    /// <param name="width">Width, pixels; at least 1.</param>
    /// <param name="height">Height, pixels; at least 1.</param>
    public void Resize(int width, int height)
    {
        (width, height) = (Math.Max(1, width), Math.Max(1, height));
        if (width == Width && height == Height) return;
        Release();
        (Width, Height) = (width, height);
        _texture = _gl.GenTexture();
        _gl.BindTexture(TextureTarget.Texture2D, _texture);
        _gl.BindBuffer(BufferTargetARB.PixelUnpackBuffer, 0);
        _gl.TexImage2D(
            TextureTarget.Texture2D, 0, InternalFormat.Rgba8, (uint)width, (uint)height, 0,
            PixelFormat.Rgba, PixelType.UnsignedByte, null);
        _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMinFilter, (int)GLEnum.Nearest);
        _gl.TexParameter(TextureTarget.Texture2D, TextureParameterName.TextureMagFilter, (int)GLEnum.Nearest);
        _stencil = _gl.GenRenderbuffer();
        _gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _stencil);
        _gl.RenderbufferStorage(
            RenderbufferTarget.Renderbuffer, InternalFormat.Depth24Stencil8, (uint)width, (uint)height);
        _framebuffer = _gl.GenFramebuffer();
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, _framebuffer);
        _gl.FramebufferTexture2D(
            FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, TextureTarget.Texture2D, _texture, 0);
        _gl.FramebufferRenderbuffer(
            FramebufferTarget.Framebuffer, FramebufferAttachment.DepthStencilAttachment, RenderbufferTarget.Renderbuffer, _stencil);
        _context.ResetContext();
        _target = new(width, height, 0, 8, new GRGlFramebufferInfo(_framebuffer, (uint)InternalFormat.Rgba8));
        _surface = SKSurface.Create(_context, _target, GRSurfaceOrigin.BottomLeft, SKColorType.Rgba8888) ?? throw Lacking();
        // asked for once: every question makes an object
        Pen.Canvas = _surface.Canvas;
        Invalidate();
    }

    /// <summary>Makes the layer due at the next question.</summary>
    public void Invalidate() => _drawnAt = double.NegativeInfinity;

    /// <summary>Whether it is time to draw the layer anew.</summary>
    /// <param name="time">Now, s; any clock that does not go back.</param>
    /// <param name="rate_Hz">Wanted redraws a second; 0 for only after <see cref="Invalidate"/>.</param>
    public bool IsDue(double time, double rate_Hz) =>
        double.IsNegativeInfinity(_drawnAt) || (rate_Hz > 0 && time - _drawnAt >= 1 / rate_Hz);

    /// <summary>Starts to draw the layer anew, empty.</summary>
    /// <param name="time">Now, s; the clock of <see cref="IsDue"/>.</param>
    public Pen Begin(double time)
    {
        if (_surface is null) throw new InvalidOperationException("The layer has no size yet.");
        _drawnAt = time;
        _context.ResetContext();
        Pen.Canvas.Clear(SKColors.Transparent);
        return Pen;
    }

    /// <summary>Ends what <see cref="Begin"/> started.</summary>
    public void End()
    {
        Pen.Canvas.Flush();
        _context.Flush();
    }

    /// <summary>Lays the layer over a picture of the same size.</summary>
    /// <param name="framebuffer">Framebuffer of the picture; 0 for the window.</param>
    public void Composite(uint framebuffer)
    {
        if (_texture != 0) _quad.Draw(_texture, framebuffer, Width, Height);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Release();
        Pen.Dispose();
        _fonts.Dispose();
        _quad.Dispose();
        _context.Dispose();
        _interface.Dispose();
    }

    private static MissingOnMachineException Lacking() =>
        new("This machine's OpenGL driver cannot draw the window's texts. A newer driver helps.");

    private void Release()
    {
        _surface?.Dispose();
        _target?.Dispose();
        (_surface, _target) = (null, null);
        if (_framebuffer == 0) return;
        _gl.DeleteFramebuffer(_framebuffer);
        _gl.DeleteRenderbuffer(_stencil);
        _gl.DeleteTexture(_texture);
        (_framebuffer, _stencil, _texture) = (0, 0, 0);
    }
}
