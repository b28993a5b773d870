using Silk.NET.OpenGL;
using Simfeel.Cockpit.Graphics.OpenGl;

namespace Simfeel.Cockpit.Graphics.Views;

/// <summary>
/// Bends two side pictures into the whole by a fine mesh whose corners know where they lie in the side pictures: the angles
/// are worked out for the corners only, and only when the lens changes.
/// </summary>
internal sealed unsafe class LensPass
{
    // Cells of a half of the picture: the error between corners is far below a pixel.
    private const int Columns = 32, Rows = 36, Corners = (Columns + 1) * (Rows + 1);

    private readonly GL _gl;
    private readonly ShaderProgram _program;
    private readonly PictureBuffer _buffer;
    private readonly uint _array, _vertices;
    private readonly float[] _corners = new float[2 * Corners * 4];
    private (WideLens Lens, int Width, int Height) _laid;

    /// <summary>Makes shader, mesh and framebuffer.</summary>
    public LensPass(GlStore store)
    {
        _gl = store.Gl;
        _program = new(store, "lens.vert", "lens.frag");
        _array = store.VertexArray();
        _gl.BindVertexArray(_array);
        _vertices = store.Stream(BufferTargetARB.ArrayBuffer, _corners.Length * sizeof(float));
        VertexLayout.Describe(_gl, 0, 0, 2, 2);
        store.Buffer<ushort>(BufferTargetARB.ElementArrayBuffer, Cells());
        _gl.BindVertexArray(0);
        _buffer = new(store, samples: 0);
    }

    /// <summary>Makes room for both side pictures and gives the framebuffer.</summary>
    public uint Begin(in WideLens lens) => _buffer.Sized(2 * lens.PictureWidth, lens.PictureHeight);

    /// <summary>Draws the whole into the framebuffer and viewport that are set.</summary>
    public void Draw(in WideLens lens)
    {
        _gl.BindVertexArray(_array);
        if (!_laid.Equals((lens, _buffer.Width, _buffer.Height))) Lay(lens);
        _gl.Bind(TextureSlot.Picture, _buffer.Texture);
        _gl.Disable(EnableCap.DepthTest);
        _gl.Disable(EnableCap.CullFace);
        _program.Use();
        _gl.DrawElements(PrimitiveType.Triangles, 2 * Columns * Rows * 6, DrawElementsType.UnsignedShort, null);
        _gl.Enable(EnableCap.CullFace);
        _gl.Enable(EnableCap.DepthTest);
    }

    private void Lay(in WideLens lens)
    {
        float wide = (float)lens.PictureWidth / _buffer.Width, high = (float)lens.PictureHeight / _buffer.Height;
        for (int row = 0; row <= Rows; row++)
        {
            for (int column = 0; column <= Columns; column++)
            {
                float x = (float)column / Columns, y = (2f * row / Rows) - 1;
                (float u, float v) = lens.Place(x * lens.Aspect, y);
                // the right picture lies right of the left one, which mirrors it
                Put(0, x, (1 + u) * wide);
                Put(Corners, -x, (1 - u) * wide);

                void Put(int half, float at, float place)
                {
                    Span<float> corner = _corners.AsSpan(4 * (half + (row * (Columns + 1)) + column), 4);
                    (corner[0], corner[1], corner[2], corner[3]) = (at, y, place, v * high);
                }
            }
        }
        _gl.BindBuffer(BufferTargetARB.ArrayBuffer, _vertices);
        fixed (float* first = _corners) _gl.BufferSubData(BufferTargetARB.ArrayBuffer, 0, (nuint)(_corners.Length * sizeof(float)), first);
        _laid = (lens, _buffer.Width, _buffer.Height);
    }

    private static ushort[] Cells()
    {
        List<ushort> cells = [];
        for (int half = 0; half < 2; half++)
        {
            for (int row = 0; row < Rows; row++)
            {
                for (int column = 0; column < Columns; column++)
                {
                    ushort a = (ushort)((half * Corners) + (row * (Columns + 1)) + column), b = (ushort)(a + 1), c = (ushort)(a + Columns + 1), d = (ushort)(c + 1);
                    cells.AddRange([a, b, d, a, d, c]);
                }
            }
        }
        return [.. cells];
    }
}
