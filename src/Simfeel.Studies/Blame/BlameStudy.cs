using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Blame;

/// <summary>
/// Shares out differences between two builds by flying every hybrid of them: for each set of groups in which they differ, build A
/// with these groups taken from B, put together and tuned as a build of its own.
/// </summary>
public static class BlameStudy
{
    /// <summary>One ledger for each metric, in their order.</summary>
    /// <param name="a">Build A.</param>
    /// <param name="b">Build B.</param>
    /// <param name="metrics">What to share out.</param>
    /// <param name="conditions">What is the same for all.</param>
    /// <param name="progress">Told the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static IReadOnlyList<BlameLedger> Run(
        Build a,
        Build b,
        IReadOnlyList<Metric> metrics,
        StudyConditions conditions,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(metrics);
        ArgumentNullException.ThrowIfNull(conditions);
        // every build is flown with the same stick curves, so those in the build files are to blame for nothing
        PartGroups[] differing = [.. PartGroupNames.All.Where(group => group != PartGroups.Pilot && Hybrid.Differ(a, b, group))];
        Build[] hybrids =
        [
            .. Enumerable.Range(0, 1 << differing.Length)
                .Select(set => Hybrid.Of(a, b, differing.Where((_, n) => (set & (1 << n)) != 0).Aggregate(PartGroups.None, (all, group) => all | group))),
        ];
        TunedUnit?[] units = conditions.TuneAll(hybrids, cancellation);
        double[][] values = MetricFlights.Read(units, metrics, conditions, progress, cancellation);
        return [.. metrics.Select((metric, m) => Ledger(metric, differing, [.. values.Select(row => row[m])], units))];
    }

    /// <summary>The ledger of one metric, from its value for every hybrid; the bit n of an index says that group n is B's.</summary>
    private static BlameLedger Ledger(Metric metric, PartGroups[] differing, double[] values, TunedUnit?[] units)
    {
        int missing = Array.FindIndex(values, double.IsNaN);
        double[] shares = missing < 0 ? Shapley.Shares(values) : new double[differing.Length];
        return new()
        {
            Metric = metric,
            A = values[0],
            B = values[^1],
            Hybrids = values.Length,
            Shares = [.. PartGroupNames.All.Select(Share)],
            Gap = missing < 0 ? null : Why(missing),
        };

        BlameShare Share(PartGroups group)
        {
            int n = Array.IndexOf(differing, group);
            return n < 0 || missing >= 0
                ? new(group, 0, 0, 0)
                : new(group, shares[n], values[1 << n] - values[0], values[^1] - values[(values.Length - 1) ^ (1 << n)]);
        }

        string Why(int set)
        {
            string parts = string.Join(", ", differing.Where((_, n) => (set & (1 << n)) != 0).Select(PartGroupNames.Title));
            string craft = set == 0 ? "build A" : set == values.Length - 1 ? "build B" : $"the hybrid of A with B's {parts}";
            return units[set] is null ? $"{craft} cannot hover or be tuned." : $"{craft} never gets there within the drill.";
        }
    }
}
