namespace Simfeel.Studies.Blind;

/// <summary>What votes show.</summary>
public enum BlindVerdict
{
    /// <summary>There are no real votes.</summary>
    NoVotes,

    /// <summary>Guessing does as well too often. It does not show that the craft feel the same.</summary>
    NotShown,

    /// <summary>The pilot can tell the craft apart.</summary>
    Told,

    /// <summary>Controls were right far too often: something other than flying told the answers, and no result counts.</summary>
    GivenAway,
}

/// <summary>Votes of one kind of test set against chance.</summary>
/// <param name="Test">Kind of the test.</param>
/// <param name="Trials">Real trials voted.</param>
/// <param name="Hits">Right votes among them.</param>
/// <param name="Controls">Control trials voted.</param>
/// <param name="ControlHits">Right votes among them, by luck.</param>
public sealed record BlindResult(BlindTest Test, int Trials, int Hits, int Controls, int ControlHits)
{
    /// <summary>Probability below which luck is no longer believed where controls are right; stricter than <see cref="BlindPower.Level"/>, since it voids a result.</summary>
    public const double GiveawayLevel = 0.01;

    /// <summary>Share of right votes among real trials; NaN without any.</summary>
    public double Share => (double)Hits / Trials;

    /// <summary>Probability that guessing is right as often or more often.</summary>
    public double ByGuessing => BinomialTest.UpperTail(Hits, Trials, Test.Chance);

    /// <summary>95 % interval of the share of right votes (Clopper-Pearson).</summary>
    public (double Low, double High) ShareInterval => BinomialTest.ClopperPearson(Hits, Trials);

    /// <summary>
    /// Share of trials in which the pilot did not have to guess, by Abbott's formula (share - chance)/(1 - chance), not less than 0
    /// (Abbott, Journal of Economic Entomology 18, 1925). NaN without votes.
    /// </summary>
    public double AboveChance => Abbott(Share);

    /// <summary>95 % interval of <see cref="AboveChance"/>: the same formula of <see cref="ShareInterval"/>.</summary>
    public (double Low, double High) AboveChanceInterval => (Abbott(ShareInterval.Low), Abbott(ShareInterval.High));

    /// <summary>Probability that luck gets as many controls right, or more.</summary>
    public double ControlsByLuck => BinomialTest.UpperTail(ControlHits, Controls, Test.Chance);

    /// <summary>What it shows.</summary>
    public BlindVerdict Verdict =>
        ControlsByLuck <= GiveawayLevel ? BlindVerdict.GivenAway
        : Trials == 0 ? BlindVerdict.NoVotes
        : ByGuessing <= BlindPower.Level ? BlindVerdict.Told
        : BlindVerdict.NotShown;

    /// <summary>The result of voted trials.</summary>
    public static BlindResult Of(BlindTest test, IReadOnlyCollection<RevealedTrial> votes)
    {
        ArgumentNullException.ThrowIfNull(votes);
        return new(
            test,
            votes.Count(vote => !vote.Control),
            votes.Count(vote => !vote.Control && vote.Right),
            votes.Count(vote => vote.Control),
            votes.Count(vote => vote.Control && vote.Right));
    }

    private double Abbott(double share) => Math.Max(0, (share - Test.Chance) / (1 - Test.Chance));
}
