using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Simfeel.Studies.Blind;

/// <summary>Exact statements about a number of hits in independent trials.</summary>
public static class BinomialTest
{
    /// <summary>
    /// P(X >= hits), X binomial: the one-sided exact test. Through the incomplete beta function, P = I_p(k, n - k + 1)
    /// (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.5.24), which keeps small tails exact.
    /// </summary>
    /// <param name="hits">Hits k.</param>
    /// <param name="trials">Trials n.</param>
    /// <param name="chance">Probability p of a hit, in (0, 1).</param>
    public static double UpperTail(int hits, int trials, double chance)
    {
        Check(hits, trials);
        return hits == 0 ? 1 : SpecialFunctions.BetaRegularized(hits, trials - hits + 1.0, chance);
    }

    /// <summary>Interval for the probability of a hit that holds it at least that often (Clopper and Pearson, Biometrika 26, 1934).</summary>
    /// <param name="hits">Hits.</param>
    /// <param name="trials">Trials; none gives 0 to 1.</param>
    /// <param name="level">How often, in (0, 1).</param>
    public static (double Low, double High) ClopperPearson(int hits, int trials, double level = 0.95)
    {
        Check(hits, trials);
        double tail = (1 - level) / 2;
        return (
            hits == 0 ? 0 : Beta.InvCDF(hits, trials - hits + 1.0, tail),
            hits == trials ? 1 : Beta.InvCDF(hits + 1.0, trials - hits, 1 - tail));
    }

    private static void Check(int hits, int trials)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, trials);
    }
}
