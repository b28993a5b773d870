namespace Simfeel.Builds.Writing;

/// <summary>Files that several programs share, each for a moment alone.</summary>
public static class LoneFile
{
    private const int Tries = 100;

    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Opens a file to add to it, made if there is none, so that no other program of ours can read or write it meanwhile.</summary>
    /// <exception cref="IOException">It cannot be opened, or another program still held it after two seconds.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static FileStream OpenToAdd(string path) => Patiently(() => new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0));

    /// <summary>Opens a file to read that others may be adding to.</summary>
    /// <exception cref="IOException">It cannot be opened, or another program still held it after two seconds.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static FileStream OpenToRead(string path) => Patiently(() => new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));

    /// <summary>Adds to the end of a stream in one piece, down to the disk; where that fails, the end is where it was.</summary>
    /// <exception cref="IOException">It cannot be written, as on a full disk.</exception>
    public static void Add(Stream file, ReadOnlySpan<byte> piece)
    {
        ArgumentNullException.ThrowIfNull(file);
        long end = file.Seek(0, SeekOrigin.End);
        try
        {
            file.Write(piece);
            if (file is FileStream onDisk) onDisk.Flush(flushToDisk: true);
        }
        catch (IOException)
        {
            CutBack(file, end);
            throw;
        }
        catch (ArgumentOutOfRangeException error) when (IsTooLong(error))
        {
            CutBack(file, end);
            throw new IOException(TooLong, error);
        }
    }

    /// <summary>What is said of a file that reached the largest size that system or user allow.</summary>
    internal const string TooLong = "The file cannot grow any further";

    /// <summary>Whether an error of a stream means <see cref="TooLong"/>: .NET takes the number of bytes for an argument that is wrong.</summary>
    internal static bool IsTooLong(ArgumentOutOfRangeException error) => error.ParamName == "value";

    private static void CutBack(Stream file, long end)
    {
        try
        {
            file.SetLength(end);
        }
        catch (IOException)
        {
            // readers of such files know a torn end
        }
    }

    private static FileStream Patiently(Func<FileStream> open)
    {
        for (int n = 1; ; n++)
        {
            try
            {
                return open();
            }
            catch (IOException error) when (n < Tries && error.GetType() == typeof(IOException))
            {
                Thread.Sleep(Pause);
            }
        }
    }
}
