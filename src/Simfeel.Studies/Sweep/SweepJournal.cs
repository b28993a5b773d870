using System.Security.Cryptography;
using System.Text;
using Simfeel.Builds;
using Simfeel.Builds.Writing;

namespace Simfeel.Studies.Sweep;

/// <summary>
/// What a sweep has done so far, on disk: the plan's line, then one record for each block, each with its length before it and a
/// fingerprint behind it. A record that was cut short is dropped when the journal is opened again.
/// </summary>
public sealed class SweepJournal : IDisposable
{
    private const string Magic = "Simfeel sweep 1";
    private const int FingerprintLength = 8;

    private readonly Stream _file;
    private readonly string _path;
    private readonly HashSet<int> _done = [];

    private SweepJournal(Stream file, string path, string plan) => (_file, _path, Plan) = (file, path, plan);

    /// <summary>The plan's line.</summary>
    public string Plan { get; }

    /// <summary>Blocks that are done.</summary>
    public IReadOnlySet<int> Done => _done;

    /// <summary>Opens a journal to go on with, or begins one. No other sweep may have it meanwhile.</summary>
    /// <param name="path">The file.</param>
    /// <param name="plan">The plan's line.</param>
    /// <param name="fresh">Whether what it holds is thrown away.</param>
    /// <exception cref="InvalidDataException">The file is no journal, or one of another plan.</exception>
    /// <exception cref="IOException">Another program works on it, or it cannot be opened.</exception>
    public static SweepJournal Open(string path, string plan, bool fresh = false)
    {
        FileStream file = new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        try
        {
            byte[] header = HeaderOf(plan);
            if (fresh || WasBegun(file, header)) file.SetLength(0);
            if (file.Length == 0) LoneFile.Add(file, header);
            SweepJournal journal = Scan(file, path);
            if (journal.Plan != plan)
                throw new InvalidDataException($"{path} belongs to another sweep: the build, the ranges, the metrics, the conditions or the program have changed.");
            return journal;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>A journal in memory, for a sweep of which nothing is kept.</summary>
    public static SweepJournal InMemory(string plan)
    {
        MemoryStream memory = new();
        memory.Write(HeaderOf(plan));
        return new(memory, "the sweep in memory", plan);
    }

    /// <summary>Opens a finished or unfinished journal to read; the file stays as it is.</summary>
    /// <exception cref="InvalidDataException">The file is no journal.</exception>
    /// <exception cref="IOException">A sweep works on it, or it cannot be opened.</exception>
    public static SweepJournal Read(string path)
    {
        FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        try
        {
            return Scan(file, path);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Adds a block and has it written to disk.</summary>
    public void Add(SweepBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        using MemoryStream memory = new();
        using (BinaryWriter writer = new(memory, Encoding.UTF8, true))
        {
            writer.Write(block.Index);
            writer.Write(block.Values.Length);
            foreach ((double[] values, string refusal) in block.Values.Zip(block.Refusals))
            {
                foreach (double value in values) writer.Write(value);
                writer.Write(refusal);
            }
        }
        byte[] record = memory.ToArray();
        LoneFile.Add(_file, [.. BitConverter.GetBytes(record.Length), .. record, .. SHA256.HashData(record).AsSpan(0, FingerprintLength)]);
        _done.Add(block.Index);
    }

    /// <summary>The blocks in the order in which they were added.</summary>
    /// <param name="metrics">Number of metrics of a row.</param>
    /// <exception cref="InvalidDataException">A block does not hold what it should.</exception>
    public IEnumerable<SweepBlock> Blocks(int metrics)
    {
        _file.Seek(0, SeekOrigin.Begin);
        _ = Header(_file);
        while (Next(_file) is byte[] record)
        {
            SweepBlock? block = null;
            try
            {
                block = Block(record, metrics);
            }
            catch (Exception error) when (error is IOException or FormatException or ArgumentException)
            {
                // said below: its content ends before it should, or a text in it is none
            }
            yield return block ?? throw new InvalidDataException($"{_path}: block {BitConverter.ToInt32(record)} is damaged.");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();

    /// <summary>The block of a record; null where it holds what no block does.</summary>
    private static SweepBlock? Block(byte[] record, int metrics)
    {
        using BinaryReader reader = new(new MemoryStream(record), Encoding.UTF8);
        int index = reader.ReadInt32(), rows = reader.ReadInt32();
        if (rows is < 0 or > SweepPlan.BlockRows) return null;
        double[][] values = new double[rows][];
        string[] refusals = new string[rows];
        for (int row = 0; row < rows; row++)
        {
            values[row] = new double[metrics];
            for (int m = 0; m < metrics; m++) values[row][m] = reader.ReadDouble();
            refusals[row] = OneLine.Of(reader.ReadString());
            if (values[row].Any(double.IsInfinity)) return null;
        }
        return new(index, values, refusals);
    }

    private static byte[] HeaderOf(string plan)
    {
        using MemoryStream memory = new();
        using (BinaryWriter writer = new(memory, Encoding.UTF8, true))
        {
            writer.Write(Magic);
            writer.Write(plan);
            writer.Write(SHA256.HashData(Encoding.UTF8.GetBytes(plan)).AsSpan(0, FingerprintLength));
        }
        return memory.ToArray();
    }

    /// <summary>Whether a file holds the beginning of a header and no more, as after a stop in its first moment.</summary>
    private static bool WasBegun(FileStream file, byte[] header)
    {
        if (file.Length >= header.Length) return false;
        byte[] start = new byte[file.Length];
        file.ReadExactly(start);
        return header.AsSpan().StartsWith(start);
    }

    private static SweepJournal Scan(Stream file, string path)
    {
        file.Seek(0, SeekOrigin.Begin);
        string plan;
        try
        {
            plan = Header(file);
        }
        catch (Exception error) when (error is InvalidDataException or IOException or FormatException or ArgumentException)
        {
            throw new InvalidDataException($"{path} is no journal of a sweep, or was cut short before its first block.");
        }
        SweepJournal journal = new(file, path, plan);
        long whole = file.Position;
        while (Next(file) is byte[] record)
        {
            journal._done.Add(BitConverter.ToInt32(record));
            whole = file.Position;
        }
        if (file.CanWrite && whole < file.Length) file.SetLength(whole);
        return journal;
    }

    private static string Header(Stream file)
    {
        using BinaryReader reader = new(file, Encoding.UTF8, true);
        if (reader.ReadString() != Magic) throw new InvalidDataException();
        string plan = reader.ReadString();
        byte[] print = reader.ReadBytes(FingerprintLength);
        return SHA256.HashData(Encoding.UTF8.GetBytes(plan)).AsSpan(0, FingerprintLength).SequenceEqual(print) ? plan : throw new InvalidDataException();
    }

    /// <summary>The next whole record; null at the end or where the rest is torn.</summary>
    private static byte[]? Next(Stream file)
    {
        byte[] length = new byte[sizeof(int)];
        if (file.ReadAtLeast(length, sizeof(int), false) < sizeof(int)) return null;
        int size = BitConverter.ToInt32(length);
        if (size < sizeof(int) || size + FingerprintLength > file.Length - file.Position) return null;
        byte[] record = new byte[size];
        file.ReadExactly(record);
        byte[] print = new byte[FingerprintLength];
        file.ReadExactly(print);
        return SHA256.HashData(record).AsSpan(0, FingerprintLength).SequenceEqual(print) ? record : null;
    }
}
