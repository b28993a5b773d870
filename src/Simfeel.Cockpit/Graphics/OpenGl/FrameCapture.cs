using Silk.NET.OpenGL;
using Simfeel.Builds.Writing;
using SkiaSharp;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>Reads pictures out of a framebuffer: 8-bit RGBA, sRGB, rows from the top.</summary>
public sealed unsafe class FrameCapture(GL gl)
{
    /// <summary>Bytes of a picture.</summary>
    public static int BytesOf(int width, int height) => 4 * width * height;

    /// <summary>Reads a part of a framebuffer. Allocates nothing, so it may run for every frame of a video.</summary>
    /// <param name="framebuffer">Framebuffer without multisampling; 0 for the window.</param>
    /// <param name="x">Left edge, pixels.</param>
    /// <param name="y">Lower edge, pixels.</param>
    /// <param name="width">Width, pixels.</param>
    /// <param name="height">Height, pixels.</param>
    /// <param name="rgba">Room for <see cref="BytesOf"/> bytes; opacity is set to 255.</param>
    /// <exception cref="ArgumentException">The room is too small.</exception>
    public void ReadInto(uint framebuffer, int x, int y, int width, int height, Span<byte> rgba)
    {
        int bytes = BytesOf(width, height);
        if (rgba.Length < bytes)
            throw new ArgumentException($"A picture of {width} by {height} pixels takes {bytes} bytes, not {rgba.Length}.", nameof(rgba));
        gl.BindFramebuffer(FramebufferTarget.ReadFramebuffer, framebuffer);
        gl.ReadBuffer(framebuffer == 0 ? ReadBufferMode.Back : ReadBufferMode.ColorAttachment0);
        gl.BindBuffer(BufferTargetARB.PixelPackBuffer, 0);
        gl.PixelStore(PixelStoreParameter.PackAlignment, 1);
        gl.PixelStore(PixelStoreParameter.PackRowLength, 0);
        fixed (byte* first = rgba) gl.ReadPixels(x, y, (uint)width, (uint)height, PixelFormat.Rgba, PixelType.UnsignedByte, first);
        // OpenGL counts rows from below.
        int row = 4 * width;
        for (int top = 0, bottom = height - 1; top < bottom; top++, bottom--) Swap(rgba.Slice(top * row, row), rgba.Slice(bottom * row, row));
        for (int i = 3; i < bytes; i += 4) rgba[i] = 255;
    }

    /// <summary>Stores a part of a framebuffer as a PNG file.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public void WritePng(uint framebuffer, int x, int y, int width, int height, string path, bool overwrite)
    {
        byte[] rgba = new byte[BytesOf(width, height)];
        ReadInto(framebuffer, x, y, width, height, rgba);
        WritePng(rgba, width, height, path, overwrite);
    }

    /// <summary>Stores a picture that was read before as a PNG file.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void WritePng(ReadOnlySpan<byte> rgba, int width, int height, string path, bool overwrite = true)
    {
        SKImageInfo info = new(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque);
        fixed (byte* first = rgba)
        {
            using SKPixmap pixels = new(info, (nint)first);
            using SKData data = pixels.Encode(SKEncodedImageFormat.Png, 100)
                ?? throw new IOException($"The picture for {path} cannot be coded as PNG.");
            WholeFile.Write(path, data.SaveTo, overwrite, lasting: false);
        }
    }

    private static void Swap(Span<byte> a, Span<byte> b)
    {
        for (int i = 0; i < a.Length; i++) (a[i], b[i]) = (b[i], a[i]);
    }
}
