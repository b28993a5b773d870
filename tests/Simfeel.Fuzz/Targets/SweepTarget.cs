using System.Security.Cryptography;
using System.Text;
using Simfeel.Builds.Writing;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Studies.Sweep;

namespace Simfeel.Fuzz.Targets;

/// <summary>Journals of sweeps, which are gone on with and merged. Half of them carry good fingerprints over bad content.</summary>
internal sealed class SweepTarget : Target
{
    private const int FingerprintLength = 8;

    private static readonly SweepPlan Plan = new()
    {
        Version = "0.1.0",
        Build = "Wagtail",
        Fingerprint = "0",
        Conditions = "air",
        Axes = [new("motor.volume", 0.8, 1.2, 20), new("battery.mass", 0.8, 1.2, 20)],
        Samples = 0,
        Seed = 1,
        Metrics = ["stop_time", "hover_endurance"],
        Front = ["stop_time", "hover_endurance"],
    };

    private static readonly string[] PlanValues = ["-1", "0", "1", "2", "1000000", "1000001", "2147483647", "-2147483648", "9223372036854775807", "1e308", "null", "\"\"", "\"stop_time\"", "\"no_such\"", "[]", "{}", "[null]", "[\"stop_time\"]", "[{}]", "true", "\"NaN\"", "1.5"];

    private readonly IReadOnlyList<byte[]> _corpus = [Journal(Plan.ToLine(), 0, 1), Journal(Plan.ToLine(), 1), Journal((Plan with { Samples = 300 }).ToLine(), 0, 1)];

    public override string Name => "sweep journals";

    public override int Weight => 40;

    public override string Ending => ".part";

    public override byte[] Make(Dice dice)
    {
        if (dice.Once(3)) return Bytes.Mutate(dice.Of(_corpus), _corpus, dice);
        string plan = dice.Once(2) ? Plan.ToLine() : BadPlan(dice);
        using MemoryStream stream = new();
        Header(stream, plan);
        for (int n = dice.Below(4); n > 0; n--) Record(stream, BadRecord(dice));
        return stream.ToArray();
    }

    public override Verdict Try(byte[] input, Dice dice)
    {
        string path = Scratch.Store("fuzz.part", input), other = Scratch.Store("other.part", _corpus[0]);
        bool taken = Tried(path, () =>
        {
            using SweepJournal journal = SweepJournal.Read(path), second = SweepJournal.Read(other);
            SweepTable table = SweepTable.Of(dice.Once(2) ? [journal] : [journal, second]);
            WholeFile.Write(Path.Combine(Scratch.Folder, "fuzz-sweep.csv"), table.WriteCsv, lasting: false);
            for (int row = 0; row < table.Rows; row++)
            {
                if (table.Values(row).Any(double.IsInfinity)) throw new UnexplainedException($"row {row} holds an infinite number");
            }
        });
        if (!File.ReadAllBytes(path).AsSpan().SequenceEqual(input)) throw new UnexplainedException("reading a share changed it");
        bool goesOn = Tried(path, () =>
        {
            using SweepJournal journal = SweepJournal.Open(path, Plan.ToLine());
            int before = journal.Done.Count;
            journal.Add(new(0, [[1, 2]], [""]));
            if (journal.Done.Count < before || !journal.Done.Contains(0)) throw new UnexplainedException("a block that was added is not there");
        });
        return taken || goesOn ? Verdict.Accepted : Verdict.Rejected;
    }

    private static bool Tried(string path, Action use)
    {
        try
        {
            use();
            return true;
        }
        catch (InvalidDataException error)
        {
            Reasons.Line(error.Message, error.Message);
            if (error.Message.Contains("invalid data", StringComparison.Ordinal)) throw new UnexplainedException($"gives no reason: {error.Message}");
            return false;
        }
    }

    private static string BadPlan(Dice dice)
    {
        string line = Plan.ToLine();
        string[] names = ["Version", "Build", "Axes", "Samples", "Seed", "Metrics", "Front", "Name", "From", "To", "Points"];
        for (int n = dice.From(1, 2); n > 0; n--)
        {
            string name = $"\"{dice.Of(names)}\":";
            int at = line.IndexOf(name, StringComparison.Ordinal);
            if (at < 0) continue;
            int from = at + name.Length, depth = 0, to = from;
            while (to < line.Length && (depth > 0 || line[to] is not (',' or '}')))
            {
                if (line[to] is '[' or '{') depth++;
                if (line[to] is ']' or '}') depth--;
                to++;
            }
            line = line[..from] + dice.Of(PlanValues) + line[to..];
        }
        return line;
    }

    private static byte[] BadRecord(Dice dice)
    {
        using MemoryStream memory = new();
        using BinaryWriter writer = new(memory, Encoding.UTF8);
        writer.Write(dice.Of([0, 1, 1, 1, 2, -1, int.MaxValue, int.MinValue]));
        int rows = dice.Of([144, 256, 1, 0, -1, 257, int.MaxValue, 100_000_000]);
        writer.Write(rows);
        for (int n = 0; n < Math.Clamp(rows, 0, 256); n++)
        {
            writer.Write(dice.Of([1.5, double.NaN, double.PositiveInfinity, -1e308]));
            writer.Write(dice.Share());
            writer.Write(dice.Once(50) ? new string('x', 300) : "");
            if (dice.Once(200)) break;
        }
        return memory.ToArray();
    }

    private static byte[] Journal(string plan, params int[] blocks)
    {
        using MemoryStream stream = new();
        Header(stream, plan);
        foreach (int block in blocks)
        {
            using MemoryStream memory = new();
            using BinaryWriter writer = new(memory, Encoding.UTF8);
            writer.Write(block);
            int rows = block == 0 ? SweepPlan.BlockRows : 400 - SweepPlan.BlockRows;
            writer.Write(rows);
            for (int n = 0; n < rows; n++)
            {
                writer.Write(0.1 + n);
                writer.Write(600.0 - n);
                writer.Write("");
            }
            Record(stream, memory.ToArray());
        }
        return stream.ToArray();
    }

    private static void Header(MemoryStream stream, string plan)
    {
        using BinaryWriter writer = new(stream, Encoding.UTF8, true);
        writer.Write("Simfeel sweep 1");
        writer.Write(plan);
        writer.Write(SHA256.HashData(Encoding.UTF8.GetBytes(plan)).AsSpan(0, FingerprintLength));
    }

    private static void Record(MemoryStream stream, byte[] record)
    {
        stream.Write(BitConverter.GetBytes(record.Length));
        stream.Write(record);
        stream.Write(SHA256.HashData(record).AsSpan(0, FingerprintLength));
    }
}
