using Simfeel.Builds;

namespace Simfeel.Studies.Lessons;

/// <summary>One value that was tried and what came of it.</summary>
/// <param name="Value">The value.</param>
/// <param name="Number">The number, SI; NaN where it cannot fly so.</param>
/// <param name="Fault">Why it cannot fly so; empty where it can.</param>
public sealed record LessonTrial(LessonValue Value, double Number, string Fault)
{
    /// <summary>Values tried over a range.</summary>
    public const int Steps = 5;

    /// <summary>Flies the second craft over the range that a lesson offers; the words one by one where the key holds words.</summary>
    public static IReadOnlyList<LessonTrial> Over(Lesson lesson, Build build)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return [.. Values(lesson).AsParallel().AsOrdered().Select(value => Fly(lesson, build, value))];
    }

    /// <summary>The values that are tried.</summary>
    public static IReadOnlyList<LessonValue> Values(Lesson lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        LessonChange change = lesson.Change;
        return change.Key.Words.Count > 0
            ? [.. change.Key.Words.Select(word => new LessonValue(double.NaN, word))]
            : [.. Enumerable.Range(0, Steps).Select(n => change.B with { Number = lesson.Try.From + ((lesson.Try.To - lesson.Try.From) * n / (Steps - 1)) })];
    }

    private static LessonTrial Fly(Lesson lesson, Build build, LessonValue value)
    {
        try
        {
            return new(value, LessonRun.Fly(lesson, build, value).B.Number, "");
        }
        catch (LessonException error)
        {
            return new(value, double.NaN, error.Message);
        }
    }
}
