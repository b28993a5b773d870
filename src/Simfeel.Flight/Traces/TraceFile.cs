using Apache.Arrow;
using Apache.Arrow.Ipc;

namespace Simfeel.Flight.Traces;

/// <summary>
/// Writes the messages of an Arrow stream, each whole and down to the disk. After a failure the file ends with its last whole
/// message.
/// </summary>
internal sealed class TraceFile : IDisposable
{
    private readonly Stream _file;
    private readonly MemoryStream _message = new();
    private readonly ArrowStreamWriter _writer;
    private long _whole;

    public TraceFile(Stream file, Schema schema)
    {
        _file = file;
        _writer = new(_message, schema, leaveOpen: true);
    }

    /// <summary>Writes the schema, so that even an empty trace can be read.</summary>
    public void Start()
    {
        _writer.WriteStart();
        Send();
    }

    /// <summary>Writes a batch.</summary>
    public void Write(RecordBatch batch)
    {
        _writer.WriteRecordBatch(batch);
        Send();
    }

    /// <summary>Writes the mark of a stream's end; a file without it counts as cut short.</summary>
    public void End()
    {
        _writer.WriteEnd();
        Send();
    }

    public void Dispose()
    {
        _writer.Dispose();
        _file.Dispose();
    }

    private void Send()
    {
        ReadOnlySpan<byte> bytes = _message.GetBuffer().AsSpan(0, (int)_message.Length);
        try
        {
            _file.Write(bytes);
            if (_file is FileStream onDisk) onDisk.Flush(flushToDisk: true);
            else _file.Flush();
        }
        catch
        {
            CutBack();
            throw;
        }
        _whole += bytes.Length;
        _message.SetLength(0);
    }

    private void CutBack()
    {
        try
        {
            if (_file.CanSeek) _file.SetLength(_whole);
        }
        catch (IOException)
        {
            // half a message at the end does no harm: a reader stops before it
        }
    }
}
