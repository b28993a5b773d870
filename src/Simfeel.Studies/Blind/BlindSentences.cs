namespace Simfeel.Studies.Blind;

/// <summary>Results of blind flights in plain words.</summary>
public static class BlindSentences
{
    /// <summary>What the votes show.</summary>
    public static string Of(BlindResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        string hits = $"{result.Hits} of {result.Trials} right";
        return result.Verdict switch
        {
            BlindVerdict.NoVotes => "No real trial was voted on.",
            BlindVerdict.Told => $"{hits}; guessing gives that or better in {Percent(result.ByGuessing)} of tries: you can tell them apart.",
            BlindVerdict.GivenAway => $"{hits}, but the controls say that something other than flying gave the craft away: this does not count.",
            _ => $"{hits}; guessing does as well in {Percent(result.ByGuessing)} of tries: not shown that you can tell them apart. {Needed(result.Test, result.Trials)}",
        };
    }

    /// <summary>What the controls say; empty where there were none.</summary>
    public static string OfControls(BlindResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (result.Controls == 0) return "";
        string hits = $"Controls, one build in every flight: {result.ControlHits} of {result.Controls} right";
        return result.Verdict == BlindVerdict.GivenAway
            ? $"{hits}, by luck in only {Percent(result.ControlsByLuck)} of tries."
            : $"{hits}; luck does as well in {Percent(result.ControlsByLuck)} of tries, as it should.";
    }

    /// <summary>What a number of trials can show, to be said before the first flight.</summary>
    public static string Plan(BlindTest test, int trials)
    {
        ArgumentNullException.ThrowIfNull(test);
        return $"{Needed(test, trials)} A pilot who is right 8 times in 10 is noticed in 80 % of tries from {BlindPower.TrialsNeeded(test)} trials on.";
    }

    /// <summary>A probability in percent.</summary>
    public static string Percent(double probability) => probability switch
    {
        1 => "100 %",
        > 0.99 => "more than 99 %",
        >= 0.0995 => $"{100 * probability:F0} %",
        >= 0.001 => $"{100 * probability:F1} %",
        _ => "less than 0.1 %",
    };

    private static string Needed(BlindTest test, int trials)
    {
        if (BlindPower.NeededRight(test, trials) is int needed) return $"Of {trials}, {needed} right would show it.";
        int fewest = trials;
        while (BlindPower.NeededRight(test, fewest) is null) fewest++;
        return $"{trials} can show nothing, not even all right: fly {fewest} at least.";
    }
}
