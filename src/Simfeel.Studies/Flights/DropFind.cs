using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Flights;

/// <summary>
/// The biggest drop: the stretch without a break of sinking with the throttle at its lowest that loses the most height. The
/// fastest sinking in such a stretch is, once it has settled, the metric "settled_fall_speed".
/// </summary>
internal sealed class DropFind
{
    /// <summary>Throttle stick up to which it is at its lowest.</summary>
    public const double Closed = 0.02;

    /// <summary>Least time of a drop, s: shorter ones are steering with the throttle. Our choice.</summary>
    public const double LeastTime = 0.5;

    private bool _falling;
    private int _readings;
    private double _height;

    /// <summary>Height lost, m; null where there was no drop.</summary>
    public double? Lost { get; private set; }

    /// <summary>Fastest sinking, m/s; null where there was no drop.</summary>
    public double? Speed { get; private set; }

    /// <summary>Takes the next reading.</summary>
    public void Take(Vec3 p_WB, Vec3 v_WB, double throttle, double period)
    {
        bool falling = throttle <= Closed && v_WB.Z > 0;
        if (falling && !_falling) (_readings, _height) = (0, -p_WB.Z);
        else if (falling) _readings++;
        _falling = falling;
        if (!falling || _readings * period < LeastTime) return;
        Lost = Math.Max(Lost ?? 0, _height + p_WB.Z);
        Speed = Math.Max(Speed ?? 0, v_WB.Z);
    }

    /// <summary>The next reading does not follow on the last one.</summary>
    public void Interrupt() => _falling = false;
}
