using Apache.Arrow;

namespace Simfeel.Flight.Traces;

/// <summary>Gathers rows into a batch of columns.</summary>
internal sealed class TraceBatch
{
    private readonly Schema _schema;
    private readonly double _period;
    private readonly int _readings;
    private readonly DoubleArray.Builder _time = new(), _sinceRestart = new();
    private readonly Int64Array.Builder _reading = new();
    private readonly UInt16Array.Builder _count = new();
    private readonly UInt8Array.Builder _flown = new();
    private readonly UInt64Array.Builder _hash = new();
    private readonly Int16Array.Builder[] _axes = [new(), new(), new()];
    private readonly UInt16Array.Builder _throttle = new(), _switches = new();
    private readonly FloatArray.Builder[][] _values;
    private readonly BooleanArray.Builder[] _crashed = [new(), new()];
    private readonly UInt8Array.Builder[] _struck = [new(), new()];

    public TraceBatch(TraceHeader header, Schema schema)
    {
        _schema = schema;
        _period = header.Profile.StickPeriod;
        _readings = header.ReadingsPerRow;
        _values = [Floats(header.A.Rotors), Floats(header.B.Rotors)];

        static FloatArray.Builder[] Floats(int rotors)
        {
            FloatArray.Builder[] columns = new FloatArray.Builder[CraftColumns.Count(rotors)];
            for (int n = 0; n < columns.Length; n++) columns[n] = new();
            return columns;
        }
    }

    /// <summary>Rows gathered.</summary>
    public int Rows => _hash.Length;

    public void Add(TraceRow row)
    {
        _time.Append(row.Reading * _period);
        _sinceRestart.Append(row.SinceRestart);
        _reading.Append(row.Reading);
        _count.Append((ushort)row.Count);
        _flown.Append((byte)row.Flown);
        _hash.Append(row.Hash);
        // after the last reading of a flight the lists are filled up with zeros, which count leaves out
        for (int n = 0; n < _readings; n++)
        {
            PilotInput input = n < row.Count ? row.Inputs[n] : default;
            _axes[0].Append(input.Roll);
            _axes[1].Append(input.Pitch);
            _axes[2].Append(input.Yaw);
            _throttle.Append(input.Throttle);
            _switches.Append((ushort)input.Switches);
        }
        for (int craft = 0; craft < 2; craft++) Add(row, craft);
    }

    /// <summary>The batch of all rows gathered since the last one.</summary>
    public RecordBatch Take()
    {
        int rows = Rows;
        List<IArrowArray> columns =
            [_time.Build(), _sinceRestart.Build(), _reading.Build(), _count.Build(), _flown.Build(), _hash.Build()];
        foreach (Int16Array.Builder axis in _axes) columns.Add(List(axis.Build()));
        columns.Add(List(_throttle.Build()));
        columns.Add(List(_switches.Build()));
        for (int craft = 0; craft < 2; craft++)
        {
            columns.AddRange(_values[craft].Select(column => column.Build()));
            columns.Add(_crashed[craft].Build());
            columns.Add(_struck[craft].Build());
        }
        Clear();
        return new(_schema, columns, rows);

        FixedSizeListArray List(IArrowArray items) => new(_schema.FieldsList[columns.Count].DataType, rows, items, ArrowBuffer.Empty);
    }

    private void Clear()
    {
        _time.Clear();
        _sinceRestart.Clear();
        _reading.Clear();
        _count.Clear();
        _flown.Clear();
        _hash.Clear();
        foreach (Int16Array.Builder axis in _axes) axis.Clear();
        _throttle.Clear();
        _switches.Clear();
        for (int craft = 0; craft < 2; craft++)
        {
            foreach (FloatArray.Builder column in _values[craft]) column.Clear();
            _crashed[craft].Clear();
            _struck[craft].Clear();
        }
    }

    private void Add(TraceRow row, int craft)
    {
        if (row.Flies(craft))
        {
            ReadOnlySpan<float> values = row.Values(craft);
            for (int n = 0; n < values.Length; n++) _values[craft][n].Append(values[n]);
            _crashed[craft].Append(row.Crashed(craft));
            _struck[craft].Append(row.Struck(craft));
        }
        else
        {
            foreach (FloatArray.Builder column in _values[craft]) column.AppendNull();
            _crashed[craft].AppendNull();
            _struck[craft].AppendNull();
        }
    }
}
