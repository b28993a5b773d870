using Apache.Arrow;
using Apache.Arrow.Ipc;
using Simfeel.Flight.Traces;

namespace Simfeel.Benchmarks.Soak;

/// <summary>
/// How large a trace should be by its format: the schema with its texts, then batches of a constant head and of one padded block
/// for each column, and for each column of a craft that did not fly all the time its marks of what is missing. Schema and head,
/// which the Arrow library makes, are measured on a batch of one row; everything else follows from the columns.
/// </summary>
internal sealed class TraceSize(TraceHeader header, string file)
{
    /// <summary>Bytes to which the library fills up every block.</summary>
    private const int Padding = 64;

    private readonly int _rows = Math.Max(1, (int)(TraceRecorder.BatchTime * header.SampleRate));
    private readonly (long Schema, long Head) _fixed = Measure(header);
    private long _bodies;
    private int _batches, _batchRows;
    private bool _missingA, _missingB;

    /// <summary>Stick readings in a row.</summary>
    public int ReadingsPerRow => header.ReadingsPerRow;

    /// <summary>Stick readings in a full batch.</summary>
    public long ReadingsPerBatch => _rows * (long)header.ReadingsPerRow;

    /// <summary>Size of the file now, bytes.</summary>
    public long Size => new FileInfo(file) is { Exists: true } info ? info.Length : 0;

    /// <summary>Size of the file by its format if every batch is full, bytes; a machine too busy for that writes smaller ones early.</summary>
    public long Predicted => _fixed.Schema + (_batches * _fixed.Head) + _bodies + (_batchRows > 0 ? _fixed.Head + Body(_batchRows, _missingA, _missingB) : 0);

    /// <summary>Size of the finished file by its format for the batches that are in it, with the mark of its end, bytes.</summary>
    public long OfItsBatches()
    {
        using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using ArrowStreamReader reader = new(stream);
        int a = TraceSchema.Shared, b = a + CraftColumns.Count(header.A.Rotors) + 2;
        long bytes = _fixed.Schema + 8;
        while (reader.ReadNextRecordBatch() is RecordBatch batch)
        {
            bytes += _fixed.Head + Body(batch.Length, batch.Column(a).NullCount > 0, batch.Column(b).NullCount > 0);
            batch.Dispose();
        }
        return bytes;
    }

    /// <summary>Counts a row, full batches taken for granted.</summary>
    /// <param name="a">Whether the first craft flies.</param>
    /// <param name="b">Whether the second one does.</param>
    public void AddRow(bool a, bool b)
    {
        _missingA |= !a;
        _missingB |= !b;
        if (++_batchRows < _rows) return;
        _bodies += Body(_batchRows, _missingA, _missingB);
        _batches++;
        (_batchRows, _missingA, _missingB) = (0, false, false);
    }

    /// <summary>Bytes of the schema with its texts, and of what stands before the blocks of a batch.</summary>
    private static (long Schema, long Head) Measure(TraceHeader header)
    {
        using MemoryStream stream = new();
        Schema columns = TraceSchema.Of(header);
        using TraceFile trace = new(stream, columns);
        TraceBatch batch = new(header, columns);
        trace.Start();
        batch.Add(new TraceRow(header.ReadingsPerRow, header.A.Rotors, header.B.Rotors));
        trace.Write(batch.Take());
        ReadOnlySpan<byte> bytes = stream.ToArray();
        int schema = Length(bytes);
        return (schema, Length(bytes[schema..]));

        // a message begins with a mark and the length of what describes it
        static int Length(ReadOnlySpan<byte> message) => 8 + BitConverter.ToInt32(message[4..]);
    }

    /// <summary>The blocks of a batch.</summary>
    private long Body(int rows, bool missingA, bool missingB)
    {
        int readings = header.ReadingsPerRow;
        // time, since restart, reading, hash; count; flown
        long bytes = (4 * Block(8 * rows)) + Block(2 * rows) + Block(rows);
        // three axes, throttle and switches of every reading
        bytes += 5 * Block(2 * readings * rows);
        long bits = Block((rows + 7) / 8);
        foreach ((int rotors, bool missing) in new[] { (header.A.Rotors, missingA), (header.B.Rotors, missingB) })
        {
            int columns = CraftColumns.Count(rotors);
            // crashed is a bit, struck rotors a byte
            bytes += (columns * Block(4 * rows)) + bits + Block(rows);
            if (missing) bytes += (columns + 2) * bits;
        }
        return bytes;
    }

    private static long Block(int bytes) => (bytes + Padding - 1) / Padding * Padding;
}
