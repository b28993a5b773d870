using System.Globalization;
using System.Text;
using Simfeel.Builds;
using Simfeel.Builds.Reading;
using Simfeel.Cockpit.Settings;
using Tomlyn.Syntax;

namespace Simfeel.Cockpit.Marks;

/// <summary>
/// Time marks as TOML text: a table <c>[[mark]]</c> with <c>time_s</c> and <c>note</c> for each. Reading never fails: each
/// mistake is said in one sentence with its line, and the mark that it spoils is left out.
/// </summary>
public static class TimeMarksFile
{
    private const int Format = 1;

    /// <summary>Where the marks of a trace are: <c>flight.marks.toml</c> beside <c>flight.arrow</c>.</summary>
    public static string PathFor(string trace) => Path.ChangeExtension(trace, ".marks.toml");

    /// <summary>Marks as text; times to the microsecond.</summary>
    public static string Write(TimeMarks marks)
    {
        ArgumentNullException.ThrowIfNull(marks);
        StringBuilder text = new($"# Time marks of the recording with this name.\nformat = {Format}\n");
        for (int k = 0; k < marks.Count; k++)
            text.Append(CultureInfo.InvariantCulture, $"\n[[mark]]\ntime_s = {marks[k].Time:0.0#####}\nnote = {TomlSheet.Quoted(marks[k].Note)}\n");
        return text.ToString();
    }

    /// <summary>Marks from text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Name for the messages.</param>
    /// <param name="wrong">Receives one sentence for each mistake.</param>
    public static TimeMarks Read(string text, string file, ICollection<string> wrong)
    {
        ArgumentNullException.ThrowIfNull(wrong);
        TimeMarks marks = new();
        if (TomlText.Clean(text, TomlSheet.DeepestNesting, out TomlFault fault) is not DocumentSyntax document)
        {
            Tell(fault.Line, $"{fault.Reason}. No mark is read.");
            return marks;
        }
        foreach (KeyValueSyntax pair in document.KeyValues)
        {
            if (KeyOf(pair) != "format") Say(pair, $"there is no key {KeyOf(pair)}; it is left out.");
            else if (pair.Value is not IntegerValueSyntax { Value: Format }) Say(pair, $"format is {pair.Value}; this version writes {Format} and reads what it knows.");
        }
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table is TableArraySyntax && table.Name?.ToString().Trim() == "mark") ReadMark(table);
            else Say(table, $"there is no table {table.Name?.ToString().Trim()}; it is left out.");
        }
        return marks;

        void ReadMark(TableSyntaxBase table)
        {
            double time = double.NaN;
            string note = "";
            bool refused = false;
            foreach (KeyValueSyntax pair in table.Items)
            {
                switch (KeyOf(pair))
                {
                    case "time_s":
                        time = pair.Value switch { FloatValueSyntax real => real.Value, IntegerValueSyntax whole => whole.Value, _ => double.NaN };
                        refused = !(time >= 0 && time <= TimeMark.Latest);
                        if (refused) Say(pair, $"time_s is {pair.Value?.ToString().Trim()}; it must be a number from 0 to {TimeMark.Latest:F0} s. The mark is left out.");
                        break;
                    case "note" when pair.Value is StringValueSyntax { Value: string words } && words.Length <= TimeMark.LongestNote && !words.Any(char.IsControl):
                        note = words;
                        break;
                    case "note":
                        Say(pair, $"note must be a text of one line in double quotes, up to {TimeMark.LongestNote} characters. The mark has none.");
                        break;
                    default:
                        Say(pair, $"there is no key {KeyOf(pair)} in a mark; it is left out.");
                        break;
                }
            }
            if (refused) return;
            if (double.IsNaN(time)) Say(table, "this mark has no time_s. It is left out.");
            else if (!marks.TryAdd(new(time, note), out _)) Say(table, string.Create(CultureInfo.InvariantCulture, $"there is another mark at {time:F3} s. This one is left out."));
        }

        void Say(SyntaxNode where, string sentence) => Tell(where.Span.Start.Line + 1, sentence);

        void Tell(int line, string sentence) => wrong.Add(OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{file}:{line}: {sentence}")));
    }

    private static string KeyOf(KeyValueSyntax pair) => pair.Key?.ToString().Trim() ?? "";
}
