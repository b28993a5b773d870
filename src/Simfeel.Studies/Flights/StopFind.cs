using Simfeel.Flight.Drills;

namespace Simfeel.Studies.Flights;

/// <summary>
/// The sharpest stop about one axis: from letting go of the stick until a tenth of the rate at that moment is left, as the
/// metric "stop_time", and the angle turned back after the furthest point, as "bounce_back".
/// </summary>
internal sealed class StopFind
{
    /// <summary>Least rate from which a turn is stopped, rad/s: slower ones are aiming, not stopping. Our choice.</summary>
    public const double LeastRate = 300 * Math.PI / 180;

    /// <summary>Deflection up to which a stick is let go; a stick held against the turn is no stop but a turn the other way.</summary>
    public const double Centred = 0.05;

    private StickMove _move;
    private Phase _phase;
    private int _readings, _sign;
    private double _level, _before, _angle, _furthest, _back;
    private bool _best;

    private enum Phase
    {
        Waiting,
        Stopping,
        Watching,
    }

    /// <summary>Time of the sharpest stop, s; null where there was none.</summary>
    public double? Time { get; private set; }

    /// <summary>Bounce-back of that stop, rad.</summary>
    public double BounceBack { get; private set; }

    /// <summary>Takes the next reading: rate about the axis, rad/s, and its stick, -1 to 1.</summary>
    public void Take(double rate, double stick, double period)
    {
        _move.Take(stick, period);
        // trembling about the centre after letting go is no new movement
        bool follow = _phase != Phase.Waiting && (!_move.Started || Math.Abs(stick) <= Centred);
        if (follow) Follow(rate, stick, period);
        else if (_move.Started) Begin(rate);
        _before = rate;
    }

    /// <summary>The next reading does not follow on the last one.</summary>
    public void Interrupt() => (_move, _phase) = (default, Phase.Waiting);

    private void Begin(double rate)
    {
        int sign = Math.Sign(_move.From);
        bool letGo = sign != 0 && _move.Direction == -sign && sign * rate >= LeastRate;
        (_phase, _sign, _readings, _level) = (letGo ? Phase.Stopping : Phase.Waiting, sign, 0, 0.1 * sign * rate);
    }

    private void Follow(double rate, double stick, double period)
    {
        _readings++;
        if (_phase == Phase.Stopping)
        {
            if (_sign * rate <= _level) Stopped(rate, stick, period);
        }
        else if (Math.Abs(stick) <= Centred)
        {
            Watch(rate, period);
        }
        else
        {
            _phase = Phase.Waiting;
        }
        if ((_readings + 0.5) * period > DrillCatalogue.WatchAfterStop) _phase = Phase.Waiting;
    }

    private void Stopped(double rate, double stick, double period)
    {
        _phase = Math.Abs(stick) <= Centred ? Phase.Watching : Phase.Waiting;
        if (_phase == Phase.Waiting) return;
        double before = _sign * _before, now = _sign * rate;
        double time = period * (_readings - 1 + ((before - _level) / (before - now)));
        _best = Time is not double least || time < least;
        if (_best) (Time, BounceBack) = (time, 0);
        (_angle, _furthest, _back) = (0, 0, 0);
    }

    private void Watch(double rate, double period)
    {
        _angle += period / 2 * _sign * (_before + rate);
        if (_angle > _furthest) (_furthest, _back) = (_angle, 0);
        else _back = Math.Max(_back, _furthest - _angle);
        if (_best) BounceBack = _back;
    }
}
