using System.Collections.Concurrent;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Compare;

/// <summary>Flies comparisons: every drill once for all craft, side by side; the drills run on all cores.</summary>
public static class ComparisonRun
{
    /// <summary>One comparison for each pair; a craft that stands in several pairs is flown once.</summary>
    /// <param name="pairs">Builds A and B, tuned; each pair by one policy.</param>
    /// <param name="profile">The pilot.</param>
    /// <param name="effort">Stick effort, 0.25 to 1.</param>
    /// <param name="field">The field.</param>
    /// <param name="bands">What counts as felt.</param>
    /// <exception cref="ArgumentOutOfRangeException">The effort is out of range.</exception>
    public static Comparison[] Run(
        IReadOnlyList<(TunedUnit A, TunedUnit B)> pairs, PilotProfile profile, double effort, FieldConditions field, FeelBands bands)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        TunedUnit[] units = [.. pairs.SelectMany(pair => new[] { pair.A, pair.B }).Distinct(ReferenceEqualityComparer.Instance).Cast<TunedUnit>()];
        Metric[] metrics = [.. MetricCatalogue.All];
        Drill[] drills = [.. metrics.Select(metric => metric.Drill).Distinct()];
        double[,] values = new double[units.Length, metrics.Length];
        ControlEffort[,] efforts = new ControlEffort[units.Length, drills.Length];
        bool[,] touches = new bool[units.Length, drills.Length];
        FlightLog?[,] logs = new FlightLog?[units.Length, drills.Length];
        // longest drills first, one at a time to whichever core is free
        int[] order = [.. Enumerable.Range(0, drills.Length).OrderByDescending(n => drills[n].Duration)];
        Parallel.ForEach(Partitioner.Create(order, EnumerablePartitionerOptions.NoBuffering), d =>
        {
            double loadsFrom = metrics.Where(metric => metric.Drill == drills[d]).Min(metric => metric.LoadsFrom);
            bool kept = DrillCatalogue.Scripted.Contains(drills[d]);
            LogBuffers buffers = LogBuffers.Rent();
            foreach (int[] alike in Enumerable.Range(0, units.Length).GroupBy(u => units[u].Unit.Craft.Rotors.Count).SelectMany(group => group.Chunk(DrillBatch.Width)))
            {
                FlightLog[] flown = DrillBatch.Fly(drills[d], [.. alike.Select(u => units[u])], profile, effort, field, buffers, loadsFrom);
                for (int n = 0; n < alike.Length; n++)
                {
                    int u = alike[n];
                    for (int m = 0; m < metrics.Length; m++)
                    {
                        if (metrics[m].Drill == drills[d]) values[u, m] = metrics[m].Read(flown[n]);
                    }
                    efforts[u, d] = ControlEffort.Of(flown[n]);
                    touches[u, d] = flown[n].TouchesGround;
                    if (kept) logs[u, d] = flown[n].StatesOnly();
                }
            }
            LogBuffers.Return(buffers);
        });
        return [.. pairs.Select(Read)];

        Comparison Read((TunedUnit A, TunedUnit B) pair)
        {
            int a = Array.FindIndex(units, unit => ReferenceEquals(unit, pair.A)), b = Array.FindIndex(units, unit => ReferenceEquals(unit, pair.B));
            int[] each = [.. Enumerable.Range(0, drills.Length)];
            return new()
            {
                A = pair.A,
                B = pair.B,
                Policy = TuningPolicies.Word(pair.B.Policy),
                Field = field,
                Profile = profile,
                Effort = effort,
                Bands = bands,
                Metrics = [.. metrics.Select((metric, m) => new MetricPair(metric, values[a, m], values[b, m], bands) { TouchesGround = Touched(metric) })],
                Work = [.. each.Select(d => new DrillWork(drills[d], efforts[a, d], efforts[b, d], touches[a, d], touches[b, d]))],
                Logs = [.. each.Where(d => logs[a, d] is not null).Select(d => (logs[a, d]!, logs[b, d]!))],
            };

            bool Touched(Metric metric)
            {
                int d = Array.IndexOf(drills, metric.Drill);
                return touches[a, d] || touches[b, d];
            }
        }
    }
}
