using Silk.NET.OpenGL;
using Simfeel.Builds;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Tests.Graphics;

/// <summary>The demo pair over Gull Point, and a framebuffer of 640 by 360 pixels to draw it into.</summary>
internal sealed class SceneStage : IDisposable
{
    public const int Width = 640, Height = 360;

    private readonly GL _gl;
    private readonly uint _colour, _depth;

    public SceneStage(GL gl)
    {
        _gl = gl;
        Framebuffer = gl.GenFramebuffer();
        _colour = gl.GenRenderbuffer();
        _depth = gl.GenRenderbuffer();
        gl.BindFramebuffer(FramebufferTarget.Framebuffer, Framebuffer);
        gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _colour);
        gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Rgba8, Width, Height);
        gl.BindRenderbuffer(RenderbufferTarget.Renderbuffer, _depth);
        gl.RenderbufferStorage(RenderbufferTarget.Renderbuffer, InternalFormat.Depth24Stencil8, Width, Height);
        gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.ColorAttachment0, RenderbufferTarget.Renderbuffer, _colour);
        gl.FramebufferRenderbuffer(FramebufferTarget.Framebuffer, FramebufferAttachment.DepthStencilAttachment, RenderbufferTarget.Renderbuffer, _depth);
    }

    public static AssembledBuild A { get; } = Assembled("wagtail");

    public static AssembledBuild B { get; } = Assembled("curlew");

    public static FieldMap Map { get; } = FieldReader.Read(Path.Combine(Assets, "fields", "gull-point.toml")).Map
        ?? throw new InvalidOperationException("Gull Point cannot be read.");

    public uint Framebuffer { get; }

    /// <summary>Top of the working copy: the folder with the solution.</summary>
    public static string Root
    {
        get
        {
            string folder = AppContext.BaseDirectory;
            while (!File.Exists(Path.Combine(folder, "Simfeel.sln"))) folder = Path.GetDirectoryName(folder)!;
            return folder;
        }
    }

    private static string Assets => Path.Combine(Root, "assets");

    /// <summary>A pose with rotors of unequal thrust and blades of unequal angles.</summary>
    public static CraftPose Pose(AssembledBuild build, Vec3 p_WB, double roll, double pitch, double yaw, double rotorSpeed, float opacity = 1)
    {
        CraftPose pose = new() { p_WB = p_WB, q_WB = Quat.FromEuler(roll, pitch, yaw), Opacity = opacity };
        int count = build.Craft.Rotors.Count;
        for (int k = 0; k < count; k++)
        {
            pose.RotorSpeeds[k] = rotorSpeed;
            pose.RotorAngles[k] = 0.4 + k;
            pose.Thrust[k] = build.Craft.Mass * StandardAtmosphere.StandardGravity / count * (0.7 + (0.2 * k));
        }
        return pose;
    }

    /// <summary>Draws and reads a picture.</summary>
    public byte[] Picture(SceneRenderer renderer, in Camera camera, ReadOnlySpan<CraftPose> craft, SceneOptions options)
    {
        renderer.Draw(Framebuffer, 0, 0, Width, Height, camera, craft, options);
        byte[] pixels = new byte[FrameCapture.BytesOf(Width, Height)];
        new FrameCapture(_gl).ReadInto(Framebuffer, 0, 0, Width, Height, pixels);
        return pixels;
    }

    public void Dispose()
    {
        _gl.DeleteFramebuffer(Framebuffer);
        _gl.DeleteRenderbuffer(_colour);
        _gl.DeleteRenderbuffer(_depth);
    }

    private static AssembledBuild Assembled(string name)
    {
        BuildResult read = BuildReader.Read(Path.Combine(Assets, "builds", name + ".toml"));
        return BuildAssembler.Assemble(read.Build ?? throw new InvalidOperationException($"{name} cannot be read."), StandardAtmosphere.At(0));
    }
}
