using Simfeel.Builds;
using Simfeel.Studies.Lessons;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>What the README says of lessons: its tables, and the lesson that a teacher copies out of it.</summary>
public class LessonReadmeTests
{
    [Fact]
    public void It_has_every_key_and_every_channel()
    {
        foreach (string table in (string[])[LessonFormat.Markdown(), LessonKeys.Markdown(), LessonFormat.ChannelMarkdown()])
            Assert.Contains("\n" + table.TrimEnd() + "\n\n", ProjectFolder.Readme, StringComparison.Ordinal);
    }

    /// <summary>Written by copying, flown unmodified: it is read without a finding, its claim holds, and its sheet can be made.</summary>
    [Fact]
    public void A_teachers_lesson_written_from_its_example_runs_unmodified()
    {
        string section = ProjectFolder.Readme[ProjectFolder.Readme.IndexOf("\n### A lesson of your own\n", StringComparison.Ordinal)..];
        using TempFolder temp = new();
        string folder = temp.Path;
        string file = Path.Combine(folder, "steeper.toml");
        File.WriteAllText(file, section.Split("```toml\n")[1].Split("```")[0]);
        LessonReading reading = LessonReader.Read(file);
        Assert.Empty(reading.Diagnostics);
        Lesson lesson = reading.Lesson!;
        Build build = BuildReader.Read(LessonShelf.BuildFile(lesson, file)!).Build!;
        LessonResult result = LessonRun.Fly(lesson, build);
        Assert.True(result.ClaimHolds, LessonWords.Outcome(result));
        Assert.Equal(1, result.RightChoice);
        Assert.Contains("Steeper propellers", new LessonSheet(result, LessonTrial.Over(lesson, build), null, new(2026, 5, 4), "0.1.0").Html(true), StringComparison.Ordinal);

        // the teacher's own craft beside the lesson
        File.Copy(Path.Combine(AppContext.BaseDirectory, "builds", "curlew.toml"), Path.Combine(folder, "ours.toml"));
        File.WriteAllText(file, File.ReadAllText(file).Replace("build = \"wagtail\"", "build = \"ours.toml\"", StringComparison.Ordinal));
        Assert.Equal(Path.Combine(folder, "ours.toml"), LessonShelf.BuildFile(LessonReader.Read(file).Lesson!, file));
    }

    /// <summary>It says how many lessons there are.</summary>
    [Fact]
    public void It_counts_the_lessons()
    {
        Assert.Equal(23, LessonShelf.Files.Names.Count);
        Assert.Contains("Twenty-three lessons come along", ProjectFolder.Readme, StringComparison.Ordinal);
    }
}
