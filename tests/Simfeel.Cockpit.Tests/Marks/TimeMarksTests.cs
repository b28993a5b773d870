using Simfeel.Cockpit.Marks;

namespace Simfeel.Cockpit.Tests.Marks;

public class TimeMarksTests
{
    private static TimeMarks Of(params (double Time, string Note)[] marks)
    {
        TimeMarks made = new();
        foreach ((double time, string note) in marks) Assert.True(made.TryAdd(new(time, note), out _));
        return made;
    }

    [Fact]
    public void Marks_stand_in_the_order_of_their_times_and_none_twice()
    {
        TimeMarks marks = Of((3, "c"), (1, "a"), (2, "b"));

        Assert.Equal(["a", "b", "c"], Enumerable.Range(0, 3).Select(k => marks[k].Note));
        Assert.False(marks.TryAdd(new(2.0000001, "again"), out int index));
        Assert.Equal(1, index);
        Assert.Equal(3, marks.Count);
        Assert.True(marks.TryAdd(new(2.001, "next reading"), out _));
    }

    [Theory]
    [InlineData(0.0, -1, 0)]
    [InlineData(1.0, -1, 1)]
    [InlineData(1.5, 0, 1)]
    [InlineData(2.0, 0, -1)]
    [InlineData(9.0, 1, -1)]
    public void The_marks_before_and_after_a_moment_are_not_the_one_at_it(double time, int before, int after)
    {
        TimeMarks marks = Of((1, ""), (2, ""));

        Assert.Equal(before, marks.Before(time));
        Assert.Equal(after, marks.After(time));
    }

    [Fact]
    public void What_is_written_is_read_again()
    {
        TimeMarks marks = Of((0, ""), (1.234, "says \"look\" \\ here"), (75.001, "größer ↑ 🛩"));
        List<string> wrong = [];

        TimeMarks read = TimeMarksFile.Read(TimeMarksFile.Write(marks), "f", wrong);

        Assert.Empty(wrong);
        Assert.Equal(3, read.Count);
        for (int k = 0; k < 3; k++) Assert.Equal(marks[k], read[k]);
    }

    [Theory]
    [InlineData("time_s = -1\nnote = \"x\"", "f:5: time_s is -1; it must be a number from 0 to 86400 s. The mark is left out.", 1)]
    [InlineData("time_s = nan\nnote = \"x\"", "f:5: time_s is nan; it must be a number from 0 to 86400 s. The mark is left out.", 1)]
    [InlineData("time_s = \"3\"\nnote = \"x\"", "f:5: time_s is \"3\"; it must be a number from 0 to 86400 s. The mark is left out.", 1)]
    [InlineData("note = \"x\"", "f:4: this mark has no time_s. It is left out.", 1)]
    [InlineData("time_s = 2\nnote = 7", "f:6: note must be a text of one line in double quotes, up to 120 characters. The mark has none.", 2)]
    [InlineData("time_s = 2\nnote = \"a\\nb\"", "f:6: note must be a text of one line in double quotes, up to 120 characters. The mark has none.", 2)]
    [InlineData("time_s = 2\ncolour = 1", "f:6: there is no key colour in a mark; it is left out.", 2)]
    [InlineData("time_s = 9", "f:6: there is another mark at 9.000 s. This one is left out.", 1)]
    [InlineData("time_s = 2\n[other]", "f:6: there is no table other; it is left out.", 2)]
    [InlineData("time_s = 2\n[mark.x]", "f:6: there is no table mark.x; it is left out.", 2)]
    [InlineData("time_s = = 2", "f:5: this line is not valid TOML: ", 0)]
    public void A_mistake_is_said_with_its_line_and_costs_only_its_own_mark(string mark, string message, int left)
    {
        List<string> wrong = [];

        TimeMarks read = TimeMarksFile.Read($"format = 1\n\n\n[[mark]]\n{mark}\n[[mark]]\ntime_s = 9\nnote = \"good\"\n", "f", wrong);

        Assert.StartsWith(message, Assert.Single(wrong), StringComparison.Ordinal);
        Assert.Equal(left, read.Count);
    }

