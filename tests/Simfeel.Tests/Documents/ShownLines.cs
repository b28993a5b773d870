using System.Text.RegularExpressions;

namespace Simfeel.Tests.Documents;

/// <summary>Holds what a document shows of an output against the output.</summary>
internal static partial class ShownLines
{
    /// <summary>
    /// Null where they agree, else what does not. A line of three dots stands for any lines; without one the two are equal line by line,
    /// but for dates, of which only the shape counts.
    /// </summary>
    public static string? Fault(IEnumerable<string> shown, string output)
    {
        string[] actual = [.. output.TrimEnd('\n').Split('\n').Select(Plain)];
        int at = 0;
        bool gap = false;
        List<string> segment = [];
        foreach (string line in (string[])[.. shown.Select(Plain), .. new[] { End }])
        {
            bool dots = line.Trim() == "...", end = ReferenceEquals(line, End);
            if (!dots && !end)
            {
                segment.Add(line);
                continue;
            }
            int found = Find(actual, segment, at, gap, toEnd: end);
            if (found < 0) return Said(actual, segment, at, gap);
            at = found + segment.Count;
            segment.Clear();
            gap = dots;
        }
        return null;
    }

    private static readonly string End = new('.', 1);

    private static int Find(string[] actual, List<string> segment, int from, bool gap, bool toEnd)
    {
        if (segment.Count == 0) return gap || !toEnd || from == actual.Length ? (toEnd ? actual.Length : from) : -1;
        for (int start = from; start + segment.Count <= actual.Length; start++)
        {
            bool ends = !toEnd || start + segment.Count == actual.Length;
            if (ends && segment.SequenceEqual(actual[start..(start + segment.Count)])) return start;
            if (!gap) break;
        }
        return -1;
    }

    private static string Said(string[] actual, List<string> segment, int from, bool gap)
    {
        string output = "\nThe output:\n" + string.Join('\n', actual);
        if (gap) return "Not in the output one after the other:\n" + string.Join('\n', segment) + output;
        int same = segment.Zip(actual[from..]).TakeWhile(pair => pair.First == pair.Second).Count();
        return $"Shown is:\n{segment.ElementAtOrDefault(same) ?? "(nothing more)"}\nPrinted is:\n{actual.ElementAtOrDefault(from + same) ?? "(nothing more)"}{output}";
    }

    private static string Plain(string line) => Date().Replace(line.TrimEnd(), "DATE");

    [GeneratedRegex(@"\b20\d\d-\d\d-\d\d\b")]
    private static partial Regex Date();
}
