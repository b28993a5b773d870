using System.Globalization;

namespace Simfeel.Fuzz.Running;

/// <summary>A folder for inputs, since the program reads files and not bytes. Removed when the process ends.</summary>
internal static class Scratch
{
    /// <summary>The folder.</summary>
    public static string Folder { get; } = Made();

    /// <summary>Stores an input under a name that is used again and again.</summary>
    public static string Store(string name, ReadOnlySpan<byte> input)
    {
        string path = Path.Combine(Folder, name);
        using FileStream file = new(path, FileMode.Create, FileAccess.Write, FileShare.None, 0);
        file.Write(input);
        return path;
    }

    private static string Made()
    {
        // memory is quicker than a disk, and a campaign writes a million files
        string root = Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath();
        string folder = Path.Combine(root, string.Create(CultureInfo.InvariantCulture, $"simfeel-fuzz-{Environment.ProcessId}"));
        Directory.CreateDirectory(folder);
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, true);
        return folder;
    }
}
