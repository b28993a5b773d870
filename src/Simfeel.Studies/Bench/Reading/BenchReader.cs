using Simfeel.Builds;
using Simfeel.Builds.Reading;

namespace Simfeel.Studies.Bench.Reading;

/// <summary>What came of reading a file of bench readings.</summary>
/// <param name="Readings">The readings; null where there was an error.</param>
/// <param name="Diagnostics">Everything found, by line; with readings there may still be warnings.</param>
public sealed record BenchResult(BenchReadings? Readings, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>Reads files of bench readings. Nothing a user can write makes it throw; whatever is wrong is in the diagnostics.</summary>
public static class BenchReader
{
    /// <summary>Reads a file.</summary>
    /// <param name="path">The file; at most 1 MiB of UTF-8 text in TOML.</param>
    /// <exception cref="ArgumentNullException">The path is null.</exception>
    public static BenchResult Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        DiagnosticBag bag = new(path);
        string? text = SourceText.ReadFile(path, bag, "readings file");
        return text is null ? new(null, bag.InOrder()) : Make(text, bag);
    }

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text of a readings file.</param>
    /// <param name="sourceName">Name that diagnostics give as the file.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static BenchResult Parse(string text, string sourceName)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(sourceName);
        return Make(text, new(sourceName));
    }

    private static BenchResult Make(string text, DiagnosticBag bag)
    {
        IReadOnlyDictionary<string, BenchTable>? tables = BenchSheet.Read(text, bag);
        if (tables is null || bag.HasErrors) return new(null, bag.InOrder());
        BenchReadings readings = new ReadingsBuilder(tables, bag).Make();
        return new(bag.HasErrors ? null : readings, bag.InOrder());
    }
}
