using System.Diagnostics;

namespace Simfeel.Tests;

/// <summary>The source tree that these tests were built from.</summary>
internal static class SourceTree
{
    private static readonly string[] BuildOutput = ["bin", "obj", "artifacts", "TestResults", "BenchmarkDotNet.Artifacts"];

    /// <summary>Absolute path of the folder with Simfeel.sln.</summary>
    public static string Root => ProjectFolder.Root;

    /// <summary>
    /// Paths of the tracked files from the root, with forward slashes. Without git (an unpacked archive) all files but
    /// build output.
    /// </summary>
    public static IReadOnlyList<string> Files { get; } = Path.Exists(Path.Combine(Root, ".git")) ? Tracked() : Present();

    public static string FullPath(string relative) => Path.Combine(Root, relative);

    private static List<string> Tracked()
    {
        // The tree may belong to another user than the one who tests it, as in a container.
        ProcessStartInfo start = new("git", ["-c", "safe.directory=*", "ls-files", "-z"])
        {
            WorkingDirectory = Root,
            RedirectStandardOutput = true,
        };
        using Process git = Process.Start(start) ?? throw new InvalidOperationException("git did not start.");
        string output = git.StandardOutput.ReadToEnd();
        git.WaitForExit();
        if (git.ExitCode != 0) throw new InvalidOperationException($"git ls-files ended with {git.ExitCode}.");
        // A file deleted but not yet committed is still listed.
        return [.. output.Split('\0', StringSplitOptions.RemoveEmptyEntries).Where(path => File.Exists(FullPath(path)))];
    }

    private static List<string> Present() =>
        [.. Directory.EnumerateFiles(Root, "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Root, path).Replace('\\', '/'))
            .Where(path => !path.Split('/').Any(BuildOutput.Contains))];
}
