using System.Numerics;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>Painted lines and rings as strips a little wider than the paint, four floats a vertex: place, place across.</summary>
internal static class MarkMesh
{
    // The strip over the paint: room for a soft edge.
    private const float Over = 1.6f;

    /// <summary>Vertices of triangles.</summary>
    public static float[] Of(IReadOnlyList<FieldMark> marks)
    {
        List<float> vertices = [];
        foreach (FieldMark mark in marks)
        {
            Vector2 from = LandTexture.Plan(mark.From), to = LandTexture.Plan(mark.To);
            float half = (float)mark.Width / 2 * Over;
            if (mark.Radius > 0)
            {
                int parts = Math.Clamp((int)(mark.Radius * 12), 24, 96);
                for (int k = 0; k < parts; k++) Strip(On(k, 1), On(k, -1), On(k + 1, 1), On(k + 1, -1));

                Vector2 On(int k, int side)
                {
                    float angle = 2 * MathF.PI * k / parts;
                    return from + (((float)mark.Radius + (side * half)) * new Vector2(MathF.Cos(angle), MathF.Sin(angle)));
                }
            }
            else
            {
                Vector2 along = Vector2.Normalize(to - from), left = half * new Vector2(-along.Y, along.X);
                Strip(from + left, from - left, to + left, to - left);
            }
        }
        return [.. vertices];

        void Strip(Vector2 a, Vector2 b, Vector2 c, Vector2 d)
        {
            Put(a, 1);
            Put(b, -1);
            Put(d, -1);
            Put(a, 1);
            Put(d, -1);
            Put(c, 1);
        }

        void Put(Vector2 p, float across) => vertices.AddRange([p.X, p.Y, across, Over]);
    }
}
