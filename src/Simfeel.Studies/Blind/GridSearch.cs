namespace Simfeel.Studies.Blind;

/// <summary>Maximum of a function of one number: a grid that finds the right hill, then finer grids about its top.</summary>
internal static class GridSearch
{
    private const int FinerPoints = 9;
    private const double Tolerance = 1e-6;

    /// <summary>Where the function is largest in an interval, ends included, and how large it is.</summary>
    /// <param name="function">The function.</param>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end.</param>
    /// <param name="points">Points of the first grid; no hill may be narrower than their distance.</param>
    public static (double At, double Value) Maximum(Func<double, double> function, double low, double high, int points)
    {
        (double at, double value) = Best(function, low, high, points);
        double step = (high - low) / (points - 1);
        while (step > Tolerance)
        {
            (double finer, double larger) = Best(function, Math.Max(low, at - step), Math.Min(high, at + step), FinerPoints);
            if (larger > value) (at, value) = (finer, larger);
            step *= 2.0 / (FinerPoints - 1);
        }
        return (at, value);
    }

    private static (double At, double Value) Best(Func<double, double> function, double low, double high, int points)
    {
        (double At, double Value) best = (low, double.NegativeInfinity);
        for (int n = 0; n < points; n++)
        {
            double at = low + ((high - low) * n / (points - 1));
            double value = function(at);
            if (value > best.Value) best = (at, value);
        }
        return best;
    }
}
