using System.Numerics;
using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics.OpenGl;
using Simfeel.Cockpit.Graphics.Views;

namespace Simfeel.Cockpit.Graphics.Meshes;

/// <summary>Many instances of one mesh, of which those in sight are drawn in one call.</summary>
internal sealed unsafe class InstanceBatch
{
    private readonly GL _gl;
    private readonly uint _array, _buffer;
    private readonly int _corners;
    private readonly Instance[] _all, _seen;
    private readonly Vector4[] _bounds;

    /// <summary>Uploads a mesh and makes room for its instances.</summary>
    /// <param name="store">Owner of the buffers.</param>
    /// <param name="mesh">The mesh.</param>
    /// <param name="instances">All instances; they may be changed in place by who keeps the array.</param>
    public InstanceBatch(GlStore store, Mesh mesh, Instance[] instances)
    {
        _gl = store.Gl;
        _all = instances;
        _seen = new Instance[instances.Length];
        _bounds = [.. instances.Select(i => i.Bounds())];
        _corners = mesh.Indices.Count;
        _array = store.VertexArray();
        _gl.BindVertexArray(_array);
        store.Buffer<float>(BufferTargetARB.ArrayBuffer, mesh.Vertices.ToArray());
        Attribute(0, 3, 6 * sizeof(float), 0, 0);
        Attribute(1, 3, 6 * sizeof(float), 3 * sizeof(float), 0);
        store.Buffer<ushort>(BufferTargetARB.ElementArrayBuffer, mesh.Indices.ToArray());
        _buffer = store.Stream(BufferTargetARB.ArrayBuffer, instances.Length * sizeof(Instance));
        fixed (Instance* first = instances) _gl.BufferSubData(BufferTargetARB.ArrayBuffer, 0, (nuint)(instances.Length * sizeof(Instance)), first);
        for (uint k = 0; k < 5; k++) Attribute(2 + k, 4, sizeof(Instance), (int)k * sizeof(Vector4), 1);
        _gl.BindVertexArray(0);
    }

    /// <summary>Draws the first instances, all of them, as they stand in the array.</summary>
    public void Draw(int count)
    {
        if (count == 0) return;
        Draw(_all, count);
    }

    /// <summary>Draws all instances as they were when the batch was made.</summary>
    public void DrawAll()
    {
        _gl.BindVertexArray(_array);
        _gl.DrawElementsInstanced(PrimitiveType.Triangles, (uint)_corners, DrawElementsType.UnsignedShort, null, (uint)_all.Length);
    }

    /// <summary>Draws the instances that reach into a view.</summary>
    /// <param name="planes">The view's sides: normals inwards and distances.</param>
    public void DrawSeen(ReadOnlySpan<Vector4> planes)
    {
        int count = 0;
        for (int i = 0; i < _all.Length; i++)
        {
            if (Frustum.Touches(planes, _bounds[i])) _seen[count++] = _all[i];
        }
        if (count > 0) Draw(_seen, count);
    }

    private void Draw(Instance[] instances, int count)
    {
        _gl.BindBuffer(BufferTargetARB.ArrayBuffer, _buffer);
        // a new store, so that the driver need not wait for the last picture
        _gl.BufferData(BufferTargetARB.ArrayBuffer, (nuint)(_all.Length * sizeof(Instance)), null, BufferUsageARB.StreamDraw);
        fixed (Instance* first = instances) _gl.BufferSubData(BufferTargetARB.ArrayBuffer, 0, (nuint)(count * sizeof(Instance)), first);
        _gl.BindVertexArray(_array);
        _gl.DrawElementsInstanced(PrimitiveType.Triangles, (uint)_corners, DrawElementsType.UnsignedShort, null, (uint)count);
    }

    private void Attribute(uint index, int size, int stride, int offset, uint divisor)
    {
        _gl.EnableVertexAttribArray(index);
        _gl.VertexAttribPointer(index, size, VertexAttribPointerType.Float, false, (uint)stride, (void*)offset);
        _gl.VertexAttribDivisor(index, divisor);
    }
}
