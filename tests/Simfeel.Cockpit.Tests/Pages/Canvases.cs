using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Tests.Pages;

/// <summary>
/// A pen with a list of the texts that it drew. Its canvas draws nothing unless pixels are asked for, or pictures by the
/// environment variable SIMFEEL_PICTURES, a folder.
/// </summary>
internal sealed class Canvases : IDisposable
{
    private static readonly FontSet Fonts = new();

    private static readonly string Folder = Environment.GetEnvironmentVariable("SIMFEEL_PICTURES") ?? "";

    private readonly SKSurface? _surface;
    private readonly SKCanvas _canvas;

    public Canvases(int width, int height, double scale, bool pixels = false)
    {
        (Width, Height) = (width, height);
        if (pixels || Folder.Length > 0)
            _surface = SKSurface.Create(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Premul));
        _canvas = _surface?.Canvas ?? new SKNoDrawCanvas(width, height);
        Pen = new(Fonts) { Scale = (float)scale, Canvas = _canvas };
        Pen.Log = Texts.Add;
    }

    public int Width { get; }

    public int Height { get; }

    public Pen Pen { get; }

    public List<TextPlaced> Texts { get; } = [];

    /// <summary>Stores the picture where the environment asks for pictures, to be looked at; no test reads it.</summary>
    public void Store(string name)
    {
        if (_surface is null || Folder.Length == 0) return;
        Directory.CreateDirectory(Folder);
        using SKImage image = _surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 90);
        using FileStream file = File.Create(Path.Combine(Folder, FormattableString.Invariant($"{name}-{Width}x{Height}-{Pen.Scale}.png")));
        data.SaveTo(file);
    }

    public SKColor PixelAt(int x, int y)
    {
        using SKPixmap pixels = _surface!.PeekPixels();
        return pixels.GetPixelColor(x, y);
    }

    public void Dispose()
    {
        Pen.Dispose();
        _canvas.Dispose();
        _surface?.Dispose();
    }
}
