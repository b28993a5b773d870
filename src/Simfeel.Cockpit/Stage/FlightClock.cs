namespace Simfeel.Cockpit.Stage;

/// <summary>
/// Says how many stick readings are due: wall time times the speed of time, in whole readings, the rest kept for the next
/// frame. A frame that took too long is not caught up with, so that the flight never leaps.
/// </summary>
internal sealed class FlightClock(double period)
{
    /// <summary>Slowest time.</summary>
    public const double Slowest = 0.1;

    /// <summary>Longest piece of wall time that one frame may bring, s.</summary>
    private const double LongestFrame = 0.1;

    private static readonly double[] All = [Slowest, 0.25, 0.5, 1];

    private double _rest;

    /// <summary>Speeds of time to choose from, the slowest first.</summary>
    public static IReadOnlyList<double> Speeds => All;

    /// <summary>Speed of time, 0.1 to 1.</summary>
    public double Speed { get; private set; } = 1;

    /// <summary>Time is held.</summary>
    public bool Paused { get; set; }

    /// <summary>Wall time that was dropped since the start because frames took too long, s.</summary>
    public double Dropped { get; private set; }

    /// <summary>Share of the next reading that has already passed, 0 to 1.</summary>
    public double Fraction => _rest / period;

    /// <summary>Readings due after some wall time, s.</summary>
    public int Due(double seconds)
    {
        if (Paused) return 0;
        double taken = Math.Clamp(seconds, 0, LongestFrame);
        Dropped += Math.Max(0, seconds - taken);
        _rest += taken * Speed;
        int due = (int)(_rest / period);
        _rest -= due * period;
        return due;
    }

    /// <summary>The next slower speed.</summary>
    public void Slower() => Speed = All[Math.Max(0, Array.IndexOf(All, Speed) - 1)];

    /// <summary>The next faster speed, up to real time.</summary>
    public void Faster() => Speed = All[Math.Min(All.Length - 1, Array.IndexOf(All, Speed) + 1)];
}
