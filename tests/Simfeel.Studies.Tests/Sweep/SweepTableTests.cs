using System.Text;
using Parquet;
using Parquet.Schema;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sweep;

namespace Simfeel.Studies.Tests.Sweep;

/// <summary>Journals and tables of a sweep whose numbers are invented: what goes in comes out, to every byte.</summary>
public class SweepTableTests
{
    private const double None = double.NaN;

    private static readonly SweepAxis Volume = new("motor.volume", 0.5, 2, 2), Place = new("battery.x_mm", -20, 20, 2);

    /// <summary>Four rows by hand: the last axis counts fastest, what is missing is empty, quotes are doubled, units are words.</summary>
    [Fact]
    public void Csv_by_hand()
    {
        SweepPlan plan = Plan(["stop_time", "torque_reserve_up", "thrust_to_weight", "roll_quickness", "peak_roll_acceleration"], ["stop_time", "torque_reserve_up"]) with { Axes = [Volume, Place] };
        using SweepJournal journal = Journal(plan, new SweepBlock(0, [[0.05, 0.25, 9.5, 12.25, 400], [0.06, 0.3, 9, None, 1e-7], [0.07, 0.2, 8, 1, 2], [None, None, None, None, None]], ["", "", "", "the \"arms\", they overlap"]));
        SweepTable table = SweepTable.Of([journal]);
        Assert.Equal(4, table.Rows);
        Assert.Equal([true, true, false, false], table.OnFront);
        Assert.Equal(0.3, table.Values(1)[1]);
        Assert.Equal(("", "the \"arms\", they overlap"), (table.Refusal(0), table.Refusal(3)));
        Assert.Equal(
            "row,motor.volume_factor,battery.x_mm,stop_time_s,torque_reserve_up_N_m,thrust_to_weight_ratio,roll_quickness_per_s,peak_roll_acceleration_rad_per_s2,pareto,refusal\n"
            + "0,0.5,-20,0.05,0.25,9.5,12.25,400,1,\n1,0.5,20,0.06,0.3,9,,1E-07,1,\n2,2,-20,0.07,0.2,8,1,2,0,\n3,2,20,,,,,,0,\"the \"\"arms\"\", they overlap\"\n",
            Csv(table));
        // without a front none stands on it
        using SweepJournal same = Journal(plan with { Front = [] }, new SweepBlock(0, [[1, 1, 1, 1, 1], [1, 1, 1, 1, 1], [1, 1, 1, 1, 1], [1, 1, 1, 1, 1]], ["", "", "", ""]));
        Assert.DoesNotContain(true, SweepTable.Of([same]).OnFront);
        Assert.Equal(4, SweepTable.Of([same]).OnFront.Count);
    }

    [Fact]
    public async Task Parquet_holds_rows_numbers_front_and_reasons()
    {
        SweepPlan plan = Plan(["stop_time"], ["stop_time"]) with { Axes = [Volume] };
        using SweepJournal journal = Journal(plan, new SweepBlock(0, [[0.05], [None]], ["", "why"]));
        using MemoryStream file = new();
        SweepTable.Of([journal]).WriteParquet(file);
        file.Position = 0;
        await using ParquetReader reader = await ParquetReader.CreateAsync(file);
        Assert.Equal(["row", "motor.volume_factor", "stop_time_s", "pareto", "refusal"], reader.Schema.Fields.Select(field => field.Name));
        using ParquetRowGroupReader group = reader.OpenRowGroupReader(0);
        int[] rows = new int[2];
        bool[] front = new bool[2];
        double?[] axis = new double?[2], values = new double?[2];
        string?[] refusals = new string?[2];
        await group.ReadAsync<int>((DataField)reader.Schema.Fields[0], rows.AsMemory());
        await group.ReadAsync<double>((DataField)reader.Schema.Fields[1], axis.AsMemory());
        await group.ReadAsync<double>((DataField)reader.Schema.Fields[2], values.AsMemory());
        await group.ReadAsync<bool>((DataField)reader.Schema.Fields[3], front.AsMemory());
        await group.ReadAsync((DataField)reader.Schema.Fields[4], refusals.AsMemory());
        Assert.Equal([0, 1], rows);
        Assert.Equal([0.5, 2], axis);
        Assert.Equal([0.05, null], values);
        Assert.Equal([true, false], front);
        Assert.Equal(("", "why"), (refusals[0], refusals[1]));
    }

