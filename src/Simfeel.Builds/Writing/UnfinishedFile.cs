using System.Diagnostics;
using System.Globalization;

namespace Simfeel.Builds.Writing;

/// <summary>
/// A hidden file beside the place of another, which it takes when it is whole; until then what stands there stays as it is. What a
/// killed program left of its own is removed by the next one that writes into the folder.
/// </summary>
public sealed class UnfinishedFile : IDisposable
{
    private const string Prefix = ".simfeel-", Mark = ".part";

    private static int _count;

    private readonly string _target;
    private bool _kept;

    /// <summary>Chooses the name; nothing is written yet.</summary>
    /// <param name="path">The place to be taken. Where it is a link, what it leads to is replaced and the link stays.</param>
    /// <param name="ending">A further ending, with its dot, for programs that tell kinds of files by it.</param>
    /// <exception cref="IOException">The links at the place go round in circles.</exception>
    public UnfinishedFile(string path, string ending = "")
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        _target = new FileInfo(path) is { LinkTarget: not null } link ? link.ResolveLinkTarget(returnFinalTarget: true)!.FullName : System.IO.Path.GetFullPath(path);
        string folder = System.IO.Path.GetDirectoryName(_target) ?? _target;
        Path = System.IO.Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{Prefix}{Environment.ProcessId}-{Interlocked.Increment(ref _count)}{Mark}{ending}"));
        RemoveLeftovers(folder);
    }

    /// <summary>The hidden file.</summary>
    public string Path { get; }

    /// <summary>Makes the hidden file. No other program of ours may open it meanwhile.</summary>
    /// <exception cref="IOException">It cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public FileStream Open()
    {
        FileStream file = new(Path, FileMode.Create, FileAccess.ReadWrite, FileShare.None);
        // what only its owner may read stays so
        if (!OperatingSystem.IsWindows() && File.Exists(_target)) File.SetUnixFileMode(file.SafeFileHandle, File.GetUnixFileMode(_target));
        return file;
    }

    /// <summary>Puts the hidden file, closed by now, into its place in one step.</summary>
    /// <param name="overwrite">Whether a file that stands there may be replaced.</param>
    /// <exception cref="IOException">A file stands there and may not be replaced, or it cannot be done.</exception>
    /// <exception cref="UnauthorizedAccessException">The file that stands there may not be written, or it is a folder.</exception>
    public void Keep(bool overwrite = true)
    {
        // renaming asks for the folder's rights only; who took a file's own away meant to keep it
        if (overwrite && File.Exists(_target) && File.GetAttributes(_target).HasFlag(FileAttributes.ReadOnly))
            throw new UnauthorizedAccessException($"'{_target}' is protected against writing.");
        File.Move(Path, _target, overwrite);
        _kept = true;
    }

    /// <summary>Removes the hidden file if it was not kept.</summary>
    public void Dispose()
    {
        if (!_kept) Delete(Path);
    }

    /// <summary>Removes hidden files of processes that are no more.</summary>
    private static void RemoveLeftovers(string folder)
    {
        try
        {
            foreach (string file in Directory.EnumerateFiles(folder, $"{Prefix}*{Mark}*"))
            {
                string number = System.IO.Path.GetFileName(file)[Prefix.Length..].Split('-')[0];
                if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int process) && !Lives(process) && !IsOpen(file)) Delete(file);
            }
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // no such folder, or one that may not be looked into: whoever writes will hear of it
        }
    }

    private static bool Lives(int process)
    {
        if (OperatingSystem.IsLinux() && Directory.Exists("/proc/self")) return LivesOnLinux(process);
        try
        {
            using Process found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    /// <summary>
    /// Whether a number is that of a process that still runs. Linux numbers threads out of the same row, and a thread is no writer of
    /// ours (a process is the first of its threads); and who was killed keeps its number, as a zombie, until its parent asks.
    /// </summary>
    private static bool LivesOnLinux(int process)
    {
        try
        {
            string[] status = File.ReadAllLines($"/proc/{process}/status");
            return status.Contains(string.Create(CultureInfo.InvariantCulture, $"Tgid:\t{process}"))
                && !status.Any(line => line.StartsWith("State:\tZ", StringComparison.Ordinal) || line.StartsWith("State:\tX", StringComparison.Ordinal));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Whether a program of another machine or container, whose numbers are not ours, holds a file.</summary>
    private static bool IsOpen(string file)
    {
        try
        {
            using FileStream alone = new(file, FileMode.Open, FileAccess.Read, FileShare.None);
            return false;
        }
        catch (FileNotFoundException)
        {
            return false;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return true;
        }
    }

    private static void Delete(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // another program was first, or the folder can be read only; the next one that writes here tries again
        }
    }
}
