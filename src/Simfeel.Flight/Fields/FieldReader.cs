using Simfeel.Builds;
using Simfeel.Builds.Reading;

namespace Simfeel.Flight.Fields;

/// <summary>What came of reading a field.</summary>
/// <param name="Map">The field; null where there was an error.</param>
/// <param name="Diagnostics">Everything found, by line; with a field there may still be warnings.</param>
public sealed record FieldResult(FieldMap? Map, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>Reads field files. Nothing a user can write makes it throw; whatever is wrong is in the diagnostics.</summary>
public static class FieldReader
{
    private const string Kind = "field file";

    /// <summary>Reads a field file.</summary>
    /// <param name="path">The file; at most 1 MiB of UTF-8 text in TOML.</param>
    /// <exception cref="ArgumentNullException">The path is null.</exception>
    public static FieldResult Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        DiagnosticBag bag = new(path);
        string? text = SourceText.ReadFile(path, bag, Kind);
        return text is null ? new(null, bag.InOrder()) : Make(text, bag);
    }

    /// <summary>Reads a field from text.</summary>
    /// <param name="text">The text of a field file.</param>
    /// <param name="sourceName">Name that diagnostics give as the file.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static FieldResult Parse(string text, string sourceName)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(sourceName);
        return Make(text, new(sourceName));
    }

    private static FieldResult Make(string text, DiagnosticBag bag)
    {
        IReadOnlyList<FieldTable>? tables = FieldSheet.Read(text, bag);
        FieldMap? map = tables is null || bag.HasErrors ? null : FieldBuilder.Make(tables, bag);
        return new(bag.HasErrors ? null : map, bag.InOrder());
    }
}
