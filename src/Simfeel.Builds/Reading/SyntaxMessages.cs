using System.Text.RegularExpressions;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Reading;

/// <summary>Says what is wrong with text that is no TOML. Only the first fault: the later ones usually follow from it.</summary>
internal static partial class SyntaxMessages
{
    /// <summary>What to do about a number that <see cref="DecimalComma"/> finds.</summary>
    internal const string CommaHint = "write a decimal point, not a comma";

    private const int LongestShown = 300;

    /// <param name="document">What the parser made of the text.</param>
    /// <param name="text">The text.</param>
    /// <param name="bag">Receives the fault.</param>
    /// <param name="mayBePolar">Whether a polar could stand in the file's place, which is then said.</param>
    public static void Report(DocumentSyntax document, string text, DiagnosticBag bag, bool mayBePolar)
    {
        if (mayBePolar && LooksLikeColumns(text))
        {
            bag.Error(null, "", "", "This looks like a polar or another CSV file; expected is a TOML file, of a propeller with the table [propeller].", "a polar is named in that table: polar = \"section.csv\"");
            return;
        }
        DiagnosticMessage first = document.Diagnostics.Where(d => d.Kind == DiagnosticMessageKind.Error).OrderBy(d => d.Span.Start.Line).First();
        int line = first.Span.Start.Line;
        string written = text.Split('\n').ElementAtOrDefault(line)?.Trim() ?? "";
        // what looks at it takes the square of its length
        if (written.Length > LongestShown) written = written[..LongestShown];
        Match repeated = Repeated().Match(first.Message);
        if (repeated.Success)
        {
            string key = repeated.Groups[1].Value;
            bag.Error(new(line + 1, first.Span.Start.Column + 1), key, "", $"\"{key}\" is given twice; the first time in line {repeated.Groups[2].Value}.", "keep one of them");
            return;
        }
        Match pair = Pair().Match(written);
        bag.Error(
            new(line + 1, first.Span.Start.Column + 1),
            pair.Success ? pair.Groups[1].Value : "",
            pair.Success ? pair.Groups[2].Value : written,
            "This line is not valid TOML: " + first.Message.Replace("\u2424", "end of line", StringComparison.Ordinal).TrimEnd('.') + ".",
            Hint(written, pair.Success ? pair.Groups[2].Value : ""));
    }

    /// <summary>Whether the first line with content is a row of columns, which no TOML file starts with.</summary>
    private static bool LooksLikeColumns(string text)
    {
        string first = text.Split('\n').Select(line => line.Trim()).FirstOrDefault(line => line.Length > 0 && line[0] != '#') ?? "";
        return first.IndexOfAny([',', ';', '\t']) > 0 && first.IndexOfAny(['=', '[', '{', '}', ']']) < 0;
    }

    private static string Hint(string line, string value) => value switch
    {
        _ when line.StartsWith('[') && !line.Contains(']', StringComparison.Ordinal) => "a table's name ends with ]",
        "" => "write key = value",
        _ when DecimalComma().IsMatch(value) => CommaHint,
        _ when NumberWithUnit().IsMatch(value) => "write the number alone; its unit is in the key",
        _ when BarePoint().IsMatch(value) => "write a digit before and after the decimal point",
        _ when LeadingZero().IsMatch(value) => "leave out the leading zero",
        _ when value.Equals("true", StringComparison.OrdinalIgnoreCase) || value.Equals("false", StringComparison.OrdinalIgnoreCase) => "write true or false in small letters",
        _ when char.IsLetter(value[0]) => "put text in double quotes",
        _ when value[0] == '"' && value.LastIndexOf('"') == 0 => "end the text with a double quote",
        _ => "",
    };

    [GeneratedRegex(@"^The key `(.+?)` is already defined at \((\d+),")]
    private static partial Regex Repeated();

    [GeneratedRegex(@"^([A-Za-z0-9_.\-]+)\s*=\s*(.*?)\s*(?:#.*)?$")]
    private static partial Regex Pair();

    /// <summary>A number with a comma for its decimal mark.</summary>
    [GeneratedRegex(@"^[+-]?\d+,\d+$")]
    internal static partial Regex DecimalComma();

    [GeneratedRegex(@"^[+-]?[\d.]+\s*[A-Za-z%]+$")]
    private static partial Regex NumberWithUnit();

    [GeneratedRegex(@"^[+-]?(\.\d+|\d+\.)$")]
    private static partial Regex BarePoint();

    [GeneratedRegex(@"^[+-]?0\d")]
    private static partial Regex LeadingZero();
}
