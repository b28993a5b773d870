using System.Globalization;

namespace Simfeel.CommandLine.Determinism;

/// <summary>Says where two bit-logs part.</summary>
/// <param name="Lines">Lines compared.</param>
/// <param name="Different">How many of them differ or stand in one log only.</param>
/// <param name="First">The first of them in words; empty where all agree.</param>
internal sealed record BitLogComparison(int Lines, int Different, string First)
{
    /// <summary>Compares a log with another one.</summary>
    /// <param name="here">The log of this machine.</param>
    /// <param name="other">The other log.</param>
    /// <exception cref="FormatException">One of them is no bit-log; the message says why.</exception>
    public static BitLogComparison Of(string here, string other)
    {
        List<(string Key, string[] Values)> mine = [.. Read(here)];
        Dictionary<string, string[]> theirs = [];
        foreach ((string key, string[] values) in Read(other))
        {
            if (!theirs.TryAdd(key, values)) throw new FormatException($"it has two lines that begin with \"{key}\"");
        }
        int lines = mine.Count, different = 0;
        string first = "";
        foreach ((string key, string[] values) in mine)
        {
            if (theirs.Remove(key, out string[]? their) && values.AsSpan().SequenceEqual(their)) continue;
            if (different++ == 0) first = Tell(key, values, their);
        }
        foreach (string key in theirs.Keys)
        {
            lines++;
            if (different++ == 0) first = $"The other log has a line \"{key}\" that this one has not.";
        }
        return new(lines, different, first);
    }

    /// <summary>Number of words that name a line, before its bits.</summary>
    private static int KeyWords(string kind) => kind switch
    {
        "library" or "mass" or "table" or "gains" or "metric" or "hash" => 2,
        "flight" => 4,
        _ => 0,
    };

    private static IEnumerable<(string Key, string[] Values)> Read(string text)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        if (lines.Length == 0 || lines[0] != BitLog.Title) throw new FormatException("its first line is not that of a bit-log of this version");
        for (int n = 1; n < lines.Length; n++)
        {
            string[] words = lines[n].Split(' ');
            if (words[0] == "machine") continue;
            int key = KeyWords(words[0]);
            if (key == 0 || words.Length <= key) throw new FormatException($"line {n + 1} begins with \"{words[0]}\", which is no line of a bit-log, or is cut short");
            if (Array.Find(words[key..], word => !ulong.TryParse(word, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out _)) is string wrong)
                throw new FormatException($"line {n + 1} has \"{wrong}\" where 16 hexadecimal digits should stand");
            yield return (string.Join(' ', words[..key]), words[key..]);
        }
    }

    private static string Tell(string key, string[] mine, string[]? theirs)
    {
        string[] name = key.Split(' ');
        if (theirs is null) return $"The other log has no line \"{key}\".";
        if (theirs.Length != mine.Length) return $"Line \"{key}\" has {mine.Length} numbers here and {theirs.Length} in the other log.";
        return name[0] switch
        {
            "library" => $"The mathematics library computes {name[1]} differently, {Apart(mine[0], theirs[0])}: rotor tables and the virtual pilot's angles may follow it.",
            "mass" => $"Mass or inertia of {name[1]} differ: the build files or the way they are put together are not the same.",
            "table" => $"The rotor table of {name[1]} differs: whatever it flies differs, too. Tables stand on the mathematics library and on the build file.",
            "gains" => $"Of {name[1]} {Number(BitLog.GainNames, mine, theirs, 0)}, though its rotor table is the same.",
            "flight" => $"In the flight {name[1]} of {name[2]}, at or before {name[3]} s: {Number(BitLog.StateNames, mine, theirs, 1)}. Tables and gains of all builds are the same.",
            "metric" => $"The metric {name[1]} differs though all flights are the same.",
            _ => $"The hash {name[1]} differs though all lines before it are the same.",
        };
    }

    /// <summary>The first number that differs, by name, and how far.</summary>
    private static string Number(IReadOnlyList<string> names, string[] mine, string[] theirs, int skipped)
    {
        for (int n = skipped; n < mine.Length; n++)
        {
            if (mine[n] != theirs[n]) return $"the {names[n - skipped]} differs {Apart(mine[n], theirs[n])}";
        }
        return "some state between two lines differs";
    }

    /// <summary>Distance of two doubles in units in the last place.</summary>
    private static string Apart(string one, string other)
    {
        decimal apart = Math.Abs((decimal)Ordered(one) - Ordered(other));
        return apart == 1 ? "by 1 unit in the last place" : $"by {apart} units in the last place";

        // doubles in the order of their values, as integers
        static long Ordered(string bits)
        {
            long number = unchecked((long)ulong.Parse(bits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture));
            return number < 0 ? unchecked(long.MinValue - number) : number;
        }
    }
}
