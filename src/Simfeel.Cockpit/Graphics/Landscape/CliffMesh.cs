using System.Numerics;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>Rock faces from the edge of the land down under the sea: flat facets, ten floats a vertex (place, normal, colour).</summary>
internal static class CliffMesh
{
    // Share of the drop and how far the rock stands out there, over the drop.
    private static readonly (float Down, float Out)[] Rows = [(0, 0), (0.10f, 0.04f), (0.42f, 0.14f), (0.78f, 0.30f), (1.15f, 0.62f)];

    // Length of a facet along the edge, m.
    private const float Step = 2.6f;

    /// <summary>Vertices of triangles.</summary>
    /// <param name="land">Corners of the land in G.</param>
    /// <param name="drop">Height of the land over the sea, m.</param>
    public static float[] Of(Vector2[] land, float drop)
    {
        if (Polygon.TwiceArea(land) < 0) Array.Reverse(land = [.. land]);
        List<Vector2> edge = [];
        List<Vector2> outward = [];
        for (int i = 0; i < land.Length; i++)
        {
            Vector2 a = land[i], b = land[(i + 1) % land.Length], before = land[(i + land.Length - 1) % land.Length];
            int parts = Math.Max(1, (int)(Vector2.Distance(a, b) / Step));
            Vector2 normal = Right(b - a);
            for (int k = 0; k < parts; k++)
            {
                edge.Add(Vector2.Lerp(a, b, (float)k / parts));
                outward.Add(k > 0 ? normal : Vector2.Normalize(normal + Right(a - before)));
            }
        }
        List<float> vertices = [];
        for (int i = 0; i < edge.Count; i++)
        {
            int j = (i + 1) % edge.Count;
            for (int row = 0; row + 1 < Rows.Length; row++)
            {
                Vector3 a = At(i, row), b = At(i, row + 1), c = At(j, row + 1), d = At(j, row);
                Facet(a, b, c, row, i);
                Facet(a, c, d, row, i + 7);
            }
        }
        return [.. vertices];

        Vector3 At(int i, int row)
        {
            float h = (float)TileNoise.Hash(i, row, 41), v = (float)TileNoise.Hash(i, row, 43);
            float rough = row == 0 ? 0 : 0.16f * drop;
            Vector2 p = edge[i] + (((Rows[row].Out * drop) + (rough * (h - 0.35f))) * outward[i]);
            return new(p, row == 0 ? 0 : -drop * (Rows[row].Down + (0.10f * (v - 0.5f))));
        }

        void Facet(Vector3 a, Vector3 b, Vector3 c, int row, int i)
        {
            Vector3 n = Vector3.Normalize(Vector3.Cross(b - a, c - a));
            float tone = 0.86f + (0.28f * (float)TileNoise.Hash(i, row, 47));
            Vector3 colour = tone * (row == 0 ? new(0.30f, 0.26f, 0.17f) : row == 3 ? new Vector3(0.15f, 0.145f, 0.135f) : new Vector3(0.37f, 0.33f, 0.275f));
            foreach (Vector3 p in (ReadOnlySpan<Vector3>)[a, b, c]) vertices.AddRange([p.X, p.Y, p.Z, n.X, n.Y, n.Z, colour.X, colour.Y, colour.Z, 1]);
        }
    }

    /// <summary>Unit vector to the right of a direction: outwards where corners run counter-clockwise.</summary>
    private static Vector2 Right(Vector2 d) => Vector2.Normalize(new(d.Y, -d.X));
}
