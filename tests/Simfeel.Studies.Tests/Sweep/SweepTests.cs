using System.Globalization;
using Parquet;
using Parquet.Schema;
using Simfeel.Builds;
using Simfeel.Builds.Writing;
using Simfeel.Flight;
using Simfeel.Flight.Tests;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sweep;

namespace Simfeel.Studies.Tests.Sweep;

public class SweepTests
{
    private static readonly StudyConditions Conditions = new(Starters.Air, Starters.Profile, new FieldConditions());
    private static readonly Build Wagtail = BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Build!;

    [Fact]
    public void Hypercube_has_one_row_in_every_stratum()
    {
        SweepPlan plan = Plan(500, new("motor.volume", 0.6, 1.8, 5), new("battery.x_mm", -20, 20, 5));
        double[][] rows = [.. Enumerable.Range(0, 500).Select(plan.Values)];
        for (int axis = 0; axis < 2; axis++)
        {
            SweepAxis of = plan.Axes[axis];
            int[] strata = [.. rows.Select(row => (int)((row[axis] - of.From) / (of.To - of.From) * 500)).Order()];
            Assert.Equal(Enumerable.Range(0, 500), strata);
        }
        // two axes are shuffled apart
        double[] x = [.. rows.Select(row => row[0])], y = [.. rows.Select(row => row[1])];
        Assert.InRange(MathNet.Numerics.Statistics.Correlation.Pearson(x, y), -0.15, 0.15);
    }

    [Fact]
    public void Grid_counts_the_last_axis_fastest()
    {
        SweepPlan plan = Plan(0, new("motor.volume", 1, 2, 2), new("battery.mass", 1, 3, 3));
        Assert.Equal(6, plan.Rows);
        Assert.Equal([1, 1], plan.Values(0));
        Assert.Equal([1, 2], plan.Values(1));
        Assert.Equal([2, 1], plan.Values(3));
        Assert.Equal([2, 3], plan.Values(5));
    }

    [Fact]
    public void Shapes_take_few_values()
    {
        SweepPlan plan = Plan(400, new SweepAxis("propeller.diameter", 0.9, 1.1, 5));
        Assert.InRange(Enumerable.Range(0, 400).Select(row => plan.Values(row)[0]).Distinct().Count(), 20, SweepAxis.ShapeLevels);
    }

    [Fact]
    public void Plan_survives_its_line()
    {
        SweepPlan plan = Plan(40, new SweepAxis("motor.volume", 0.6, 1.8, 5));
        SweepPlan back = SweepPlan.Parse(plan.ToLine())!;
        Assert.Equal(plan.ToLine(), back.ToLine());
        for (int row = 0; row < 40; row++) Assert.Equal(plan.Values(row), back.Values(row));
        Assert.Null(SweepPlan.Parse("{}"));
        Assert.Null(SweepPlan.Parse("no plan"));
    }

    /// <summary>Against the definition itself: every pair of rows compared, ties and holes among them.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Front_is_what_no_row_beats(int metrics)
    {
        Random random = new(3);
        double[][] rows = [.. Enumerable.Range(0, 300).Select(n => Enumerable.Range(0, metrics).Select(m => m == 1 && n % 17 == 0 ? double.NaN : Coarse()).ToArray())];
        Sense[] senses = [.. Enumerable.Range(0, metrics).Select(m => m == 1 ? Sense.More : Sense.Less)];
        bool[] front = ParetoFront.Of(rows, senses);
        Assert.Contains(true, front);
        for (int n = 0; n < rows.Length; n++)
        {
            bool beaten = rows.Any(other => Beats(other, rows[n]));
            Assert.Equal(!rows[n].Any(double.IsNaN) && !beaten, front[n]);
        }

        // few values, so that rows are equal in one metric or in all; an infinite one among them
        double Coarse() => random.Next(12) is int tenths && tenths < 11 ? tenths / 10.0 : double.PositiveInfinity;

        bool Beats(double[] a, double[] b)
        {
            if (a.Any(double.IsNaN)) return false;
            int[] order = [.. Enumerable.Range(0, metrics).Select(m => senses[m] == Sense.Less ? b[m].CompareTo(a[m]) : a[m].CompareTo(b[m]))];
            return order.All(o => o >= 0) && order.Any(o => o > 0);
        }
    }

