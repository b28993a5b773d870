using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Sweep;

/// <summary>Does the blocks of a plan that its journal lacks.</summary>
public static class SweepRun
{
    /// <summary>Does the work; what is finished is in the journal whatever happens.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="build">Its build.</param>
    /// <param name="conditions">Its conditions.</param>
    /// <param name="journal">Where finished blocks go.</param>
    /// <param name="shard">Which share of the blocks to do, from 1, and of how many.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Gives up the block in work.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static void Run(
        SweepPlan plan, Build build, StudyConditions conditions, SweepJournal journal, (int Number, int Of) shard,
        IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(journal);
        Metric[] metrics = SweepPlan.MetricsOf(plan.Metrics);
        int[] blocks = [.. Enumerable.Range(0, plan.Blocks).Where(block => block % shard.Of == shard.Number - 1)];
        for (int n = 0; n < blocks.Length; n++)
        {
            if (!journal.Done.Contains(blocks[n])) journal.Add(Block(plan, build, conditions, metrics, blocks[n], cancellation));
            progress?.Report((n + 1.0) / blocks.Length);
        }
    }

    private static SweepBlock Block(
        SweepPlan plan, Build build, StudyConditions conditions, Metric[] metrics, int index, CancellationToken cancellation)
    {
        int first = index * SweepPlan.BlockRows, count = (int)Math.Min(SweepPlan.BlockRows, plan.Rows - first);
        TunedUnit?[] units = new TunedUnit?[count];
        string[] refusals = new string[count];
        Parallel.For(0, count, new ParallelOptions { CancellationToken = cancellation }, n =>
        {
            try
            {
                units[n] = conditions.Tune(plan.BuildOf(build, first + n), out refusals[n]);
            }
            catch (InvalidOperationException error)
            {
                refusals[n] = error.Message;
            }
        });
        double[][] values = MetricFlights.Read(units, metrics, conditions, null, cancellation);
        return new(index, values, refusals);
    }
}
