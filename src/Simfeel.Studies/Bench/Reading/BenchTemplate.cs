using System.Text;
using Simfeel.Builds.Format;

namespace Simfeel.Studies.Bench.Reading;

/// <summary>Writes an empty readings file: every key is there, commented out, with its unit, range and meaning.</summary>
public static class BenchTemplate
{
    private const int Align = 34;

    /// <summary>The text. Read as it is, it says that nothing was measured yet.</summary>
    /// <param name="plan">The plan whose spacings, lengths and places stand in the examples.</param>
    public static string Write(BenchPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        StringBuilder text = new();
        text.Append("# Bench readings. Take the # away before a key and write your reading in place of the number.\n");
        text.Append("# Whatever you did not measure stays commented out. A point is the decimal mark, no units.\n");
        text.Append("# Keys with _pm_ are standard errors: two readings in three lie that close to the truth.\n");
        text.Append("# Propellers on but not turning, pack strapped in and UNPLUGGED, something soft below.\n\n");
        foreach (IGrouping<string, KeySpec> table in BenchFormat.Keys.GroupBy(key => key.Table))
        {
            if (table.Key.Length > 0) text.Append($"\n[{table.Key}]{Heading(table.Key)}\n");
            foreach (KeySpec key in table)
            {
                string line = key.Path switch
                {
                    "format" => $"format = {BenchFormat.Version}",
                    "build" => $"build = {Quoted(plan.Build.Build.Name)}",
                    _ => $"# {key.Key} = {Example(key, plan)}",
                };
                string range = key.Kind == KeyKind.Text ? "" : BenchFormat.Range(key) + ": ";
                string missing = key.Default is null && key.Kind != KeyKind.Text && !key.WhenMissing.StartsWith("not ", StringComparison.Ordinal) ? $" (left out: {key.WhenMissing})" : "";
                text.Append(line.PadRight(Align)).Append("# ").Append(range).Append(key.Meaning).Append(missing).Append('\n');
            }
        }
        return text.ToString();
    }

    private static string Heading(string table) => table switch
    {
        "roll" => "                            # swing test, nose up or down",
        "pitch" => "                           # swing test, one side up",
        "yaw" => "                             # swing test, level",
        "balance_x" => "                       # either the edge or two scales",
        "balance_y" => "                       # either the edge or two scales",
        "balance_z" => "                       # either the edge, craft on its side, or a hook and a plumb line",
        _ => "",
    };

    /// <summary>The default or the plan's number, else 0, which only a reading can replace.</summary>
    private static string Example(KeySpec key, BenchPlan plan)
    {
        if (plan.Tests.FirstOrDefault(test => test.Axis.Turn() == key.Table) is SwingPlan swing)
        {
            if (key.Key == "spacing_mm") return $"{1e3 * swing.Spacing:G6}";
            if (key.Key == "length_mm") return $"{1e3 * swing.Length:G6}";
        }
        if (key.Key is "front_at_mm" or "right_at_mm") return $"{1e3 * plan.Support:G6}";
        if (key.Key is "rear_at_mm" or "left_at_mm") return $"{-1e3 * plan.Support:G6}";
        if (BenchFormat.MayRepeat(key)) return "[0.0, 0.0, 0.0]";
        return key.Default is double usual ? $"{usual:G6}" : "0.0";
    }

    /// <summary>A name as TOML text; characters that may not stand there are left out.</summary>
    private static string Quoted(string name) =>
        $"\"{string.Concat(name.Where(c => !char.IsControl(c)).Select(c => c is '"' or '\\' ? $"\\{c}" : c.ToString()))}\"";
}
