using System.Numerics;

namespace Simfeel.Cockpit.Graphics.Meshes;

/// <summary>Vertices and triangles of one mesh.</summary>
internal sealed class Mesh
{
    /// <summary>Position and normal, six floats a vertex.</summary>
    public List<float> Vertices { get; } = [];

    /// <summary>Corners of the triangles, counter-clockwise from outside.</summary>
    public List<ushort> Indices { get; } = [];

    /// <summary>A unit mesh.</summary>
    /// <param name="shape">Which.</param>
    /// <param name="sides">Sides of what is round; 6 or more.</param>
    public static Mesh Of(MeshShape shape, int sides)
    {
        Mesh mesh = new();
        switch (shape)
        {
            case MeshShape.Box:
                foreach (Vector3 n in (ReadOnlySpan<Vector3>)[Vector3.UnitX, -Vector3.UnitX, Vector3.UnitY, -Vector3.UnitY, Vector3.UnitZ, -Vector3.UnitZ])
                {
                    Vector3 a = MathF.Abs(n.X) > 0.5f ? Vector3.UnitY : MathF.Abs(n.Y) > 0.5f ? Vector3.UnitZ : Vector3.UnitX;
                    Vector3 b = Vector3.Cross(n, a);
                    mesh.Flat((n - a - b) / 2, (n + a - b) / 2, (n + a + b) / 2, (n - a + b) / 2);
                }
                break;
            case MeshShape.Cylinder:
                mesh.Turned(sides, 0.5f, 0.5f);
                break;
            case MeshShape.Tower:
                mesh.Turned(sides, 0.5f, 0.32f);
                break;
            case MeshShape.Cone:
                mesh.Turned(sides, 0.5f, 0);
                break;
            case MeshShape.Ball:
                mesh.Round(sides, static _ => 0.5f);
                break;
            case MeshShape.Crown:
                mesh.Round(sides, static d => 0.43f + (0.07f * MathF.Sin(9 * d.X) * MathF.Sin((8 * d.Y) + 1) * MathF.Cos(7 * d.Z)));
                break;
            case MeshShape.Rock:
                mesh.Round(6, static d => 0.41f + (0.09f * MathF.Sin((5 * d.X) + (3 * d.Z)) * MathF.Cos((4 * d.Y) - (2 * d.X))));
                mesh.Facet();
                break;
            case MeshShape.Roof:
                mesh.Prism();
                break;
            case MeshShape.Pipe:
                mesh.PipeOf(sides);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(shape), shape, "There is no such mesh.");
        }
        return mesh;
    }

    /// <summary>Adds a vertex and gives its number.</summary>
    public ushort Add(Vector3 p, Vector3 n)
    {
        Vertices.AddRange([p.X, p.Y, p.Z, n.X, n.Y, n.Z]);
        return (ushort)((Vertices.Count / 6) - 1);
    }

    /// <summary>Adds a flat quad, corners counter-clockwise from outside.</summary>
    public void Flat(Vector3 a, Vector3 b, Vector3 c, Vector3 d)
    {
        Vector3 n = Vector3.Normalize(Vector3.Cross(b - a, c - a));
        ushort i = Add(a, n);
        Add(b, n);
        Add(c, n);
        Add(d, n);
        Indices.AddRange([i, (ushort)(i + 1), (ushort)(i + 2), i, (ushort)(i + 2), (ushort)(i + 3)]);
    }

    private void Turned(int sides, float foot, float top)
    {
        float slope = foot - top;
        Vector3 above = new(0, 0, 0.5f), below = new(0, 0, -0.5f);
        for (int i = 0; i < sides; i++)
        {
            (Vector3 d, Vector3 e) = (Direction(i, sides), Direction(i + 1, sides));
            Vector3 nd = Vector3.Normalize(d with { Z = slope }), ne = Vector3.Normalize(e with { Z = slope });
            ushort a = Add((foot * d) + below, nd), b = Add((foot * e) + below, ne), c = Add((top * e) + above, ne), g = Add((top * d) + above, nd);
            Indices.AddRange([a, b, c, a, c, g]);
            Triangle(below, (foot * e) + below, (foot * d) + below, -Vector3.UnitZ);
            if (top > 0) Triangle(above, (top * d) + above, (top * e) + above, Vector3.UnitZ);
        }
    }

    private void PipeOf(int sides)
    {
        const float inner = 0.4f;
        Vector3 h = new(0, 0, 0.5f);
        for (int i = 0; i < sides; i++)
        {
            (Vector3 d, Vector3 e) = (Direction(i, sides), Direction(i + 1, sides));
            ushort a = Add((0.5f * d) - h, d), b = Add((0.5f * e) - h, e), c = Add((0.5f * e) + h, e), g = Add((0.5f * d) + h, d);
            Indices.AddRange([a, b, c, a, c, g]);
            a = Add((inner * e) - h, -e);
            b = Add((inner * d) - h, -d);
            c = Add((inner * d) + h, -d);
            g = Add((inner * e) + h, -e);
            Indices.AddRange([a, b, c, a, c, g]);
            Flat((inner * d) + h, (0.5f * d) + h, (0.5f * e) + h, (inner * e) + h);
            Flat((inner * e) - h, (0.5f * e) - h, (0.5f * d) - h, (inner * d) - h);
        }
    }

    private void Round(int sides, Func<Vector3, float> radius)
    {
        int rows = Math.Max(4, sides / 2);
        Mesh self = this;
        for (int row = 0; row <= rows; row++)
        {
            for (int i = 0; i <= sides; i++) self.Add(radius(At(row, i)) * At(row, i), Normal(At(row, i)));
        }
        for (int row = 0; row < rows; row++)
        {
            for (int i = 0; i < sides; i++)
            {
                ushort a = (ushort)((row * (sides + 1)) + i), b = (ushort)(a + 1), c = (ushort)(a + sides + 1), d = (ushort)(c + 1);
                if (row > 0) Indices.AddRange([a, c, b]);
                if (row < rows - 1) Indices.AddRange([b, c, d]);
            }
        }

        Vector3 At(int row, int i)
        {
            float polar = MathF.PI * row / rows;
            return (MathF.Sin(polar) * Direction(i, sides)) + new Vector3(0, 0, MathF.Cos(polar));
        }

        Vector3 Normal(Vector3 d)
        {
            // of the surface r(d) d, by differences along two tangents
            Vector3 side = Vector3.Normalize(MathF.Abs(d.Z) < 0.9f ? Vector3.Cross(Vector3.UnitZ, d) : Vector3.Cross(Vector3.UnitX, d));
            Vector3 up = Vector3.Cross(d, side);
            const float h = 0.02f;
            return Vector3.Normalize(Vector3.Cross(P(d + (h * side)) - P(d - (h * side)), P(d + (h * up)) - P(d - (h * up))));
        }

        Vector3 P(Vector3 d)
        {
            Vector3 unit = Vector3.Normalize(d);
            return radius(unit) * unit;
        }
    }

    /// <summary>Gives every triangle its own flat normal.</summary>
    private void Facet()
    {
        float[] old = [.. Vertices];
        ushort[] corners = [.. Indices];
        Vertices.Clear();
        Indices.Clear();
        for (int i = 0; i < corners.Length; i += 3)
        {
            Vector3 a = Corner(corners[i]), b = Corner(corners[i + 1]), c = Corner(corners[i + 2]);
            Triangle(a, b, c, Vector3.Normalize(Vector3.Cross(b - a, c - a)));
        }

        Vector3 Corner(int index) => new(old[6 * index], old[(6 * index) + 1], old[(6 * index) + 2]);
    }

    private void Prism()
    {
        Vector3 a = new(-0.5f, -0.5f, -0.5f), b = new(0.5f, -0.5f, -0.5f), c = new(0.5f, 0.5f, -0.5f), d = new(-0.5f, 0.5f, -0.5f);
        Vector3 left = new(-0.5f, 0, 0.5f), right = new(0.5f, 0, 0.5f);
        Flat(a, b, right, left);
        Flat(c, d, left, right);
        Flat(d, c, b, a);
        Triangle(b, c, right, Vector3.UnitX);
        Triangle(d, a, left, -Vector3.UnitX);
    }

    private void Triangle(Vector3 a, Vector3 b, Vector3 c, Vector3 n)
    {
        ushort i = Add(a, n);
        Add(b, n);
        Add(c, n);
        Indices.AddRange([i, (ushort)(i + 1), (ushort)(i + 2)]);
    }

    private static Vector3 Direction(int i, int sides)
    {
        float angle = 2 * MathF.PI * i / sides;
        return new(MathF.Cos(angle), MathF.Sin(angle), 0);
    }
}
