using System.Numerics;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// What the loops of all craft with the same sampling and filters have in common, on a grid of frequencies in equal ratios: the
/// controller's parts, and the gyro's filter with the hold. Immutable.
/// </summary>
internal sealed class LoopGrid
{
    /// <summary>Cells of the grid.</summary>
    public const int Steps = 240;

    private const double LowestFrequency = 0.5;

    /// <summary>Craft that are compared mostly share their filters, so one grid serves for long.</summary>
    private static LoopGrid? _latest;

    private readonly LoopSampling _sampling;
    private readonly double[] _w = new double[Steps + 1];
    private readonly Complex[] _integral = new Complex[Steps + 1], _derivative = new Complex[Steps + 1], _others = new Complex[Steps + 1];

    private LoopGrid(LoopSampling sampling)
    {
        _sampling = sampling;
        double ratio = Math.Pow(Math.PI / sampling.Period / LowestFrequency, 1.0 / Steps);
        for (int n = 0; n <= Steps; n++)
        {
            _w[n] = LowestFrequency * Math.Pow(ratio, n);
            (_integral[n], _derivative[n], _others[n]) = sampling.Parts(_w[n]);
        }
    }

    /// <summary>Frequencies, rad/s, rising.</summary>
    public ReadOnlySpan<double> Frequencies => _w;

    /// <summary>Answer of the controller's integral at each frequency.</summary>
    public ReadOnlySpan<Complex> Integral => _integral;

    /// <summary>Answer of its filtered derivative.</summary>
    public ReadOnlySpan<Complex> Derivative => _derivative;

    /// <summary>Gyro's filter and hold.</summary>
    public ReadOnlySpan<Complex> Others => _others;

    /// <summary>The grid of a sampling: the one made last where it fits.</summary>
    public static LoopGrid Of(LoopSampling sampling)
    {
        LoopGrid? latest = Volatile.Read(ref _latest);
        if (latest is not null && latest._sampling == sampling) return latest;
        latest = new(sampling);
        Volatile.Write(ref _latest, latest);
        return latest;
    }
}
