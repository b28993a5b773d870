using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>What the question of a lesson shows and does.</summary>
public sealed class LessonQuestionModel
{
    /// <summary>The lesson.</summary>
    public required Lesson Lesson { get; init; }

    /// <summary>What was answered so far.</summary>
    public required ClassAnswers Answers { get; init; }

    /// <summary>Something was answered or taken back.</summary>
    public required Action Changed { get; init; }

    /// <summary>Shows the result.</summary>
    public required Action Show { get; init; }
}
