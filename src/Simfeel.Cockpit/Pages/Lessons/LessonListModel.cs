using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>What the list of lessons shows and does.</summary>
public sealed class LessonListModel
{
    /// <summary>The lessons, those of a topic one after the other.</summary>
    public required IReadOnlyList<Lesson> Lessons { get; init; }

    /// <summary>Opens a lesson, by its place in <see cref="Lessons"/>.</summary>
    public required Action<int> Open { get; init; }

    /// <summary>Whether answers are kept in a table.</summary>
    public required Func<bool> KeepsAnswers { get; init; }

    /// <summary>Keeps answers, or stops to.</summary>
    public required Action<bool> KeepAnswers { get; init; }

    /// <summary>Where that table is.</summary>
    public required string AnswersFile { get; init; }
}
