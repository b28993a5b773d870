using Apache.Arrow;

namespace Simfeel.Flight.Traces;

/// <summary>The columns of one batch that was read.</summary>
internal sealed class TraceColumns
{
    /// <summary>Most rows that a batch may have; a recorder writes at most a ring's worth.</summary>
    private const int MostRows = 1 << 17;

    private readonly RecordBatch _batch;
    private readonly int _readings;

    public TraceColumns(RecordBatch batch, TraceHeader header)
    {
        _batch = batch;
        _readings = header.ReadingsPerRow;
        if (batch.Length is < 0 or > MostRows) throw new TraceException($"The trace is damaged: a batch has {batch.Length} rows; allowed are 0 to {MostRows}.");
        foreach (IArrowArray column in batch.Arrays)
        {
            if (column.Length != batch.Length || column.Offset != 0) throw new TraceException("The trace is damaged: columns of a batch have different lengths.");
        }
    }

    public int Rows => _batch.Length;

    public void Read(int at, TraceRow row)
    {
        row.SinceRestart = Column<DoubleArray>(1).Values[at];
        row.Reading = Column<Int64Array>(2).Values[at];
        row.Count = Column<UInt16Array>(3).Values[at];
        row.Flown = Column<UInt8Array>(4).Values[at];
        row.Hash = Column<UInt64Array>(5).Values[at];
        if (row.Count > _readings) throw new TraceException($"The trace is damaged: row {at + 1} of a batch has {row.Count} stick readings; allowed are 1 to {_readings}.");
        ReadOnlySpan<short> roll = List<Int16Array>(6).Values, pitch = List<Int16Array>(7).Values, yaw = List<Int16Array>(8).Values;
        ReadOnlySpan<ushort> throttle = List<UInt16Array>(9).Values, switches = List<UInt16Array>(10).Values;
        for (int n = 0; n < row.Count; n++)
        {
            int item = (at * _readings) + n;
            row.Room[n] = new(roll[item], pitch[item], yaw[item], throttle[item], (PilotSwitches)switches[item]);
        }
        row.Flying = 0;
        row.CrashedBits = 0;
        int column = TraceSchema.Shared;
        for (int craft = 0; craft < 2; craft++) column = ReadCraft(at, row, craft, column);
    }

    private int ReadCraft(int at, TraceRow row, int craft, int column)
    {
        Span<float> values = row.Room32(craft);
        bool flies = Column<FloatArray>(column).IsValid(at);
        for (int n = 0; n < values.Length; n++) values[n] = Column<FloatArray>(column + n).Values[at];
        column += values.Length;
        if (flies)
        {
            row.Flying |= 1 << craft;
            if (Column<BooleanArray>(column).GetValue(at) == true) row.CrashedBits |= 1 << craft;
            row.StruckBits[craft] = Column<UInt8Array>(column + 1).Values[at];
        }
        return column + 2;
    }

    private T Column<T>(int number)
        where T : class, IArrowArray => (T)_batch.Column(number);

    private T List<T>(int number)
        where T : class, IArrowArray => (T)Column<FixedSizeListArray>(number).Values;
}