    /// <summary>
    /// A journal cut at any byte loses no more than the block that was being written, and the work goes on from there to the same bytes.
    /// </summary>
    [Fact]
    public void Cut_journals_go_on_to_the_same_bytes()
    {
        using TempFolder temp = new();
        string folder = temp.Path, path = Path.Combine(folder, "whole.part");
        SweepPlan plan = Plan(600, new("motor.volume", 0.6, 1.8, 5), new("arm.length", 0.7, 1.3, 5));
        byte[] csv, parquet, journal;
        using (SweepJournal whole = SweepJournal.Open(path, plan.ToLine()))
        {
            SweepRun.Run(plan, Wagtail, Conditions, whole, (1, 1));
            (csv, parquet) = Files(whole, folder);
        }
        journal = File.ReadAllBytes(path);
        Assert.Contains("overlap", System.Text.Encoding.UTF8.GetString(csv), StringComparison.Ordinal);
        Random random = new(11);
        int header = HeaderLength(plan, folder), resumed = 0;
        for (int cut = 0; cut < 100; cut++)
        {
            string torn = Path.Combine(folder, $"torn{cut}.part");
            File.WriteAllBytes(torn, journal[..random.Next(header, journal.Length)]);
            using SweepJournal left = SweepJournal.Open(torn, plan.ToLine());
            Assert.InRange(left.Done.Count, 0, plan.Blocks - 1);
            if (cut % 33 != 0) continue;
            SweepRun.Run(plan, Wagtail, Conditions, left, (1, 1));
            (byte[] csvAgain, byte[] parquetAgain) = Files(left, folder);
            Assert.Equal(csv, csvAgain);
            Assert.Equal(parquet, parquetAgain);
            resumed++;
        }
        Assert.Equal(4, resumed);
    }

    [Fact]
    public void Shares_put_together_are_the_whole()
    {
        using TempFolder temp = new();
        string folder = temp.Path;
        SweepPlan plan = Plan(600, new SweepAxis("motor.volume", 0.6, 1.8, 5));
        using SweepJournal whole = SweepJournal.Open(Path.Combine(folder, "whole"), plan.ToLine());
        SweepRun.Run(plan, Wagtail, Conditions, whole, (1, 1));
        using SweepJournal one = SweepJournal.Open(Path.Combine(folder, "one"), plan.ToLine());
        using SweepJournal two = SweepJournal.Open(Path.Combine(folder, "two"), plan.ToLine());
        SweepRun.Run(plan, Wagtail, Conditions, one, (1, 2));
        Assert.Throws<InvalidDataException>(() => SweepTable.Of([one]));
        SweepRun.Run(plan, Wagtail, Conditions, two, (2, 2));
        string merged = Path.Combine(folder, "merged.csv"), straight = Path.Combine(folder, "straight.csv");
        WholeFile.Write(merged, SweepTable.Of([two, one]).WriteCsv);
        WholeFile.Write(straight, SweepTable.Of([whole]).WriteCsv);
        Assert.Equal(File.ReadAllBytes(straight), File.ReadAllBytes(merged));
    }

