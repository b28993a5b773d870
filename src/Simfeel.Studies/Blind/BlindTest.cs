namespace Simfeel.Studies.Blind;

/// <summary>
/// A kind of blind test between two builds: how many flights a trial has, what is asked, and how often a guess is right.
/// </summary>
public sealed class BlindTest
{
    private BlindTest(string word, int flights, string question, params string[] choices) =>
        (Word, Flights, Question, Choices) = (word, flights, question, choices);

    /// <summary>Three flights, two of one build and one of the other: which is the odd one? The triangle test of ISO 4120.</summary>
    public static BlindTest Triangle { get; } = new("triangle", 3, "Which flight was the odd one out?", "1", "2", "3");

    /// <summary>Two flights, as often of the same build as of both: same or different?</summary>
    public static BlindTest Pair { get; } = new("pair", 2, "Were both flights the same craft, or different ones?", "same", "different");

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<BlindTest> All { get; } = [Triangle, Pair];

    /// <summary>Its name, for people and machines.</summary>
    public string Word { get; }

    /// <summary>Flights of a trial.</summary>
    public int Flights { get; }

    /// <summary>What the pilot is asked.</summary>
    public string Question { get; }

    /// <summary>The votes in words; vote n, counted from 1, is entry n - 1.</summary>
    public IReadOnlyList<string> Choices { get; }

    /// <summary>Probability that a guess is right, 1/3 or 1/2.</summary>
    public double Chance => 1.0 / Choices.Count;

    /// <summary>The kind of a name; null where there is none.</summary>
    public static BlindTest? Parse(string word) => All.FirstOrDefault(test => test.Word == word);

    /// <summary>Its name.</summary>
    public override string ToString() => Word;

    /// <summary>The right vote of a trial; null where an order is none of this kind's.</summary>
    /// <param name="order">The build of each flight as A or B, such as ABA.</param>
    internal int? RightChoice(string order)
    {
        if (order.Length != Flights || order.Any(build => build is not ('A' or 'B'))) return null;
        if (this == Pair) return order[0] == order[1] ? 1 : 2;
        for (int n = 0; n < order.Length; n++)
        {
            if (order.Count(build => build == order[n]) == 1) return n + 1;
        }
        return null;
    }
}
