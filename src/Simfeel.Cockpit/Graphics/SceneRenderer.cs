using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Builds;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Graphics.Meshes;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics;

/// <summary>
/// Draws the field and the craft. Every picture sets all the OpenGL state it needs and allocates nothing, so another
/// library may draw on the same context in between. All calls on the thread of the context.
/// </summary>
public sealed unsafe class SceneRenderer : IDisposable
{
    /// <summary>Number of craft that can be drawn: build A in slot 0, build B in slot 1.</summary>
    public const int Slots = 2;

    // Near enough for propellers beside an onboard lens, far enough for the horizon; m.
    private const float Near = 0.03f, Far = 9000;

    // Below this bend a lens is drawn straight.
    private const double LeastBend = 0.01;

    private readonly GL _gl;
    private readonly Quality _quality;
    private readonly GlStore _store;
    private readonly FieldModel _field;
    private readonly CraftPrograms _programs;
    private readonly CraftModel?[] _craft = new CraftModel?[Slots];
    private readonly GlowBatch _glow;
    private readonly GroundAids _aids;
    private readonly LevelGrid _level;
    private readonly ShadowMaps? _shadows;
    private readonly PictureBuffer? _smooth;
    private readonly LensPass _lens;
    private readonly Vec3? _beacon;
    private readonly uint _frameBuffer;
    private FrameUniforms _frame;

    /// <summary>Uploads everything, once the field's textures are worked out; some tenths of a second.</summary>
    /// <param name="gl">OpenGL 3.3 of the context.</param>
    /// <param name="map">The field.</param>
    /// <param name="quality">How much a picture may cost.</param>
    /// <param name="pictures">Textures of the field that were begun before; begun now if null.</param>
    /// <exception cref="InvalidOperationException">The driver does not take a shader.</exception>
    public SceneRenderer(GL gl, FieldMap map, Quality quality, FieldPictures? pictures = null)
    {
        ArgumentNullException.ThrowIfNull(map);
        pictures ??= new(map);
        _gl = gl;
        _quality = quality;
        _store = new(gl);
        string[] defines = quality switch
        {
            Quality.Low => [],
            Quality.Medium => ["SHADOWS"],
            _ => ["SHADOWS", "FINE"],
        };
        OpenState.Set(_gl);
        _field = new(_store, map, pictures, quality, defines);
        _programs = new(_store, defines);
        _glow = new(_store, defines);
        _aids = new(_store, map, _programs, defines);
        _level = new(_store, defines);
        _lens = new(_store);
        if (quality != Quality.Low) _shadows = new(_store, _field, fine: quality == Quality.High);
        if (quality == Quality.High) _smooth = new(_store, Math.Min(4, gl.GetInteger(GLEnum.MaxSamples)));
        _frameBuffer = _store.Stream(BufferTargetARB.UniformBuffer, sizeof(FrameUniforms));
        foreach (FieldSolid solid in map.Solids)
        {
            if (solid.Kind == SolidKind.Lighthouse) _beacon = solid.p_WC - (0.345 * solid.Size.Z * Vec3.UnitZ);
        }
    }

    /// <summary>Sets or changes the craft of a slot.</summary>
    /// <param name="slot">0 for build A, 1 for build B.</param>
    /// <param name="build">The build.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such slot.</exception>
    public void SetCraft(int slot, AssembledBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentOutOfRangeException.ThrowIfNegative(slot);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(slot, Slots);
        CraftModel next = new(_gl, _programs, build, Livery.BySlot[slot], _quality);
        _craft[slot]?.Dispose();
        _craft[slot] = next;
    }