    [Fact]
    public void Another_plan_and_a_foreign_file_are_refused()
    {
        using TempFolder temp = new();
        string path = temp.File("a.part");
        SweepJournal.Open(path, Plan(40, new SweepAxis("motor.volume", 0.6, 1.8, 5)).ToLine()).Dispose();
        Assert.Contains("another sweep", Assert.Throws<InvalidDataException>(() => SweepJournal.Open(path, Plan(41, new SweepAxis("motor.volume", 0.6, 1.8, 5)).ToLine())).Message, StringComparison.Ordinal);
        File.WriteAllText(path, "something else altogether, long enough to be read");
        Assert.Contains("no journal", Assert.Throws<InvalidDataException>(() => SweepJournal.Read(path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_journal_stopped_within_its_first_line_begins_anew()
    {
        using TempFolder temp = new();
        string folder = temp.Path, path = Path.Combine(folder, "a.part");
        SweepPlan plan = Plan(40, new SweepAxis("motor.volume", 0.6, 1.8, 5));
        SweepJournal.Open(path, plan.ToLine()).Dispose();
        byte[] whole = File.ReadAllBytes(path);
        for (int cut = 0; cut < whole.Length; cut++)
        {
            File.WriteAllBytes(path, whole[..cut]);
            using SweepJournal journal = SweepJournal.Open(path, plan.ToLine());
            Assert.Empty(journal.Done);
        }
        Assert.Equal(whole, File.ReadAllBytes(path));
    }

    [Fact]
    public void Two_sweeps_never_share_a_journal()
    {
        using TempFolder temp = new();
        string path = temp.File("a.part"), plan = Plan(40, new SweepAxis("motor.volume", 0.6, 1.8, 5)).ToLine();
        using (SweepJournal.Open(path, plan))
        {
            Assert.Throws<IOException>(() => SweepJournal.Open(path, plan));
            Assert.Throws<IOException>(() => SweepJournal.Open(path, plan, fresh: true));
            Assert.Throws<IOException>(() => SweepJournal.Read(path));
        }
        File.AppendAllText(path, "torn");
        long length = new FileInfo(path).Length;
        using SweepJournal one = SweepJournal.Read(path), two = SweepJournal.Read(path);
        Assert.Equal(plan, two.Plan);
        // who only reads mends nothing
        Assert.Equal(length, new FileInfo(path).Length);
    }

    [Fact]
    public void A_journal_in_memory_gives_the_same_table()
    {
        using TempFolder temp = new();
        string folder = temp.Path;
        SweepPlan plan = Plan(24, new SweepAxis("motor.volume", 0.6, 1.8, 5));
        using SweepJournal memory = SweepJournal.InMemory(plan.ToLine()), disk = SweepJournal.Open(Path.Combine(folder, "a.part"), plan.ToLine());
        SweepRun.Run(plan, Wagtail, Conditions, memory, (1, 1));
        SweepRun.Run(plan, Wagtail, Conditions, disk, (1, 1));
        Assert.Equal(Files(disk, folder).Csv, Files(memory, folder).Csv);
    }

    [Fact]
    public async Task Parquet_and_csv_hold_the_same_numbers()
    {
        using TempFolder temp = new();
        string folder = temp.Path, csv = Path.Combine(folder, "a.csv"), parquet = Path.Combine(folder, "a.parquet");
        SweepPlan plan = Plan(24, new("motor.volume", 0.6, 1.8, 5), new("arm.length", 0.7, 1.3, 5));
        using (SweepJournal journal = SweepJournal.Open(Path.Combine(folder, "a.part"), plan.ToLine()))
        {
            SweepRun.Run(plan, Wagtail, Conditions, journal, (1, 1));
            SweepTable table = SweepTable.Of([journal]);
            WholeFile.Write(csv, table.WriteCsv);
            WholeFile.Write(parquet, table.WriteParquet);
        }
        string[] lines = File.ReadAllLines(csv);
        await using ParquetReader reader = await ParquetReader.CreateAsync(parquet);
        string[] names = lines[0].Split(',');
        Assert.Equal(names, reader.Schema.Fields.Select(field => field.Name));
        using ParquetRowGroupReader group = reader.OpenRowGroupReader(0);
        Assert.Equal(24, group.RowCount);
        for (int column = 1; column < names.Length - 2; column++)
        {
            double?[] values = new double?[24];
            await group.ReadAsync<double>((DataField)reader.Schema.Fields[column], values.AsMemory());
            for (int row = 0; row < 24; row++)
            {
                string text = lines[row + 1].Split(',')[column];
                Assert.Equal(text.Length == 0 ? null : double.Parse(text, CultureInfo.InvariantCulture), values[row]);
            }
        }
    }

    [Theory]
    [InlineData("motor.volume", -1, 2, "above 0")]
    [InlineData("motor.mass_g", 0.1, 5000, "allowed is")]
    [InlineData("motor.size", 1, 2, "can be varied")]
    [InlineData("battery.x_mm", 5, -5, "rising")]
    [InlineData("measured.all_up_mass_g", 500, 600, "can be varied")]
    public void Axes_that_cannot_be_are_told(string name, double from, double to, string words) =>
        Assert.Contains(words, new SweepAxis(name, from, to, 5).Fault(Wagtail), StringComparison.Ordinal);

    private static SweepPlan Plan(int samples, params SweepAxis[] axes) => new()
    {
        Version = "test",
        Build = "Wagtail",
        Fingerprint = "",
        Conditions = "",
        Axes = axes,
        Samples = samples,
        Seed = 1,
        Metrics = ["hover_power", "torque_reserve_up"],
        Front = ["hover_power", "torque_reserve_up"],
    };

    private static (byte[] Csv, byte[] Parquet) Files(SweepJournal journal, string folder)
    {
        string csv = Path.Combine(folder, "t.csv"), parquet = Path.Combine(folder, "t.parquet");
        SweepTable table = SweepTable.Of([journal]);
        WholeFile.Write(csv, table.WriteCsv);
        WholeFile.Write(parquet, table.WriteParquet);
        return (File.ReadAllBytes(csv), File.ReadAllBytes(parquet));
    }

    private static int HeaderLength(SweepPlan plan, string folder)
    {
        string path = Path.Combine(folder, "header");
        SweepJournal.Open(path, plan.ToLine()).Dispose();
        return (int)new FileInfo(path).Length;
    }
}
