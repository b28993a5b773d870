using Simfeel.Physics;

namespace Simfeel.Flight.Drills;

/// <summary>
/// Memory for the logs of one flight after another, where only numbers read off them are kept: a second of flight is almost a
/// megabyte. The logs of a flight are valid until the next one with the same buffers. Not for two threads at once.
/// </summary>
public sealed class LogBuffers
{
    private readonly List<(Sample[] Samples, Sticks[] Sticks)> _lanes = [];

    /// <summary>Room for a number of rows of one lane; what was there before is overwritten.</summary>
    internal (ArraySegment<Sample> Samples, ArraySegment<Sticks> Sticks) Rows(int lane, int rows)
    {
        while (_lanes.Count <= lane) _lanes.Add(([], []));
        if (_lanes[lane].Samples.Length < rows) _lanes[lane] = (new Sample[rows], new Sticks[rows]);
        return (new(_lanes[lane].Samples, 0, rows), new(_lanes[lane].Sticks, 0, rows));
    }
}
