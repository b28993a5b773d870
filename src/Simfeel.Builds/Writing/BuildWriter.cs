using System.Globalization;
using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;
using Tomlyn.Syntax;

namespace Simfeel.Builds.Writing;

/// <summary>
/// Writes measured numbers into the text of a build file. Only the values change: comments, order, blanks and line ends
/// stay as they were.
/// </summary>
public static class BuildWriter
{
    /// <summary>The text with numbers set, marked as measured; keys and tables that are missing are added.</summary>
    /// <param name="text">A build file that reads without error.</param>
    /// <param name="numbers">The numbers; each must lie in its key's range.</param>
    /// <param name="folder">Folder of the files that the text names, such as a polar; null where there is none.</param>
    /// <exception cref="ArgumentException">A key is unknown or holds no number, a number is out of range, or the text is no build.</exception>
    public static string WithMeasured(string text, IEnumerable<MeasuredNumber> numbers, string? folder = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(numbers);
        foreach (MeasuredNumber number in numbers)
        {
            KeySpec? spec = BuildFormat.Find(number.Key);
            if (spec is not { Kind: KeyKind.Number } || spec.Table is "" or "extra")
                throw new ArgumentException($"{number.Key} is no key that a measurement can set.", nameof(numbers));
            if (NumberReader.RangeFault(spec, number.Typical) is string fault)
                throw new ArgumentException($"{number.Key} = {number.Typical}: {fault}", nameof(numbers));
            text = Set(text, spec, Written(number, spec));
        }
        BuildResult result = BuildReader.Parse(text, "written", folder: folder);
        if (result.Build is not null) return text;
        Diagnostic error = result.Diagnostics.First(d => d.Severity == Severity.Error);
        throw new ArgumentException($"The measured numbers do not go with the rest of the build. {error.Key}: {error.Message} ({error.Hint})", nameof(numbers));
    }

    private static string Written(MeasuredNumber number, KeySpec spec)
    {
        string typical = Digits(number.Typical);
        if (number.Low >= number.Typical || number.High <= number.Typical) return $"{{ value = {typical}, source = \"measured\" }}";
        string low = Digits(Math.Clamp(number.Low, spec.Minimum, number.Typical)), high = Digits(Math.Clamp(number.High, number.Typical, spec.Maximum));
        return $"{{ low = {low}, typical = {typical}, high = {high}, source = \"measured\" }}";
    }

    /// <summary>Four digits, finer than any stand or swing test.</summary>
    private static string Digits(double value)
    {
        decimal rounded = decimal.Parse(value.ToString("G4", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
        return rounded.ToString("0.############", CultureInfo.InvariantCulture);
    }

    private static string Set(string text, KeySpec spec, string value)
    {
        if (TomlText.Clean(text, TomlText.MaxDepth, out _) is not DocumentSyntax document) throw new ArgumentException("The text is no valid TOML.", nameof(text));
        string newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        Spot spot = TomlSpots.Find(document, spec.Table, spec.Key);
        if (spot.Value is { } old) return text[..old.Start] + value + text[old.End..];
        if (spot.InlineEnd is int brace)
        {
            string before = text[..brace].TrimEnd();
            string comma = before.EndsWith('{') ? " " : ", ";
            return $"{before}{comma}{spec.Key} = {value} {text[brace..]}";
        }
        if (spot.LastLine is int last)
        {
            int end = text.IndexOf('\n', last);
            string line = $"{spot.Prefix}{spec.Key} = {value}{newLine}";
            return end < 0 ? text + newLine + line : text[..(end + 1)] + line + text[(end + 1)..];
        }
        string gap = text.EndsWith('\n') ? newLine : newLine + newLine;
        return $"{text}{gap}[{spec.Table}]{newLine}{spec.Key} = {value}{newLine}";
    }
}
