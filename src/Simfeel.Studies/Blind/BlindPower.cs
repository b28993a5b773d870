namespace Simfeel.Studies.Blind;

/// <summary>What a number of trials can show, by the exact binomial distribution.</summary>
public static class BlindPower
{
    /// <summary>Largest probability with which guessing may pass for telling the craft apart; a convention.</summary>
    public const double Level = 0.05;

    // a pilot barely above chance would need more than this many flights of an evening
    private const int MostTrials = 5000;

    /// <summary>Fewest right votes of so many that guessing reaches in at most 5 % of tries; null where not even all right are enough.</summary>
    public static int? NeededRight(BlindTest test, int trials)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentOutOfRangeException.ThrowIfNegative(trials);
        return From(test.Chance, trials, 0);
    }

    /// <summary>Probability that a pilot who is right with a given probability gets as many right as needed.</summary>
    /// <param name="test">Kind of the test.</param>
    /// <param name="trials">Real trials.</param>
    /// <param name="share">Probability of a right vote, in (0, 1).</param>
    public static double Power(BlindTest test, int trials, double share) =>
        NeededRight(test, trials) is int needed ? BinomialTest.UpperTail(needed, trials, share) : 0;

    /// <summary>
    /// Trials from which on such a pilot is noticed with the given probability, whatever the number. Power goes up and down in teeth
    /// with the number of trials, since hits are whole numbers; this is behind the last tooth that falls short. Null above 5000.
    /// </summary>
    /// <param name="test">Kind of the test.</param>
    /// <param name="share">Probability of a right vote, above chance and below 1.</param>
    /// <param name="power">Probability of noticing, in (0, 1).</param>
    public static int? TrialsNeeded(BlindTest test, double share = 0.8, double power = 0.8)
    {
        ArgumentNullException.ThrowIfNull(test);
        if (!(share > test.Chance && share < 1))
            throw new ArgumentOutOfRangeException(nameof(share), share, $"Must lie between chance, {test.Chance:F3}, and 1.");
        if (!(power is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(power), power, "Must lie between 0 and 1.");
        int fallsShort = 0, needed = 0;
        for (int n = 1; n <= MostTrials; n++)
        {
            int? from = From(test.Chance, n, needed);
            if (from is null || BinomialTest.UpperTail(from.Value, n, share) < power) fallsShort = n;
            needed = from ?? 0;
        }
        return fallsShort == MostTrials ? null : fallsShort + 1;
    }

    /// <summary>The number needed is never less with a trial more, so the search goes on from the one before.</summary>
    private static int? From(double chance, int trials, int hits)
    {
        for (; hits <= trials; hits++)
        {
            if (BinomialTest.UpperTail(hits, trials, chance) <= Level) return hits;
        }
        return null;
    }
}
