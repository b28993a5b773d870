using Simfeel.Builds;

namespace Simfeel.Studies.Lessons;

/// <summary>
/// A lesson: two craft that differ in exactly one key, a question that is asked before anything is shown, a drill, one number, and a
/// claim about how much that number differs. The claim is never printed as a result: every run computes it anew.
/// </summary>
public sealed record Lesson
{
    /// <summary>Short name: that of its file without the ending.</summary>
    public required string Name { get; init; }

    /// <summary>Heading.</summary>
    public required string Title { get; init; }

    /// <summary>Heading that lessons of a kind stand under.</summary>
    public required string Topic { get; init; }

    /// <summary>Place in the list, small ones first; 1 to 1000.</summary>
    public int Place { get; init; } = LessonFormat.LastPlace;

    /// <summary>What it is about, in one sentence that gives nothing away.</summary>
    public required string Idea { get; init; }

    /// <summary>A build file or the name of a starter build that both craft are made from.</summary>
    public required string Build { get; init; }

    /// <summary>What people call the first and the second craft.</summary>
    public required (string A, string B) CraftNames { get; init; }

    /// <summary>Whether the difference is one that a pilot should try to feel without knowing which craft is which.</summary>
    public bool FlyBlind { get; init; }

    /// <summary>What holds for both craft.</summary>
    public required IReadOnlyList<LessonSetting> Same { get; init; }

    /// <summary>The one thing that differs.</summary>
    public required LessonChange Change { get; init; }

    /// <summary>The number that answers the question.</summary>
    public required LessonNumber Number { get; init; }

    /// <summary>What is drawn over time.</summary>
    public required LessonPlot Plot { get; init; }

    /// <summary>The question.</summary>
    public required string Question { get; init; }

    /// <summary>Its answers, 2 to 6.</summary>
    public required IReadOnlyList<LessonChoice> Choices { get; init; }

    /// <summary>What the lesson says will come out on its own build.</summary>
    public required LessonRange Claim { get; init; }

    /// <summary>Why it comes out so.</summary>
    public required string Explanation { get; init; }

    /// <summary>What to change oneself.</summary>
    public required LessonTry Try { get; init; }

    /// <summary>A caution for those who do the same with a real craft; empty for none.</summary>
    public string Care { get; init; } = "";

    /// <summary>Letter of an answer: A, B, C and so on.</summary>
    public static char Letter(int choice) => (char)('A' + choice);
}

/// <summary>A value in a lesson: a number in its key's unit, a factor on the build's own number, or a word.</summary>
/// <param name="Number">The number or factor; NaN for a word.</param>
/// <param name="Word">The word; empty for a number.</param>
/// <param name="IsFactor">Whether the number multiplies what the build has.</param>
public readonly record struct LessonValue(double Number, string Word = "", bool IsFactor = false)
{
    /// <summary>The value as a lesson file has it, with the unit of its key.</summary>
    public string Text(string unit) =>
        Word.Length > 0 ? Word : IsFactor ? (Number == 1 ? "as it is" : $"{Number:0.####} times as much") : unit.Length > 0 ? $"{Number:0.####} {unit}" : $"{Number:0.####}";
}

/// <summary>A key and its value.</summary>
/// <param name="Key">The key, such as <c>ballast.mass_g</c>, <c>arm.length</c> or <c>motor.mass_g</c>.</param>
/// <param name="Value">Its value.</param>
public readonly record struct LessonSetting(LessonKey Key, LessonValue Value);

/// <summary>The one thing that differs between the two craft.</summary>
/// <param name="Key">Its key.</param>
/// <param name="A">Value of the first craft.</param>
/// <param name="B">Value of the second craft.</param>
public sealed record LessonChange(LessonKey Key, LessonValue A, LessonValue B);

/// <summary>An answer that can be chosen, and the outcomes for which it is right.</summary>
/// <param name="Text">The answer.</param>
/// <param name="Right">Outcomes that it is right for.</param>
public sealed record LessonChoice(string Text, LessonRange Right);

/// <summary>A range of outcomes: the second craft's number less the first one's.</summary>
/// <param name="Low">Least, percent of the first craft's number or in the number's unit.</param>
/// <param name="High">Largest.</param>
/// <param name="IsPercent">Whether the ends are percent of the first craft's number.</param>
public readonly record struct LessonRange(double Low, double High, bool IsPercent)
{
    /// <summary>Whether an outcome lies in it; the ends count.</summary>
    public bool Contains(double outcome) => outcome >= Low && outcome <= High;

    /// <summary>The range in words.</summary>
    /// <param name="unit">Unit of the number.</param>
    public string Text(string unit)
    {
        string of = IsPercent ? "%" : unit;
        if (double.IsNegativeInfinity(Low)) return $"{High:+0.###;-0.###;0} {of} or less";
        return double.IsPositiveInfinity(High) ? $"{Low:+0.###;-0.###;0} {of} or more" : $"{Low:+0.###;-0.###;0} to {High:+0.###;-0.###;0} {of}";
    }
}

/// <summary>What is drawn over time.</summary>
/// <param name="Channel">What.</param>
/// <param name="From">Begin, s from the start of the drill.</param>
/// <param name="To">End, s; the drill's end if infinite.</param>
public sealed record LessonPlot(FlightChannel Channel, double From, double To);

/// <summary>What a pupil may change: the second craft's value of the one key.</summary>
/// <param name="Text">What to do and to look for.</param>
/// <param name="From">Least value, or factor.</param>
/// <param name="To">Largest value, or factor.</param>
public sealed record LessonTry(string Text, double From, double To);

/// <summary>What came of reading a lesson.</summary>
/// <param name="Lesson">The lesson; null where there was an error.</param>
/// <param name="Diagnostics">Everything found, by line.</param>
public sealed record LessonReading(Lesson? Lesson, IReadOnlyList<Diagnostic> Diagnostics);