    /// <summary>257 rows are a block of 256 and one of one, in any order and from any shard.</summary>
    [Fact]
    public void Blocks_come_to_their_rows()
    {
        SweepPlan plan = Plan(["stop_time"], []) with { Axes = [Volume], Samples = 257 };
        SweepBlock first = new(0, [.. Enumerable.Range(0, 256).Select(n => new double[] { n })], new string[256].Select((_, n) => $"r{n}").ToArray()), last = new(1, [[256]], ["r256"]);
        using SweepJournal one = Journal(plan, last), two = Journal(plan, first), both = Journal(plan, last, first);
        foreach (SweepTable table in (SweepTable[])[SweepTable.Of([one, two]), SweepTable.Of([two, one]), SweepTable.Of([both])])
        {
            Assert.Equal(257, table.Rows);
            Assert.All(Enumerable.Range(0, 257), n => Assert.Equal((n, $"r{n}"), ((int)table.Values(n)[0], table.Refusal(n))));
        }
        Assert.Equal("1 of 2 blocks of 256 rows are missing; run the shards that lack them to their end.", Fault(one));
        Assert.Equal("2 of 2 blocks of 256 rows are missing; run the shards that lack them to their end.", Fault(Journal(plan)));
        Assert.Equal("Block 1 of a journal has 2 rows, and its plan has no such block.", Fault(Journal(plan, first, new SweepBlock(1, [[1], [2]], ["", ""]))));
        Assert.Equal("Block -1 of a journal has 1 rows, and its plan has no such block.", Fault(Journal(plan, first, last, new SweepBlock(-1, [[1]], [""]))));
        Assert.Equal("Block 2 of a journal has 0 rows, and its plan has no such block.", Fault(Journal(plan, first, last, new SweepBlock(2, [], []))));
        Assert.Equal("These are shards of different sweeps.", Fault(one, Journal(plan with { Seed = 9 }, first)));
        Assert.Equal("The journal was written by another version of the program.", Fault(SweepJournal.InMemory("no plan")));

        static string Fault(params SweepJournal[] journals) => Assert.Throws<InvalidDataException>(() => SweepTable.Of(journals)).Message;
    }

    /// <summary>A record whose bytes are whole but whose content is none is named; so is one that was written for other metrics.</summary>
    [Fact]
    public void Blocks_that_hold_what_no_block_does_are_damaged()
    {
        Assert.Equal("the sweep in memory: block 7 is damaged.", Damage(new SweepBlock(7, [[1, 2]], [""]), 3));
        Assert.Equal("the sweep in memory: block 8 is damaged.", Damage(new SweepBlock(8, [[double.PositiveInfinity]], [""]), 1));
        Assert.Equal("the sweep in memory: block 8 is damaged.", Damage(new SweepBlock(8, [[1, double.NegativeInfinity]], [""]), 2));
        Assert.Equal("the sweep in memory: block 9 is damaged.", Damage(new SweepBlock(9, new double[257][].Select(_ => new double[1]).ToArray(), Enumerable.Repeat("", 257).ToArray()), 1));
        using SweepJournal journal = Journal(Plan(["stop_time"], []), new SweepBlock(3, new double[256][].Select(_ => new double[] { None }).ToArray(), Enumerable.Repeat("a\nb", 256).ToArray()));
        SweepBlock block = Assert.Single(journal.Blocks(1));
        Assert.Equal((3, 256), (block.Index, block.Values.Length));
        Assert.All(block.Refusals, refusal => Assert.DoesNotContain('\n', refusal));
        Assert.Equal([3], journal.Done);

        static string Damage(SweepBlock block, int metrics)
        {
            using SweepJournal journal = Journal(Plan(["stop_time"], []), block);
            return Assert.Throws<InvalidDataException>(() => journal.Blocks(metrics).ToList()).Message;
        }
    }

