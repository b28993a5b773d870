using System.Text;
using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Oracles;

/// <summary>What must hold of a TOML file that was taken.</summary>
internal static class TomlRules
{
    /// <summary>Unknown keys that are named one by one; of more the program says nothing.</summary>
    private const int MostUnknown = 20;

    private static readonly UTF8Encoding Strict = new(false, true);

    /// <summary>The text's values by the strict reader; objects where it is no UTF-8, no TOML or gives a key twice.</summary>
    public static TomlReading Read(ReadOnlySpan<byte> bytes)
    {
        while (bytes.StartsWith<byte>([0xEF, 0xBB, 0xBF])) bytes = bytes[3..];
        try
        {
            return TomlParser.Read(Strict.GetString(bytes));
        }
        catch (Exception error) when (error is NoTomlException or DecoderFallbackException)
        {
            throw new UnexplainedException($"was taken, but is no TOML: {error.Message}");
        }
    }

    /// <summary>Objects where a key that the format does not know was passed over in silence.</summary>
    /// <param name="reading">The file.</param>
    /// <param name="known">Whether the format knows a full key.</param>
    /// <param name="said">What the program said.</param>
    public static void Unknown(TomlReading reading, Func<string, bool> known, IReadOnlyList<Diagnostic> said)
    {
        string[] unknown = [.. reading.Values.Select(value => value.Key).Concat(reading.Tables).Where(key => !known(key))];
        if (said.Count(d => d.Severity == Severity.Warning) >= MostUnknown) return;
        foreach (string key in unknown)
        {
            string plain = WithoutNumbers(key);
            if (!said.Any(d => d.Key.Length > 0 && (key == d.Key || plain == d.Key || key.StartsWith(d.Key + ".", StringComparison.Ordinal) || key.StartsWith(d.Key + "[", StringComparison.Ordinal) || plain.StartsWith(d.Key + ".", StringComparison.Ordinal) || Shown(key) == d.Key || Shown(plain) == d.Key)))
                throw new UnexplainedException($"the unknown key {key} was passed over in silence");
        }
    }

    /// <summary>Objects where a number is no number or lies outside its key's range; a number may be a table of value, low, typical and high, or a list.</summary>
    public static void InRange(string path, KeySpec key, object value)
    {
        if (key.Kind is not (KeyKind.Number or KeyKind.Count)) return;
        foreach (object one in Members(value))
        {
            double number = one switch { long whole => whole, double real => real, _ => double.NaN };
            if (!(number >= key.Minimum && number <= key.Maximum) || (key.Kind == KeyKind.Count && number != Math.Floor(number)))
                throw new UnexplainedException($"{path} = {one} was taken; allowed is {key.Range}");
        }
    }

    /// <summary>The number that counts: the value itself, or its typical one.</summary>
    public static double Typical(object value) => value switch
    {
        long whole => whole,
        double real => real,
        Dictionary<string, object> table => Typical(table.GetValueOrDefault("typical") ?? table.GetValueOrDefault("value") ?? double.NaN),
        _ => double.NaN,
    };

    /// <summary>A key without the numbers of its lists.</summary>
    public static string WithoutNumbers(string key)
    {
        int open = key.IndexOf('[', StringComparison.Ordinal), close = key.IndexOf(']', StringComparison.Ordinal), quote = key.IndexOf('"', StringComparison.Ordinal);
        return open > 0 && close > open && (quote < 0 || quote > close) ? WithoutNumbers(key[..open] + key[(close + 1)..]) : key;
    }

    /// <summary>A key as messages show it, without what would move a terminal's cursor, and cut.</summary>
    private static string Shown(string key) => OneLine.Of(key, 200);

    private static IEnumerable<object> Members(object value) => value switch
    {
        Dictionary<string, object> table => table.Where(pair => pair.Key != "source").Select(pair => pair.Value),
        List<object> list => list,
        _ => [value],
    };
}
