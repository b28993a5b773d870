using System.Runtime.CompilerServices;

namespace Simfeel.Cockpit.Graphics.Landscape;

/// <summary>Small textures that repeat without seams.</summary>
internal static class GrainTextures
{
    /// <summary>Edge of the textures, pixels.</summary>
    public const int Size = 256;

    /// <summary>RGBA: blades of grass, soft patches, pebbles, other soft patches; each with mean a half.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static byte[] Grain()
    {
        double[] blades = Blades(), pebbles = Pebbles();
        byte[] pixels = new byte[4 * Size * Size];
        for (int y = 0; y < Size; y++)
        {
            for (int x = 0; x < Size; x++)
            {
                int i = (y * Size) + x;
                pixels[4 * i] = Byte(blades[i]);
                pixels[(4 * i) + 1] = Byte(0.5 + (1.5 * (TileNoise.Octaves(x / 32.0, y / 32.0, 8, 5, 11) - 0.5)));
                pixels[(4 * i) + 2] = Byte(pebbles[i]);
                pixels[(4 * i) + 3] = Byte(0.5 + (1.6 * (TileNoise.Octaves(x / 64.0, y / 64.0, 4, 4, 29) - 0.5)));
            }
        }
        return pixels;
    }

    /// <summary>RG: slopes of waves east and north, a half is level; BA: those of another, longer set.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static byte[] Waves()
    {
        byte[] pixels = new byte[4 * Size * Size];
        for (int y = 0; y < Size; y++)
        {
            for (int x = 0; x < Size; x++)
            {
                int i = 4 * ((y * Size) + x);
                pixels[i] = Byte(0.5 + (1.6 * (Height(x + 1, y) - Height(x - 1, y))));
                pixels[i + 1] = Byte(0.5 + (1.6 * (Height(x, y + 1) - Height(x, y - 1))));
                pixels[i + 2] = Byte(0.5 + (2.4 * (Swell(x + 1, y) - Swell(x - 1, y))));
                pixels[i + 3] = Byte(0.5 + (2.4 * (Swell(x, y + 1) - Swell(x, y - 1))));
            }
        }
        return pixels;

        static double Swell(int x, int y) => TileNoise.Octaves(x / 32.0, y / 32.0, 8, 3, 59);

        // long crests: stretched along one direction
        static double Height(int x, int y) => TileNoise.Octaves(x / 16.0, y / 32.0, 16, 3, 47) + (0.5 * TileNoise.Octaves(x / 8.0, y / 8.0, 32, 2, 53));
    }

    /// <summary>Many short strokes, light over dark.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double[] Blades()
    {
        double[] height = new double[Size * Size];
        for (int i = 0; i < height.Length; i++) height[i] = 0.34 + (0.1 * TileNoise.Hash(i, 0, 3));
        const int strokes = 5200;
        for (int k = 0; k < strokes; k++)
        {
            double x = Size * TileNoise.Hash(k, 1, 5), y = Size * TileNoise.Hash(k, 2, 5), angle = 2 * Math.PI * TileNoise.Hash(k, 3, 5);
            double length = 6 + (9 * TileNoise.Hash(k, 4, 5)), tone = 0.22 + (0.62 * k / strokes) + (0.26 * (TileNoise.Hash(k, 5, 5) - 0.5));
            for (double s = 0; s < length; s += 0.5)
            {
                int px = (int)(x + (s * Math.Cos(angle))) & (Size - 1), py = (int)(y + (s * Math.Sin(angle))) & (Size - 1);
                height[(py * Size) + px] = tone * (0.75 + (0.25 * s / length));
            }
        }
        return AboutHalf(height);
    }

    /// <summary>Stones of some sizes with a lit side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double[] Pebbles()
    {
        double[] tone = new double[Size * Size];
        for (int i = 0; i < tone.Length; i++) tone[i] = 0.36 + (0.16 * TileNoise.Hash(i, 0, 7));
        for (int k = 0; k < 1500; k++)
        {
            double cx = Size * TileNoise.Hash(k, 1, 9), cy = Size * TileNoise.Hash(k, 2, 9);
            double radius = 1.5 + (4.5 * Math.Pow(TileNoise.Hash(k, 3, 9), 3)), shade = 0.36 + (0.36 * TileNoise.Hash(k, 4, 9));
            for (int y = (int)(cy - radius); y <= cy + radius; y++)
            {
                for (int x = (int)(cx - radius); x <= cx + radius; x++)
                {
                    double dx = (x - cx) / radius, dy = (y - cy) / radius, r2 = (dx * dx) + (dy * dy);
                    if (r2 < 1) tone[((y & (Size - 1)) * Size) + (x & (Size - 1))] = shade * (1 - (0.35 * r2) + (0.25 * (dy - dx) * Math.Sqrt(r2)));
                }
            }
        }
        return AboutHalf(tone);
    }

    /// <summary>Shifts the mean to a half, so that the far, averaged texture has the colour of the near one.</summary>
    private static double[] AboutHalf(double[] values)
    {
        double shift = 0.5 - values.Average();
        for (int i = 0; i < values.Length; i++) values[i] += shift;
        return values;
    }

    private static byte Byte(double value) => (byte)Math.Clamp((255 * value) + 0.5, 0, 255);
}
