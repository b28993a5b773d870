using Simfeel.Builds;

namespace Simfeel.Studies.Lessons;

/// <summary>The lessons that come with the program, and those of a teacher in a folder of his own.</summary>
public static class LessonShelf
{
    /// <summary>The shelf that comes with the program.</summary>
    public static BuildShelf Files { get; } = new(Path.Combine(AppContext.BaseDirectory, "lessons"));

    /// <summary>All lessons that come along, by topic, topics and lessons in the order of their places, each with its file.</summary>
    public static IReadOnlyList<(string File, Lesson Lesson)> All() => Of(Files, []);

    /// <summary>The lessons that come along and those of a folder, such as a teacher's own.</summary>
    /// <param name="folder">The folder; need not exist.</param>
    /// <param name="wrong">Receives a sentence for each of its files that is no lesson.</param>
    public static IReadOnlyList<(string File, Lesson Lesson)> With(string folder, List<string> wrong)
    {
        ArgumentNullException.ThrowIfNull(wrong);
        return [.. All(), .. Of(new BuildShelf(folder), wrong)];
    }

    private static IReadOnlyList<(string File, Lesson Lesson)> Of(BuildShelf shelf, List<string> wrong)
    {
        List<(string File, Lesson Lesson)> found = [];
        foreach (string file in shelf.Names.Select(name => shelf.PathOf(name)!))
        {
            LessonReading reading = LessonReader.Read(file);
            if (reading.Lesson is Lesson lesson) found.Add((file, lesson));
            else wrong.Add(string.Join(' ', reading.Diagnostics.Take(1)));
        }
        return [.. found.OrderBy(pair => pair.Lesson.Place).GroupBy(pair => pair.Lesson.Topic).SelectMany(topic => topic)];
    }

    /// <summary>File of the build of a lesson: beside the lesson's file, a path, or a starter; null where there is none.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="lessonFile">The file that it was read from; null for none.</param>
    public static string? BuildFile(Lesson lesson, string? lessonFile)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        string beside = Path.Combine(Path.GetDirectoryName(lessonFile) ?? "", lesson.Build);
        return File.Exists(beside) ? beside : BuildShelf.Starters.PathOf(lesson.Build) is string path && File.Exists(path) ? path : null;
    }
}
