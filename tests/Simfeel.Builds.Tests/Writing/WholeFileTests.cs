using System.Diagnostics;
using Simfeel.Builds.Writing;

namespace Simfeel.Builds.Tests.Writing;

/// <summary>Whatever goes wrong, all of the old file stands, or all of the new one, and nothing else stays in the folder.</summary>
public sealed class WholeFileTests : IDisposable
{
    private readonly TempFolder _folder = new();

    private string Target => _folder.File("copy.toml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_file_is_replaced_only_when_told_and_nothing_is_left_behind()
    {
        WholeFile.Write(Target, "a", overwrite: false);
        Assert.Throws<IOException>(() => WholeFile.Write(Target, "b", overwrite: false));
        Assert.Equal("a", File.ReadAllText(Target));
        WholeFile.Write(Target, "c");
        Assert.Equal("c", File.ReadAllText(Target));
        Assert.Equal([Target], Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public void Until_it_is_whole_the_old_one_stands_and_when_it_fails_it_stays()
    {
        WholeFile.Write(Target, "old");
        IOException error = Assert.Throws<IOException>(() => WholeFile.Write(Target, file =>
        {
            file.Write("half of the n"u8);
            file.Flush();
            Assert.Equal("old", File.ReadAllText(Target));
            throw new IOException($"No space left on device : '{((FileStream)file).Name}'");
        }));
        // the hidden name is nobody's business
        Assert.Equal($"No space left on device : '{Target}'", error.Message);
        Assert.Equal("old", File.ReadAllText(Target));
        Assert.Equal([Target], Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public void What_a_killed_program_left_is_removed_and_what_a_living_one_writes_is_not()
    {
        using Process gone = Process.Start("true");
        gone.WaitForExit();
        string left = Path.Combine(_folder.Path, $".simfeel-{gone.Id}-1.part"), video = Path.Combine(_folder.Path, $".simfeel-{gone.Id}-2.part.mp4");
        string held = Path.Combine(_folder.Path, $".simfeel-{gone.Id}-3.part"), ours = Path.Combine(_folder.Path, $".simfeel-{Environment.ProcessId}-0.part");
        string foreign = _folder.File(".simfeel-notes.part");
        string[] stay = [Target, held, ours, foreign];
        foreach (string file in (string[])[left, video, held, ours, foreign]) File.WriteAllText(file, "half");
        // by a program of another container, whose number means nothing here
        using (new FileStream(held, FileMode.Open, FileAccess.Write, FileShare.None)) WholeFile.Write(Target, "new");
        Assert.Equal(stay.Order(StringComparer.Ordinal), Directory.GetFiles(_folder.Path).Order(StringComparer.Ordinal));
    }

    /// <summary>The kernel numbers threads out of the same row: a number that some thread has by now is no writer's.</summary>
    [Fact]
    public void A_number_that_is_a_threads_by_now_keeps_nothing()
    {
        if (!OperatingSystem.IsLinux()) return;
        using Process own = Process.GetCurrentProcess();
        ProcessThread other = own.Threads.Cast<ProcessThread>().First(thread => thread.Id != own.Id);
        File.WriteAllText(_folder.File($".simfeel-{other.Id}-1.part"), "half");
        WholeFile.Write(Target, "new");
        Assert.Equal([Target], Directory.GetFiles(_folder.Path));
    }

    /// <summary>Whoever was killed keeps its number until its parent asks for it, which the first process of a container may never do.</summary>
    [Fact]
    public void The_dead_whom_nobody_asked_for_keep_nothing()
    {
        if (!OperatingSystem.IsLinux()) return;
        // the shell becomes a program that asks for no child
        using Process parent = Process.Start(new ProcessStartInfo("sh", ["-c", "sleep 60 & echo $!; exec sleep 60"]) { RedirectStandardOutput = true })!;
        try
        {
            string zombie = parent.StandardOutput.ReadLine()!;
            Assert.True(SpinWait.SpinUntil(() => Says(parent.Id, "Name:\tsleep"), 20_000));
            using (Process child = Process.GetProcessById(int.Parse(zombie))) child.Kill();
            Assert.True(SpinWait.SpinUntil(() => Says(int.Parse(zombie), "State:\tZ"), 20_000));
            File.WriteAllText(_folder.File($".simfeel-{zombie}-1.part"), "half");
            WholeFile.Write(Target, "new");
            Assert.Equal([Target], Directory.GetFiles(_folder.Path));
        }
        finally
        {
            parent.Kill();
        }

        static bool Says(int process, string what) => File.ReadAllText($"/proc/{process}/status").Contains(what, StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_stays_a_link_and_rights_stay_as_they_were()
    {
        if (OperatingSystem.IsWindows()) return;
        string link = _folder.File("link.toml"), loose = _folder.File("loose.toml");
        File.WriteAllText(Target, "old");
        File.SetUnixFileMode(Target, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.CreateSymbolicLink(link, "copy.toml");
        WholeFile.Write(link, "new");
        Assert.Equal("copy.toml", new FileInfo(link).LinkTarget);
        Assert.Equal("new", File.ReadAllText(Target));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Target));

        File.CreateSymbolicLink(loose, "later.toml");
        WholeFile.Write(loose, "new");
        Assert.Equal("new", File.ReadAllText(_folder.File("later.toml")));
    }

    [Fact]
    public void A_file_that_is_protected_is_not_replaced()
    {
        if (OperatingSystem.IsWindows()) return;
        File.WriteAllText(Target, "old");
        File.SetUnixFileMode(Target, UnixFileMode.UserRead);
        UnauthorizedAccessException error = Assert.Throws<UnauthorizedAccessException>(() => WholeFile.Write(Target, "new"));
        Assert.Contains(Target, error.Message, StringComparison.Ordinal);
        Assert.Equal("old", File.ReadAllText(Target));
        Assert.Equal([Target], Directory.GetFiles(_folder.Path));
    }

    /// <summary>Umlauts, Chinese, Arabic with marks, a picture, blanks, quotes, a dash in front, a line end, and the longest name that file systems take.</summary>
    [Theory]
    [InlineData("Größe 翼展 طُول 🚁 'a' \"b\".toml")]
    [InlineData("-rf *.toml")]
    [InlineData("two\nlines.toml")]
    [InlineData("")]
    public void Any_name_will_do(string name)
    {
        if (OperatingSystem.IsWindows()) return;
        string path = Path.Combine(_folder.Path, name.Length > 0 ? name : new string('n', 255));
        WholeFile.Write(path, "old");
        WholeFile.Write(path, "new");
        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(_folder.Path));
    }

    [Theory]
    [InlineData("none/copy.toml")]
    [InlineData("")]
    public void A_place_that_cannot_be_is_said(string name)
    {
        string path = name.Length > 0 ? _folder.File(name) : _folder.Path;
        Exception? error = Record.Exception(() => WholeFile.Write(path, "new"));
        Assert.True(error is IOException or UnauthorizedAccessException, $"{error}");
        Assert.Contains(path, error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(".part", error.Message, StringComparison.Ordinal);
    }

    /// <summary>Two programs add lines at once, each opening the file for each line: every line is there once and whole.</summary>
    [Fact]
    public void Lines_added_by_many_at_once_are_all_there()
    {
        string log = _folder.File("log.csv");
        Parallel.For(0, 200, new ParallelOptions { MaxDegreeOfParallelism = 4 }, n =>
        {
            using FileStream file = LoneFile.OpenToAdd(log);
            LoneFile.Add(file, System.Text.Encoding.UTF8.GetBytes($"{n:000} {new string('x', n)}\n"));
        });
        Assert.Equal(Enumerable.Range(0, 200).Select(n => $"{n:000} {new string('x', n)}"), File.ReadAllLines(log).Order(StringComparer.Ordinal));
    }

    /// <summary>A line that does not fit leaves the lines before it, as on a full disk.</summary>
    [Fact]
    public void What_cannot_be_added_whole_is_taken_away_again()
    {
        using FullStream disk = new();
        LoneFile.Add(disk, "whole\n"u8);
        Assert.Throws<IOException>(() => LoneFile.Add(disk, "too long for it\n"u8));
        Assert.Equal("whole\n"u8, disk.ToArray());
    }

    /// <summary>Takes ten bytes.</summary>
    private sealed class FullStream : MemoryStream
    {
        public override void Write(ReadOnlySpan<byte> buffer)
        {
            int room = Math.Min(buffer.Length, 10 - (int)Length);
            base.Write(buffer[..room]);
            if (room < buffer.Length) throw new IOException("No space left on device");
        }
    }
}
