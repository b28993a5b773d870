using System.Text;

namespace Simfeel.Fuzz.Running;

/// <summary>
/// Random numbers that depend on nothing but their seed (SplitMix64; Steele, Lea and Flood, OOPSLA 2014), so that every input can
/// be made again from its kind, the campaign's seed and its number.
/// </summary>
internal sealed class Dice(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The dice of one input.</summary>
    public static Dice Of(string kind, int seed, long number)
    {
        ulong state = 14695981039346656037;
        foreach (byte b in Encoding.UTF8.GetBytes(kind)) state = (state ^ b) * 1099511628211;
        Dice dice = new(state ^ ((ulong)(uint)seed << 32) ^ (ulong)number);
        dice.Draw();
        return dice;
    }

    /// <summary>64 random bits.</summary>
    public ulong Draw()
    {
        ulong z = _state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>A whole number from 0 to below a limit, which is above 0.</summary>
    public int Below(int limit) => (int)(Draw() % (ulong)limit);

    /// <summary>A whole number of a range, ends included.</summary>
    public int From(int least, int most) => least + Below(most - least + 1);

    /// <summary>A number from 0 to below 1.</summary>
    public double Share() => (Draw() >> 11) * (1.0 / (1UL << 53));

    /// <summary>True once in so many times.</summary>
    public bool Once(int inSoMany) => Below(inSoMany) == 0;

    /// <summary>One of some.</summary>
    public T Of<T>(IReadOnlyList<T> some) => some[Below(some.Count)];
}
