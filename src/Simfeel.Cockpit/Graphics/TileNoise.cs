using System.Runtime.CompilerServices;

namespace Simfeel.Cockpit.Graphics;

/// <summary>Smooth noise without seams, from a fixed hash: the same on every machine. Values 0 to 1, mean about a half.</summary>
internal static class TileNoise
{
    /// <summary>A fixed random number for a place, 0 to 1.</summary>
    public static double Hash(int x, int y, int seed)
    {
        unchecked
        {
            uint h = ((uint)x * 0x9E3779B1u) ^ ((uint)y * 0x85EBCA77u) ^ ((uint)seed * 0xC2B2AE3Du);
            h = (h ^ (h >> 15)) * 0x2C1B3C6Du;
            h = (h ^ (h >> 12)) * 0x297A2D39u;
            return (h ^ (h >> 15)) / (double)uint.MaxValue;
        }
    }

    /// <summary>Smooth value noise that repeats after <paramref name="period"/> cells in both directions.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Value(double x, double y, int period, int seed)
    {
        int ix = (int)Math.Floor(x), iy = (int)Math.Floor(y);
        double fx = Smooth(x - ix), fy = Smooth(y - iy);
        int x0 = Wrap(ix, period), x1 = Wrap(ix + 1, period), y0 = Wrap(iy, period), y1 = Wrap(iy + 1, period);
        double low = Mix(Hash(x0, y0, seed), Hash(x1, y0, seed), fx), high = Mix(Hash(x0, y1, seed), Hash(x1, y1, seed), fx);
        return Mix(low, high, fy);
    }

    /// <summary>Octaves of value noise, each half as strong and half as large as the one before.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Octaves(double x, double y, int period, int octaves, int seed)
    {
        double sum = 0, weight = 0.5, total = 0;
        for (int k = 0; k < octaves; k++)
        {
            sum += weight * Value(x, y, period, seed + k);
            total += weight;
            weight *= 0.5;
            x *= 2;
            y *= 2;
            period *= 2;
        }
        return sum / total;
    }

    /// <summary>Smooth step from 0 at <paramref name="from"/> to 1 at <paramref name="to"/>.</summary>
    public static double Step(double from, double to, double x) => Smooth(Math.Clamp((x - from) / (to - from), 0, 1));

    /// <summary>The value between a and b at share t.</summary>
    public static double Mix(double a, double b, double t) => a + (t * (b - a));

    private static double Smooth(double t) => t * t * (3 - (2 * t));

    private static int Wrap(int i, int period)
    {
        int m = i % period;
        return m < 0 ? m + period : m;
    }
}
