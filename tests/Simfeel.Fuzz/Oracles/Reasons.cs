using System.Globalization;
using System.Text.RegularExpressions;
using Simfeel.Builds;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Oracles;

/// <summary>Whether what the program says names place and reason, and says it in its own words.</summary>
internal static partial class Reasons
{
    private const int LongestLine = 4000, LeastReason = 8;

    /// <summary>Reasons that are about a whole file, so that no line and no key can be named.</summary>
    private static readonly string[] OfAFile =
    [
        "The file is empty", "The file has", "The file is stored as UTF-16", "This is a binary file", "This file holds a propeller only", "This looks like a polar",
        "Nothing was measured yet", "There is no row of numbers", "A fit needs", "No constant of the build can be told", "The fit does not converge",
        "There is no block", "The file has no header line", "The file cannot be opened",
    ];

    /// <summary>Checks diagnostics of one file.</summary>
    /// <param name="found">What was said.</param>
    /// <param name="file">Names that the file may be called by.</param>
    /// <param name="rejected">Whether the file was refused, so that there must be an error.</param>
    /// <param name="lines">Lines of the file.</param>
    public static void Check(IReadOnlyList<Diagnostic> found, IReadOnlyList<string> file, bool rejected, int lines)
    {
        if (rejected && !found.Any(d => d.Severity == Severity.Error)) throw new UnexplainedException("refused without an error");
        if (!rejected && found.Any(d => d.Severity == Severity.Error)) throw new UnexplainedException($"taken with an error: {found.First(d => d.Severity == Severity.Error)}");
        foreach (Diagnostic one in found)
        {
            // or a file that the input names in its own folder
            if (!file.Contains(one.File) && !Path.GetFullPath(one.File).StartsWith(Scratch.Folder, StringComparison.Ordinal)) throw new UnexplainedException($"names another file: {one}");
            if (one.Line is int line && (line < 1 || line > lines)) throw new UnexplainedException($"names line {line} of {lines}: {one}");
            if (one.Line is null && one.Key.Length == 0 && !OfAFile.Any(reason => one.Message.StartsWith(reason, StringComparison.Ordinal)))
                throw new UnexplainedException($"names no place: {one}");
            Line(one.ToString(), one.Message);
        }
    }

    /// <summary>Checks one line of text that people see.</summary>
    /// <param name="shown">The whole line.</param>
    /// <param name="reason">The reason in it.</param>
    public static void Line(string shown, string reason)
    {
        if (reason.Trim().Length < LeastReason) throw new UnexplainedException($"gives no reason: {shown}");
        if (shown.Length > LongestLine) throw new UnexplainedException($"says {shown.Length} characters: {shown[..200]}");
        if (shown.Any(IsUnprintable)) throw new UnexplainedException($"holds control characters: {Regex.Escape(shown)}");
        if (Foreign().IsMatch(reason)) throw new UnexplainedException($"is not in our own words: {shown}");
    }

    /// <summary>Lines of a text, as an editor counts them.</summary>
    public static int LinesOf(ReadOnlySpan<byte> bytes) => 1 + bytes.Count((byte)'\n') + bytes.Count((byte)'\r');

    /// <summary>A number as messages show it.</summary>
    public static string Shown(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Signs that would move a terminal's cursor, break the line, or turn what stands behind them round.</summary>
    private static bool IsUnprintable(char c) => char.IsControl(c) || c is '\u2028' or '\u2029' or (>= '\u202a' and <= '\u202e') or (>= '\u2066' and <= '\u2069');

    [GeneratedRegex(@"Exception|System\.|\bat Simfeel\.|Object reference|Nullable object|Index was|Parameter '|Specified argument|Sequence contains|Arithmetic operation|Input string")]
    private static partial Regex Foreign();
}
