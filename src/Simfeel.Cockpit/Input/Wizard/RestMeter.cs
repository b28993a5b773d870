namespace Simfeel.Cockpit.Input;

/// <summary>Where the axes of an untouched device stand, and how much they tremble there.</summary>
internal sealed class RestMeter(int axes)
{
    /// <summary>How long nothing may move, s.</summary>
    public const double Needed_s = 1.5;

    // Raw numbers that no trembling reaches, but every touch does; about a tenth of the way to an end.
    private const int Touch = 3000;

    // An axis that keeps all others waiting for so long is broken or not connected, s.
    private const double Patience_s = 6;

    private readonly int[] _first = new int[axes], _low = new int[axes], _high = new int[axes];
    private readonly double[] _sum = new double[axes], _spoilt = new double[axes];
    private int _count;
    private double _seconds;

    /// <summary>Share of the time that has passed, 0 to 1.</summary>
    public double Progress => Math.Min(_seconds / Needed_s, 1);

    /// <summary>All has been still for long enough.</summary>
    public bool IsDone => _seconds >= Needed_s && _count > 0;

    /// <summary>The axis that moved last; -1 while none did.</summary>
    public int Mover { get; private set; } = -1;

    /// <summary>The axis moves by itself and is left out.</summary>
    public bool IsRestless(int axis) => _spoilt[axis] >= Patience_s;

    /// <summary>Mean raw number at rest.</summary>
    public int Rest(int axis) => (int)Math.Round(_sum[axis] / Math.Max(_count, 1));

    /// <summary>Furthest raw distance from the mean.</summary>
    public int Noise(int axis) => Math.Max(_high[axis] - Rest(axis), Rest(axis) - _low[axis]);

    /// <summary>Takes a look; a touch begins the time anew.</summary>
    public void Look(ReadOnlySpan<short> raw, double seconds)
    {
        if (_count == 0) Begin(raw);
        for (int n = 0; n < axes; n++)
        {
            if (Math.Abs(raw[n] - _first[n]) > Touch && !IsRestless(n))
            {
                _spoilt[n] += _seconds + seconds;
                Mover = n;
                Begin(raw);
                return;
            }
            _low[n] = Math.Min(_low[n], raw[n]);
            _high[n] = Math.Max(_high[n], raw[n]);
            _sum[n] += raw[n];
        }
        _count++;
        _seconds += seconds;
    }

    private void Begin(ReadOnlySpan<short> raw)
    {
        _count = 0;
        _seconds = 0;
        for (int n = 0; n < axes; n++) _first[n] = _low[n] = _high[n] = raw[n];
        Array.Clear(_sum);
    }
}
