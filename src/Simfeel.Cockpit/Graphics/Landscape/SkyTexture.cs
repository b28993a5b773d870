using System.Numerics;
using System.Runtime.CompilerServices;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>The panorama of a calm afternoon: gradient, glow about the sun, veils and small clouds. Already sRGB encoded.</summary>
internal static class SkyTexture
{
    /// <summary>Pixels around and from the horizon up.</summary>
    public const int Width = 1024, Height = 256;

    /// <summary>Height in the texture (0 to 1) of a sine of elevation: more room near the horizon.</summary>
    public static float Row(float sine) => MathF.Sqrt(MathF.Max(0, sine));

    /// <summary>RGBA pixels, the horizon first.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static byte[] Pixels()
    {
        byte[] pixels = new byte[4 * Width * Height];
        for (int y = 0; y < Height; y++)
        {
            double row = (y + 0.5) / Height, sine = row * row, level = Math.Sqrt(1 - (sine * sine));
            for (int x = 0; x < Width; x++)
            {
                double azimuth = 2 * Math.PI * (x + 0.5) / Width;
                Vector3 d = new((float)(level * Math.Cos(azimuth)), (float)(level * Math.Sin(azimuth)), (float)sine);
                Vector3 c = Colour(d, x, row);
                int i = 4 * ((y * Width) + x);
                pixels[i] = Encoded(c.X);
                pixels[i + 1] = Encoded(c.Y);
                pixels[i + 2] = Encoded(c.Z);
                pixels[i + 3] = 255;
            }
        }
        return pixels;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Vector3 Colour(Vector3 d, int x, double row)
    {
        Vector3 zenith = new(0.125f, 0.285f, 0.560f), middle = new(0.33f, 0.52f, 0.74f);
        double s = d.Z;
        Vector3 clear = Vector3.Lerp(Daylight.Haze, middle, (float)TileNoise.Step(0, 0.30, s));
        clear = Vector3.Lerp(clear, zenith, (float)TileNoise.Step(0.12, 0.95, s));
        float toSun = MathF.Max(0, Vector3.Dot(d, Daylight.Sun));
        float glow = (0.30f * MathF.Pow(toSun, 14)) + (0.45f * MathF.Pow(toSun, 120)) + (2.0f * MathF.Pow(toSun, 3000));
        // the glow fades towards the horizon, where the sky has to meet the haze
        clear += (float)TileNoise.Step(0, 0.08, s) * glow * new Vector3(1.0f, 0.93f, 0.78f);

        double u = (double)x / Width;
        double veils = TileNoise.Step(0.22, 0.5, row) * TileNoise.Step(1.0, 0.75, row);
        if (veils > 0) veils *= 0.42 * TileNoise.Step(0.52, 0.80, TileNoise.Octaves(u * 12, row * 5, 12, 5, 71));
        Vector3 c = Vector3.Lerp(clear, new(0.90f, 0.92f, 0.95f), (float)veils);
        // heaps of cloud stand in a band over the horizon, flat below
        double band = TileNoise.Step(0.20, 0.27, row) * TileNoise.Step(0.50, 0.30, row);
        if (band <= 0) return c;
        double heap = TileNoise.Octaves(u * 26, row * 13, 26, 5, 83);
        double low = TileNoise.Octaves(u * 26, (row - 0.025) * 13, 26, 5, 83);
        double heaps = TileNoise.Step(0.50, 0.66, heap * (0.70 + (0.42 * band))) * band;
        float lit = (float)Math.Clamp(0.84 + (2.0 * (heap - low)) + (0.25 * toSun), 0.6, 1.15);
        Vector3 cloud = lit * new Vector3(0.93f, 0.92f, 0.92f);
        return Vector3.Lerp(c, Vector3.Lerp(Daylight.Haze, cloud, (float)TileNoise.Step(0.2, 0.36, row)), (float)(0.85 * heaps));
    }

    private static byte Encoded(float c) => (byte)((255 * LinearColour.Encoded(c)) + 0.5f);
}
