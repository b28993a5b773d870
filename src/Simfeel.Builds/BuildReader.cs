using Simfeel.Builds.Estimates;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds;

/// <summary>What came of reading or editing a build.</summary>
/// <param name="Build">The build; null where there was an error.</param>
/// <param name="Diagnostics">Everything found, by line; with a build there may still be warnings.</param>
public sealed record BuildResult(Build? Build, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>Reads build files. Nothing a user can write makes it throw; whatever is wrong is in the diagnostics.</summary>
public static class BuildReader
{
    /// <summary>Reads a build file.</summary>
    /// <param name="path">The file; at most 1 MiB of UTF-8 text in TOML.</param>
    /// <exception cref="ArgumentNullException">The path is null.</exception>
    public static BuildResult Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        DiagnosticBag bag = new(path);
        string? text = SourceText.ReadFile(path, bag);
        return text is null ? new(null, bag.InOrder()) : Make(text, bag);
    }

    /// <summary>Reads a build from text.</summary>
    /// <param name="text">The text of a build file.</param>
    /// <param name="sourceName">Name that diagnostics give as the file.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static BuildResult Parse(string text, string sourceName)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(sourceName);
        return Make(text, new(sourceName));
    }

    private static BuildResult Make(string text, DiagnosticBag bag)
    {
        BuildSheet? sheet = SheetReader.Read(text, bag);
        // Run even after refused values, so that what is missing is said in the same go.
        Build? build = sheet is null ? null : BuildFactory.Make(sheet, bag);
        return new(build, bag.InOrder());
    }
}
