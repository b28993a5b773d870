using System.Text;

namespace Simfeel.Builds.Format;

/// <summary>Prints the format's keys as tables, so that no page has to repeat them by hand.</summary>
public static class FormatReference
{
    /// <summary>Markdown: one table of keys per table of the file, with range, unit, default and meaning.</summary>
    public static string Markdown() =>
        Markdown(BuildFormat.Keys, "###", table => table switch { "" => "top of the file", "extra" => "[[extra]]", _ => $"[{table}]" });

    /// <summary>The same for the keys of any format.</summary>
    /// <param name="keys">Its keys in order.</param>
    /// <param name="level">Mark of the headings.</param>
    /// <param name="heading">Heading of a table of the file.</param>
    internal static string Markdown(IReadOnlyList<KeySpec> keys, string level, Func<string, string> heading)
    {
        StringBuilder text = new();
        foreach (IGrouping<string, KeySpec> table in keys.GroupBy(k => k.Table))
        {
            text.Append($"{level} {heading(table.Key)}\n\n| key | allowed | when missing | meaning |\n|---|---|---|---|\n");
            foreach (KeySpec key in table)
                text.Append($"| `{key.Key}` | {key.Range} | {(key.Required ? "**required**" : key.WhenMissing)} | {key.Meaning} |\n");
            text.Append('\n');
        }
        return text.ToString();
    }
}
