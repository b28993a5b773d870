using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Flights;

/// <summary>
/// The hardest punch: height gained in the first second after the throttle is thrown open, over what the climb at that moment
/// would have given by itself. Out of a hover that is the metric "climb_in_1_s".
/// </summary>
internal sealed class PunchFind
{
    /// <summary>Throttle stick that counts as open.</summary>
    public const double Open = 0.95;

    /// <summary>Time after the first movement by which it is open, s: twice what a quick thumb needs for the whole way. Our choice.</summary>
    public const double OpeningTime = 0.08;

    /// <summary>
    /// Fastest climb or sinking, m/s, at which a punch starts: out of a fall of 9 m/s the air's drag would add a tenth to it. Our
    /// choice.
    /// </summary>
    public const double LargestClimb = 3;

    private StickMove _move;
    private bool _punching;
    private int _readings;
    private double _height, _climb;

    /// <summary>Height gained, m; null where there was no punch.</summary>
    public double? Gain { get; private set; }

    /// <summary>Takes the next reading.</summary>
    public void Take(Vec3 p_WB, Vec3 v_WB, double throttle, double period)
    {
        _move.Take(throttle, period);
        if (_move.Started)
        {
            (_punching, _readings, _height, _climb) = (_move.Direction > 0 && Math.Abs(v_WB.Z) <= LargestClimb, 0, -p_WB.Z, -v_WB.Z);
        }
        else if (_punching)
        {
            double time = ++_readings * period;
            _punching = throttle > Open || time < OpeningTime;
            if (!_punching || time + (period / 2) < 1) return;
            Gain = Math.Max(Gain ?? double.NegativeInfinity, -p_WB.Z - _height - (_climb * time));
            _punching = false;
        }
    }

    /// <summary>The next reading does not follow on the last one.</summary>
    public void Interrupt() => (_move, _punching) = (default, false);
}
