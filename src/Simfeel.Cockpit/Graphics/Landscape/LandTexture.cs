using System.Numerics;
using System.Runtime.CompilerServices;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>
/// Textures over the whole field, worked out once: the colour of the land (grass, worn ground about buildings and along the
/// cliffs) with the shadows of all that stands, and the distance from the coast for the sea.
/// </summary>
internal sealed class LandTexture
{
    // Water next to the coast is shallow this far, m.
    private const float Shallows = 26;

    private readonly Vector2[] _land;
    private readonly float _step;

    /// <summary>Works the textures out.</summary>
    /// <param name="map">The field.</param>
    /// <param name="size">Edge of the colour texture, pixels; the coast's is a quarter of it.</param>
    public LandTexture(FieldMap map, int size)
    {
        _land = [.. map.Land.Select(Plan)];
        Vector2 low = _land.Aggregate(Vector2.Min) - new Vector2(Shallows), high = _land.Aggregate(Vector2.Max) + new Vector2(Shallows);
        float edge = MathF.Max(high.X - low.X, high.Y - low.Y);
        Corner = ((low + high) / 2) - new Vector2(edge / 2);
        Edge = edge;
        Size = size;
        _step = edge / size;
        Colour = Grass();
        Wear(map);
        Shade(map);
        Coast = FromCoast(size / 4);
    }

    /// <summary>South-west corner of the square in G, m.</summary>
    public Vector2 Corner { get; }

    /// <summary>Edge of the square, m.</summary>
    public float Edge { get; }

    /// <summary>Edge of the colour texture, pixels.</summary>
    public int Size { get; }

    /// <summary>RGB: square root of the albedo; A: share of the sun.</summary>
    public byte[] Colour { get; }

    /// <summary>Nearness to the coast in R: 255 on land, 0 far from it; edge a quarter of the colour's.</summary>
    public byte[] Coast { get; }

    /// <summary>Place of a point of the world seen from above, in G.</summary>
    public static Vector2 Plan(Physics.Maths.Vec3 p_W) => new((float)p_W.Y, (float)p_W.X);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private byte[] Grass()
    {
        // albedos: lush grass, dry grass of the coast, in linear values
        Vector3 lush = new(0.115f, 0.178f, 0.052f), dry = new(0.215f, 0.205f, 0.090f);
        byte[] pixels = new byte[4 * Size * Size];
        for (int y = 0; y < Size; y++)
        {
            for (int x = 0; x < Size; x++)
            {
                Vector2 p = At(x, y);
                double broad = TileNoise.Octaves(p.X / 41, p.Y / 41, 64, 3, 101);
                Vector3 colour = Vector3.Lerp(lush, dry, (float)TileNoise.Step(0.34, 0.68, broad));
                colour *= 0.42f + (1.16f * (float)TileNoise.Octaves(p.X / 2.3, p.Y / 2.3, 512, 3, 151));
                Put(pixels, x, y, colour, 255);
            }
        }
        return pixels;
    }

    /// <summary>Gravel about buildings, the start pad and walls; bare earth along the edge of the cliffs.</summary>
    private void Wear(FieldMap map)
    {
        Vector3 gravel = new(0.36f, 0.32f, 0.26f), earth = new(0.27f, 0.225f, 0.155f);
        foreach (FieldSolid solid in map.Solids)
        {
            float reach = solid.Kind switch
            {
                SolidKind.Building => 3.4f,
                SolidKind.Lighthouse => 5.5f,
                SolidKind.Wall => 0.9f,
                SolidKind.Rock or SolidKind.Trunk => 0.5f,
                _ => 0,
            };
            if (reach == 0) continue;
            Near(Plan(solid.p_WC), Reach(solid) + reach + 2, p => Outside(solid, p), reach, 1.6f, solid.Kind == SolidKind.Trunk ? earth : gravel, 0.9f);
        }
        Near(Vector2.Zero, 9, p => p.Length(), 3.6f, 1.2f, gravel, 0.92f);
        for (int i = 0; i < _land.Length; i++)
        {
            Vector2 a = _land[i], b = _land[(i + 1) % _land.Length];
            Near((a + b) / 2, (Vector2.Distance(a, b) / 2) + 7, p => Polygon.Distance(p, a, b), 1.8f, 2.4f, earth, 0.85f);
        }
    }

    /// <summary>Blends a colour in within a distance, frayed by noise.</summary>
    private void Near(Vector2 middle, float radius, Func<Vector2, float> distance, float reach, float fray, Vector3 colour, float strength)
    {
        ForEach(middle, radius, (x, y) =>
        {
            Vector2 p = At(x, y);
            float d = distance(p) + (float)(fray * 2 * (TileNoise.Octaves(p.X / 3.1, p.Y / 3.1, 256, 3, 131) - 0.5));
            float share = strength * (float)TileNoise.Step(reach + (0.45f * fray), reach - (0.45f * fray), d);
            if (share <= 0) return;
            int i = 4 * ((y * Size) + x);
            Vector3 old = new(Squared(Colour[i]), Squared(Colour[i + 1]), Squared(Colour[i + 2]));
            Put(Colour, x, y, Vector3.Lerp(old, colour, share), Colour[i + 3]);
        });
    }

