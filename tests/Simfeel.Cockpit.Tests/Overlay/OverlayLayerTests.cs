using System.Diagnostics;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Tests.Pages;
using SkiaSharp;
using Xunit.Abstractions;

namespace Simfeel.Cockpit.Tests.Overlay;

[Collection(WindowFixture.Collection)]
public class OverlayLayerTests(WindowFixture window, ITestOutputHelper output)
{
    [Fact]
    public void The_layer_lies_over_the_picture_with_premultiplied_alpha_and_the_right_way_up() => window.Run(() =>
    {
        using OverlayLayer layer = new(window.Gl, AppWindow.AddressOf);
        using Target target = new(window.Gl, 64, 48);
        layer.Resize(64, 48);
        Pen pen = layer.Begin(0);
        pen.Fill(new(0, 0, 64, 8), SKColors.White);
        pen.Fill(new(0, 8, 32, 16), new SKColor(255, 0, 0, 128));
        layer.End();
        target.Clear(0, 0, 1);
        // whatever the scene left set must not matter
        window.Gl.Enable(EnableCap.DepthTest);
        window.Gl.Enable(EnableCap.ScissorTest);
        window.Gl.Scissor(0, 0, 1, 1);
        layer.Composite(target.Framebuffer);

        Assert.Equal((255, 255, 255), target.PixelAt(32, 3));
        (int red, int green, int blue) = target.PixelAt(16, 12);
        Assert.InRange(red, 126, 130);
        Assert.Equal(0, green);
        Assert.InRange(blue, 125, 129);
        Assert.Equal((0, 0, 255), target.PixelAt(48, 12));
        Assert.Equal((0, 0, 255), target.PixelAt(32, 44));
    });

    [Fact]
    public void The_layer_takes_a_new_size_and_keeps_its_rate() => window.Run(() =>
    {
        using OverlayLayer layer = new(window.Gl, AppWindow.AddressOf);
        for (int size = 1; size < 400; size += 133)
        {
            layer.Resize(size, 2 * size);
            Assert.True(layer.IsDue(0, 0));
            layer.Begin(0).Text("Wagtail", 0, 0, TextStyle.Body, Palette.Ink);
            layer.End();
        }
        Assert.False(layer.IsDue(0.04, 20));
        Assert.True(layer.IsDue(0.05, 20));
        Assert.False(layer.IsDue(100, 0));
        layer.Invalidate();
        Assert.True(layer.IsDue(0, 0));
    });

    [Fact]
    public void Flying_with_plates_graphs_and_words_allocates_nothing() => window.Run(() =>
    {
        using OverlayLayer layer = new(window.Gl, AppWindow.AddressOf);
        using Target target = new(window.Gl, 640, 360);
        layer.Resize(640, 360);
        FlightReadout readout = Samples.Readout(busy: true);
        FlightOverlay overlay = new();
        Fly(0, 300);
        // beside other tests the runtime now and then books some bytes of its own on a thread; what a frame allocates
        // comes back in every round
        long least = long.MaxValue;
        for (int round = 0; round < 3 && least > 0; round++)
        {
            readout.Notify("wagtail.toml changed. R flies it.", 5 + 34 * round);
            long before = GC.GetAllocatedBytesForCurrentThread();
            Fly(300 + 2000 * round, 2300 + 2000 * round);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }
        Assert.Equal(0, least);

        void Fly(int from, int until)
        {
            for (int frame = from; frame < until; frame++)
            {
                double t = frame / 60.0;
                readout.Flown = frame / 100 % 2;
                readout.Crashed = frame / 50 % 2 == 1;
                readout.TimeFactor = frame % 20 / 20.0;
                Samples.Step(readout, overlay, t);
                if (layer.IsDue(t, 20))
                {
                    overlay.Draw(layer.Begin(t), readout, 640, 360, t);
                    layer.End();
                }
                layer.Composite(target.Framebuffer);
            }
        }
    });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_overlay_is_seen_over_the_picture(bool busy) => window.Run(() =>
    {
        using OverlayLayer layer = new(window.Gl, AppWindow.AddressOf);
        using Target target = new(window.Gl, 1280, 720);
        layer.Resize(1280, 720);
        Assert.Empty(layer.MissingFonts);
        FlightReadout readout = Samples.Readout(busy);
        FlightOverlay overlay = new();
        Samples.Fly(readout, overlay);
        double least = double.PositiveInfinity;
        for (int k = 0; k < 40; k++)
        {
            long start = Stopwatch.GetTimestamp();
            overlay.Draw(layer.Begin(k), readout, 1280, 720, 1);
            layer.End();
            window.Gl.Finish();
            least = Math.Min(least, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        output.WriteLine(FormattableString.Invariant(
            $"{AppWindow.Driver}, {(busy ? "graphs and words" : "plates")}: {least:0.00} ms a redraw at 1280x720"));
        target.Clear(0.5f, 0.7f, 0.8f);
        layer.Composite(target.Framebuffer);
        (int free, _, _) = target.PixelAt(640, 300);
        Assert.InRange(free, 126, 129);
        (int plate, _, _) = target.PixelAt(17, 658);
        Assert.InRange(plate, 0, 60);
    });

    /// <summary>A framebuffer to look at.</summary>
    private sealed class Target : IDisposable
    {
        private readonly GL _gl;
        private readonly uint _colour;
        private readonly int _height;

        public Target(GL gl, int width, int height)
        {
            (_gl, _height) = (gl, height);
            _colour = gl.GenRenderbuffer();
            gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _colour);
            gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Rgba8, (uint)width, (uint)height);
            Framebuffer = gl.GenFramebuffer();
            gl.BindFramebuffer(FramebufferTarget.Framebuffer, Framebuffer);
            gl.FramebufferRenderbuffer(
                FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, RenderbufferTarget.Renderbuffer, _colour);
        }

        public uint Framebuffer { get; }

        public void Clear(float red, float green, float blue)
        {
            _gl.BindFramebuffer(FramebufferTarget.Framebuffer, Framebuffer);
            _gl.Disable(EnableCap.ScissorTest);
            _gl.ColorMask(true, true, true, true);
            _gl.ClearColor(red, green, blue, 1);
            _gl.Clear(ClearBufferMask.ColorBufferBit);
        }

        /// <summary>Red, green, blue at pixels from the left and from the top.</summary>
        public (int Red, int Green, int Blue) PixelAt(int x, int y)
        {
            Span<byte> pixel = stackalloc byte[4];
            _gl.BindFramebuffer(FramebufferTarget.Framebuffer, Framebuffer);
            _gl.ReadPixels(x, _height - 1 - y, 1, 1, PixelFormat.Rgba, PixelType.UnsignedByte, pixel);
            return (pixel[0], pixel[1], pixel[2]);
        }

        public void Dispose()
        {
            _gl.DeleteFramebuffer(Framebuffer);
            _gl.DeleteRenderbuffer(_colour);
        }
    }
}
