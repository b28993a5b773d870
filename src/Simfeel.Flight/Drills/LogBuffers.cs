using System.Collections.Concurrent;
using Simfeel.Physics;

namespace Simfeel.Flight.Drills;

/// <summary>
/// Memory for the logs of one flight after another, where only numbers read off them are kept: a second of flight is almost a
/// megabyte. The logs of a flight are valid until the next one with the same buffers. Not for two threads at once.
/// </summary>
public sealed class LogBuffers
{
    // as many as threads ever flew at once: memory that the system has to hand out afresh costs as much as the flight
    private static readonly ConcurrentBag<LogBuffers> Idle = [];

    private readonly List<(Sample[] Samples, Sticks[] Sticks)> _lanes = [];

    /// <summary>Buffers that nobody uses; give them back with <see cref="Return"/>.</summary>
    public static LogBuffers Rent() => Idle.TryTake(out LogBuffers? buffers) ? buffers : new();

    /// <summary>Gives buffers back; no log in them may be read any more.</summary>
    public static void Return(LogBuffers buffers) => Idle.Add(buffers);

    /// <summary>Room for a number of rows of one lane; what was there before is overwritten.</summary>
    internal (ArraySegment<Sample> Samples, ArraySegment<Sticks> Sticks) Rows(int lane, int rows)
    {
        while (_lanes.Count <= lane) _lanes.Add(([], []));
        if (_lanes[lane].Samples.Length < rows) _lanes[lane] = (new Sample[rows], new Sticks[rows]);
        return (new(_lanes[lane].Samples, 0, rows), new(_lanes[lane].Sticks, 0, rows));
    }
}