    [Theory]
    [InlineData("format = 2", "f:1: format is 2; this version writes 1 and reads what it knows.")]
    [InlineData("author = \"x\"", "f:1: there is no key author; it is left out.")]
    public void Keys_of_other_versions_are_said(string line, string message)
    {
        List<string> wrong = [];

        TimeMarks read = TimeMarksFile.Read(line + "\n[[mark]]\ntime_s = 9\n", "f", wrong);

        Assert.Equal([message], wrong);
        Assert.Equal(1, read.Count);
    }

    [Fact]
    public void Marks_lie_beside_their_trace_and_are_stored_whole()
    {
        using TempFolder folder = new();
        string trace = Path.Combine(folder.Path, "flight.arrow"), file = Path.Combine(folder.Path, "flight.marks.toml");
        TimeMarksStore store = new(trace);
        store.Marks.TryAdd(new(4.5, "lets go"), out _);

        Assert.True(store.TrySave(out string problem), problem);

        Assert.Equal([file], Directory.GetFiles(folder.Path));
        TimeMarksStore again = new(trace);
        List<string> wrong = [];
        again.Load(wrong);
        Assert.Empty(wrong);
        Assert.Equal(new(4.5, "lets go"), again.Marks[0]);
    }

    [Fact]
    public void Marks_follow_a_recording_that_takes_the_place_of_an_older_one()
    {
        using TempFolder folder = new();
        string trace = Path.Combine(folder.Path, "flight.arrow"), file = Path.Combine(folder.Path, "flight.marks.toml");
        File.WriteAllText(file, "marks of the older one");
        TimeMarksStore store = new(trace + ".part");
        store.Marks.TryAdd(new(4.5, "lets go"), out _);
        Assert.True(store.TrySave(out string problem), problem);
        Assert.Equal("marks of the older one", File.ReadAllText(file));

        List<string> wrong = [];
        store.MoveTo(trace, wrong);

        Assert.Empty(wrong);
        Assert.Equal(trace, store.Trace);
        Assert.Equal("marks of the older one", File.ReadAllText(file + ".old"));
        Assert.Contains("lets go", File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Equal(2, Directory.GetFiles(folder.Path).Length);
    }

    [Fact]
    public void What_could_not_be_read_is_kept_before_it_is_written_over()
    {
        using TempFolder folder = new();
        string trace = Path.Combine(folder.Path, "flight.arrow"), file = Path.Combine(folder.Path, "flight.marks.toml");
        const string bad = "[[mark]]\ntime_s = 1\nnote = 3\n";
        File.WriteAllText(file, bad);
        TimeMarksStore store = new(trace);
        List<string> wrong = [];
        store.Load(wrong);
        Assert.Single(wrong);

        Assert.True(store.TrySave(out string problem), problem);

        Assert.Equal(bad, File.ReadAllText(file + ".old"));
        Assert.Contains("time_s = 1.0\n", File.ReadAllText(file), StringComparison.Ordinal);
        // what was good is not kept twice
        File.Delete(file + ".old");
        Assert.True(store.TrySave(out problem), problem);
        Assert.False(File.Exists(file + ".old"));
    }

    [Fact]
    public void A_new_recording_puts_the_marks_of_the_old_one_aside()
    {
        using TempFolder folder = new();
        string trace = Path.Combine(folder.Path, "flight.arrow"), file = Path.Combine(folder.Path, "flight.marks.toml");
        File.WriteAllText(file, "[[mark]]\ntime_s = 1\n");
        List<string> wrong = [];

        new TimeMarksStore(trace).Begin(wrong);

        Assert.Empty(wrong);
        Assert.False(File.Exists(file));
        Assert.True(File.Exists(file + ".old"));
    }

    [Fact]
    public void A_folder_that_takes_nothing_is_said_and_the_marks_stay()
    {
        using TempFolder folder = new();
        string blocked = Path.Combine(folder.Path, "file");
        File.WriteAllText(blocked, "");
        TimeMarksStore store = new(Path.Combine(blocked, "flight.arrow"));
        store.Marks.TryAdd(new(1, ""), out _);

        Assert.False(store.TrySave(out string problem));

        Assert.Contains("flight.marks.toml cannot be stored", problem, StringComparison.Ordinal);
        Assert.Equal(1, store.Marks.Count);
    }
}
