using MathNet.Numerics.Distributions;

namespace Simfeel.Studies.Bench.Measuring;

/// <summary>One contribution to the error of a result.</summary>
/// <param name="Name">What it comes from.</param>
/// <param name="Sigma">Its standard error, in the unit of the result.</param>
/// <param name="Freedom">Degrees of freedom behind it; infinite where it was stated and not read off a scatter.</param>
public readonly record struct ErrorPart(string Name, double Sigma, double Freedom = double.PositiveInfinity);

/// <summary>
/// A measured number with all that is uncertain about it, put together as the Guide to the Expression of Uncertainty in
/// Measurement (JCGM 100:2008) says: variances add, the effective degrees of freedom follow Welch and Satterthwaite (its
/// formula G.2b), and Student's t gives the band.
/// </summary>
/// <param name="Value">The number.</param>
/// <param name="Parts">Contributions to its error, independent of each other, in the same unit.</param>
public sealed record Measurement(double Value, IReadOnlyList<ErrorPart> Parts)
{
    private const double Confidence = 0.95, NearlyNormal = 1e6;

    /// <summary>Standard error of the number.</summary>
    public double Sigma => Math.Sqrt(Parts.Sum(part => part.Sigma * part.Sigma));

    /// <summary>Effective degrees of freedom; infinite where nothing was read off a scatter.</summary>
    public double Freedom
    {
        get
        {
            double sum = Parts.Sum(part => Math.Pow(part.Sigma, 4) / part.Freedom);
            return sum > 0 ? Math.Pow(Sigma, 4) / sum : double.PositiveInfinity;
        }
    }

    /// <summary>Standard errors in half a 95 % band.</summary>
    public double Coverage => Freedom < NearlyNormal
        ? StudentT.InvCDF(0, 1, Freedom, (1 + Confidence) / 2)
        : Normal.InvCDF(0, 1, (1 + Confidence) / 2);

    /// <summary>Half the band that holds the true number in 95 of 100 such measurements.</summary>
    public double HalfBand => Coverage * Sigma;

    /// <summary>Share of each contribution in the variance, largest first.</summary>
    public IReadOnlyList<(string Name, double Share)> Shares()
    {
        double all = Sigma * Sigma;
        return [.. Parts.GroupBy(part => part.Name)
            .Select(same => (same.Key, all > 0 ? same.Sum(part => part.Sigma * part.Sigma) / all : 0))
            .Where(pair => pair.Item2 > 0)
            .OrderByDescending(pair => pair.Item2)];
    }
}
