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
    private const int Steps = LoopGrid.Steps;
    private const double Accuracy = 1e-11;

    private readonly RateLoop _loop;
    private readonly LoopGrid _grid;
    private readonly double[] _restPhase = new double[Steps + 1], _restGain = new double[Steps + 1];
    private readonly Complex[] _rest = new Complex[Steps + 1];

    /// <summary>The curve of a loop.</summary>
    public LoopCurve(RateLoop loop)
    {
        _loop = loop;
        _grid = LoopGrid.Of(loop.Sampling);
        for (int n = 0; n <= Steps; n++)
        {
            Complex rest = _grid.Others[n] * loop.Plant.Response(_grid.Frequencies[n]);
            _rest[n] = rest;
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
        int n = CellOfFall(phase, shape);
        return n < 0 ? double.NaN : Between(n, w => Phase(w, n, shape(w)) - phase);
    }

    /// <summary>A bound of <see cref="PhaseFalls"/> from above, at little cost; NaN where the phase never falls through the value.</summary>
    public double PhaseFallsBelow(double phase, Func<double, AxisGains> shape)
    {
        int n = CellOfFall(phase, shape);
        return n < 0 ? double.NaN : _grid.Frequencies[n + 1];
    }

    /// <summary>The last frequency (rad/s) at which the loop gain falls through 1, and the phase there; NaN where there is none.</summary>
    public (double Frequency, double Phase) Crossover(AxisGains gains)
    {
        double after = Gain(Steps, gains);
        for (int n = Steps - 1; n >= 0; n--)
        {
            double before = Gain(n, gains);
            if (before >= 1 && after < 1)
            {
                double w = Between(n, at => Math.Log(_loop.Response(at, gains).Magnitude));
                return (w, Phase(w, n, gains));
            }
            after = before;
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
        Complex halfTurn = Turn(-Math.PI);
        int first = 0;
        while (first < Steps && _grid.Frequencies[first + 1] < crossover) first++;
        bool before = IsAbove(first, gains, -Math.PI, halfTurn);
        for (int n = first; n < Steps; n++)
        {
            bool after = IsAbove(n + 1, gains, -Math.PI, halfTurn);
            if (before && !after)
            {
                int cell = n;
                double w = Between(n, at => Phase(at, cell, gains) + Math.PI);
                if (w >= crossover) largest = Math.Max(largest, _loop.Response(w, gains).Magnitude);
            }
            if (!after) largest = Math.Max(largest, Gain(n + 1, gains));
            before = after;
        }
        return largest > 0 ? 1 / largest : double.PositiveInfinity;
    }

    /// <summary>The last cell of the grid in which the phase falls through a value; -1 where none is.</summary>
    private int CellOfFall(double phase, Func<double, AxisGains> shape)
    {
        Complex turn = Turn(phase);
        bool after = IsAbove(Steps, shape(_grid.Frequencies[Steps]), phase, turn);
        for (int n = Steps - 1; n >= 0; n--)
        {
            bool before = IsAbove(n, shape(_grid.Frequencies[n]), phase, turn);
            if (before && !after) return n;
            after = before;
        }
        return -1;
    }

    /// <summary>Whether the phase at a grid point lies above a value: without an arc tangent, since a controller turns by less than a quarter.</summary>
    /// <param name="n">The point.</param>
    /// <param name="gains">Gains, none of them negative.</param>
    /// <param name="phase">The value, rad.</param>
    /// <param name="turn">That of the value back to 0.</param>
    private bool IsAbove(int n, in AxisGains gains, double phase, Complex turn)
    {
        double lead = phase - _restPhase[n];
        return Math.Abs(lead) < Math.PI / 2 ? (Controller(n, gains) * (_rest[n] * turn)).Imaginary > 0 : lead < 0;
    }

    private static Complex Turn(double phase) => Complex.FromPolarCoordinates(1, -phase);

    private double Gain(int n, AxisGains gains) => Controller(n, gains).Magnitude * _restGain[n];

    /// <summary>Phase at a frequency near grid point n, rad.</summary>
    private double Phase(double w, int n, AxisGains gains)
    {
        (Complex integral, Complex derivative, Complex rest) = _loop.Parts(w);
        return Follow(_restPhase[n], rest.Phase) + Controller(integral, derivative, gains).Phase;
    }

    private Complex Controller(int n, AxisGains gains) => Controller(_grid.Integral[n], _grid.Derivative[n], gains);

    private static Complex Controller(Complex integral, Complex derivative, AxisGains gains) =>
        gains.Proportional + (gains.Integral * integral) + (gains.Derivative * derivative);

    /// <summary>Where a function of frequency is 0 between grid points n and n + 1, at whose ends its signs differ.</summary>
    private double Between(int n, Func<double, double> function) =>
        Brent.FindRoot(function, _grid.Frequencies[n], _grid.Frequencies[n + 1], Accuracy * _grid.Frequencies[n], 100);

    /// <summary>A phase on the turn that lies nearest to one close by.</summary>
    private static double Follow(double near, double phase) => near + Math.IEEERemainder(phase - near, 2 * Math.PI);
}
