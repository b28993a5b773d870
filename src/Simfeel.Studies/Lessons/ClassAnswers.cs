namespace Simfeel.Studies.Lessons;

/// <summary>How many chose each answer before anything was shown. Nobody's name is in it.</summary>
public sealed class ClassAnswers
{
    private readonly int[] _hands;

    /// <summary>No hands yet.</summary>
    /// <param name="choices">Number of answers.</param>
    public ClassAnswers(int choices) => _hands = new int[choices];

    /// <summary>Hands counted elsewhere.</summary>
    /// <param name="hands">For each answer, 0 to 999.</param>
    public ClassAnswers(IReadOnlyList<int> hands)
    {
        ArgumentNullException.ThrowIfNull(hands);
        if (hands.Any(n => n is < 0 or > Most)) throw new ArgumentOutOfRangeException(nameof(hands), $"Hands are 0 to {Most}.");
        _hands = [.. hands];
    }

    /// <summary>Most hands for one answer.</summary>
    public const int Most = 999;

    /// <summary>Hands for each answer.</summary>
    public IReadOnlyList<int> Hands => _hands;

    /// <summary>All hands.</summary>
    public int Count => _hands.Sum();

    /// <summary>One more hand.</summary>
    public void Add(int choice) => _hands[choice] = Math.Min(Most, _hands[choice] + 1);

    /// <summary>One hand less, if there is one.</summary>
    public void Take(int choice) => _hands[choice] = Math.Max(0, _hands[choice] - 1);
}
