namespace Simfeel.Studies.Bench.Measuring;

/// <summary>Standard error of a single reading, from the scatter of repeated ones or as stated.</summary>
/// <param name="Sigma">The standard error.</param>
/// <param name="Freedom">Degrees of freedom behind it; infinite where it is the stated one.</param>
public readonly record struct Scatter(double Sigma, double Freedom)
{
    /// <summary>With fewer degrees of freedom than this Student's t says nothing useful (12.7 for one), and what was stated counts.</summary>
    private const int Fewest = 2;

    /// <summary>
    /// Pooled over several quantities that were read the same way: the sum of squares about each one's mean over the sum of
    /// their degrees of freedom (pooled variance, JCGM 100:2008, 4.2.4). Where there are too few readings, the stated error, or what the scatter
    /// shows where that is more.
    /// </summary>
    /// <param name="groups">Repeated readings of each quantity.</param>
    /// <param name="stated">Standard error of one reading where the scatter does not tell.</param>
    public static Scatter Pooled(IEnumerable<IReadOnlyList<double>> groups, double stated)
    {
        double squares = 0;
        int freedom = 0;
        foreach (IReadOnlyList<double> readings in groups)
        {
            double mean = readings.Average();
            squares += readings.Sum(reading => (reading - mean) * (reading - mean));
            freedom += readings.Count - 1;
        }
        double seen = freedom > 0 ? Math.Sqrt(squares / freedom) : 0;
        return freedom >= Fewest ? new(seen, freedom) : new(Math.Max(seen, stated), double.PositiveInfinity);
    }
}
