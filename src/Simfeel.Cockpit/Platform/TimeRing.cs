namespace Simfeel.Cockpit.Platform;

/// <summary>The last 1024 of a row of durations and what they say. Nothing is allocated after construction.</summary>
public sealed class TimeRing
{
    /// <summary>How many durations are kept.</summary>
    public const int Room = 1024;

    private readonly double[] _kept = new double[Room];
    private readonly double[] _sorted = new double[Room];

    /// <summary>How many were added since the start or the last <see cref="Clear"/>.</summary>
    public long Count { get; private set; }

    /// <summary>The last one, s; NaN while there is none.</summary>
    public double Last_s { get; private set; } = double.NaN;

    /// <summary>The middle one of the kept ones, s; NaN while there is none.</summary>
    public double Median_s => Percentile_s(50);

    /// <summary>Adds a duration, s.</summary>
    public void Add(double seconds)
    {
        _kept[Count % Room] = seconds;
        Last_s = seconds;
        Count++;
    }

    /// <summary>Forgets all.</summary>
    public void Clear()
    {
        Count = 0;
        Last_s = double.NaN;
    }

    /// <summary>
    /// The least kept duration that a share of the kept ones does not exceed (nearest rank), s; NaN while there is none.
    /// </summary>
    /// <param name="percent">0 to 100.</param>
    public double Percentile_s(double percent)
    {
        int kept = (int)Math.Min(Count, Room);
        if (kept == 0) return double.NaN;
        Span<double> sorted = _sorted.AsSpan(0, kept);
        _kept.AsSpan(0, kept).CopyTo(sorted);
        sorted.Sort();
        int rank = (int)Math.Ceiling(Math.Clamp(percent, 0, 100) / 100 * kept);
        return sorted[Math.Max(rank - 1, 0)];
    }
}