    /// <summary>A flipped bit ends the journal there: what stood before it is kept, the rest is done anew; who only reads changes nothing.</summary>
    [Fact]
    public void A_flipped_bit_ends_a_journal()
    {
        using TempFolder temp = new();
        string path = temp.File("a.part");
        using (SweepJournal journal = SweepJournal.Open(path, "plan"))
        {
            journal.Add(new(0, [[1]], [""]));
            journal.Add(new(1, [[2]], ["no"]));
        }
        byte[] whole = File.ReadAllBytes(path);
        foreach (int back in (int[])[1, 9, 20])
        {
            byte[] flipped = [.. whole];
            flipped[^back] ^= 4;
            File.WriteAllBytes(path, flipped);
            using (SweepJournal read = SweepJournal.Read(path)) Assert.Equal([0], read.Done);
            Assert.Equal(whole.Length, new FileInfo(path).Length);
            using (SweepJournal journal = SweepJournal.Open(path, "plan"))
            {
                Assert.Equal([0], journal.Done);
                journal.Add(new(1, [[2]], ["no"]));
            }
            Assert.Equal(whole, File.ReadAllBytes(path));
        }
        using (SweepJournal fresh = SweepJournal.Open(path, "other", fresh: true)) Assert.Empty(fresh.Done);
        using (SweepJournal other = SweepJournal.Read(path)) Assert.Equal("other", other.Plan);
        // a header with a flipped bit is no journal
        byte[] header = File.ReadAllBytes(path);
        header[^1] ^= 1;
        File.WriteAllBytes(path, header);
        Assert.Equal($"{path} is no journal of a sweep, or was cut short before its first block.", Assert.Throws<InvalidDataException>(() => SweepJournal.Read(path)).Message);
    }

    /// <summary>Rows of one, two, three and four metrics by eye: best alone, ties together, holes never.</summary>
    [Fact]
    public void Fronts_by_eye()
    {
        Assert.Equal([false, true, true, false], ParetoFront.Of([[2], [1], [1], [None]], [Sense.Less]));
        Assert.Equal([false, true, false, false], ParetoFront.Of([[2], [3], [1], [None]], [Sense.More]));
        Assert.Equal([true, true, false, true, true], ParetoFront.Of([[1, 5], [2, 3], [2, 4], [3, 1], [1, 5]], [Sense.Less, Sense.Less]));
        Assert.Equal([false, false, true], ParetoFront.Of([[1, 5], [2, 5], [2, 6]], [Sense.More, Sense.More]));
        Assert.Equal([true, true, true, false, false], ParetoFront.Of([[1, 2, 3], [2, 3, 1], [3, 1, 2], [3, 3, 3], [1, 2, 4]], [Sense.Less, Sense.Less, Sense.Less]));
        Assert.Equal([true, true, false, true], ParetoFront.Of([[1, 2, 3, 4], [2, 2, 3, 3], [2, 2, 3, 4], [9, 9, 9, 1]], [Sense.Less, Sense.Less, Sense.Less, Sense.Less]));
        Assert.Empty(ParetoFront.Of([], [Sense.Less]));
    }

    /// <summary>A number of the file by its key, a part by a factor; shapes in 25 levels, each 4 1/6 percent of the way apart.</summary>
    [Fact]
    public void Axes_name_their_columns_and_values()
    {
        Assert.Equal(("motor.volume_factor", true), (Volume.Column, Volume.IsFactor));
        Assert.Equal(("battery.x_mm", false), (Place.Column, Place.IsFactor));
        Assert.Equal((-20, 0, 20), (Place.At(0), Place.At(0.5), Place.At(1)));
        Assert.Equal(-19.6, Place.At(0.01), 1e-12);
        SweepAxis pitch = new("propeller.pitch", 1, 2.2, 5);
        Assert.Equal([1, 1, 1.05, 1.05, 2.2], new[] { 0, 0.02, 0.022, 0.06, 0.99 }.Select(pitch.At), (a, b) => Math.Abs(a - b) < 1e-12);
    }

    private static string Csv(SweepTable table)
    {
        using MemoryStream file = new();
        table.WriteCsv(file);
        return Encoding.UTF8.GetString(file.ToArray());
    }

    private static SweepJournal Journal(SweepPlan plan, params SweepBlock[] blocks)
    {
        SweepJournal journal = SweepJournal.InMemory(plan.ToLine());
        foreach (SweepBlock block in blocks) journal.Add(block);
        return journal;
    }

    private static SweepPlan Plan(IReadOnlyList<string> metrics, IReadOnlyList<string> front) => new()
    {
        Version = "1",
        Build = "build",
        Fingerprint = "00",
        Conditions = "still air",
        Axes = [Volume],
        Samples = 0,
        Seed = 1,
        Metrics = metrics,
        Front = front,
    };
}
