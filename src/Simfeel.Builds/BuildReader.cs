using Simfeel.Builds.Estimates;
using Simfeel.Builds.Reading;

namespace Simfeel.Builds;

/// <summary>What came of reading or editing a build.</summary>
/// <param name="Build">The build; null where there was an error.</param>
/// <param name="Diagnostics">Everything found, by line; with a build there may still be warnings.</param>
public sealed record BuildResult(Build? Build, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>What came of reading a propeller alone.</summary>
/// <param name="Name">Name of the build or of the propeller; the file's where it says none.</param>
/// <param name="Propeller">The propeller; null where there was an error.</param>
/// <param name="Diagnostics">Everything found, by line; with a propeller there may still be warnings.</param>
public sealed record PropellerResult(string Name, PropellerSpec? Propeller, IReadOnlyList<Diagnostic> Diagnostics);

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
        return text is null ? new(null, bag.InOrder()) : Make(text, FolderOf(path), bag);
    }

    /// <summary>
    /// Reads the propeller alone, out of a build file or out of a file that holds only <c>format</c>, <c>name</c> and
    /// <c>[propeller]</c>. Other tables are not required; where they are there, their values are checked all the same.
    /// </summary>
    /// <param name="path">The file; at most 1 MiB of UTF-8 text in TOML.</param>
    /// <exception cref="ArgumentNullException">The path is null.</exception>
    public static PropellerResult ReadPropeller(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        DiagnosticBag bag = new(path);
        string? text = SourceText.ReadFile(path, bag);
        BuildSheet? sheet = text is null ? null : SheetReader.Read(text, FolderOf(path), bag);
        if (sheet is null) return new("", null, bag.InOrder());
        PropellerSpec? propeller = BuildFactory.MakePropeller(sheet, bag);
        return new(sheet.Texts.GetValueOrDefault("name")?.Value ?? Path.GetFileNameWithoutExtension(path), propeller, bag.InOrder());
    }

    /// <summary>Reads a build from text.</summary>
    /// <param name="text">The text of a build file.</param>
    /// <param name="sourceName">Name that diagnostics give as the file.</param>
    /// <param name="folder">Folder of the files that the text names, such as a polar; null where there is none.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static BuildResult Parse(string text, string sourceName, string? folder = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(sourceName);
        return Make(text, folder, new(sourceName));
    }

    /// <summary>Reads a build from texts that were kept, the polar's among them, so that no file is needed.</summary>
    /// <param name="source">The texts.</param>
    /// <param name="sourceName">Name that diagnostics give as the file.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static BuildResult Parse(BuildSource source, string sourceName)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(sourceName);
        return Make(source.Text, null, new(sourceName), source.PolarText);
    }

    private static BuildResult Make(string text, string? folder, DiagnosticBag bag, string? polarText = null)
    {
        BuildSheet? sheet = SheetReader.Read(text, folder, bag, polarText);
        // Run even after refused values, so that what is missing is said in the same go.
        Build? build = sheet is null ? null : BuildFactory.Make(sheet, bag);
        return new(build, bag.InOrder());
    }

    private static string FolderOf(string path) => Path.GetDirectoryName(Path.GetFullPath(path))!;
}
