using Simfeel.Builds;
using Simfeel.Studies.Lessons;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>Whatever is wrong with a lesson is said with its line and what is allowed; two changes are refused.</summary>
public class LessonMistakeTests
{
    private const string Good = """
        format = 1

        [lesson]
        title = "T"
        topic = "Rotational inertia"
        idea = "I"
        build = "wagtail"
        first = "one"
        second = "other"

        [same]
        drill.name = "push"

        [change]
        ballast.mass_g = [0, 100]

        [number]
        channel = "rate"
        read = "largest"

        [plot]
        channel = "rate"

        [question]
        text = "Q"

        [[choice]]
        text = "less"
        percent = [-inf, 0]

        [[choice]]
        text = "more"
        percent = [0, inf]

        [claim]
        percent = [-50, -1]

        [explain]
        text = "E"

        [try]
        text = "T"
        """;

    [Fact]
    public void The_lesson_without_mistakes_is_read()
    {
        LessonReading reading = LessonReader.Parse(Good, "good.toml");
        Assert.Empty(reading.Diagnostics);
        Assert.Equal("good", reading.Lesson!.Name);
        Assert.Equal((0, 100), (reading.Lesson.Try.From, reading.Lesson.Try.To));
    }

    [Fact]
    public void Two_changes_are_refused()
    {
        Diagnostic said = Mistake("ballast.mass_g = [0, 100]", "ballast.mass_g = [0, 100]\nmotor.mass_g = [33, 40]");
        Assert.Equal(16, said.Line);
        Assert.Equal("change.motor.mass_g", said.Key);
        Assert.Contains("exactly one key", said.Message, StringComparison.Ordinal);
        Assert.Contains("ballast.mass_g in line 15", said.Message, StringComparison.Ordinal);
        // a table of its own is the same thing
        Assert.Contains("exactly one key", Mistake("[number]", "[change.motor]\nmass_g = [33, 40]\n\n[number]").Message, StringComparison.Ordinal);
    }

