using System.Runtime.CompilerServices;

namespace Simfeel.Physics.Kernel;

/// <summary>
/// Seeded white noise by place instead of by turn: the number of a rotor at a time depends on seed, time and rotor only, not
/// on what was drawn before. Every craft of a comparison meets the same numbers, and a flight can be flown again from any
/// point.
/// </summary>
public static class WakeNoise
{
    /// <summary>Square root of 3.</summary>
    private const double Amplitude = 1.7320508075688772;

    /// <summary>A number of mean 0 and variance 1, evenly spread between -sqrt(3) and sqrt(3).</summary>
    /// <param name="seed">Seed of the run.</param>
    /// <param name="time">Count of the draw in time.</param>
    /// <param name="rotor">Rotor.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double At(int seed, long time, int rotor)
    {
        ulong bits = Mix(Mix(Mix((uint)seed) + (ulong)time) + (ulong)rotor);
        return Amplitude * (((bits >> 11) * (2.0 / (1UL << 53))) - 1);
    }

    /// <summary>The mixing of the SplitMix generator (Steele, Lea and Flood, OOPSLA 2014): a bijection of 64 bits.</summary>
    private static ulong Mix(ulong x)
    {
        x += 0x9E3779B97F4A7C15;
        x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9;
        x = (x ^ (x >> 27)) * 0x94D049BB133111EB;
        return x ^ (x >> 31);
    }
}
