using System.Text;

namespace Simfeel.Builds.Writing;

/// <summary>
/// The one way in which files are written that are not added to: beside their place, down to the disk, then renamed. Whatever
/// ends the program or fills the disk meanwhile, at the place stands all of the old file or all of the new one.
/// </summary>
public static class WholeFile
{
    /// <summary>Writes a text as UTF-8.</summary>
    /// <param name="path">The file; a link stays a link.</param>
    /// <param name="text">Its text.</param>
    /// <param name="overwrite">Whether a file that stands there may be replaced.</param>
    /// <exception cref="IOException">It cannot be written, or a file stands there and may not be replaced.</exception>
    /// <exception cref="UnauthorizedAccessException">Folder or file may not be written.</exception>
    public static void Write(string path, string text, bool overwrite = true) =>
        Write(path, file => file.Write(Encoding.UTF8.GetBytes(text)), overwrite);

    /// <summary>Writes what an action puts into a stream.</summary>
    /// <param name="path">The file; a link stays a link.</param>
    /// <param name="content">Writes the content; leaves the stream open.</param>
    /// <param name="overwrite">Whether a file that stands there may be replaced.</param>
    /// <param name="lasting">
    /// Whether it must be on the disk before it takes its place, as for all that cannot be made again at once. Without, a lost
    /// supply may leave an empty file.
    /// </param>
    /// <exception cref="IOException">It cannot be written, or a file stands there and may not be replaced.</exception>
    /// <exception cref="UnauthorizedAccessException">Folder or file may not be written.</exception>
    public static void Write(string path, Action<Stream> content, bool overwrite = true, bool lasting = true)
    {
        ArgumentNullException.ThrowIfNull(content);
        // a file put in the place of a device would take it away from everybody
        if (IsDevice(Path.GetFullPath(path))) throw new IOException("This is a device, not a file.");
        using UnfinishedFile unfinished = new(path);
        try
        {
            using (FileStream file = unfinished.Open())
            {
                content(file);
                file.Flush(flushToDisk: lasting);
            }
            unfinished.Keep(overwrite);
        }
        catch (IOException error) when (error.Message.Contains(unfinished.Path, StringComparison.Ordinal))
        {
            // the hidden name would tell nobody anything
            throw new IOException(error.Message.Replace(unfinished.Path, path, StringComparison.Ordinal), error);
        }
        catch (ArgumentOutOfRangeException error) when (LoneFile.IsTooLong(error))
        {
            throw new IOException($"{LoneFile.TooLong} : '{path}'", error);
        }
        catch (UnauthorizedAccessException error) when (error.Message.Contains(unfinished.Path, StringComparison.Ordinal))
        {
            throw new UnauthorizedAccessException(error.Message.Replace(unfinished.Path, path, StringComparison.Ordinal), error);
        }
    }

    /// <summary>Whether a path lies among the system's devices; the memory that programs share is a folder like others.</summary>
    private static bool IsDevice(string path) =>
        path.StartsWith("/dev/", StringComparison.Ordinal) && !path.StartsWith("/dev/shm/", StringComparison.Ordinal);
}
