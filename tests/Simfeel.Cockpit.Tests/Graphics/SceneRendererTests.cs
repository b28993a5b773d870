using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Tests.Graphics;

[Collection(WindowFixture.Collection)]
public class SceneRendererTests(WindowFixture fixture)
{
    // Pixels of a hue that nothing else in the picture has tell the craft from the field.
    private static readonly Camera Behind = new(new(-1.5, 0, -3.4), Quat.FromEuler(0, -0.2, 0), 0.8, 0);

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.0)]
    public void Draw_AllocatesNothing(double bend) => fixture.Run(() =>
    {
        using SceneStage stage = new(fixture.Gl);
        using SceneRenderer renderer = Renderer(Quality.Low);
        ViewRig rig = new(SceneStage.Map) { Bend = bend };
        CraftPose[] craft = [SceneStage.Pose(SceneStage.A, new(0, 0, -3), 0, 0, 0, 50), SceneStage.Pose(SceneStage.B, new(1, 1, -3), 0, 0, 0, 900, 0.5f)];
        byte[] pixels = new byte[FrameCapture.BytesOf(64, 36)];
        FrameCapture capture = new(fixture.Gl);
        for (int i = 0; i < 30; i++) Frame(i);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++) Frame(i);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(GLEnum.NoError, fixture.Gl.GetError());

        void Frame(int i)
        {
            craft[0].RotorSpeeds[0] = 2 * i;
            Camera camera = rig.Update(bend > 0 ? View.Onboard : View.Chase, SceneStage.A, craft[0], 0.016);
            renderer.Draw(stage.Framebuffer, 0, 0, 64, 36, camera, craft, new(0.016 * i, MassView: i % 2 == 0, ReferencePlane: i % 3 == 0));
            capture.ReadInto(stage.Framebuffer, 0, 0, 64, 36, pixels);
        }
    });

    [Fact]
    public void SetCraftAndDispose_LeaveNoOpenGlObjects() => fixture.Run(() =>
    {
        GL gl = fixture.Gl;
        int before = Objects(gl);
        using (SceneStage stage = new(gl))
        {
            using SceneRenderer renderer = Renderer(Quality.Medium);
            stage.Picture(renderer, Behind, [], default);
            int with = Objects(gl);
            Assert.True(with > before + 40, "Objects are not counted.");
            for (int i = 0; i < 50; i++)
            {
                renderer.SetCraft(0, i % 2 == 0 ? SceneStage.B : SceneStage.A);
                renderer.SetCraft(1, SceneStage.B);
            }
            Assert.InRange(Objects(gl), with - 60, with + 60);
        }
        for (int i = 0; i < 3; i++) Renderer(Quality.High).Dispose();
        Assert.Equal(before, Objects(gl));
    });

    [Theory]
    [InlineData(Quality.Low)]
    [InlineData(Quality.High)]
    public void Draw_StaysInsideItsPartOfTheFramebuffer(Quality quality) => fixture.Run(() =>
    {
        using SceneStage stage = new(fixture.Gl);
        using SceneRenderer renderer = Renderer(quality);
        GL gl = fixture.Gl;
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, stage.Framebuffer);
        gl.Disable(EnableCap.ScissorTest);
        gl.ClearColor(1, 0, 1, 1);
        gl.Clear(ClearBufferMask.ColorBufferBit);
        foreach (double bend in (double[])[0, 1])
        {
            renderer.Draw(stage.Framebuffer, 160, 90, 320, 180, Behind with { Bend = bend }, [], default);
            byte[] pixels = new byte[FrameCapture.BytesOf(SceneStage.Width, SceneStage.Height)];
            new FrameCapture(gl).ReadInto(stage.Framebuffer, 0, 0, SceneStage.Width, SceneStage.Height, pixels);
            for (int y = 0; y < SceneStage.Height; y++)
            {
                for (int x = 0; x < SceneStage.Width; x++)
                {
                    int i = 4 * ((y * SceneStage.Width) + x);
                    bool background = pixels[i] == 255 && pixels[i + 1] == 0 && pixels[i + 2] == 255;
                    bool inside = x is >= 160 and < 480 && y is >= 90 and < 270;
                    if (background == inside) Assert.Fail($"bend {bend}, pixel {x}, {y}: {(inside ? "not drawn" : "drawn over")}");
                }
            }
        }
    });

    [Fact]
    public void Draw_DoesNotDependOnTheStateItFinds() => fixture.Run(() =>
    {
        using SceneStage stage = new(fixture.Gl);
        using SceneRenderer renderer = Renderer(Quality.Medium);
        CraftPose[] craft = [SceneStage.Pose(SceneStage.A, new(0, 0, -3), 0, 0, 0, 50), SceneStage.Pose(SceneStage.B, new(1, 1, -3), 0, 0, 0, 900, 0.5f)];
        byte[] clean = stage.Picture(renderer, Behind, craft, new(3));
        Assert.Equal(clean, stage.Picture(renderer, Behind, craft, new(3)));
        GL gl = fixture.Gl;
        gl.Enable(EnableCap.FramebufferSrgb);
        gl.Enable(EnableCap.Blend);
        gl.BlendFunc(BlendingFactor.One, BlendingFactor.One);
        gl.Disable(EnableCap.DepthTest);
        gl.DepthMask(false);
        gl.ColorMask(true, false, true, false);
        gl.Enable(EnableCap.StencilTest);
        gl.StencilFunc(StencilFunction.Never, 0, 1);
        gl.Enable(EnableCap.ScissorTest);
        gl.Scissor(0, 0, 10, 10);
        gl.CullFace(TriangleFace.Front);
        gl.FrontFace(FrontFaceDirection.CW);
        gl.DepthFunc(DepthFunction.Never);
        gl.ClearDepth(0.2);
        gl.ActiveTexture(TextureUnit.Texture3);
        gl.BindTexture(TextureTarget.Texture2D, 0);
        gl.UseProgram(0);
        byte[] after = stage.Picture(renderer, Behind, craft, new(3));
        Assert.Equal(clean, after);
    });

    [Fact]
    public void LargerCraft_CoversMoreOfTheSameView() => fixture.Run(() =>
    {
        using SceneStage stage = new(fixture.Gl);
        using SceneRenderer renderer = Renderer(Quality.Low);
        byte[] empty = stage.Picture(renderer, Behind, [], new(3));
        int small = Changed(empty, stage.Picture(renderer, Behind, [SceneStage.Pose(SceneStage.A, new(0, 0, -3), 0, 0, 0, 900)], new(3)));
        int large = Changed(empty, stage.Picture(renderer, Behind, [default, SceneStage.Pose(SceneStage.B, new(0, 0, -3), 0, 0, 0, 900)], new(3)));
        // wheelbase and propellers of the 7 inch build are 1.4 times those of the 5 inch build, areas about twice
        Assert.InRange((double)large / small, 1.3, 2.6);
    });

    [Fact]
    public void Opacity_FadesTheCraft() => fixture.Run(() =>
    {
        using SceneStage stage = new(fixture.Gl);
        using SceneRenderer renderer = Renderer(Quality.Low);
        byte[] empty = stage.Picture(renderer, Behind, [], new(3));
        double[] difference = [.. ((float[])[0, 0.3f, 0.6f, 1]).Select(opacity =>
            GoldenPicture.Difference(empty, stage.Picture(renderer, Behind, [SceneStage.Pose(SceneStage.A, new(0, 0, -3), 0, 0, 0, 0, opacity)], new(3))).Mean)];
        Assert.Equal(0, difference[0]);
        Assert.True(difference[0] < difference[1] && difference[1] < difference[2] && difference[2] < difference[3], string.Join(", ", difference));
    });

    [Fact]
    public void SetCraft_RefusesOtherSlots() => fixture.Run(() =>
    {
        using SceneRenderer renderer = Renderer(Quality.Low);
        Assert.Throws<ArgumentOutOfRangeException>(() => renderer.SetCraft(2, SceneStage.A));
        Assert.Throws<ArgumentOutOfRangeException>(() => renderer.SetCraft(-1, SceneStage.A));
    });

    private SceneRenderer Renderer(Quality quality)
    {
        SceneRenderer renderer = new(fixture.Gl, SceneStage.Map, quality);
        renderer.SetCraft(0, SceneStage.A);
        renderer.SetCraft(1, SceneStage.B);
        return renderer;
    }

    private static int Changed(byte[] a, byte[] b)
    {
        int count = 0;
        for (int i = 0; i < a.Length; i += 4)
        {
            if (Math.Abs(a[i] - b[i]) + Math.Abs(a[i + 1] - b[i + 1]) + Math.Abs(a[i + 2] - b[i + 2]) > 12) count++;
        }
        return count;
    }

    /// <summary>Number of objects there are, by asking for every name that may have been given out.</summary>
    private static int Objects(GL gl)
    {
        int count = 0;
        for (uint id = 1; id < 4096; id++)
        {
            if (gl.IsBuffer(id)) count++;
            if (gl.IsTexture(id)) count++;
            if (gl.IsVertexArray(id)) count++;
            if (gl.IsFramebuffer(id)) count++;
            if (gl.IsRenderbuffer(id)) count++;
            if (gl.IsProgram(id)) count++;
            if (gl.IsShader(id)) count++;
        }
        return count;
    }
}
