using System.Collections.Concurrent;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Batch;

/// <summary>
/// Metrics of many craft: every drill is flown once for all metrics that are read from it, several craft side by side, on all
/// cores. A craft's numbers do not depend on what flies beside it, nor on threads or lane width.
/// </summary>
public static class MetricFlights
{
    /// <summary>Flies and reads.</summary>
    /// <param name="units">The craft; null is skipped, and one that stands there several times is flown once.</param>
    /// <param name="metrics">What to read.</param>
    /// <param name="conditions">What is the same for all.</param>
    /// <param name="progress">Told how many of the flights are done, 0 to 1; from any thread.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>By craft, then by metric: SI, NaN where the event never came, the craft touched the ground, or there was none.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static double[][] Read(
        IReadOnlyList<TunedUnit?> units,
        IReadOnlyList<Metric> metrics,
        StudyConditions conditions,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(units);
        ArgumentNullException.ThrowIfNull(metrics);
        ArgumentNullException.ThrowIfNull(conditions);
        double[][] values = [.. units.Select(_ => Enumerable.Repeat(double.NaN, metrics.Count).ToArray())];
        List<Work> work = [.. Plan(units, metrics, DrillBatch.WidthOf(conditions.Precision))];
        int done = 0;
        // one piece at a time, longest drills first: a core that something else uses takes fewer pieces
        ParallelOptions options = new() { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.ForEach(Partitioner.Create(work, EnumerablePartitionerOptions.NoBuffering), options, piece =>
        {
            LogBuffers buffers = LogBuffers.Rent();
            FlightLog[] logs = DrillBatch.Fly(
                piece.Drill, [.. piece.Craft.Select(n => units[n]!)], conditions.Profile, conditions.Effort, conditions.Field, buffers,
                piece.Metrics.Min(m => metrics[m].LoadsFrom), conditions.Precision);
            for (int lane = 0; lane < logs.Length; lane++)
            {
                foreach (int m in piece.Metrics) values[piece.Craft[lane]][m] = logs[lane].TouchesGround ? double.NaN : metrics[m].Read(logs[lane]);
            }
            LogBuffers.Return(buffers);
            progress?.Report((double)Interlocked.Increment(ref done) / work.Count);
        });
        Dictionary<TunedUnit, int> first = First(units);
        for (int n = 0; n < units.Count; n++)
        {
            if (units[n] is TunedUnit unit && first[unit] != n) values[first[unit]].CopyTo(values[n], 0);
        }
        return values;
    }

    /// <summary>Where each craft stands for the first time.</summary>
    private static Dictionary<TunedUnit, int> First(IReadOnlyList<TunedUnit?> units)
    {
        Dictionary<TunedUnit, int> first = new(ReferenceEqualityComparer.Instance);
        for (int n = 0; n < units.Count; n++)
        {
            if (units[n] is TunedUnit unit) first.TryAdd(unit, n);
        }
        return first;
    }

    private static IEnumerable<Work> Plan(IReadOnlyList<TunedUnit?> units, IReadOnlyList<Metric> metrics, int width)
    {
        int[][] chunks =
        [
            .. First(units).Values
                .Order()
                .GroupBy(n => units[n]!.Unit.Craft.Rotors.Count)
                .SelectMany(alike => alike.Chunk(width)),
        ];
        return
            from drill in Enumerable.Range(0, metrics.Count).GroupBy(m => metrics[m].Drill).OrderByDescending(alike => alike.Key.Duration)
            from chunk in chunks
            select new Work(drill.Key, [.. drill], chunk);
    }

    /// <summary>One drill flown by craft side by side, and the metrics to read from it.</summary>
    private sealed record Work(Drill Drill, int[] Metrics, int[] Craft);
}
