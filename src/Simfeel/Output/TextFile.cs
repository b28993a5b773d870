using Simfeel.Builds.Writing;

namespace Simfeel.CommandLine.Output;

/// <summary>Writes what an option asks for into a file.</summary>
internal static class TextFile
{
    /// <summary>Says so at once where the folder is missing, not after a minute's work.</summary>
    /// <exception cref="UserError">There is no such folder.</exception>
    public static void CheckFolder(string option, string path)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (!Directory.Exists(folder)) throw new UserError($"{option}: there is no folder {folder}.");
        if (Directory.Exists(path)) throw new UserError($"{option}: {path} is a folder.");
    }

    /// <summary>Writes beside the file and renames, so that a good file is never half overwritten.</summary>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public static void Write(string option, string path, string text, bool force = true)
    {
        try
        {
            WholeFile.Write(path, text, force);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserError($"{option}: {path} cannot be written: {error.Message}", ExitCode.Environment);
        }
    }
}
