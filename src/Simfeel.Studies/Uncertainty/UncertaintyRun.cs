using Simfeel.Builds;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Uncertainty;

/// <summary>Flies two builds many times over what is not known well about their parts.</summary>
public static class UncertaintyRun
{
    /// <summary>Draws unless told otherwise.</summary>
    public const int UsualDraws = 200;

    /// <summary>Longest bars that a tornado keeps.</summary>
    private const int TornadoBars = 8;

    /// <summary>The study.</summary>
    /// <param name="a">Build A.</param>
    /// <param name="b">Build B.</param>
    /// <param name="metrics">What to measure.</param>
    /// <param name="conditions">What is the same for all.</param>
    /// <param name="draws">Number of draws, 20 to 100000.</param>
    /// <param name="tornado">Metrics of which to find out what matters most; must be among <paramref name="metrics"/>.</param>
    /// <param name="progress">Told the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many draws.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static UncertaintyStudy Run(
        Build a,
        Build b,
        IReadOnlyList<Metric> metrics,
        StudyConditions conditions,
        int draws = UsualDraws,
        IReadOnlyList<Metric>? tornado = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(metrics);
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 20);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(draws, 100_000);
        UncertainInputs inputs = new(a, b);
        int seed = conditions.Field.Seed;
        // of a tornado's ends most leave one of the builds as it is
        TunedUnit?[] typical = conditions.TuneAll([a, b], cancellation);
        double[][] values = Fly(
            a, b, typical, [.. Enumerable.Range(0, draws).Select(draw => inputs.Draw(seed, draw))], metrics, conditions, progress, cancellation);
        IReadOnlyList<Metric> asked = tornado ?? [];
        Dictionary<string, List<TornadoBar>> bars = asked.Count > 0
            ? Tornados(a, b, typical, inputs.All, asked, conditions, cancellation)
            : [];
        return new()
        {
            Draws = draws,
            Seed = seed,
            Refused = Enumerable.Range(0, draws).Count(draw => Enumerable.Range(0, metrics.Count).All(m => double.IsNaN(values[2 * draw][m]))
                || Enumerable.Range(0, metrics.Count).All(m => double.IsNaN(values[(2 * draw) + 1][m]))),
            Inputs = inputs.All,
            Metrics = [.. metrics.Select((metric, m) => Known(metric, values, m, bars.GetValueOrDefault(metric.Name) ?? []))],
        };
    }

    /// <summary>Metrics of A's and B's variants, one after the other: row 2n is A at places n, row 2n + 1 is B.</summary>
    private static double[][] Fly(
        Build a,
        Build b,
        TunedUnit?[] typical,
        (Dictionary<string, double> A, Dictionary<string, double> B)[] places,
        IReadOnlyList<Metric> metrics,
        StudyConditions conditions,
        IProgress<double>? progress,
        CancellationToken cancellation)
    {
        TunedUnit?[] units = new TunedUnit?[2 * places.Length];
        Parallel.For(0, units.Length, new ParallelOptions { CancellationToken = cancellation }, n =>
        {
            Dictionary<string, double> moved = n % 2 == 0 ? places[n / 2].A : places[n / 2].B;
            Build? build = moved.Count == 0 ? null : BuildVariation.Move(n % 2 == 0 ? a : b, moved).Build;
            units[n] = moved.Count == 0 ? typical[n % 2] : build is null ? null : conditions.Tune(build, out _);
        });
        // of hundreds of craft only percentiles and differences are told
        return MetricFlights.Read(units, metrics, conditions with { Precision = Precision.Single }, progress, cancellation);
    }

    private static Dictionary<string, List<TornadoBar>> Tornados(
        Build a, Build b, TunedUnit?[] typical, IReadOnlyList<UncertainInput> inputs, IReadOnlyList<Metric> metrics, StudyConditions conditions, CancellationToken cancellation)
    {
        (Dictionary<string, double> A, Dictionary<string, double> B)[] ends =
            [.. inputs.SelectMany(input => new[] { UncertainInputs.AtEnd(input, -1), UncertainInputs.AtEnd(input, 1) })];
        double[][] values = Fly(a, b, typical, ends, metrics, conditions, null, cancellation);
        return metrics.Select((metric, m) => (metric.Name, Bars: Bars(m))).ToDictionary(pair => pair.Name, pair => pair.Bars);

        List<TornadoBar> Bars(int m) =>
        [
            .. inputs
                .Select((input, n) => new TornadoBar(input, Difference(2 * n, m), Difference((2 * n) + 1, m)))
                .Where(bar => bar.Swing > 0)
                .OrderByDescending(bar => bar.Swing)
                .Take(TornadoBars),
        ];

        double Difference(int place, int m) => values[(2 * place) + 1][m] - values[2 * place][m];
    }

    private static UncertainMetric Known(Metric metric, double[][] values, int m, IReadOnlyList<TornadoBar> tornado)
    {
        List<double> a = [], b = [], difference = [];
        for (int n = 0; n < values.Length; n += 2)
        {
            double ofA = values[n][m], ofB = values[n + 1][m];
            if (double.IsNaN(ofA) || double.IsNaN(ofB)) continue;
            a.Add(ofA);
            b.Add(ofB);
            difference.Add(ofB - ofA);
        }
        return new() { Metric = metric, A = Percentiles(a), B = Percentiles(b), Difference = Percentiles(difference), Draws = difference.Count, Tornado = tornado };
    }

    private static Band Percentiles(List<double> values)
    {
        if (values.Count == 0) return new(double.NaN, double.NaN, double.NaN);
        values.Sort();
        return new(At(0.05), At(0.5), At(0.95));

        // straight between the order statistics, the first at 0 and the last at 1
        double At(double share)
        {
            double place = share * (values.Count - 1);
            int below = Math.Min((int)place, values.Count - 2);
            return below < 0 ? values[0] : values[below] + ((place - below) * (values[below + 1] - values[below]));
        }
    }
}
