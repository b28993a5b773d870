using Simfeel.Builds.Writing;
using Simfeel.Studies.Sweep;

namespace Simfeel.CommandLine.Output;

/// <summary>Files of a sweep.</summary>
internal static class SweepFiles
{
    private static readonly Dictionary<string, Action<SweepTable, Stream>> Kinds = new(StringComparer.OrdinalIgnoreCase)
    {
        [".parquet"] = (table, file) => table.WriteParquet(file),
        [".csv"] = (table, file) => table.WriteCsv(file),
    };

    /// <summary>How to write a file of a name; null where the ending is none of ours.</summary>
    public static Action<SweepTable, Stream>? KindOf(string path) => Kinds.GetValueOrDefault(Path.GetExtension(path));

    /// <summary>The journal beside a result: of the whole sweep, or of one share.</summary>
    public static string JournalOf(string path, (int Number, int Of)? share) =>
        share is (int number, int of) ? $"{path}.share-{number}-of-{of}" : path + ".part";

    /// <summary>Says so at once where a file cannot go.</summary>
    /// <exception cref="UserError">There is no such folder.</exception>
    public static void CheckFolder(string path)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (!Directory.Exists(folder)) throw new UserError($"There is no folder {folder}.");
        if (Directory.Exists(path)) throw new UserError($"{path} is a folder.");
    }

    /// <summary>What a journal holds, or a plain word on why it cannot be had.</summary>
    /// <exception cref="UserError">It cannot.</exception>
    public static T Opened<T>(Func<T> open, string path)
    {
        try
        {
            return open();
        }
        catch (InvalidDataException error)
        {
            throw new UserError(error.Message + (path.EndsWith(".part", StringComparison.Ordinal) ? " Delete it, or give --fresh." : ""));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // a lock that another holds has no type of its own
            if (error.GetType() == typeof(IOException) && error.Message.Contains("another process", StringComparison.Ordinal))
                throw new UserError($"Another sweep works on {path}. Wait for it, or name other files.", ExitCode.Environment);
            throw new UserError($"{path} cannot be opened: {error.Message}", ExitCode.Environment);
        }
    }

    /// <summary>Writes beside the file and renames, so that a good file is never half overwritten.</summary>
    /// <param name="path">The file; its ending says of which kind.</param>
    /// <param name="table">What goes into it.</param>
    /// <param name="advice">What is not lost, added to the word on a file that cannot be written.</param>
    /// <exception cref="UserError">The file cannot be written.</exception>
    public static void Write(string path, SweepTable table, string advice = "")
    {
        try
        {
            WholeFile.Write(path, file => KindOf(path)!(table, file));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserError($"{path} cannot be written: {error.Message}{advice}", ExitCode.Environment);
        }
    }
}
