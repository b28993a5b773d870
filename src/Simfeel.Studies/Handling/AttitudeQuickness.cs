namespace Simfeel.Studies.Handling;

/// <summary>
/// Attitude quickness after ADS-33E-PRF (US Army AMCOM, 2000; definition from memory): peak rate by peak attitude change of
/// a change from one steady attitude to another, held against the least attitude change, which is what is left where the
/// craft has swung back from the peak.
/// </summary>
/// <param name="PeakRate">Largest rate in the direction of the change, rad/s.</param>
/// <param name="PeakChange">Largest attitude change, rad.</param>
/// <param name="LeastChange">Least attitude change after the peak, rad.</param>
public readonly record struct AttitudeQuickness(double PeakRate, double PeakChange, double LeastChange)
{
    /// <summary>Peak rate by peak attitude change, 1/s; NaN where nothing turned.</summary>
    public double Quickness => PeakChange > 0 ? PeakRate / PeakChange : double.NaN;

    /// <summary>Reads it off rows of rate (rad/s) and attitude (rad); the first row is the steady attitude before.</summary>
    /// <exception cref="ArgumentException">Lengths differ or there are no rows.</exception>
    public static AttitudeQuickness Of(IReadOnlyList<double> rate, IReadOnlyList<double> attitude)
    {
        ArgumentNullException.ThrowIfNull(rate);
        ArgumentNullException.ThrowIfNull(attitude);
        if (rate.Count == 0 || rate.Count != attitude.Count)
            throw new ArgumentException("Rate and attitude have the same rows, at least one.", nameof(attitude));
        int peak = 0;
        for (int row = 1; row < attitude.Count; row++)
        {
            if (Math.Abs(attitude[row] - attitude[0]) > Math.Abs(attitude[peak] - attitude[0])) peak = row;
        }
        double sign = Math.Sign(attitude[peak] - attitude[0]), most = sign * (attitude[peak] - attitude[0]), least = most;
        for (int row = peak; row < attitude.Count; row++) least = Math.Min(least, sign * (attitude[row] - attitude[0]));
        return new(rate.Max(value => sign * value), most, least);
    }
}
