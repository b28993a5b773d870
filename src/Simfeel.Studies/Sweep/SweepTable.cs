using System.Globalization;
using System.Text;
using Parquet;
using Parquet.Schema;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Sweep;

/// <summary>All rows of a finished sweep, and the files that hold them.</summary>
public sealed class SweepTable
{
    private readonly double[][] _values;
    private readonly string[] _refusals;
    private readonly Metric[] _metrics;

    private SweepTable(SweepPlan plan, double[][] values, string[] refusals)
    {
        (Plan, _values, _refusals) = (plan, values, refusals);
        _metrics = SweepPlan.MetricsOf(plan.Metrics);
        int[] at = [.. plan.Front.Select(name => plan.Metrics.ToList().IndexOf(name))];
        OnFront = at.Length == 0
            ? new bool[values.Length]
            : ParetoFront.Of([.. values.Select(row => at.Select(m => row[m]).ToArray())], [.. at.Select(m => MetricSense.Of(_metrics[m]))]);
    }

    /// <summary>The plan.</summary>
    public SweepPlan Plan { get; }

    /// <summary>Number of rows.</summary>
    public int Rows => _values.Length;

    /// <summary>For each row whether it stands on the Pareto front.</summary>
    public IReadOnlyList<bool> OnFront { get; }

    /// <summary>The table of journals that hold all blocks of one plan between them.</summary>
    /// <exception cref="InvalidDataException">The journals differ in their plan, or blocks are missing.</exception>
    public static SweepTable Of(IReadOnlyList<SweepJournal> journals)
    {
        ArgumentNullException.ThrowIfNull(journals);
        if (journals.Any(journal => journal.Plan != journals[0].Plan)) throw new InvalidDataException("These are shards of different sweeps.");
        SweepPlan plan = SweepPlan.Parse(journals[0].Plan) ?? throw new InvalidDataException("The journal was written by another version of the program.");
        int missing = Enumerable.Range(0, plan.Blocks).Count(block => !journals.Any(journal => journal.Done.Contains(block)));
        if (missing > 0) throw new InvalidDataException($"{missing} of {plan.Blocks} blocks of {SweepPlan.BlockRows} rows are missing; run the shards that lack them to their end.");
        double[][] values = new double[plan.Rows][];
        string[] refusals = new string[plan.Rows];
        foreach (SweepBlock block in journals.SelectMany(journal => journal.Blocks(plan.Metrics.Count)))
        {
            long rows = Math.Min(SweepPlan.BlockRows, plan.Rows - ((long)block.Index * SweepPlan.BlockRows));
            if (block.Index < 0 || block.Values.Length != rows)
                throw new InvalidDataException($"Block {block.Index} of a journal has {block.Values.Length} rows, and its plan has no such block.");
            block.Values.CopyTo(values, block.Index * SweepPlan.BlockRows);
            block.Refusals.CopyTo(refusals, block.Index * SweepPlan.BlockRows);
        }
        return new(plan, values, refusals);
    }

    /// <summary>Metrics of a row, SI, NaN where there are none.</summary>
    public IReadOnlyList<double> Values(int row) => _values[row];

    /// <summary>Why a row has no numbers; empty where it has.</summary>
    public string Refusal(int row) => _refusals[row];

    /// <summary>Comma-separated values: a heading, then a row for each build; what is missing is empty.</summary>
    public void WriteCsv(Stream file)
    {
        using StreamWriter writer = new(file, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine(string.Join(',', Columns()));
        for (int row = 0; row < Rows; row++)
        {
            writer.WriteLine(string.Join(',', [
                row.ToString(CultureInfo.InvariantCulture),
                .. Plan.Values(row).Select(Number),
                .. _values[row].Select(Number),
                OnFront[row] ? "1" : "0",
                _refusals[row].Length == 0 ? "" : $"\"{_refusals[row].Replace("\"", "\"\"", StringComparison.Ordinal)}\""]));
        }

        static string Number(double value) => double.IsNaN(value) ? "" : value.ToString("R", CultureInfo.InvariantCulture);
    }

    /// <summary>The same as an Apache Parquet file; what is missing is null.</summary>
    public void WriteParquet(Stream file) => WriteParquetAsync(file).GetAwaiter().GetResult();

    private async Task WriteParquetAsync(Stream file)
    {
        string[] names = [.. Columns()];
        int numbers = names.Length - 3;
        DataField row = new DataField<int>(names[0]), front = new DataField<bool>(names[^2]), refusal = new DataField<string>(names[^1]);
        DataField[] fields = [.. names.Skip(1).Take(numbers).Select(name => (DataField)new DataField<double?>(name))];
        await using ParquetWriter writer = await ParquetWriter.CreateAsync(new ParquetSchema([row, .. fields, front, refusal]), file).ConfigureAwait(false);
        double[][] varied = [.. Enumerable.Range(0, Rows).Select(Plan.Values)];
        using ParquetRowGroupWriter group = writer.CreateRowGroup();
        await group.WriteAsync<int>(row, Enumerable.Range(0, Rows).ToArray()).ConfigureAwait(false);
        for (int n = 0; n < fields.Length; n++)
        {
            double?[] column = new double?[Rows];
            for (int at = 0; at < Rows; at++)
            {
                double value = n < Plan.Axes.Count ? varied[at][n] : _values[at][n - Plan.Axes.Count];
                column[at] = double.IsNaN(value) ? null : value;
            }
            await group.WriteAsync<double>(fields[n], column).ConfigureAwait(false);
        }
        await group.WriteAsync<bool>(front, OnFront.ToArray()).ConfigureAwait(false);
        await group.WriteAsync(refusal, _refusals).ConfigureAwait(false);
    }

    private IEnumerable<string> Columns() =>
        ["row", .. Plan.Axes.Select(axis => axis.Column), .. _metrics.Select(metric => $"{metric.Name}_{UnitOf(metric)}"), "pareto", "refusal"];

    /// <summary>A unit as part of a name.</summary>
    private static string UnitOf(Metric metric) =>
        metric.Unit == "1" ? "ratio" : metric.Unit.Replace("/", "_per_", StringComparison.Ordinal).Replace(" ", "_", StringComparison.Ordinal).Replace("1_per_", "per_", StringComparison.Ordinal);
}
