namespace Simfeel.Builds.Reading;

/// <summary>Finds the name that was probably meant.</summary>
internal static class NearestName
{
    // longer ones are no slip of a name, and comparing takes the product of both lengths
    private const int LongestName = 100;

    /// <summary>" Did you mean X?" for the end of a sentence; "" where no name is near.</summary>
    public static string Hint(string written, IEnumerable<string> names) => Of(written, names) is string near ? $" Did you mean {near}?" : "";

    /// <summary>What may stand in a name's place, for behind the sentence that it is unknown: the nearest one and all of them.</summary>
    public static string Choices(string written, string heading, IReadOnlyList<string> names) => $"{Hint(written, names)} {heading}: {string.Join(", ", names)}";

    /// <summary>The nearest of the names, or null where none is near (a third of the letters, at least two, may differ).</summary>
    public static string? Of(string written, IEnumerable<string> names)
    {
        if (written.Length > LongestName) return null;
        string? best = null;
        int least = int.MaxValue;
        foreach (string name in names)
        {
            // A forgotten or wrong unit is the likeliest slip: mass or mass_kg for mass_g.
            bool unitSlip = Stem(name) == Stem(written) || Stem(name) == written;
            int distance = unitSlip ? 1 : Distance(written, name);
            if (distance < least) (best, least) = (name, distance);
        }
        return least <= Math.Max(2, written.Length / 3) ? best : null;

        static string Stem(string name) => name.LastIndexOf('_') is int at and > 0 ? name[..at] : name;
    }

    /// <summary>Optimal string alignment distance: insertions, deletions, substitutions and swaps of neighbours.</summary>
    internal static int Distance(string a, string b)
    {
        int[] previous2 = new int[b.Length + 1], previous = new int[b.Length + 1], current = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++) previous[j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                current[j] = Math.Min(Math.Min(current[j - 1], previous[j]) + 1, previous[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    current[j] = Math.Min(current[j], previous2[j - 2] + 1);
            }
            (previous2, previous, current) = (previous, current, previous2);
        }
        return previous[b.Length];
    }
}
