using System.Numerics;
using System.Runtime.InteropServices;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Graphics.Meshes;

/// <summary>All lamps of a picture, drawn as sprites in one call.</summary>
internal sealed unsafe class GlowBatch
{
    private const int Capacity = 48;

    // Lamps of a craft: radius of the glow, m; least share of the light seen from the wrong side.
    private const float LampRadius = 0.019f, Stray = 0.28f;

    private static readonly Vector3 White = new(0.93f, 0.97f, 1.0f), RedOrange = new(1.0f, 0.30f, 0.08f), Beacon = new(1.0f, 0.93f, 0.70f);

    private readonly GL _gl;
    private readonly ShaderProgram _program;
    private readonly uint _array, _buffer;
    private readonly Sprite[] _sprites = new Sprite[Capacity];
    private int _count;

    /// <summary>Makes room.</summary>
    public GlowBatch(GlStore store, ReadOnlySpan<string> defines)
    {
        _gl = store.Gl;
        _program = new(store, "glow.vert", "glow.frag", defines);
        _array = VertexLayout.Square(store);
        _buffer = store.Stream(BufferTargetARB.ArrayBuffer, Capacity * sizeof(Sprite));
        VertexLayout.Describe(_gl, 1, 1, 4, 4);
        _gl.BindVertexArray(0);
    }

    /// <summary>Begins a picture.</summary>
    public void Clear() => _count = 0;

    /// <summary>Adds the lamps of a craft; each shines ahead or back.</summary>
    public void Add(CraftModel craft, in CraftPose pose, Vector3 eye)
    {
        Matrix4x4 model = GraphicsFrame.FromBody(pose.p_WB, pose.q_WB);
        Vector3 ahead = Vector3.Normalize(new(model.M11, model.M12, model.M13));
        foreach (CraftLamp lamp in craft.Lamps)
        {
            Vector3 p = Vector3.Transform(GraphicsFrame.Body(lamp.p_BL), model);
            // an onboard lens looks past the lamps of its own craft
            float far = Math.Clamp((Vector3.Distance(eye, p) - 0.2f) * 4, 0, 1);
            float facing = Vector3.Dot(Vector3.Normalize(eye - p), lamp.Front ? ahead : -ahead);
            Add(p, LampRadius, lamp.Front ? White : RedOrange, far * pose.Opacity * (Stray + ((1 - Stray) * Math.Clamp(0.5f + facing, 0, 1))));
        }
    }

    /// <summary>Adds the lamp of a lighthouse: a calm flash every six seconds.</summary>
    /// <param name="p_W">Place in the world, m.</param>
    /// <param name="time">Time, s.</param>
    public void AddBeacon(Vec3 p_W, double time)
    {
        double phase = Math.IEEERemainder(time, 6) / 0.7;
        Add(GraphicsFrame.Of(p_W), 1.6f, Beacon, 0.25f + (0.6f * (float)Math.Exp(-phase * phase)));
    }

    /// <summary>Draws the lamps; after everything solid.</summary>
    public void Draw()
    {
        if (_count == 0) return;
        _gl.BindBuffer(BufferTargetARB.ArrayBuffer, _buffer);
        fixed (Sprite* first = _sprites) _gl.BufferSubData(BufferTargetARB.ArrayBuffer, 0, (nuint)(_count * sizeof(Sprite)), first);
        _program.Use();
        _gl.BindVertexArray(_array);
        _gl.DrawArraysInstanced(PrimitiveType.Triangles, 0, 6, (uint)_count);
    }

    private void Add(Vector3 place, float radius, Vector3 colour, float strength)
    {
        if (_count < Capacity) _sprites[_count++] = new() { Place = new(place, radius), Colour = new(colour, strength) };
    }

    [StructLayout(LayoutKind.Sequential)]
    private struct Sprite
    {
        public Vector4 Place, Colour;
    }
}
