using System.Text;

namespace Simfeel.Studies.Blind;

/// <summary>A field of a line.</summary>
/// <param name="Text">Without quotes.</param>
/// <param name="Column">Where it starts in the line, characters counted from 1.</param>
internal readonly record struct CsvField(string Text, int Column);

/// <summary>
/// One line of comma-separated values after RFC 4180, with one rule more: no line ends inside quotes. So every record is one line, and a
/// line that was cut short cannot swallow those behind it.
/// </summary>
internal static class CsvLine
{
    /// <summary>Cuts a line into fields.</summary>
    /// <param name="line">Without its line end.</param>
    /// <param name="fields">Its fields.</param>
    /// <returns>False where a quote is left open.</returns>
    public static bool TrySplit(string line, out IReadOnlyList<CsvField> fields)
    {
        List<CsvField> found = [];
        StringBuilder field = new();
        bool quoted = false;
        int start = 0;
        for (int n = 0; n < line.Length; n++)
        {
            char c = line[n];
            if (c == '"' && quoted && n + 1 < line.Length && line[n + 1] == '"') field.Append(line[n++]);
            else if (c == '"' && (quoted || n == start)) quoted = !quoted;
            else if (c == ',' && !quoted) Add(n);
            else field.Append(c);
        }
        Add(line.Length);
        fields = found;
        return !quoted;

        void Add(int end)
        {
            found.Add(new(field.ToString(), start + 1));
            field.Clear();
            start = end + 1;
        }
    }

    /// <summary>Fields as a line without its end. Line ends and other control characters become blanks.</summary>
    public static string Join(IEnumerable<string> fields) => string.Join(',', fields.Select(Quoted));

    private static string Quoted(string field)
    {
        string clean = string.Concat(field.Select(c => char.IsControl(c) ? ' ' : c));
        return clean.AsSpan().ContainsAny(',', '"') ? $"\"{clean.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : clean;
    }
}
