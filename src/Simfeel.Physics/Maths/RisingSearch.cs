namespace Simfeel.Physics.Maths;

/// <summary>
/// Where a rising function passes 0, between two places: by false position with the idle end's value halved (the Illinois rule; M. Dowell
/// and P. Jarratt, BIT 11 (1971) 168-174), and by halves while an end has no finite value.
/// </summary>
internal static class RisingSearch
{
    /// <summary>Width of the answer over its place: a few roundings.</summary>
    private const double Width = 2e-15;

    private const int Most = 100;

    /// <summary>
    /// Two neighbouring places, the function above 0 at the upper and not at the lower; the ends themselves are never tried, so that an
    /// end stays where the function passes 0 beyond it.
    /// </summary>
    /// <param name="function">Rises; may be infinite above, or have no value at an end.</param>
    /// <param name="low">Lower end, at least 0.</param>
    /// <param name="high">Upper end.</param>
    public static (double Below, double Above) Enclose(Func<double, double> function, double low, double high)
    {
        double atLow = double.NaN, atHigh = double.NaN;
        bool? last = null;
        for (int n = 0; n < Most && high - low > Width * high; n++)
        {
            double least = Width * high / 2, share = atLow / (atLow - atHigh);
            // a place hard by an end closes in on a root that lies there
            double at = double.IsFinite(atLow) && double.IsFinite(atHigh) ? Math.Clamp(low + (share * (high - low)), low + least, high - least) : (low + high) / 2;
            double value = function(at);
            bool above = value > 0;
            if (above)
            {
                (high, atHigh) = (at, value);
                if (last == above) atLow /= 2;
            }
            else
            {
                (low, atLow) = (at, value);
                if (last == above) atHigh /= 2;
            }
            last = above;
        }
        return (low, high);
    }
}
