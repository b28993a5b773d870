namespace Simfeel.CommandLine.Output;

/// <summary>Files that <c>bench</c> writes: none is replaced unless told, since readings may stand in them.</summary>
internal static class BenchFiles
{
    /// <summary>Whether a page is asked for, by its ending.</summary>
    public static bool IsHtml(string path) => Path.GetExtension(path).Equals(".html", StringComparison.OrdinalIgnoreCase);

    /// <summary>Says before any work that a file cannot go there.</summary>
    /// <param name="option">The option that named it.</param>
    /// <param name="path">The file.</param>
    /// <param name="force">Whether files may be replaced.</param>
    /// <param name="kept">Files that are read and never replaced.</param>
    /// <exception cref="UserError">There is no such folder, it is one, there is a file already, or it is one that is read.</exception>
    public static void CheckPlace(string option, string path, bool force, params string?[] kept)
    {
        string full = Path.GetFullPath(path);
        TextFile.CheckFolder(option, path);
        if (kept.Any(other => other is not null && Path.GetFullPath(other) == full)) throw new UserError($"{option}: {path} is read here and cannot be written as well; name another file.");
        if (File.Exists(path) && !force) throw new UserError($"{option}: {path} is there already. Name another file, or replace it with --force.");
    }
}
