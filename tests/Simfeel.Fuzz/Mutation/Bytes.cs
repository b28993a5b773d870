using System.Text;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Mutation;

/// <summary>Damages a file without knowing what it is.</summary>
internal static class Bytes
{
    private static readonly byte[][] Snippets =
    [
        [0], [0xEF, 0xBB, 0xBF], [0xFF, 0xFE], [0xC0, 0xAF], [0xED, 0xA0, 0x80], [0xF5, 0x80, 0x80, 0x80], [0x80], [0x1B, (byte)'[', (byte)'2', (byte)'J'],
        "\r\n"u8.ToArray(), "\r"u8.ToArray(), "\u2028"u8.ToArray(), "\u0085"u8.ToArray(), "\u202e"u8.ToArray(), "\u0661"u8.ToArray(), "\""u8.ToArray(),
        "'''"u8.ToArray(), "["u8.ToArray(), "]]"u8.ToArray(), "{"u8.ToArray(), "#"u8.ToArray(), "="u8.ToArray(), "\\u"u8.ToArray(), ","u8.ToArray(),
        "nan"u8.ToArray(), "-inf"u8.ToArray(), "1e999"u8.ToArray(), "-0"u8.ToArray(), [0xFF, 0xFF, 0xFF, 0xFF], [0x7F, 0xFF, 0xFF, 0xFF], [0, 0, 0, 0x80],
    ];

    /// <summary>One to four blows.</summary>
    /// <param name="whole">The file; it stays as it is.</param>
    /// <param name="others">Files to splice with.</param>
    /// <param name="dice">Random numbers.</param>
    public static byte[] Mutate(byte[] whole, IReadOnlyList<byte[]> others, Dice dice)
    {
        byte[] bytes = whole;
        for (int blows = dice.From(1, 4); blows > 0; blows--) bytes = Blow(bytes, others, dice);
        return bytes;
    }

    private static byte[] Blow(byte[] bytes, IReadOnlyList<byte[]> others, Dice dice)
    {
        int at = dice.Below(bytes.Length + 1), length = Math.Min(bytes.Length - at, 1 + dice.Below(dice.Once(4) ? 400 : 12));
        switch (dice.Below(12))
        {
            case 0 or 1: return Flipped(bytes, at, dice);
            case 2 or 3: return [.. bytes[..at], .. dice.Of(Snippets), .. bytes[at..]];
            case 4: return [.. bytes[..at], .. bytes[(at + length)..]];
            case 5: return [.. bytes[..(at + length)], .. bytes[at..]];
            case 6: return bytes[..at];
            case 7:
                byte[] other = dice.Of(others);
                return [.. bytes[..at], .. other[dice.Below(other.Length + 1)..]];
            case 8: return [.. bytes[..at], .. Run(dice), .. bytes[at..]];
            case 9: return Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(bytes).ReplaceLineEndings(dice.Of(["\r\n", "\r", "\n\r", "\u2028"])));
            case 10: return [.. dice.Of(Snippets), .. bytes];
            default:
                byte[] changed = [.. bytes];
                if (changed.Length > 0) changed[Math.Min(at, changed.Length - 1)] = (byte)dice.Below(256);
                return changed;
        }
    }

    private static byte[] Flipped(byte[] bytes, int at, Dice dice)
    {
        byte[] changed = [.. bytes];
        if (changed.Length > 0) changed[Math.Min(at, changed.Length - 1)] ^= (byte)(1 << dice.Below(8));
        return changed;
    }

    /// <summary>A very long run of one character.</summary>
    private static byte[] Run(Dice dice)
    {
        byte[] run = new byte[dice.Once(20) ? 200_000 : dice.From(100, 5000)];
        Array.Fill(run, dice.Of("a 0[{\"'\n,;.\t-x("u8.ToArray()));
        return run;
    }
}
