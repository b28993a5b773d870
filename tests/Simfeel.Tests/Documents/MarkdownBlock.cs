using System.Text.RegularExpressions;

namespace Simfeel.Tests.Documents;

/// <summary>A fenced block of a document.</summary>
/// <param name="File">Path from the root of the tree.</param>
/// <param name="Line">Number of the fence's line.</param>
/// <param name="Section">The heading it stands under.</param>
/// <param name="Before">The last line of text before it.</param>
/// <param name="Language">What the fence says after its backticks.</param>
/// <param name="Lines">Its lines, blanks at their ends taken off.</param>
internal sealed partial record MarkdownBlock(string File, int Line, string Section, string Before, string Language, IReadOnlyList<string> Lines)
{
    /// <summary>The documents that show commands.</summary>
    public static IReadOnlyList<string> Documents { get; } = ["README.md", "DEVELOPERS.md"];

    /// <summary>The blocks of all documents.</summary>
    public static IReadOnlyList<MarkdownBlock> All { get; } = [.. Documents.SelectMany(Read)];

    public string First => Lines[0];

    public string Text => string.Join('\n', Lines) + "\n";

    /// <summary>What stands between single backticks in the text of a document.</summary>
    public static IEnumerable<string> Spans(string file)
    {
        bool inside = false;
        foreach (string line in System.IO.File.ReadLines(SourceTree.FullPath(file)))
        {
            if (line.StartsWith("```", StringComparison.Ordinal)) inside = !inside;
            else if (!inside) foreach (Match span in Backticks().Matches(line)) yield return span.Groups[1].Value;
        }
    }

    public override string ToString() => $"{File}:{Line}";

    private static IEnumerable<MarkdownBlock> Read(string file)
    {
        string[] lines = System.IO.File.ReadAllLines(SourceTree.FullPath(file));
        string section = "", before = "";
        for (int n = 0; n < lines.Length; n++)
        {
            if (lines[n].StartsWith("```", StringComparison.Ordinal))
            {
                int end = Array.FindIndex(lines, n + 1, line => line == "```");
                Assert.True(end > n + 1, $"{file}:{n + 1}: the block is empty or has no end.");
                yield return new(file, n + 1, section, before, lines[n][3..], [.. lines[(n + 1)..end].Select(line => line.TrimEnd())]);
                n = end;
            }
            else if (lines[n].StartsWith('#'))
            {
                section = lines[n].TrimStart('#', ' ');
            }
            else if (lines[n].Length > 0)
            {
                before = lines[n];
            }
        }
    }

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Backticks();
}
