using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Graphics.OpenGl;

/// <summary>Vertex arrays of interleaved floats.</summary>
internal static unsafe class VertexLayout
{
    /// <summary>An array whose attributes 0, 1, ... have the given numbers of floats; it stays bound.</summary>
    public static uint Array(GlStore store, ReadOnlySpan<float> vertices, params ReadOnlySpan<int> sizes)
    {
        uint array = store.VertexArray();
        store.Gl.BindVertexArray(array);
        store.Buffer(BufferTargetARB.ArrayBuffer, vertices);
        Describe(store.Gl, 0, 0, sizes);
        return array;
    }

    /// <summary>A square of half edge 1, six corners of two floats; it stays bound.</summary>
    public static uint Square(GlStore store) => Array(store, [-1, -1, 1, -1, 1, 1, -1, -1, 1, 1, -1, 1], 2);

    /// <summary>The same square for <c>decal.vert</c>, which wants each corner twice: its place, and its place across the decal.</summary>
    public static uint DecalSquare(GlStore store) =>
        Array(store, [-1, -1, -1, -1, 1, -1, 1, -1, 1, 1, 1, 1, -1, -1, -1, -1, 1, 1, 1, 1, -1, 1, -1, 1], 2, 2);

    /// <summary>Describes the buffer that is bound.</summary>
    /// <param name="gl">OpenGL.</param>
    /// <param name="first">Number of the first attribute.</param>
    /// <param name="divisor">0 per vertex, 1 per instance.</param>
    /// <param name="sizes">Floats of each attribute.</param>
    public static void Describe(GL gl, uint first, uint divisor, params ReadOnlySpan<int> sizes)
    {
        int stride = 0, offset = 0;
        foreach (int size in sizes) stride += size * sizeof(float);
        for (int k = 0; k < sizes.Length; k++)
        {
            uint index = first + (uint)k;
            gl.EnableVertexAttribArray(index);
            gl.VertexAttribPointer(index, sizes[k], VertexAttribPointerType.Float, false, (uint)stride, (void*)offset);
            gl.VertexAttribDivisor(index, divisor);
            offset += sizes[k] * sizeof(float);
        }
    }
}