    /// <summary>Takes the sun away where a solid stands before it, four rays a pixel.</summary>
    private void Shade(FieldMap map)
    {
        Vector2 flat = new(Daylight.Sun.X, Daylight.Sun.Y);
        float[] sun = new float[Size * Size];
        Array.Fill(sun, 1);
        foreach (FieldSolid solid in map.Solids)
        {
            float top = (float)-(solid.p_WC.Z - (solid.Size.Z / 2));
            Vector2 cast = top / Daylight.Sun.Z * flat;
            ForEach(Plan(solid.p_WC) - (cast / 2), Reach(solid) + (cast.Length() / 2) + 1, (x, y) =>
            {
                int hits = 0;
                for (int k = 0; k < 4; k++)
                {
                    Vector2 p = At(x, y) + (_step * 0.5f * new Vector2((k & 1) - 0.5f, (k >> 1) - 0.5f));
                    if (SunRay.Hits(solid, p)) hits++;
                }
                // leaves let some light through
                float least = solid.Kind == SolidKind.Crown ? 0.25f : 0;
                int i = (y * Size) + x;
                sun[i] = MathF.Min(sun[i], 1 - ((1 - least) * hits / 4f));
            });
        }
        for (int i = 0; i < sun.Length; i++) Colour[(4 * i) + 3] = (byte)(255 * sun[i]);
    }

    /// <summary>The colour that is seen, in sRGB, from albedo and sun.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public byte[] Lit()
    {
        byte[] seen = new byte[Colour.Length];
        for (int i = 0; i < Colour.Length; i += 4)
        {
            float sun = Colour[i + 3] / 255f;
            Vector3 light = (Daylight.SkyLight * (0.8f + (0.2f * sun))) + (Daylight.SunLight * (Daylight.Sun.Z * sun));
            seen[i] = Encoded(Colour[i], light.X);
            seen[i + 1] = Encoded(Colour[i + 1], light.Y);
            seen[i + 2] = Encoded(Colour[i + 2], light.Z);
            seen[i + 3] = Colour[i + 3];
        }
        return seen;

        static byte Encoded(byte root, float light) => (byte)((255 * LinearColour.Encoded(Squared(root) * light)) + 0.5f);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private byte[] FromCoast(int size)
    {
        byte[] pixels = new byte[4 * size * size];
        float step = Edge / size;
        for (int y = 0; y < size; y++)
        {
            for (int x = 0; x < size; x++)
            {
                Vector2 p = Corner + (step * new Vector2(x + 0.5f, y + 0.5f));
                float d = float.MaxValue;
                for (int i = 0; i < _land.Length; i++) d = MathF.Min(d, Polygon.Distance(p, _land[i], _land[(i + 1) % _land.Length]));
                bool border = x == 0 || y == 0 || x == size - 1 || y == size - 1;
                float near = Polygon.Contains(_land, p) ? 1 : border ? 0 : 1 - MathF.Min(1, d / Shallows);
                pixels[4 * ((y * size) + x)] = (byte)(255 * near);
            }
        }
        return pixels;
    }

    private void ForEach(Vector2 middle, float radius, Action<int, int> pixel)
    {
        Vector2 low = (middle - new Vector2(radius) - Corner) / _step, high = (middle + new Vector2(radius) - Corner) / _step;
        for (int y = Math.Max(0, (int)low.Y); y <= Math.Min(Size - 1, (int)high.Y); y++)
        {
            for (int x = Math.Max(0, (int)low.X); x <= Math.Min(Size - 1, (int)high.X); x++) pixel(x, y);
        }
    }

    private Vector2 At(int x, int y) => Corner + (_step * new Vector2(x + 0.5f, y + 0.5f));

    private void Put(byte[] pixels, int x, int y, Vector3 albedo, byte alpha)
    {
        int i = 4 * ((y * Size) + x);
        pixels[i] = Root(albedo.X);
        pixels[i + 1] = Root(albedo.Y);
        pixels[i + 2] = Root(albedo.Z);
        pixels[i + 3] = alpha;
    }

    private static float Reach(FieldSolid solid) => 0.5f * (float)double.Hypot(solid.Size.X, solid.Size.Y);

    /// <summary>Distance of a place from a solid's plan; 0 inside.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static float Outside(FieldSolid solid, Vector2 p)
    {
        Vector2 d = p - Plan(solid.p_WC);
        if (solid.Shape == SolidShape.Capsule) return MathF.Max(0, d.Length() - ((float)solid.Size.X / 2));
        (float sin, float cos) = MathF.SinCos((float)solid.Heading);
        // length runs along the heading: north cos, east sin
        float along = MathF.Abs((d.Y * cos) + (d.X * sin)) - ((float)solid.Size.X / 2), across = MathF.Abs((d.X * cos) - (d.Y * sin)) - ((float)solid.Size.Y / 2);
        return new Vector2(MathF.Max(0, along), MathF.Max(0, across)).Length();
    }

    private static byte Root(float albedo) => (byte)((255 * MathF.Sqrt(Math.Clamp(albedo, 0, 1))) + 0.5f);

    private static float Squared(byte root) => root / 255f * (root / 255f);
}
