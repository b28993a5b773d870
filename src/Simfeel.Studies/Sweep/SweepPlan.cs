using System.Text.Json;
using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sweep;

/// <summary>
/// Which builds a sweep flies and what decides their numbers. Rows are numbered; each row's values follow from its number alone, so that
/// work may stop, go on elsewhere and be put together again.
/// </summary>
public sealed record SweepPlan
{
    /// <summary>Rows of a plan at most.</summary>
    public const int MostRows = 1_000_000;

    /// <summary>Rows of a block, the unit of work that is kept or lost.</summary>
    public const int BlockRows = 256;

    private readonly Lazy<int[][]> _strata;

    /// <summary>An empty plan, to be filled.</summary>
    public SweepPlan() => _strata = new(Strata);

    /// <summary>Version of the program.</summary>
    public required string Version { get; init; }

    /// <summary>Name of the build.</summary>
    public required string Build { get; init; }

    /// <summary>SHA-256 of the texts of its files, hexadecimal.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>Conditions in words and numbers: air, pilot, field, effort, policy.</summary>
    public required string Conditions { get; init; }

    /// <summary>What is varied.</summary>
    public required IReadOnlyList<SweepAxis> Axes { get; init; }

    /// <summary>Samples of a Latin hypercube; 0 for a grid over the axes' points.</summary>
    public required int Samples { get; init; }

    /// <summary>Seed of the hypercube.</summary>
    public required int Seed { get; init; }

    /// <summary>Names of the metrics.</summary>
    public required IReadOnlyList<string> Metrics { get; init; }

    /// <summary>Names of those that span the Pareto front.</summary>
    public required IReadOnlyList<string> Front { get; init; }

    /// <summary>Number of rows; a grid may ask for more than an int holds.</summary>
    public long Rows => Samples > 0 ? Samples : Axes.Aggregate(1L, (rows, axis) => rows > MostRows ? rows : rows * axis.Points);

    /// <summary>Number of blocks.</summary>
    public int Blocks => (int)((Rows + BlockRows - 1) / BlockRows);

    /// <summary>The plan as one line of JSON; two plans with equal lines give equal numbers.</summary>
    public string ToLine() => JsonSerializer.Serialize(this);

    /// <summary>The plan of a line; null where it is none, or one that no sweep of this program has.</summary>
    public static SweepPlan? Parse(string line)
    {
        try
        {
            return JsonSerializer.Deserialize<SweepPlan>(line) is { IsWhole: true } plan ? plan : null;
        }
        catch (Exception error) when (error is JsonException or NotSupportedException)
        {
            return null;
        }
    }

    /// <summary>
    /// Values of a row, one for each axis. A grid counts the last axis fastest. A hypercube has, on every axis, exactly one row in each of
    /// as many equal strata as there are rows (M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21, 1979).
    /// </summary>
    public double[] Values(int row)
    {
        double[] values = new double[Axes.Count];
        int rest = row;
        for (int n = Axes.Count - 1; n >= 0; n--)
        {
            SweepAxis axis = Axes[n];
            if (Samples > 0)
            {
                values[n] = axis.At((_strata.Value[n][row] + SeededNumbers.Uniform(Seed, row, axis.Name)) / Samples);
                continue;
            }
            values[n] = axis.At(axis.Points > 1 ? rest % axis.Points / (axis.Points - 1.0) : 0.5);
            rest /= axis.Points;
        }
        return values;
    }

    /// <summary>The build of a row; throws an <see cref="InvalidOperationException"/> that says why where it cannot be made.</summary>
    public Build BuildOf(Build build, int row)
    {
        double[] values = Values(row);
        KeyValuePair<string, double>[] edits = [.. Axes.Zip(values).Where(pair => !pair.First.IsFactor).Select(pair => new KeyValuePair<string, double>(pair.First.Name, pair.Second))];
        Build changed = build;
        if (edits.Length > 0)
        {
            BuildResult result = BuildEditor.Swap(build, edits);
            changed = result.Build ?? throw new InvalidOperationException(
                string.Join(" ", result.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => d.Message)));
        }
        foreach ((SweepAxis axis, double value) in Axes.Zip(values).Where(pair => pair.First.IsFactor))
            changed = BuildKnobs.Find(axis.Name)!.Grow(changed, value);
        return BuildKnob.Refusal(changed) is string refusal ? throw new InvalidOperationException(refusal) : changed;
    }

    /// <summary>Whether nothing in it is missing or out of its range; a file may say anything.</summary>
    private bool IsWhole =>
        Axes is { Count: > 0 } && Metrics is not null && Front is not null
        && Axes.All(axis => axis is { Name: not null, Points: >= 1 and <= 1000 } && double.IsFinite(axis.From) && axis.From < axis.To && double.IsFinite(axis.To - axis.From)
            && (axis.IsFactor || BuildFormat.Find(axis.Name) is { Kind: KeyKind.Number }))
        && Axes.Select(axis => axis.Name).Distinct().Count() == Axes.Count
        && Metrics.All(name => MetricCatalogue.All.Any(metric => metric.Name == name)) && Metrics.Distinct().Count() == Metrics.Count
        && Front.All(name => Metrics.Contains(name) && MetricSense.Of(MetricCatalogue.All.First(metric => metric.Name == name)) != Sense.Neither)
        && Samples is >= 0 and <= MostRows && Rows is >= 1 and <= MostRows;

    /// <summary>The metrics by name.</summary>
    public static Metric[] MetricsOf(IEnumerable<string> names) => [.. names.Select(name => MetricCatalogue.All.Single(metric => metric.Name == name))];

    /// <summary>For each axis the stratum of each row: a shuffle of its own.</summary>
    private int[][] Strata() =>
    [
        .. Axes.Select(axis =>
        {
            int[] strata = [.. Enumerable.Range(0, Samples)];
            // Fisher and Yates
            for (int n = Samples - 1; n > 0; n--)
            {
                int other = (int)(SeededNumbers.Uniform(Seed, n, axis.Name + "/stratum") * (n + 1));
                (strata[n], strata[other]) = (strata[other], strata[n]);
            }
            return strata;
        }),
    ];
}
