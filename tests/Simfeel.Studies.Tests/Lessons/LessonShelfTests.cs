using Simfeel.Studies.Lessons;

namespace Simfeel.Studies.Tests.Lessons;

/// <summary>A teacher's own folder of lessons.</summary>
public class LessonShelfTests
{
    [Fact]
    public void A_folders_lessons_follow_those_that_come_along_and_a_broken_one_is_told()
    {
        using TempFolder folder = new();
        string own = File.ReadAllText(LessonShelf.Files.PathOf("size")!);
        File.WriteAllText(folder.File("ours.toml"), own.Replace("title = \"The same craft, twice as large\"", "title = \"Ours\"", StringComparison.Ordinal));
        File.WriteAllText(folder.File("broken.toml"), own.Replace("metric = \"stop_time\"", "metric = \"stop_tim\"", StringComparison.Ordinal));
        List<string> wrong = [];
        IReadOnlyList<(string File, Lesson Lesson)> lessons = LessonShelf.With(folder.Path, wrong);
        Assert.Equal(LessonShelf.All().Count + 1, lessons.Count);
        Assert.Equal((folder.File("ours.toml"), "Ours"), (lessons[^1].File, lessons[^1].Lesson.Title));
        Assert.StartsWith(folder.File("broken.toml") + ":", Assert.Single(wrong), StringComparison.Ordinal);
        Assert.Contains("stop_time", wrong[0], StringComparison.Ordinal);

        wrong.Clear();
        Assert.Equal(LessonShelf.All().Count, LessonShelf.With(folder.File("none"), wrong).Count);
        Assert.Empty(wrong);
    }

    [Fact]
    public void A_build_beside_the_lesson_goes_before_a_starter_of_its_name()
    {
        using TempFolder folder = new();
        Lesson lesson = LessonReader.Read(LessonShelf.Files.PathOf("size")!).Lesson!;
        string file = folder.File("size.toml");
        string starter = LessonShelf.BuildFile(lesson, null)!;
        Assert.Equal("wagtail.toml", Path.GetFileName(starter));
        Assert.Equal(starter, LessonShelf.BuildFile(lesson, file));
        File.WriteAllText(folder.File("wagtail"), "");
        Assert.Equal(folder.File("wagtail"), LessonShelf.BuildFile(lesson, file));
        Assert.Null(LessonShelf.BuildFile(lesson with { Build = "no such build" }, file));
    }
}
