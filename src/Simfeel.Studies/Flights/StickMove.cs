namespace Simfeel.Studies.Flights;

/// <summary>
/// Tells when a stick leaves the place where it was held or turned around, so that times can count from the thumb's movement
/// as in the drills. Small trembling counts as holding still.
/// </summary>
internal struct StickMove
{
    /// <summary>Deflection that counts as trembling: well over the noise of a gamepad's stick, a fiftieth of its travel. Our choice.</summary>
    public const double Trembling = 0.02;

    /// <summary>Time without movement after which a stick is held, s: longer than the gap between two reports of a slow device. Our choice.</summary>
    public const double HoldTime = 0.05;

    private double _restAt, _furthest, _restTime;
    private bool _known;

    /// <summary>Where the stick was before it moved.</summary>
    public double From { get; private set; }

    /// <summary>Which way it moves: 1 up, -1 down, 0 while it is held.</summary>
    public int Direction { get; private set; }

    /// <summary>True for the one reading at which a movement starts.</summary>
    public bool Started { get; private set; }

    /// <summary>Takes the next reading.</summary>
    public void Take(double stick, double period)
    {
        Started = false;
        if (!_known)
        {
            (_known, From, _furthest, _restAt, _restTime) = (true, stick, stick, stick, 0);
            return;
        }
        Rest(stick, period);
        if (Direction == 0)
        {
            if (Math.Abs(stick - From) > Trembling) Start(Math.Sign(stick - From), stick);
        }
        else if ((stick - _furthest) * Direction >= 0)
        {
            _furthest = stick;
        }
        else if ((_furthest - stick) * Direction > Trembling)
        {
            From = _furthest;
            Start(-Direction, stick);
        }
    }

    private void Rest(double stick, double period)
    {
        if (Math.Abs(stick - _restAt) > Trembling) (_restAt, _restTime) = (stick, 0);
        else _restTime += period;
        if (_restTime < HoldTime) return;
        Direction = 0;
        From = _restAt;
    }

    private void Start(int direction, double stick)
    {
        Direction = direction;
        _furthest = stick;
        Started = true;
    }
}
