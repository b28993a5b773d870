namespace Simfeel.Flight.Tuning;

/// <summary>How the gains of a build are chosen before it is compared with another.</summary>
public enum TuningPolicy
{
    /// <summary>Every build the same phase margin at the highest crossover it allows; see <see cref="MatchedTuning"/>.</summary>
    Matched,

    /// <summary>Every build the numbers of one of them; see <see cref="SameGains"/>.</summary>
    SameGains,

    /// <summary>Every build the gains that stop its roll best; see <see cref="LimitTuning"/>.</summary>
    Limit,

    /// <summary>No controller: sticks move the rotors; see <see cref="BareTuning"/>.</summary>
    Bare,
}

/// <summary>A policy with what it needs.</summary>
/// <param name="Policy">The policy.</param>
/// <param name="Reference">The craft whose gains <see cref="TuningPolicy.SameGains"/> keeps; not used by the others.</param>
public sealed record TuningRule(TuningPolicy Policy, TunedUnit? Reference = null)
{
    /// <summary>The policy "matched".</summary>
    public static TuningRule Matched { get; } = new(TuningPolicy.Matched);
}

/// <summary>Names and meanings of the policies.</summary>
public static class TuningPolicies
{
    /// <summary>All names, in the order of the policies.</summary>
    public static IReadOnlyList<string> Words { get; } = ["matched", "same-gains", "limit", "bare"];

    /// <summary>Name of a policy, for people and machines.</summary>
    public static string Word(TuningPolicy policy) => Words[(int)policy];

    /// <summary>The policy of a name; null where there is none.</summary>
    public static TuningPolicy? Parse(string word)
    {
        for (int n = 0; n < Words.Count; n++)
        {
            if (Words[n] == word) return (TuningPolicy)n;
        }
        return null;
    }

    /// <summary>What a policy does, in one sentence.</summary>
    public static string Describe(TuningPolicy policy) => policy switch
    {
        TuningPolicy.Matched => "each build has the gains that reach 60 degrees of phase margin at the highest crossover it allows",
        TuningPolicy.SameGains => "both builds fly with the numbers of the first one's matched gains, as if a pilot had copied them",
        TuningPolicy.Limit => "each build has the roll and pitch gains that stop its roll best, at margins down to 35 degrees",
        _ => "no controller: the sticks ask the rotors for more or less thrust and nothing holds the craft",
    };
}
