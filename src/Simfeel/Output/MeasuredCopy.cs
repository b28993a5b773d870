using Simfeel.Builds;
using Simfeel.Builds.Writing;

namespace Simfeel.CommandLine.Output;

/// <summary>The copy of a build file that measured numbers are written into.</summary>
internal static class MeasuredCopy
{
    private const string Suffix = "-measured";

    /// <summary>Where the copy goes: as told, else beside nothing, in the current folder, as <c>name-measured.toml</c>.</summary>
    /// <exception cref="UserError">There is a file already and it may not be replaced.</exception>
    public static string Place(string build, string? told, bool force)
    {
        string name = Path.GetFileNameWithoutExtension(BuildLibrary.PathOf(build));
        string path = told ?? (name.EndsWith(Suffix, StringComparison.Ordinal) ? name : name + Suffix) + ".toml";
        if (Directory.Exists(path)) throw new UserError($"{path} is a folder; --out names a file.");
        if (File.Exists(path) && !force)
            throw new UserError($"{path} is there already. Name another file with --out, replace it with --force, or look only with --no-write.");
        return path;
    }

    /// <summary>
    /// Writes the copy, or says why it cannot go there because the build names a polar beside it: an error to throw once the
    /// result has been shown. Null where it is written.
    /// </summary>
    /// <exception cref="UserError">It cannot be written, or the numbers do not go with the build.</exception>
    public static UserError? Write(string build, AssembledBuild assembled, string path, bool force, IEnumerable<MeasuredNumber> numbers)
    {
        string source = BuildLibrary.PathOf(build), folder = Path.GetDirectoryName(Path.GetFullPath(source))!;
        if (assembled.Build.Propeller.Blades.Polar is not null && Path.GetDirectoryName(Path.GetFullPath(path)) != folder)
        {
            string place = Path.Combine(Path.GetDirectoryName(source) ?? "", Path.GetFileName(path));
            return new($"Nothing is written: the build names a polar file beside it (propeller.polar), so the copy must go into the same folder: --out \"{place}\".");
        }
        try
        {
            WholeFile.Write(path, BuildWriter.WithMeasured(File.ReadAllText(source), numbers, folder), force);
            return null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserError($"{path} cannot be written: {error.Message}", ExitCode.Environment);
        }
        catch (ArgumentException error)
        {
            throw new UserError(error.Message.Split(" (Parameter", 2)[0]);
        }
    }
}
