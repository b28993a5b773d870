using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;

namespace Simfeel.Studies.Lessons;

/// <summary>One craft of a lesson and its flight.</summary>
/// <param name="Name">What the lesson calls it.</param>
/// <param name="Value">Its value of the one key.</param>
/// <param name="Setup">What it was flown with.</param>
/// <param name="Assembled">The craft as it was put together.</param>
/// <param name="Log">Its flight.</param>
/// <param name="Number">The one number, SI.</param>
public sealed record LessonFlight(
    string Name, LessonValue Value, LessonSetup Setup, AssembledBuild Assembled, FlightLog Log, double Number);

/// <summary>What came of a lesson.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="A">First craft.</param>
/// <param name="B">Second craft.</param>
public sealed record LessonResult(Lesson Lesson, LessonFlight A, LessonFlight B)
{
    /// <summary>The second number less the first one, in percent of the first one's size.</summary>
    public double Percent => 100 * (B.Number - A.Number) / Math.Abs(A.Number);

    /// <summary>The second number less the first one, in the number's unit for people.</summary>
    public double Difference => (B.Number - A.Number) * Lesson.Number.Display.PerSi;

    /// <summary>The difference as the lesson's claim counts it.</summary>
    public double Outcome => Lesson.Claim.IsPercent ? Percent : Difference;

    /// <summary>The answer that is right for this outcome; null where none is.</summary>
    public int? RightChoice
    {
        get
        {
            for (int n = 0; n < Lesson.Choices.Count; n++)
            {
                if (Lesson.Choices[n].Right.Contains(Outcome)) return n;
            }
            return null;
        }
    }

    /// <summary>Whether the second craft has another value than the lesson's, so that its question and answers do not fit.</summary>
    public bool IsOwnValue => B.Value != Lesson.Change.B;

    /// <summary>Whether what came out is what the lesson claims.</summary>
    public bool ClaimHolds => Lesson.Claim.Contains(Outcome);
}

/// <summary>Flies lessons.</summary>
public static class LessonRun
{
    /// <summary>Flies both craft.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="build">The build that both are made from, as it was read.</param>
    /// <param name="own">Value of the second craft in place of the lesson's; the lesson's if null.</param>
    /// <exception cref="LessonException">A craft cannot be made or cannot fly.</exception>
    public static LessonResult Fly(Lesson lesson, Build build, LessonValue? own = null)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(build);
        if (own is LessonValue given && LessonKeys.Fault(lesson.Change.Key, given) is string fault)
            throw new LessonException($"{lesson.Change.Key.Path}: {fault}");
        LessonValue[] values = [lesson.Change.A, own ?? lesson.Change.B];
        string[] names = [lesson.CraftNames.A, own is null || own == lesson.Change.B ? lesson.CraftNames.B : own.Value.Text(lesson.Change.Key.Unit)];
        LessonSetup[] setups = [.. values.Select(value => new LessonSetup([.. lesson.Same, new(lesson.Change.Key, value)]))];
        LessonFlight?[] flights = new LessonFlight?[2];
        LessonException?[] errors = new LessonException?[2];
        Parallel.For(0, 2, n =>
        {
            try
            {
                flights[n] = Fly(lesson, build, names[n], values[n], setups[n], setups[0]);
            }
            catch (LessonException error)
            {
                errors[n] = error;
            }
        });
        for (int n = 0; n < 2; n++)
        {
            if (errors[n] is LessonException error) throw new LessonException($"{names[n]}: {error.Message}");
        }
        return new(lesson, flights[0]!, flights[1]!);
    }

    private static LessonFlight Fly(Lesson lesson, Build build, string name, LessonValue value, LessonSetup setup, LessonSetup first)
    {
        TuningRule rule = new(setup.Policy);
        // same-gains keeps the matched gains of the first craft
        if (setup.Policy == TuningPolicy.SameGains) rule = new(setup.Policy, first.Make(build, TuningRule.Matched).Unit);
        (AssembledBuild assembled, TunedUnit unit) = setup.Make(build, rule);
        FlightLog log;
        try
        {
            log = DrillRunner.Fly(LessonDrills.Of(setup), unit, setup.Profile, setup.Effort);
        }
        catch (Exception error) when (error is ArgumentException or InvalidOperationException)
        {
            throw new LessonException(error.Message);
        }
        return new(name, value, setup, assembled, log, lesson.Number.Of(log, setup.Axis));
    }
}