    /// <summary>Draws a picture.</summary>
    /// <param name="framebuffer">Where to; 0 for the window. It needs a depth buffer and no multisampling.</param>
    /// <param name="x">Left edge of the picture, pixels.</param>
    /// <param name="y">Lower edge, pixels.</param>
    /// <param name="width">Width, pixels; above 0.</param>
    /// <param name="height">Height, pixels; above 0.</param>
    /// <param name="camera">The eye.</param>
    /// <param name="craft">Poses by slot; slots without a craft are left out.</param>
    /// <param name="options">What else is shown.</param>
    public void Draw(uint framebuffer, int x, int y, int width, int height, in Camera camera, ReadOnlySpan<CraftPose> craft, SceneOptions options)
    {
        if (width <= 0 || height <= 0) return;
        OpenState.Set(_gl);
        BindTextures();
        DrawShadows(craft);
        if (camera.Bend > LeastBend) DrawBent(framebuffer, x, y, width, height, camera, craft, options);
        else DrawStraight(framebuffer, x, y, width, height, camera, craft, options);
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, framebuffer);
        _gl.Disable(EnableCap.ScissorTest);
        _gl.BindVertexArray(0);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (CraftModel? craft in _craft) craft?.Dispose();
        Array.Clear(_craft);
        _store.Dispose();
    }

    private void DrawStraight(uint framebuffer, int x, int y, int width, int height, in Camera camera, ReadOnlySpan<CraftPose> craft, SceneOptions options)
    {
        float top = (float)Math.Tan(camera.VerticalFieldOfView / 2), right = top * width / height;
        Matrix4x4 view = GraphicsFrame.View(camera.Eye, camera.Look), projection = GraphicsFrame.Perspective(-right, right, -top, top, Near, Far);
        if (_smooth is null)
        {
            Pass(framebuffer, x, y, width, height, camera.Eye, view, projection, craft, options);
            return;
        }
        uint smooth = _smooth.Sized(width, height);
        Pass(smooth, 0, 0, width, height, camera.Eye, view, projection, craft, options);
        _gl.Disable(EnableCap.ScissorTest);
        _gl.BindFramebuffer(FramebufferTarget.ReadFramebuffer, smooth);
        _gl.BindFramebuffer(FramebufferTarget.DrawFramebuffer, framebuffer);
        _gl.BlitFramebuffer(0, 0, width, height, x, y, x + width, y + height, ClearBufferMask.ColorBufferBit, BlitFramebufferFilter.Nearest);
    }

    private void DrawBent(uint framebuffer, int x, int y, int width, int height, in Camera camera, ReadOnlySpan<CraftPose> craft, SceneOptions options)
    {
        WideLens lens = new(camera.VerticalFieldOfView, camera.Bend, width, height, _quality == Quality.Low ? 0.9 : 1.2);
        uint pictures = _lens.Begin(lens);
        for (int side = 0; side < 2; side++)
        {
            Quat look = camera.Look * Quat.FromAxisAngle(Vec3.UnitZ, side == 0 ? -lens.Turn : lens.Turn);
            Matrix4x4 projection = side == 0
                ? GraphicsFrame.Perspective(-lens.Right, -lens.Left, -lens.Top, lens.Top, Near, Far)
                : GraphicsFrame.Perspective(lens.Left, lens.Right, -lens.Top, lens.Top, Near, Far);
            Pass(pictures, side * lens.PictureWidth, 0, lens.PictureWidth, lens.PictureHeight, camera.Eye, GraphicsFrame.View(camera.Eye, look), projection, craft, options);
        }
        Target(framebuffer, x, y, width, height);
        _lens.Draw(lens);
    }

    /// <summary>Draws the scene into a part of a framebuffer.</summary>
    private void Pass(uint framebuffer, int x, int y, int width, int height, Vec3 eye, in Matrix4x4 view, in Matrix4x4 projection, ReadOnlySpan<CraftPose> craft, SceneOptions options)
    {
        Target(framebuffer, x, y, width, height);
        Vector3 from = GraphicsFrame.Of(eye);
        SetFrame(from, view * projection, projection, width, height, options.Time);
        Span<Vector4> planes = stackalloc Vector4[4];
        Frustum.Planes(_frame.ViewProjection, planes);
        _gl.Clear(ClearBufferMask.DepthBufferBit);

        int drawn = Math.Min(Slots, craft.Length);
        for (int slot = 0; slot < drawn; slot++)
        {
            if (Shown(craft[slot], slot) is not CraftModel model) continue;
            if (craft[slot].Opacity >= 1 && !options.MassView) model.DrawSolid(craft[slot], 1);
            if (options.ReferencePlane && craft[slot].Opacity >= 1) _aids.DrawPlumb(craft[slot]);
        }
        _field.DrawSolids(planes);
        _field.DrawGround();
        DrawOnGround(craft[..drawn], options);
        if (options.LevelGrid is double level) _level.Draw(level, About(craft[..drawn], from));

        _glow.Clear();
        if (_beacon is Vec3 beacon) _glow.AddBeacon(beacon, options.Time);
        // the farther craft first, since what is translucent does not sort itself
        bool swapped = drawn == 2 && (craft[0].p_WB - eye).Length < (craft[1].p_WB - eye).Length;
        for (int k = 0; k < drawn; k++)
        {
            int slot = swapped ? 1 - k : k;
            if (Shown(craft[slot], slot) is not CraftModel model) continue;
            if (options.MassView) model.DrawMass(craft[slot], craft[slot].Opacity);
            else if (craft[slot].Opacity < 1) model.DrawSolid(craft[slot], craft[slot].Opacity);
            model.DrawRotors(craft[slot], craft[slot].Opacity * (options.MassView ? 0.3f : 1));
            if (!options.MassView) _glow.Add(model, craft[slot], from);
        }
        _gl.Enable(EnableCap.Blend);
        _gl.DepthMask(false);
        _glow.Draw();
        _gl.DepthMask(true);
        _gl.Disable(EnableCap.Blend);
    }

    private void DrawOnGround(ReadOnlySpan<CraftPose> craft, SceneOptions options)
    {
        if (_shadows is not null && !options.ReferencePlane) return;
        _gl.Enable(EnableCap.Blend);
        _gl.DepthMask(false);
        _gl.Enable(EnableCap.PolygonOffsetFill);
        _gl.PolygonOffset(-2, -4);
        for (int slot = 0; slot < craft.Length; slot++)
        {
            if (Shown(craft[slot], slot) is not CraftModel model) continue;
            if (_shadows is null) _aids.DrawBlob(model, craft[slot]);
            if (options.ReferencePlane && craft[slot].Opacity >= 1) _aids.DrawGrid(craft[slot]);
        }
        _gl.Disable(EnableCap.PolygonOffsetFill);
        _gl.DepthMask(true);
        _gl.Disable(EnableCap.Blend);
    }

    private void DrawShadows(ReadOnlySpan<CraftPose> craft)
    {
        // a matrix that puts every point outside the texture
        _frame.CraftLightA = _frame.CraftLightB = Matrix4x4.CreateTranslation(-9, -9, 0);
        if (_shadows is null) return;
        bool clear = true;
        for (int slot = 0; slot < Math.Min(Slots, craft.Length); slot++)
        {
            if (Shown(craft[slot], slot) is not CraftModel model || craft[slot].Opacity < 1) continue;
            Matrix4x4 light = _shadows.DrawCraft(slot, model, craft[slot], clear);
            clear = false;
            if (slot == 0) _frame.CraftLightA = light;
            else _frame.CraftLightB = light;
        }
        _shadows.Bind();
    }

    /// <summary>The flown craft, or the eye where there is none.</summary>
    private static Vector3 About(ReadOnlySpan<CraftPose> craft, Vector3 eye)
    {
        foreach (ref readonly CraftPose pose in craft)
        {
            if (pose.Opacity >= 1) return GraphicsFrame.Of(pose.p_WB);
        }
        return eye;
    }

    private CraftModel? Shown(in CraftPose pose, int slot) => pose.Opacity > 0 ? _craft[slot] : null;

    private void SetFrame(Vector3 eye, in Matrix4x4 viewProjection, in Matrix4x4 projection, int width, int height, double time)
    {
        _frame.ViewProjection = viewProjection;
        if (_shadows is not null) _frame.FieldLight = _shadows.FieldLight;
        // waves drift by textures that repeat; an hour keeps the floats fine
        _frame.Eye = new(eye, (float)Math.IEEERemainder(time, 3600));
        _frame.Sun = new(Daylight.Sun, _field.SeaHeight);
        _frame.Area = _field.Area;
        _frame.Screen = new(projection.M11, projection.M22, 2f / width, 2f / height);
        _gl.BindBuffer(BufferTargetARB.UniformBuffer, _frameBuffer);
        fixed (FrameUniforms* first = &_frame) _gl.BufferSubData(BufferTargetARB.UniformBuffer, 0, (nuint)sizeof(FrameUniforms), first);
        _gl.BindBufferBase(BufferTargetARB.UniformBuffer, 0, _frameBuffer);
    }

    private void Target(uint framebuffer, int x, int y, int width, int height)
    {
        _gl.BindFramebuffer(FramebufferTarget.Framebuffer, framebuffer);
        _gl.Viewport(x, y, (uint)width, (uint)height);
        _gl.Scissor(x, y, (uint)width, (uint)height);
        _gl.Enable(EnableCap.ScissorTest);
    }

    private void BindTextures()
    {
        _gl.Bind(TextureSlot.LandColour, _field.LandColour);
        _gl.Bind(TextureSlot.Grain, _field.Grain);
        _gl.Bind(TextureSlot.Waves, _field.Waves);
        _gl.Bind(TextureSlot.Coast, _field.Coast);
        _gl.Bind(TextureSlot.Sky, _field.Sky);
    }
}
