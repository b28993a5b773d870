using System.Buffers.Binary;
using System.Text;

namespace Simfeel.Flight.Traces;

/// <summary>
/// A table of a flatbuffer, read with every step checked: the Arrow library takes memory for whatever a damaged schema asks for.
/// Layout: the flatbuffers "Internals" page. A place outside the buffer throws <see cref="ArgumentOutOfRangeException"/>.
/// </summary>
internal readonly ref struct FlatTable
{
    private readonly ReadOnlySpan<byte> _buffer;
    private readonly int _table;

    private FlatTable(ReadOnlySpan<byte> buffer, int table)
    {
        _buffer = buffer;
        _table = table;
    }

    /// <summary>The root table of a buffer.</summary>
    public static FlatTable Root(ReadOnlySpan<byte> buffer) => new(buffer, BinaryPrimitives.ReadInt32LittleEndian(buffer));

    /// <summary>A byte; 0 where it is left out.</summary>
    public byte Byte(int field) => Place(field) is int at and > 0 ? _buffer[at..][0] : (byte)0;

    /// <summary>A number of eight bytes; 0 where it is left out.</summary>
    public long Int64(int field) => Place(field) is int at and > 0 ? BinaryPrimitives.ReadInt64LittleEndian(_buffer[at..]) : 0;

    /// <summary>A table.</summary>
    public FlatTable Table(int field) => new(_buffer, Follow(Needed(field)));

    /// <summary>Number of items in a vector; 0 where it is left out.</summary>
    /// <param name="field">The field.</param>
    /// <param name="size">Size of an item, bytes; the buffer has to hold them all.</param>
    public int Count(int field, int size)
    {
        if (Place(field) == 0) return 0;
        int at = Follow(Needed(field)), count = BinaryPrimitives.ReadInt32LittleEndian(_buffer[at..]);
        return count >= 0 && count <= (_buffer.Length - at - 4) / size ? count : throw new ArgumentOutOfRangeException(nameof(field));
    }

    /// <summary>A table of a vector of tables.</summary>
    public FlatTable Item(int field, int number) => new(_buffer, Follow(Follow(Needed(field)) + 4 + (4 * number)));

    /// <summary>A text; empty where it is left out.</summary>
    public string Text(int field)
    {
        if (Place(field) == 0) return "";
        int at = Follow(Needed(field));
        return Encoding.UTF8.GetString(_buffer.Slice(at + 4, BinaryPrimitives.ReadInt32LittleEndian(_buffer[at..])));
    }

    private int Needed(int field) => Place(field) is int at and > 0 ? at : throw new ArgumentOutOfRangeException(nameof(field));

    private int Follow(int at) => at + BinaryPrimitives.ReadInt32LittleEndian(_buffer[at..]);

    /// <summary>Where a field is; 0 where it is left out.</summary>
    private int Place(int field)
    {
        int fields = _table - BinaryPrimitives.ReadInt32LittleEndian(_buffer[_table..]);
        int entry = 4 + (2 * field);
        if (entry >= BinaryPrimitives.ReadInt16LittleEndian(_buffer[fields..])) return 0;
        int offset = BinaryPrimitives.ReadInt16LittleEndian(_buffer[(fields + entry)..]);
        return offset == 0 ? 0 : _table + offset;
    }
}
