using System.Numerics;

namespace Simfeel.Studies.Handling;

/// <summary>Response of an attitude (rad) to a stick command over frequency.</summary>
public sealed record FrequencyResponse
{
    private readonly double[] _logFrequency, _logGain;

    /// <summary>A response.</summary>
    /// <param name="frequencies">Frequencies, rad/s, rising, above 0; at least two.</param>
    /// <param name="values">Complex response at each.</param>
    /// <param name="coherence">Ordinary coherence at each, 0 to 1; null where the method gives none.</param>
    /// <exception cref="ArgumentException">Lengths differ or frequencies do not rise.</exception>
    public FrequencyResponse(IReadOnlyList<double> frequencies, IReadOnlyList<Complex> values, IReadOnlyList<double>? coherence = null)
    {
        ArgumentNullException.ThrowIfNull(frequencies);
        ArgumentNullException.ThrowIfNull(values);
        if (frequencies.Count < 2 || values.Count != frequencies.Count || (coherence is not null && coherence.Count != frequencies.Count))
            throw new ArgumentException("A frequency response has a value for each of at least two frequencies.", nameof(values));
        for (int n = 0; n < frequencies.Count; n++)
        {
            if (!(frequencies[n] > (n == 0 ? 0 : frequencies[n - 1])))
                throw new ArgumentException("Frequencies are above 0 and rise.", nameof(frequencies));
        }
        (Frequencies, Values, Coherence) = (frequencies, values, coherence);
        _logFrequency = [.. frequencies.Select(w => Math.Log(w))];
        _logGain = [.. values.Select(value => Math.Log(value.Magnitude))];
        Phase = Unwrapped(values);
    }

    /// <summary>Frequencies, rad/s.</summary>
    public IReadOnlyList<double> Frequencies { get; }

    /// <summary>Complex response at each frequency.</summary>
    public IReadOnlyList<Complex> Values { get; }

    /// <summary>Coherence at each frequency; null where the method gives none.</summary>
    public IReadOnlyList<double>? Coherence { get; }

    /// <summary>
    /// Phase at each frequency, rad, without jumps of whole turns; the first is taken between -3/2 pi and pi/2, as a craft
    /// lags its stick.
    /// </summary>
    public IReadOnlyList<double> Phase { get; }

    /// <summary>Gain at a frequency (rad/s): straight lines of its logarithm over log frequency; NaN outside the range.</summary>
    public double GainAt(double frequency) => Math.Exp(Between(frequency, _logGain));

    /// <summary>Phase at a frequency (rad/s), rad: straight lines over log frequency; NaN outside the range.</summary>
    public double PhaseAt(double frequency) => Between(frequency, Phase);

    /// <summary>Least coherence from one frequency to another, rad/s; NaN where there is none.</summary>
    public double LeastCoherence(double from, double to)
    {
        if (Coherence is null) return double.NaN;
        double least = double.NaN;
        for (int n = 0; n < Frequencies.Count; n++)
        {
            if (Frequencies[n] < from || Frequencies[n] > to) continue;
            least = double.IsNaN(least) ? Coherence[n] : Math.Min(least, Coherence[n]);
        }
        return least;
    }

    /// <summary>
    /// Highest frequency up to a limit (rad/s) at which the phase (rad) falls through a level; NaN where it never does.
    /// </summary>
    internal double PhaseCrossing(double level, double upTo) => Crossing(Phase, level, upTo);

    /// <summary>Highest frequency up to a limit (rad/s) at which the gain falls through a level; NaN where it never does.</summary>
    internal double GainCrossing(double level, double upTo) => Crossing(_logGain, Math.Log(level), upTo);

    /// <summary>Lowest frequency (rad/s) at which the phase (rad) falls through a level; NaN where it never does.</summary>
    internal double FirstPhaseCrossing(double level)
    {
        for (int n = 1; n < Frequencies.Count; n++)
        {
            if (Phase[n - 1] > level && Phase[n] <= level) return FrequencyOf(Phase, level, n);
        }
        return double.NaN;
    }

    private double Crossing(IReadOnlyList<double> y, double level, double upTo)
    {
        for (int n = Frequencies.Count - 1; n > 0; n--)
        {
            if (Frequencies[n - 1] < upTo && y[n - 1] > level && y[n] <= level) return FrequencyOf(y, level, n);
        }
        return double.NaN;
    }

    private double FrequencyOf(IReadOnlyList<double> y, double level, int n)
    {
        double share = (y[n - 1] - level) / (y[n - 1] - y[n]);
        return Math.Exp(_logFrequency[n - 1] + (share * (_logFrequency[n] - _logFrequency[n - 1])));
    }

    private double Between(double frequency, IReadOnlyList<double> y)
    {
        if (!(frequency >= Frequencies[0] && frequency <= Frequencies[^1])) return double.NaN;
        double x = Math.Log(frequency);
        int found = Array.BinarySearch(_logFrequency, x);
        if (found >= 0) return y[found];
        int after = Math.Clamp(~found, 1, y.Count - 1);
        double share = (x - _logFrequency[after - 1]) / (_logFrequency[after] - _logFrequency[after - 1]);
        return y[after - 1] + (share * (y[after] - y[after - 1]));
    }

    private static double[] Unwrapped(IReadOnlyList<Complex> values)
    {
        double[] phase = new double[values.Count];
        phase[0] = values[0].Phase > Math.PI / 2 ? values[0].Phase - Math.Tau : values[0].Phase;
        for (int n = 1; n < phase.Length; n++)
            phase[n] = phase[n - 1] + Math.IEEERemainder(values[n].Phase - phase[n - 1], Math.Tau);
        return phase;
    }
}
