using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Simfeel.Fuzz.Running;

namespace Simfeel.Fuzz.Processes;

/// <summary>
/// Runs command lines over hostile files as processes of their own, with a heap of 1 GB at most, and looks at all folders around them
/// before and after. Where strace is installed it also says which files were opened to be written or were renamed.
/// </summary>
internal static partial class HostileRun
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>Runs cases.</summary>
    /// <param name="count">How many.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="trace">Whether to look on with strace.</param>
    public static KindResult Run(int count, int seed, bool trace)
    {
        KindResult result = new("hostile processes");
        for (int n = 0; n < count; n++)
        {
            HostileCase one = HostileCases.Make(Dice.Of("hostile processes", seed, n));
            result.Inputs++;
            try
            {
                int code = Run(one, trace, out double seconds);
                if (code == 0) result.Accepted++;
                else result.Rejected++;
                if (seconds > result.Worst) (result.Worst, result.WorstNumber) = (seconds, n);
            }
            catch (UnexplainedException error)
            {
                result.Unexplained++;
                result.Failures.Add(new(n, $"{string.Join(' ', one.Args)}: {error.Message}", []));
            }
        }
        return result;
    }

    /// <summary>Runs one case; gives its exit code and the processor time that it took.</summary>
    /// <exception cref="UnexplainedException">It wrote elsewhere, did not end, or ended without a reason.</exception>
    private static int Run(HostileCase one, bool trace, out double seconds)
    {
        string root = Path.Combine(Scratch.Folder, "run"), work = Path.Combine(root, "deep", "work"), home = Path.Combine(root, "home"), outside = Path.Combine(root, "deep", "outside");
        if (Directory.Exists(root)) Directory.Delete(root, true);
        foreach (string folder in (string[])[work, home, outside]) Directory.CreateDirectory(folder);
        foreach (string kept in (string[])["kept.toml", "section.csv", "escaped"]) File.WriteAllText(Path.Combine(outside, kept), "kept");
        foreach ((string name, byte[] content) in one.Files) File.WriteAllBytes(Path.Combine(work, name), content);
        foreach ((string name, string target) in one.Links.Where(link => !one.Files.ContainsKey(link.Key))) File.CreateSymbolicLink(Path.Combine(work, name), target);
        Dictionary<string, string> before = Look(root);
        string log = Path.Combine(Scratch.Folder, "strace");
        ProcessStartInfo start = trace
            ? new("strace", ["-f", "-qq", "-o", log, "-e", "trace=openat,open,creat,rename,renameat,renameat2,unlink,unlinkat,mkdir,mkdirat,link,linkat,symlink,symlinkat,truncate", "dotnet", "exec", Program, .. one.Args])
            : new("dotnet", ["exec", Program, .. one.Args]);
        start.WorkingDirectory = work;
        start.RedirectStandardInput = start.RedirectStandardOutput = start.RedirectStandardError = true;
        start.Environment["HOME"] = home;
        start.Environment["SIMFEEL_CACHE"] = "off";
        start.Environment["SDL_VIDEODRIVER"] = "none";
        start.Environment["DOTNET_GCHeapHardLimit"] = "0x40000000";
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync(), output = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(true);
            throw new UnexplainedException("does not end");
        }
        seconds = trace ? 0 : process.TotalProcessorTime.TotalSeconds;
        if (process.ExitCode is < 0 or > 3) throw new UnexplainedException($"exit code {process.ExitCode}: {errors.Result}");
        if (process.ExitCode != 0 && errors.Result.Trim().Length == 0) throw new UnexplainedException($"exit code {process.ExitCode} without a word");
        if ((output.Result + errors.Result).Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'))) throw new UnexplainedException("prints control characters");
        Compare(before, Look(root), [.. one.Outputs.Select(name => Path.Combine("deep", "work", name))]);
        if (trace) Written(File.ReadLines(log), work, one.Outputs);
        return process.ExitCode;
    }

    private static string Program => Path.Combine(AppContext.BaseDirectory, "simfeel.dll");

    /// <summary>Every file below a folder with what it holds.</summary>
    private static Dictionary<string, string> Look(string root) =>
        Directory.EnumerateFileSystemEntries(root, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }).ToDictionary(
            path => Path.GetRelativePath(root, path),
            path => new FileInfo(path).LinkTarget is string target ? "-> " + target : Directory.Exists(path) ? "folder" : Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path))));

    private static void Compare(Dictionary<string, string> before, Dictionary<string, string> after, string[] outputs)
    {
        foreach ((string name, string content) in after)
        {
            if (!outputs.Contains(name) && before.GetValueOrDefault(name) != content) throw new UnexplainedException($"wrote {name}");
        }
        foreach (string name in before.Keys.Where(name => !after.ContainsKey(name) && !outputs.Contains(name))) throw new UnexplainedException($"removed {name}");
    }

    /// <summary>Files that were opened to be written, renamed or removed are the outputs, or files beside them on their way there.</summary>
    private static void Written(IEnumerable<string> log, string work, IReadOnlyList<string> outputs)
    {
        foreach (string line in log.Where(line => !line.Contains(" = -1 ", StringComparison.Ordinal)))
        {
            bool opens = line.Contains("open", StringComparison.Ordinal);
            if (opens && !line.Contains("O_WRONLY", StringComparison.Ordinal) && !line.Contains("O_RDWR", StringComparison.Ordinal) && !line.Contains("O_CREAT", StringComparison.Ordinal)) continue;
            foreach (Match match in Quoted().Matches(line))
            {
                string path = Path.GetFullPath(match.Groups[1].Value, work), name = Path.GetRelativePath(work, path);
                // the runtime's own: its channel for debuggers, shared memory, devices, and what it reads of the system
                bool runtime = Runtimes().IsMatch(path);
                bool ours = outputs.Any(output => name == output || name.StartsWith(output + ".", StringComparison.Ordinal)
                    || (Path.GetDirectoryName(name) == Path.GetDirectoryName(output) && Unfinished().IsMatch(Path.GetFileName(name))));
                if (!runtime && !ours) throw new UnexplainedException(string.Create(CultureInfo.InvariantCulture, $"wrote outside: {line}"));
            }
        }
    }

    [GeneratedRegex(@"^\.simfeel-[0-9]+-[0-9]+\.part$")]
    private static partial Regex Unfinished();

    [GeneratedRegex("\"([^\"]+)\"")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"^/(dev/(null|tty|urandom|random|shm/(sem\.|clr|lttng))|proc/|sys/)|/(clr-debug-pipe|dotnet-diagnostic|\.dotnet|doublemapper|lttng)|/tmp[A-Za-z0-9]{6}\.tmp$|memfd:")]
    private static partial Regex Runtimes();
}
