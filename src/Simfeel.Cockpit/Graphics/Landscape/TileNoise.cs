using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Simfeel.Cockpit.Graphics.Landscape;

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
        int x0 = Wrap(ix, period), x1 = x0 + 1 == period ? 0 : x0 + 1, y0 = Wrap(iy, period), y1 = y0 + 1 == period ? 0 : y0 + 1;
        Vector256<double> corners = Hash(Vector128.Create(x0, x0, x1, x1).AsUInt32(), Vector128.Create(y0, y1, y0, y1).AsUInt32(), seed);
        Vector128<double> left = corners.GetLower(), rows = left + (Vector128.Create(fx) * (corners.GetUpper() - left));
        return Mix(rows[0], rows[1], fy);
    }

    /// <summary><see cref="Hash(int, int, int)"/> of four places, bit for bit.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Hash(Vector128<uint> x, Vector128<uint> y, int seed)
    {
        Vector128<uint> h = (x * Vector128.Create(0x9E3779B1u)) ^ (y * Vector128.Create(0x85EBCA77u)) ^ Vector128.Create(unchecked((uint)seed * 0xC2B2AE3Du));
        h = (h ^ (h >>> 15)) * Vector128.Create(0x2C1B3C6Du);
        h = (h ^ (h >>> 12)) * Vector128.Create(0x297A2D39u);
        h ^= h >>> 15;
        // the low bits of 2^52 hold an integer below 2^32 exactly
        const double large = 4503599627370496;
        Vector256<ulong> wide = Vector256.Create(Vector128.WidenLower(h), Vector128.WidenUpper(h));
        Vector256<double> number = (wide | Vector256.Create(large).AsUInt64()).AsDouble() - Vector256.Create(large);
        return number / Vector256.Create((double)uint.MaxValue);
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
        if ((uint)i < (uint)period) return i;
        int m = i % period;
        return m < 0 ? m + period : m;
    }
}
