using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Simfeel.Tests;

/// <summary>
/// What the disk or the output does to the program: one clear line, the right exit code, and no half-written file.
/// <c>benchmarks/faults.sh</c> does the same at scale, with kills and real file systems.
/// </summary>
public sealed partial class FaultTests : IDisposable
{
    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("weigh wagtail")]
    [InlineData("weigh wagtail --json")]
    public void An_output_that_is_full_is_one_line(string command)
    {
        if (!File.Exists("/dev/full")) return;
        (int code, string errors) = Shell($"exec \"$0\" exec \"$1\" {command} >/dev/full");
        Assert.Equal(3, code);
        Assert.Equal("simfeel: Stopped: No space left on device", Assert.Single(errors.TrimEnd().Split('\n')));
    }

    /// <summary>The file would grow beyond what the system allows, which is refused as a full disk is.</summary>
    [Fact]
    public void A_file_that_finds_no_room_leaves_the_old_one()
    {
        if (!OperatingSystem.IsLinux()) return;
        string sheet = _folder.File("w.html");
        File.WriteAllText(sheet, "old");
        (int code, string errors) = Shell($"trap '' XFSZ; ulimit -f 4; exec \"$0\" exec \"$1\" bench wagtail --worksheet {sheet} --force");
        Assert.Equal(3, code);
        Assert.StartsWith($"simfeel: --worksheet: {sheet} cannot be written: ", Assert.Single(errors.TrimEnd().Split('\n')), StringComparison.Ordinal);
        Assert.Equal("old", File.ReadAllText(sheet));
        Assert.Equal([sheet], Directory.GetFiles(_folder.Path));
    }

    /// <summary>A long sweep whose last step fails is not lost, and says so.</summary>
    [Fact]
    public void A_sweep_that_cannot_write_its_result_says_what_is_kept()
    {
        if (!OperatingSystem.IsLinux()) return;
        string table = _folder.File("s.csv"), journal = table + ".part";
        File.WriteAllText(table, "old");
        File.SetUnixFileMode(table, UnixFileMode.UserRead);
        CliResult result = Cli.RunMistaken(["sweep", "wagtail", "--vary", "motor.volume=1..1.2/2", "--metric", "hover_power", "--out", table], 3, $"{table} cannot be written: ");
        Assert.EndsWith($"Everything is flown and kept in {journal}; the same command goes on from there.", result.Errors.TrimEnd(), StringComparison.Ordinal);
        Assert.Equal(("old", true), (File.ReadAllText(table), File.Exists(journal)));
    }

    /// <summary>What opens files to write is known by name, so that no half-written file comes from a place nobody thought of.</summary>
    [Fact]
    public void Files_are_written_in_known_places_only()
    {
        string[] known =
        [
            "src/Simfeel.Builds/Writing/LoneFile.cs", "src/Simfeel.Builds/Writing/UnfinishedFile.cs",
            "src/Simfeel.Flight/Traces/TraceRecorder.cs", "src/Simfeel.Studies/Sweep/SweepJournal.cs",
        ];
        string[] found =
        [
            .. SourceTree.Files.Where(path => path.StartsWith("src/", StringComparison.Ordinal) && path.EndsWith(".cs", StringComparison.Ordinal)
                && Writes().IsMatch(File.ReadAllText(SourceTree.FullPath(path)))).Order(StringComparer.Ordinal),
        ];
        Assert.Equal(known, found);
    }

    [GeneratedRegex(@"\bFile\.(WriteAll|AppendAll|Create\(|CreateText|OpenWrite|OpenHandle|Copy|Replace)|\.CopyTo\(path|FileMode\.(Create|Append|OpenOrCreate)|FileAccess\.(Write|ReadWrite)")]
    private static partial Regex Writes();

    private static (int Code, string Errors) Shell(string script)
    {
        ProcessStartInfo start = new("sh", ["-c", script, "dotnet", Path.Combine(AppContext.BaseDirectory, "simfeel.dll")]) { RedirectStandardError = true, RedirectStandardOutput = true };
        // else a file of shared code would meet the limit
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        string errors = process.StandardError.ReadToEnd();
        process.WaitForExit();
        _ = output.Result;
        return (process.ExitCode, errors);
    }
}
