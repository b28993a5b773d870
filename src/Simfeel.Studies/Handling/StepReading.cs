namespace Simfeel.Studies.Handling;

/// <summary>
/// Numbers of a step response after IEEE Std 181-2011: rise between 10 % and 90 % of the amplitude, delay to 50 %, overshoot
/// in shares of the amplitude, and the time after which it stays within 2 % or 5 % of the final value.
/// </summary>
/// <param name="Overshoot">Peak beyond the final value, share of the amplitude.</param>
/// <param name="Rise">From 10 % to 90 %, s.</param>
/// <param name="Delay">From the start to 50 %, s.</param>
/// <param name="Settling2">From the start until it stays within 2 %, s; NaN where it leaves that band at the last row.</param>
/// <param name="Settling5">The same for 5 %, s.</param>
public readonly record struct StepReading(double Overshoot, double Rise, double Delay, double Settling2, double Settling5)
{
    /// <summary>Reads them off rows; times are interpolated.</summary>
    /// <param name="values">The response from the moment of the step on; the first is the level before.</param>
    /// <param name="period">Time between rows, s.</param>
    /// <param name="final">Final level; other than the first value.</param>
    /// <exception cref="ArgumentException">Fewer than two rows or no step.</exception>
    public static StepReading Of(IReadOnlyList<double> values, double period, double final)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count < 2 || !(Math.Abs(final - values[0]) > 0))
            throw new ArgumentException("A step has two rows and two levels.", nameof(values));
        double from = values[0], amplitude = final - from;
        double[] share = [.. values.Select(value => (value - from) / amplitude)];
        return new(Math.Max(0, share.Max() - 1), Reaches(0.9) - Reaches(0.1), Reaches(0.5), Stays(0.02), Stays(0.05));

        double Reaches(double level)
        {
            int row = Array.FindIndex(share, value => value >= level);
            return row < 1 ? double.NaN : period * (row - 1 + ((level - share[row - 1]) / (share[row] - share[row - 1])));
        }

        double Stays(double band)
        {
            int row = Array.FindLastIndex(share, value => Math.Abs(value - 1) > band);
            if (row == share.Length - 1) return double.NaN;
            double level = share[row] > 1 ? 1 + band : 1 - band;
            return period * (row + ((level - share[row]) / (share[row + 1] - share[row])));
        }
    }
}
