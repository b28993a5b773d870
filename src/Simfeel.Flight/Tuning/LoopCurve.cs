using System.Numerics;
using MathNet.Numerics.RootFinding;
using Simfeel.Flight.Control;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// A rate loop on a grid of frequencies, worked out once for all the gains that are tried on it: only the controller changes between
/// them. Crossings are bracketed on the grid and found exactly. Phases run on without jumps, so that dead time may turn them past -180
/// degrees and be seen to.
/// </summary>
internal sealed class LoopCurve
{
    private const int Steps = 240;
    private const double LowestFrequency = 0.5;
    private const double Accuracy = 1e-11;

    private readonly RateLoop _loop;
    private readonly double[] _w = new double[Steps + 1], _restPhase = new double[Steps + 1], _restGain = new double[Steps + 1];
    private readonly Complex[] _integral = new Complex[Steps + 1], _derivative = new Complex[Steps + 1];

    /// <summary>The curve of a loop.</summary>
    public LoopCurve(RateLoop loop)
    {
        _loop = loop;
        double ratio = Math.Pow(loop.HighestFrequency / LowestFrequency, 1.0 / Steps);
        for (int n = 0; n <= Steps; n++)
        {
            _w[n] = LowestFrequency * Math.Pow(ratio, n);
            (_integral[n], _derivative[n], Complex rest) = loop.Parts(_w[n]);
            _restGain[n] = rest.Magnitude;
            // at the lowest frequency a craft is a damped or a free turn: between nothing and half a turn behind
            _restPhase[n] = Follow(n == 0 ? -Math.PI / 2 : _restPhase[n - 1], rest.Phase);
        }
    }

    /// <summary>
    /// The highest frequency (rad/s) at which the phase falls through a value, where the gains' shape depends on that very frequency;
    /// NaN where it never does.
    /// </summary>
    /// <param name="phase">The value, rad.</param>
    /// <param name="shape">Gains at a frequency, up to a common factor.</param>
    public double PhaseFalls(double phase, Func<double, AxisGains> shape)
    {
        for (int n = Steps - 1; n >= 0; n--)
        {
            if (Phase(n, shape(_w[n])) > phase && Phase(n + 1, shape(_w[n + 1])) <= phase)
                return Between(n, w => Phase(w, n, shape(w)) - phase);
        }
        return double.NaN;
    }

    /// <summary>The last frequency (rad/s) at which the loop gain falls through 1, and the phase there; NaN where there is none.</summary>
    public (double Frequency, double Phase) Crossover(AxisGains gains)
    {
        for (int n = Steps - 1; n >= 0; n--)
        {
            if (Gain(n, gains) < 1 || Gain(n + 1, gains) >= 1) continue;
            double w = Between(n, at => Math.Log(_loop.Response(at, gains).Magnitude));
            return (w, Phase(w, n, gains));
        }
        return (double.NaN, double.NaN);
    }

    /// <summary>
    /// Gain margin beyond a crossover (rad/s): the inverse of the largest loop gain at or beyond the frequency where the phase reaches
    /// -180 degrees; infinite where it never does.
    /// </summary>
    public double GainMargin(AxisGains gains, double crossover)
    {
        double largest = 0;
        for (int n = 0; n < Steps; n++)
        {
            if (_w[n + 1] < crossover) continue;
            double before = Phase(n, gains), after = Phase(n + 1, gains);
            if (before > -Math.PI && after <= -Math.PI)
            {
                double w = Between(n, at => Phase(at, n, gains) + Math.PI);
                if (w >= crossover) largest = Math.Max(largest, _loop.Response(w, gains).Magnitude);
            }
            if (after <= -Math.PI) largest = Math.Max(largest, Gain(n + 1, gains));
        }
        return largest > 0 ? 1 / largest : double.PositiveInfinity;
    }

    private double Gain(int n, AxisGains gains) => Controller(n, gains).Magnitude * _restGain[n];

    private double Phase(int n, AxisGains gains) => _restPhase[n] + Controller(n, gains).Phase;

    /// <summary>Phase at a frequency near grid point n, rad.</summary>
    private double Phase(double w, int n, AxisGains gains)
    {
        (Complex integral, Complex derivative, Complex rest) = _loop.Parts(w);
        return Follow(_restPhase[n], rest.Phase) + Controller(integral, derivative, gains).Phase;
    }

    private Complex Controller(int n, AxisGains gains) => Controller(_integral[n], _derivative[n], gains);

    private static Complex Controller(Complex integral, Complex derivative, AxisGains gains) =>
        gains.Proportional + (gains.Integral * integral) + (gains.Derivative * derivative);

    /// <summary>Where a function of frequency is 0 between grid points n and n + 1, at whose ends its signs differ.</summary>
    private double Between(int n, Func<double, double> function) =>
        Brent.FindRoot(w => function(w), _w[n], _w[n + 1], Accuracy * _w[n], 100);

    /// <summary>A phase on the turn that lies nearest to one close by.</summary>
    private static double Follow(double near, double phase) => near + Math.IEEERemainder(phase - near, 2 * Math.PI);
}
