using System.Text;

namespace Simfeel.Builds.Format;

/// <summary>Prints the format's keys as tables, so that no page has to repeat them by hand.</summary>
public static class FormatReference
{
    /// <summary>Markdown: one table of keys per table of the file, with range, unit, default and meaning.</summary>
    public static string Markdown()
    {
        StringBuilder text = new();
        foreach (IGrouping<string, KeySpec> table in BuildFormat.Keys.GroupBy(k => k.Table))
        {
            string heading = table.Key switch
            {
                "" => "top of the file",
                "extra" => "[[extra]]",
                _ => $"[{table.Key}]",
            };
            text.Append($"### {heading}\n\n| key | allowed | when missing | meaning |\n|---|---|---|---|\n");
            foreach (KeySpec key in table)
                text.Append($"| `{key.Key}` | {key.Range} | {(key.Required ? "**required**" : key.WhenMissing)} | {key.Meaning} |\n");
            text.Append('\n');
        }
        return text.ToString();
    }
}
