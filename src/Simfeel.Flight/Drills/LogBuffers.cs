using System.Collections.Concurrent;

namespace Simfeel.Flight.Drills;

/// <summary>
/// Memory for the logs of one flight after another, where only numbers read off them are kept: a second of flight with eight craft is
/// almost two megabytes of states. The logs of a flight are valid until the next one with the same buffers. Not for two threads at once.
/// </summary>
public sealed class LogBuffers
{
    // as many as threads ever flew at once: memory that the system has to hand out afresh costs as much as the flight
    private static readonly ConcurrentBag<LogBuffers> Idle = [];

    private readonly List<Sticks[]> _sticks = [];
    private double[] _states = [], _loads = [];

    /// <summary>Buffers that nobody uses; give them back with <see cref="Return"/>.</summary>
    public static LogBuffers Rent() => Idle.TryTake(out LogBuffers? buffers) ? buffers : new();

    /// <summary>Gives buffers back; no log in them may be read any more.</summary>
    public static void Return(LogBuffers buffers) => Idle.Add(buffers);

    /// <summary>Room for the states of all rows; holds anything.</summary>
    internal double[] States(long numbers) => Room(ref _states, numbers);

    /// <summary>Room for the loads of all rows; holds anything.</summary>
    internal double[] Loads(long numbers) => Room(ref _loads, numbers);

    /// <summary>Room for the sticks of a lane; holds anything.</summary>
    internal ArraySegment<Sticks> Sticks(int lane, int rows)
    {
        while (_sticks.Count <= lane) _sticks.Add([]);
        if (_sticks[lane].Length < rows) _sticks[lane] = GC.AllocateUninitializedArray<Sticks>(rows);
        return new(_sticks[lane], 0, rows);
    }

    private static double[] Room(ref double[] memory, long numbers)
    {
        if (memory.Length < numbers) memory = GC.AllocateUninitializedArray<double>(checked((int)numbers));
        return memory;
    }
}
