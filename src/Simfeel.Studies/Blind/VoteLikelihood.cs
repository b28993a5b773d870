namespace Simfeel.Studies.Blind;

/// <summary>
/// Likelihood of votes under a psychometric function: a vote on a difference of x percent is right with c + (1 - c) F(x), c the chance of
/// the test and F(x) = 1 - exp(-(x/alpha)^beta) (Weibull; Wichmann and Hill, Perception and Psychophysics 63, 2001, without lapses).
/// Written in t = the size at which F reaches a level, and beta, so that profiles over t are intervals of what is asked for.
/// </summary>
/// <param name="groups">The votes; at least one size above 0.</param>
internal sealed class VoteLikelihood(IReadOnlyList<VoteGroup> groups)
{
    /// <summary>Slopes looked at. Pilots' lie between about 1 and 4 (common practice); flatter or steeper ones cannot be told from these.</summary>
    public const double FlattestSlope = 0.5, SteepestSlope = 10;

    // how far beyond the sizes voted on a threshold is looked for, as a factor
    private const double Beyond = 1000;

    private readonly double _least = Math.Log(groups.Where(group => group.Size_Percent > 0).Min(group => group.Size_Percent) / Beyond);
    private readonly double _most = Math.Log(groups.Max(group => group.Size_Percent) * Beyond);

    /// <summary>Logarithms of the smallest and largest threshold looked at, percent.</summary>
    public (double Least, double Most) Range => (_least, _most);

    /// <summary>Log-likelihood of guessing, F = 0.</summary>
    public double Guessing => groups.Sum(group => Weighted(group, double.NegativeInfinity));

    /// <summary>
    /// The largest log-likelihood of any slope, and that slope's logarithm.
    /// </summary>
    /// <param name="level">Level of F.</param>
    /// <param name="logSize">Logarithm of the size in percent at which F has that level.</param>
    public (double LogSlope, double Value) Profile(double level, double logSize)
    {
        double scale = Math.Log(-Math.Log(1 - level));
        return GridSearch.Maximum(
            logSlope => At(Math.Exp(logSlope), scale, logSize), Math.Log(FlattestSlope), Math.Log(SteepestSlope), points: 25);
    }

    /// <summary>Size at which F reaches a level, as a logarithm, from the size at which it reaches another.</summary>
    public static double LogSizeAt(double level, double otherLevel, double otherLogSize, double slope) =>
        otherLogSize + ((Math.Log(-Math.Log(1 - level)) - Math.Log(-Math.Log(1 - otherLevel))) / slope);

    private double At(double slope, double scale, double logSize)
    {
        double sum = 0;
        foreach (VoteGroup group in groups) sum += Weighted(group, scale + (slope * (Math.Log(group.Size_Percent) - logSize)));
        return sum;
    }

    /// <summary>Log-likelihood of a group; <paramref name="logHazard"/> is the logarithm of (x/alpha)^beta.</summary>
    private static double Weighted(VoteGroup group, double logHazard)
    {
        double hazard = Math.Exp(logHazard), missed = 1 - group.Chance;
        int wrong = group.Votes - group.Right;
        // a vote that is never given weighs nothing, even where it were impossible
        return (group.Right > 0 ? group.Right * Math.Log(1 - (missed * Math.Exp(-hazard))) : 0)
            + (wrong > 0 ? wrong * (Math.Log(missed) - hazard) : 0);
    }
}
