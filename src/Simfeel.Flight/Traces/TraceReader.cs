using Apache.Arrow;
using Apache.Arrow.Ipc;

namespace Simfeel.Flight.Traces;

/// <summary>
/// Reads a trace row by row, up to its last whole batch. Nothing in a file makes it throw anything but <see cref="TraceException"/>.
/// </summary>
public sealed class TraceReader : IDisposable
{
    private readonly WholeMessages _messages;
    private readonly Stream _file;
    private readonly ArrowStreamReader _reader;
    private TraceColumns? _batch;
    private int _row;
    private long _lastReading;

    private TraceReader(Stream file, string name)
    {
        Name = name;
        _file = file;
        _messages = new(file);
        _reader = new(_messages, leaveOpen: true);
        Header = Guarded(ReadHeader);
    }

    /// <summary>The file as the caller gave it.</summary>
    internal string Name { get; }

    /// <summary>What the trace says before its first row.</summary>
    public TraceHeader Header { get; }

    /// <summary>Time up to the last row read, s.</summary>
    public double Seconds => _lastReading * Header.Profile.StickPeriod;

    /// <summary>Share of the file that was read so far, 0 to 1.</summary>
    public double ShareRead => _file.Length == 0 ? 1 : (double)_file.Position / _file.Length;

    /// <summary>
    /// Known once all rows are read: the file ends without the mark that <see cref="TraceRecorder.Finish"/> sets, as after a crash
    /// of the machine or a full disk.
    /// </summary>
    public bool CutShort => _messages.CutShort;

    /// <summary>Opens a trace and reads its header.</summary>
    /// <exception cref="TraceException">There is no such file, or it is no trace; the message names it.</exception>
    public static TraceReader Open(string path)
    {
        FileStream? file = null;
        try
        {
            file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            return new(file, path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new TraceException($"{path}: The trace cannot be opened: {e.Message}", e);
        }
        catch (TraceException)
        {
            file?.Dispose();
            throw;
        }
    }

    /// <summary>For tests: a trace in any stream, which is closed with the reader.</summary>
    internal static TraceReader Open(Stream stream) => new(stream, "trace");

    /// <summary>A row with room for those of this trace.</summary>
    public TraceRow NewRow() => new(Header.ReadingsPerRow, Header.A.Rotors, Header.B.Rotors);

    /// <summary>Reads the next row; false at the end.</summary>
    /// <exception cref="TraceException">The trace is damaged from here on.</exception>
    public bool Read(TraceRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return Guarded(() => Next(row));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _reader.Dispose();
        _messages.Dispose();
        _file.Dispose();
    }

    private bool Next(TraceRow row)
    {
        while (_batch is null || _row == _batch.Rows)
        {
            RecordBatch? batch = _reader.ReadNextRecordBatch();
            if (batch is null) return false;
            _batch = new(batch, Header);
            _row = 0;
        }
        _batch.Read(_row++, row);
        int full = Header.ReadingsPerRow;
        if (row.Count < 1 || row.Count > full || row.Flown > 1 || row.Reading != _lastReading + row.Count || _lastReading % full != 0)
            throw new TraceException($"The trace is damaged after {Seconds:F1} s: its rows do not follow each other.");
        _lastReading = row.Reading;
        return true;
    }

    private TraceHeader ReadHeader()
    {
        (int columns, IReadOnlyDictionary<string, string> metadata) = _messages.ReadSchema();
        TraceHeader header = TraceHeader.FromMetadata(metadata);
        Schema schema = TraceSchema.Of(header);
        if (columns != schema.FieldsList.Count)
            throw new TraceException($"The trace has {columns} columns; its header asks for {schema.FieldsList.Count}.");
        // the header says all about the columns, so the library need not be trusted with what a damaged file says of them
        using MemoryStream own = new();
        using ArrowStreamWriter writer = new(own, schema, leaveOpen: true);
        writer.WriteStart();
        _messages.Put(own.ToArray());
        return header;
    }

    /// <summary>The one place where whatever a damaged file makes the Arrow library throw turns into one clear error.</summary>
    private T Guarded<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (TraceException e)
        {
            throw new TraceException($"{Name}: {e.Message}", e);
        }
        catch (Exception e)
        {
            // an array larger than .NET allows is an OutOfMemoryException too
            // what the library says is of no use to a pilot; it stays in the inner exception
            string where = _lastReading > 0 ? $"after {Seconds:F1} s" : "at its beginning";
            throw new TraceException($"{Name}: The trace is damaged {where} and cannot be read any further.", e);
        }
    }
}
