namespace Simfeel.Cockpit.Platform;

/// <summary>
/// Holds the frames to a rate, since not every driver waits where it is told to: sleeps while there is time, then spins.
/// Frame k is due at the start plus k periods, so nothing drifts; frames whose time has passed are left out, not hurried
/// after. A clock that goes back, as none should, begins anew and is not waited for. Nothing is allocated after construction.
/// </summary>
public sealed class FramePacer
{
    private readonly FrameClock _clock;
    private double _periodTicks;
    private long _origin;
    private long _frame;
    private long _last;
    private long _oversleep;
    private bool _started;

    /// <summary>A pacer.</summary>
    /// <param name="rate_Hz">Frames a second, 1 to 1000.</param>
    public FramePacer(double rate_Hz)
        : this(rate_Hz, FrameClock.OfMachine)
    {
    }

    internal FramePacer(double rate_Hz, FrameClock clock)
    {
        _clock = clock;
        Rate_Hz = rate_Hz;
    }

    /// <summary>Frames a second, 1 to 1000; a new rate counts from the next frame.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rate is out of its range.</exception>
    public double Rate_Hz
    {
        get => _clock.Frequency / _periodTicks;
        set
        {
            if (!(value >= 1 && value <= 1000)) throw new ArgumentOutOfRangeException(nameof(value), value, "A frame rate is 1 to 1000 Hz.");
            _periodTicks = _clock.Frequency / value;
            _started = false;
        }
    }

    /// <summary>Times from frame to frame.</summary>
    public TimeRing Frames { get; } = new();

    /// <summary>Frames that were left out because the one before took too long.</summary>
    public long LeftOut { get; private set; }

    /// <summary>Begins anew after a stay away, such as a file dialogue: what lies between is no frame.</summary>
    public void Restart() => _started = false;

    /// <summary>Waits until the next frame is due. The first call only starts the clock.</summary>
    /// <returns>Time since the call before returned, s; one period at the first call.</returns>
    public double Wait()
    {
        if (!_started || _clock.Now < _last) return Start();
        _frame++;
        long late = _clock.Now - Due;
        if (late > _periodTicks)
        {
            long missed = (long)(late / _periodTicks);
            _frame += missed;
            LeftOut += missed;
        }
        SleepUntil(Due);
        long now = _clock.Now;
        if (now < _last) return Start();
        double taken = (now - _last) / (double)_clock.Frequency;
        _last = now;
        Frames.Add(taken);
        return taken;
    }

    private double Start()
    {
        _started = true;
        _origin = _last = _clock.Now;
        _frame = 0;
        return _periodTicks / _clock.Frequency;
    }

    private long Due => _origin + (long)Math.Round(_frame * _periodTicks);

    private void SleepUntil(long due)
    {
        long millisecond = _clock.Frequency / 1000;
        // never before the last frame, unless the clock went back
        for (long now = _clock.Now; now < due && now >= _last; now = _clock.Now)
        {
            // a sleep may last this much longer than the millisecond asked for; learnt, and forgotten slowly
            if (due - now > millisecond + _oversleep + (millisecond / 4))
            {
                _clock.Sleep();
                long over = _clock.Now - now - millisecond;
                _oversleep = Math.Max(over, _oversleep - (_oversleep / 64));
                // one very late wake-up must not make every later frame spin
                _oversleep = Math.Clamp(_oversleep, 0, (long)(_periodTicks / 2));
            }
            else
            {
                _clock.Spin();
            }
        }
    }
}