    public static TheoryData<string, string, int, string> Mistakes => new()
    {
        { "ballast.mass_g = [0, 100]", "", 14, "exactly one key" },
        { "ballast.mass_g = [0, 100]", "ballast.mass_g = [0, 100, 200]", 15, "two values" },
        { "ballast.mass_g = [0, 100]", "ballast.mass_g = 100", 15, "two values" },
        { "ballast.mass_g = [0, 100]", "ballast.mass_g = [100, 100]", 15, "nothing would differ" },
        { "ballast.mass_g = [0, 100]", "ballast.mass_g = [0, 9000]", 15, "0 to 5000 g" },
        { "ballast.mass_g = [0, 100]", "ballast.mass = [0, 100]", 15, "no such key" },
        { "ballast.mass_g = [0, 100]", "ballast.mass_g = [\"x 1\", \"x 2\"]", 15, "without the x" },
        { "ballast.mass_g = [0, 100]", "arm.length = [1, 20]", 15, "0.1 to 10" },
        { "ballast.mass_g = [0, 100]", "motor.mass_g = [\"x 1\", \"x 50\"]", 15, "0.1 to 10" },
        { "ballast.mass_g = [0, 100]", "motor.mass_g = [33, 5000]", 15, "0.3 to 1500 g" },
        { "ballast.mass_g = [0, 100]", "motor.mass_g = [33, \"heavy\"]", 15, "no number" },
        { "ballast.mass_g = [0, 100]", "drill.axis = [\"roll\", \"loop\"]", 15, "roll" },
        { "ballast.mass_g = [0, 100]", "drill.name = [\"push\", \"roll\"]", 15, "same key stands in [same]" },
        { "ballast.mass_g = [0, 100]", "measured.all_up_mass_g = [600, 700]", 15, "no such key" },
        { "drill.name = \"push\"", "", 11, "drill is missing" },
        { "drill.name = \"push\"", "drill.name = \"loop\"", 12, "\"push\"" },
        { "drill.name = \"push\"", "drill.name = \"push\"\ndrill.effort = 2", 13, "0.25 to 1" },
        { "channel = \"rate\"\nread = \"largest\"", "", 17, "What is read is missing" },
        { "channel = \"rate\"\nread = \"largest\"", "metric = \"stop_time\"", 18, "read from the drill stop" },
        { "channel = \"rate\"\nread = \"largest\"", "metric = \"stop_tme\"", 18, "stop_time" },
        { "read = \"largest\"", "read = \"biggest\"", 19, "\"largest\"" },
        { "read = \"largest\"", "read = \"mean\"\nfrom_s = 2\nto_s = 1", 21, "before the begin" },
        { "read = \"largest\"", "read = \"at\"\nfrom_s = 99", 20, "0 to 30 s" },
        { "percent = [-inf, 0]", "percent = [-inf, 10]", 31, "overlap" },
        { "percent = [-inf, 0]", "percent = [0, -5]", 29, "first one smaller" },
        { "percent = [-inf, 0]", "", 27, "outcomes are missing" },
        { "percent = [-inf, 0]", "difference = [-5, 0]", 27, "other way" },
        { "percent = [-50, -1]", "percent = [-50, 20]", 35, "one answer" },
        { "[claim]\npercent = [-50, -1]", "", 1, "[claim] is missing" },
        { "title = \"T\"", "title = \"T\"\nplace = 0", 5, "1 to 1000" },
        { "title = \"T\"", "", 3, "title" },
        { "title = \"T\"", "title = 7", 4, "text in double quotes" },
        { "title = \"T\"", "titel = \"T\"", 4, "no such key" },
        { "[explain]", "[explane]", 38, "no such table" },
        { "[[choice]]\ntext = \"more\"", "[choice]\ntext = \"more\"", 31, "twice" },
        { "format = 1", "format = 2", 1, "too large" },
        { "[try]\ntext = \"T\"", "[try]\ntext = \"T\"\nfrom = 5\nto = 5", 41, "not below" },
        { "[try]\ntext = \"T\"", "[try]\ntext = \"T\"\nto = 9000", 41, "0 to 5000 g" },
        { "[question]", "[question", 24, "" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void Every_mistake_is_said_with_its_line(string good, string bad, int line, string words)
    {
        Diagnostic said = Mistake(good, bad);
        Assert.Equal(line, said.Line ?? 1);
        Assert.Contains(words, said.Message + said.Hint, StringComparison.OrdinalIgnoreCase);
        Assert.Equal("bad.toml", said.File);
    }

    /// <summary>Cut, doubled and changed files: a lesson or a message, never an exception.</summary>
    [Fact]
    public void Nothing_that_can_be_written_makes_it_throw()
    {
        Random random = new(7);
        string[] files = [.. LessonShelf.Files.Names.Select(name => File.ReadAllText(LessonShelf.Files.PathOf(name)!))];
        for (int n = 0; n < 2000; n++)
        {
            char[] text = files[random.Next(files.Length)].ToCharArray();
            for (int k = 0; k < 1 + random.Next(6); k++) text[random.Next(text.Length)] = (char)random.Next(9, 127);
            string cut = new(text, 0, random.Next(1, text.Length + 1));
            LessonReading reading = LessonReader.Parse(cut, "mutant.toml");
            Assert.True(reading.Lesson is not null || reading.Diagnostics.Any(d => d.Severity == Severity.Error));
        }
    }

    [Fact]
    public void A_file_that_is_none_is_said()
    {
        Assert.Contains("no such file", LessonReader.Read("nowhere/at/all.toml").Diagnostics[0].Message, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("empty", LessonReader.Parse(" ", "empty.toml").Diagnostics[0].Message, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>What a lesson cannot fly is said when it is flown.</summary>
    [Fact]
    public void A_value_that_cannot_fly_is_said()
    {
        Lesson lesson = LessonReader.Parse(Good.Replace("ballast.mass_g = [0, 100]", "arm.length = [1, 0.4]", StringComparison.Ordinal), "short.toml").Lesson!;
        Build build = BuildReader.Read(LessonShelf.BuildFile(lesson, null)!).Build!;
        Assert.Contains("overlap", Assert.Throws<LessonException>(() => LessonRun.Fly(lesson, build)).Message, StringComparison.Ordinal);
        Lesson heavy = LessonReader.Parse(Good, "good.toml").Lesson!;
        Assert.Contains("hover", Assert.Throws<LessonException>(() => LessonRun.Fly(heavy with { Change = heavy.Change with { B = new(5000) } }, BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "sanderling.toml")).Build!)).Message, StringComparison.Ordinal);
        Assert.Contains("0 to 5000", Assert.Throws<LessonException>(() => LessonRun.Fly(heavy, build, new(-1))).Message, StringComparison.Ordinal);
    }

    private static Diagnostic Mistake(string good, string bad)
    {
        Assert.Contains(good, Good, StringComparison.Ordinal);
        int at = Good.IndexOf(good, StringComparison.Ordinal);
        LessonReading reading = LessonReader.Parse(Good[..at] + bad + Good[(at + good.Length)..], "bad.toml");
        Assert.Null(reading.Lesson);
        return reading.Diagnostics.First(d => d.Severity == Severity.Error);
    }
}
