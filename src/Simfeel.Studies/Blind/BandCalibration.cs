using System.Globalization;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace Simfeel.Studies.Blind;

/// <summary>What votes say about feel bands.</summary>
public enum CalibrationOutcome
{
    /// <summary>There are too few votes, or they are all on one size of difference.</summary>
    TooLittle,

    /// <summary>The votes do not differ from guessing.</summary>
    NothingFelt,

    /// <summary>Both bands are found.</summary>
    Found,

    /// <summary>Even the smallest difference was felt: the bands lie below what was voted on, and only upper ends are known.</summary>
    UpperEndOnly,
}

/// <summary>Size of a difference from which something is felt, percent.</summary>
/// <param name="Size_Percent">The most likely size; NaN where only an end is known.</param>
/// <param name="Low_Percent">Lower end of its 95 % interval; 0 where the votes set none.</param>
/// <param name="High_Percent">Upper end; infinite where the votes set none.</param>
public sealed record FeelThreshold(double Size_Percent, double Low_Percent, double High_Percent);

/// <summary>
/// Feel bands from a pilot's own votes. Model: a vote on a difference of x percent is right with c + (1 - c) F(x), c the chance of the test,
/// F(x) = 1 - exp(-(x/alpha)^beta) the share of trials in which the difference is felt. "Perhaps" begins where F = 0.25 and "felt" where
/// F = 0.75. Maximum likelihood; 95 % intervals by profile likelihood (twice the log-likelihood falls by the 95 % point of chi-square with
/// one degree of freedom). Of pairs, same and different trials count alike, which is exact for a pilot who says "same" when nothing is felt.
/// </summary>
public sealed record BandCalibration
{
    /// <summary>Levels of F at which "perhaps" and "felt" begin.</summary>
    public const double PerhapsLevel = 0.25, FeltLevel = 0.75;

    /// <summary>Real votes needed at least, and sizes of difference among them.</summary>
    public const int LeastVotes = 20, LeastSizes = 2;

    // largest band that compare takes
    private const double LargestBand_Percent = 200;

    /// <summary>What came out.</summary>
    public required CalibrationOutcome Outcome { get; init; }

    /// <summary>Real votes on a difference that is known.</summary>
    public required int Votes { get; init; }

    /// <summary>The sizes voted on, percent, ascending, without 0.</summary>
    public required IReadOnlyList<double> Sizes_Percent { get; init; }

    /// <summary>From where a difference is perhaps felt; null where nothing is found.</summary>
    public FeelThreshold? Perhaps { get; init; }

    /// <summary>From where it is felt; null where nothing is found.</summary>
    public FeelThreshold? Felt { get; init; }

    /// <summary>The most likely slope beta; NaN where it is not found.</summary>
    public double Slope { get; init; } = double.NaN;

    /// <summary>The value for the option <c>--bands</c> of <c>compare</c>; null where there is none that it takes.</summary>
    public string? Bands
    {
        get
        {
            if (Perhaps is null || Felt is null) return null;
            bool ends = Outcome == CalibrationOutcome.UpperEndOnly;
            (double low, double high) = ends ? (Perhaps.High_Percent, Felt.High_Percent) : (Perhaps.Size_Percent, Felt.Size_Percent);
            return high <= LargestBand_Percent ? string.Create(CultureInfo.InvariantCulture, $"{low:0.#},{high:0.#}") : null;
        }
    }

    /// <summary>
    /// Calibrates from votes. Controls and votes on unknown differences are left out, and so are whole tallies whose controls say that
    /// something other than flying gave the craft away.
    /// </summary>
    public static BandCalibration Of(IEnumerable<VoteTally> tallies)
    {
        ArgumentNullException.ThrowIfNull(tallies);
        return OfGroups(VoteGroup.Of(tallies.Where(tally => tally.Result.Verdict != BlindVerdict.GivenAway).SelectMany(tally => tally.Rows)));
    }

    /// <summary>Calibrates from grouped votes.</summary>
    internal static BandCalibration OfGroups(IReadOnlyList<VoteGroup> groups)
    {
        BandCalibration nothing = new()
        {
            Outcome = CalibrationOutcome.TooLittle,
            Votes = groups.Sum(group => group.Votes),
            Sizes_Percent = [.. groups.Select(group => group.Size_Percent).Where(size => size > 0).Distinct().Order()],
        };
        if (nothing.Votes < LeastVotes || nothing.Sizes_Percent.Count < LeastSizes) return nothing;

        VoteLikelihood likelihood = new(groups);
        (double felt, double most) = Top(likelihood, FeltLevel);
        // at F = 0 the slope means nothing, so two degrees of freedom are the careful choice: guessers seem to feel in fewer than 5 % of logs
        if (2 * (most - likelihood.Guessing) <= ChiSquared.InvCDF(2, 0.95)) return nothing with { Outcome = CalibrationOutcome.NothingFelt };
        double slope = Math.Exp(likelihood.Profile(FeltLevel, felt).LogSlope);
        double perhaps = VoteLikelihood.LogSizeAt(PerhapsLevel, FeltLevel, felt, slope);
        FeelThreshold feltFrom = Interval(likelihood, FeltLevel, felt, most), perhapsFrom = Interval(likelihood, PerhapsLevel, perhaps, most);
        bool found = feltFrom.Low_Percent > 0;
        return nothing with
        {
            Outcome = found ? CalibrationOutcome.Found : CalibrationOutcome.UpperEndOnly,
            Perhaps = found ? perhapsFrom : perhapsFrom with { Size_Percent = double.NaN },
            Felt = found ? feltFrom : feltFrom with { Size_Percent = double.NaN },
            Slope = found ? slope : double.NaN,
        };
    }

    private static (double At, double Value) Top(VoteLikelihood likelihood, double level) =>
        GridSearch.Maximum(size => likelihood.Profile(level, size).Value, likelihood.Range.Least, likelihood.Range.Most, points: 81);

    /// <summary>Profile-likelihood interval about the most likely size.</summary>
    private static FeelThreshold Interval(VoteLikelihood likelihood, double level, double at, double most)
    {
        double least = most - (ChiSquared.InvCDF(1, 0.95) / 2);
        (double low, double high) = likelihood.Range;
        return new(
            Math.Exp(at),
            Above(low) >= 0 ? 0 : Math.Exp(Brent.FindRoot(Above, low, at, 1e-6)),
            Above(high) >= 0 ? double.PositiveInfinity : Math.Exp(Brent.FindRoot(Above, at, high, 1e-6)));

        double Above(double size) => likelihood.Profile(level, size).Value - least;
    }
}
