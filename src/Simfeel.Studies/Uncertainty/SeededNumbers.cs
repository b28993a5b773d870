namespace Simfeel.Studies.Uncertainty;

/// <summary>
/// Uniform numbers that depend on a seed, a count and a name only, so that one input more changes none of the others' numbers.
/// Mixing steps of splitmix64 (Steele, Lea, Flood, Fast splittable pseudorandom number generators, 2014).
/// </summary>
public static class SeededNumbers
{
    /// <summary>A number in (0, 1).</summary>
    public static double Uniform(int seed, int count, string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        ulong state = Mix(0x9E3779B97F4A7C15UL + unchecked((uint)seed));
        state = Mix(state ^ unchecked((uint)count));
        foreach (char letter in name) state = Mix(state ^ letter);
        return ((state >> 11) + 0.5) / (1UL << 53);
    }

    /// <summary>A number in (-1, 1) of the symmetric triangular distribution, from a uniform one: most likely 0, variance 1/6.</summary>
    public static double Triangular(double uniform) =>
        uniform < 0.5 ? Math.Sqrt(2 * uniform) - 1 : 1 - Math.Sqrt(2 * (1 - uniform));

    private static ulong Mix(ulong z)
    {
        z += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
