using System.Buffers.Binary;

namespace Simfeel.Flight.Traces;

/// <summary>
/// Hands on the messages of an Arrow IPC stream that are whole, and ends before one that is not, so that a file whose writer was
/// killed reads like one that ends there. Refuses messages larger than any trace has, before memory is taken for them.
/// Layout of a message: Apache Arrow columnar format 1.5, "Encapsulated message format"; numbers of the flatbuffers' fields:
/// Message.fbs and Schema.fbs there.
/// </summary>
internal sealed class WholeMessages(Stream file) : Stream
{
    private const int MostMetadata = 16 << 20, MostBody = 16 << 20;
    private const int KindField = 1, HeaderField = 2, BodyLengthField = 3;
    private const int NodesField = 1, BuffersField = 2;
    private const int Offset = 4, Pair = 16;
    private const byte SchemaKind = 1, RowsKind = 3;
    private const int ColumnsField = 1, MetadataField = 2, KeyField = 0, ValueField = 1;

    private byte[] _message = new byte[1 << 16];
    private int _length, _at;
    private bool _ended;

    /// <summary>The stream ended without the mark of its end.</summary>
    public bool CutShort { get; private set; }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>Reads the schema's message: the number of columns and the metadata.</summary>
    /// <exception cref="TraceException">There is none.</exception>
    public (int Columns, IReadOnlyDictionary<string, string> Metadata) ReadSchema()
    {
        if (!Next(SchemaKind)) throw new TraceException("The file is empty or cut short before its first row.");
        FlatTable schema = FlatTable.Root(_message.AsSpan(8, _length - 8)).Table(HeaderField);
        Dictionary<string, string> metadata = new(StringComparer.Ordinal);
        for (int n = 0; n < schema.Count(MetadataField, Offset); n++)
        {
            FlatTable pair = schema.Item(MetadataField, n);
            metadata[pair.Text(KeyField)] = pair.Text(ValueField);
        }
        return (schema.Count(ColumnsField, Offset), metadata);
    }

    /// <summary>Puts a message of one's own before those that are still to come.</summary>
    public void Put(byte[] message)
    {
        _message = message;
        _length = message.Length;
        _at = 0;
    }

    public override int Read(Span<byte> buffer)
    {
        if (_at == _length && !Next(RowsKind)) return 0;
        int count = Math.Min(buffer.Length, _length - _at);
        _message.AsSpan(_at, count).CopyTo(buffer);
        _at += count;
        return count;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <summary>Reads the next message whole; false at the end.</summary>
    private bool Next(byte kind)
    {
        if (_ended) return false;
        _at = _length = 0;
        if (!Fill(8)) return Cut();
        if (BinaryPrimitives.ReadUInt32LittleEndian(_message) != 0xFFFFFFFF)
            throw new TraceException("This is no Arrow stream, or it is damaged: a message does not begin with its mark.");
        int metadata = BinaryPrimitives.ReadInt32LittleEndian(_message.AsSpan(4));
        if (metadata == 0)
        {
            _ended = true;
            return true;
        }
        if (metadata is < 0 or > MostMetadata) throw TooLarge(metadata, MostMetadata);
        if (!Fill(metadata)) return Cut();
        FlatTable message = FlatTable.Root(_message.AsSpan(8, metadata));
        if (message.Byte(KindField) != kind)
            throw new TraceException("The trace is damaged: it has a message of another kind than rows.");
        if (kind == RowsKind) CheckCounts(message.Table(HeaderField));
        long body = message.Int64(BodyLengthField);
        if (body is < 0 or > MostBody) throw TooLarge(body, MostBody);
        return Fill((int)body) || Cut();
    }

    /// <summary>The library takes memory for as many nodes and buffers as the message says that it has.</summary>
    private static void CheckCounts(FlatTable rows)
    {
        rows.Count(NodesField, Pair);
        rows.Count(BuffersField, Pair);
    }

    private bool Cut()
    {
        _ended = true;
        CutShort = true;
        _at = _length = 0;
        return false;
    }

    private static TraceException TooLarge(long size, int most) =>
        new($"The trace is damaged: a message says that it has {size} bytes; allowed are 0 to {most}.");

    /// <summary>Appends bytes of the file to the message; false where it ends before.</summary>
    private bool Fill(int count)
    {
        if (_message.Length < _length + count) Array.Resize(ref _message, Math.Max(_length + count, 2 * _message.Length));
        int got = file.ReadAtLeast(_message.AsSpan(_length, count), count, throwOnEndOfStream: false);
        _length += got;
        return got == count;
    }
}
