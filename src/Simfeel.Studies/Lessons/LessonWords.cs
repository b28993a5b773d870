using System.Globalization;
using Simfeel.Flight.Tuning;

namespace Simfeel.Studies.Lessons;

/// <summary>What a lesson says, in sentences; the same on screen, paper and command line.</summary>
public static class LessonWords
{
    /// <summary>What stands before every lesson that sends somebody to a workbench or a field.</summary>
    public const string Safety =
        "With a real craft: propellers off for any work on the bench, since a spinning propeller cuts. Charge and store lithium packs as their maker says. "
        + "Fly away from people and within your local rules.";

    /// <summary>The one thing that differs, with both values.</summary>
    public static string Change(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        LessonKey key = result.Lesson.Change.Key;
        return $"One thing differs: {key.Meaning} ({key.Path}): {result.A.Value.Text(key.Unit)} for the first craft, {result.B.Value.Text(key.Unit)} for the second.";
    }

    /// <summary>How a value of one's own is written for <c>--value</c>: as the lesson's own is, so that 0.5 of something is not half a unit of it.</summary>
    public static string ValueForm(Lesson lesson)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return lesson.Change.Key.Words.Count > 0 ? "WORD" : lesson.Change.B.IsFactor ? "xNUMBER" : "NUMBER";
    }

    /// <summary>What is flown and under which conditions.</summary>
    public static string Flown(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        LessonFlight flight = result.A;
        TuningPolicy policy = flight.Setup.Policy;
        string tuning = policy == result.B.Setup.Policy
            ? $"Tuning policy {TuningPolicies.Word(policy)}: {TuningPolicies.Describe(policy)}. "
            : string.Concat(new[] { result.A, result.B }.Select(one => $"{one.Name}: {TuningPolicies.Describe(one.Setup.Policy)}. "));
        return $"Drill {flight.Log.Drill}: {LessonDrills.Of(flight.Setup).Purpose} {tuning}"
            + $"Stick effort {flight.Setup.Effort.ToString("0.##", CultureInfo.InvariantCulture)}, pack at {100 * flight.Setup.Profile.StateOfCharge:F0} % charge, still air.";
    }

    /// <summary>A number with its unit.</summary>
    public static string Number(Lesson lesson, double value)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        return lesson.Number.Display.WithSymbol(value);
    }

    /// <summary>By how much the second craft's number differs.</summary>
    public static string Difference(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (!double.IsFinite(result.Outcome)) return "one of the two never got so far";
        if (!result.Lesson.Claim.IsPercent)
        {
            string size = result.Lesson.Number.Display.WithSymbol(Math.Abs(result.B.Number - result.A.Number));
            return Math.Abs(result.Difference) < 0.05 ? "no difference" : $"{size} {(result.Difference > 0 ? "more" : "less")}";
        }
        return Math.Abs(result.Percent) < 0.5 ? "no difference" : $"{Math.Abs(result.Percent):F0} % {(result.Percent > 0 ? "more" : "less")}";
    }

    /// <summary>What came out, in one sentence.</summary>
    public static string Outcome(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        Lesson lesson = result.Lesson;
        return $"{Words.Capital(lesson.Number.Title)}: {Number(lesson, result.A.Number)} ({result.A.Name}), {Number(lesson, result.B.Number)} ({result.B.Name}): {Difference(result)}.";
    }

    /// <summary>Which answer is right; empty for a value of one's own, which the answers are not about.</summary>
    public static string Right(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.IsOwnValue) return "";
        return result.RightChoice is int right
            ? $"Right is {Lesson.Letter(right)}: {result.Lesson.Choices[right].Text}."
            : "None of the answers fits what came out.";
    }

    /// <summary>Whether the lesson holds for what was flown; empty where it does.</summary>
    public static string ClaimMissed(LessonResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.ClaimHolds || result.IsOwnValue) return "";
        string unit = result.Lesson.Number.Display.Symbol;
        return $"The lesson expects {result.Lesson.Claim.Text(unit)} on its own build, and that is not what came out: this is another build, or the claim does not hold. Read the explanation with care.";
    }

    /// <summary>How a class answered: the share that was right.</summary>
    public static string Class(LessonResult result, ClassAnswers answers)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(answers);
        if (answers.Count == 0) return "Nobody answered beforehand.";
        int right = result.RightChoice is int choice ? answers.Hands[choice] : 0;
        return answers.Count == 1 ? (right == 1 ? "The answer given beforehand was right." : "The answer given beforehand was not right.") : $"{right} of {answers.Count} had it right beforehand.";
    }

    /// <summary>Hands for each answer in one line.</summary>
    public static string Hands(ClassAnswers answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        return string.Join(", ", answers.Hands.Select((hands, n) => $"{Lesson.Letter(n)} {hands}"));
    }
}
