using System.Numerics;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>Simple polygons in the plane.</summary>
internal static class Polygon
{
    /// <summary>Twice the area, above 0 where the corners run counter-clockwise.</summary>
    public static double TwiceArea(ReadOnlySpan<Vector2> corners)
    {
        double sum = 0;
        for (int i = 0; i < corners.Length; i++) sum += Cross(corners[i], corners[(i + 1) % corners.Length]);
        return sum;
    }

    /// <summary>Corner numbers of triangles, counter-clockwise, that fill a simple polygon: ears are cut off one by one.</summary>
    /// <param name="corners">At least three corners, in either direction.</param>
    public static List<ushort> Triangles(ReadOnlySpan<Vector2> corners)
    {
        List<int> left = [.. Enumerable.Range(0, corners.Length)];
        if (TwiceArea(corners) < 0) left.Reverse();
        List<ushort> triangles = [];
        while (left.Count > 3)
        {
            int ear = -1;
            for (int i = 0; i < left.Count && ear < 0; i++)
            {
                if (IsEar(corners, left, i)) ear = i;
            }
            // a polygon that crosses itself has no ear at times; its corners are still used up
            if (ear < 0) ear = 0;
            Cut(left, ear, triangles);
        }
        Cut(left, 1, triangles);
        return triangles;
    }

    /// <summary>Whether a point lies inside: a ray crosses an odd number of edges.</summary>
    public static bool Contains(ReadOnlySpan<Vector2> corners, Vector2 p)
    {
        bool inside = false;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            Vector2 a = corners[i], b = corners[j];
            if ((a.Y > p.Y) != (b.Y > p.Y) && p.X < ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)) + a.X) inside = !inside;
        }
        return inside;
    }

    /// <summary>Distance of a point from a line between two points.</summary>
    public static float Distance(Vector2 p, Vector2 a, Vector2 b)
    {
        Vector2 along = b - a;
        float share = Math.Clamp(Vector2.Dot(p - a, along) / MathF.Max(along.LengthSquared(), 1e-9f), 0, 1);
        return Vector2.Distance(p, a + (share * along));
    }

    private static bool IsEar(ReadOnlySpan<Vector2> corners, List<int> left, int i)
    {
        int n = left.Count;
        Vector2 a = corners[left[(i + n - 1) % n]], b = corners[left[i]], c = corners[left[(i + 1) % n]];
        if (Cross(b - a, c - b) <= 0) return false;
        for (int k = 0; k < n; k++)
        {
            Vector2 p = corners[left[k]];
            if (p == a || p == b || p == c) continue;
            if (Cross(b - a, p - a) >= 0 && Cross(c - b, p - b) >= 0 && Cross(a - c, p - c) >= 0) return false;
        }
        return true;
    }

    private static void Cut(List<int> left, int i, List<ushort> triangles)
    {
        int n = left.Count;
        triangles.AddRange([(ushort)left[(i + n - 1) % n], (ushort)left[i], (ushort)left[(i + 1) % n]]);
        left.RemoveAt(i);
    }

    private static float Cross(Vector2 a, Vector2 b) => (a.X * b.Y) - (a.Y * b.X);
}
