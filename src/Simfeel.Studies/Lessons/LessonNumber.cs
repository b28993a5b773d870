using Simfeel.Flight.Drills;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Lessons;

/// <summary>How one number is read from a channel.</summary>
public enum LessonRead
{
    /// <summary>The value at the first time.</summary>
    At,

    /// <summary>The largest value.</summary>
    Largest,

    /// <summary>The smallest value.</summary>
    Least,

    /// <summary>The mean over time.</summary>
    Mean,

    /// <summary>The root of the mean square over time.</summary>
    Rms,
}

/// <summary>The one number of a lesson: a metric of the catalogue, or a reading of a channel.</summary>
public sealed record LessonNumber
{
    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>Unit for people.</summary>
    public required DisplayUnit Display { get; init; }

    /// <summary>The metric; null for a reading of a channel.</summary>
    public Metric? Metric { get; init; }

    /// <summary>The channel; null for a metric.</summary>
    public FlightChannel? Channel { get; init; }

    /// <summary>How the channel is read.</summary>
    public LessonRead Read { get; init; }

    /// <summary>From this time, s from the start of the drill.</summary>
    public double From { get; init; }

    /// <summary>To this time, s; the end of the drill if infinite.</summary>
    public double To { get; init; } = double.PositiveInfinity;

    /// <summary>The number of a flight, SI; NaN where the event never came.</summary>
    /// <param name="log">The flight.</param>
    /// <param name="axis">Axis of the drill.</param>
    public double Of(FlightLog log, int axis)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (Metric is not null) return Metric.Read(log);
        double[] rows = Channel!.Read(log, axis);
        int first = Math.Clamp((int)Math.Round(From / log.Period), 0, rows.Length - 1);
        int last = double.IsPositiveInfinity(To) ? rows.Length - 1 : Math.Clamp((int)Math.Round(To / log.Period), first, rows.Length - 1);
        ArraySegment<double> part = new(rows, first, last - first + 1);
        return Read switch
        {
            LessonRead.At => rows[first],
            LessonRead.Largest => part.Max(),
            LessonRead.Least => part.Min(),
            LessonRead.Mean => part.Average(),
            _ => Math.Sqrt(part.Average(value => value * value)),
        };
    }
}
