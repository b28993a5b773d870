using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>Turns one block of cells into rows in SI units.</summary>
internal sealed class BlockReader(RawBlock block, int number, StandModel model, StandReadingOptions options, NumberMarks marks, string source)
{
    private readonly List<RefusedRow> _refused = [.. block.Refused];
    private readonly List<string> _notes = [.. block.Notes];

    public StandBlock Read()
    {
        ColumnReader reader = new(block, options, marks, source);
        IReadOnlyList<ColumnReading> columns = reader.Read();
        if (columns.All(column => column.Quantity is StandQuantity.Ignored or StandQuantity.Propeller))
            throw new FitException(source, block.HeadingLine, $"No column is known here: {string.Join(", ", columns.Select(column => $"'{column.Name}'"))}.", "say what they are with --column \"Name=quantity:unit\", once for each");
        columns = [.. columns.Select(column => CarriesDown(column) ? column with { Because = Joined(column.Because, "blanks take the value above") } : column)];
        List<(StandRow Row, Dictionary<StandQuantity, double> Raw)> rows = Rows(columns);
        foreach (StandQuantity quantity in (StandQuantity[])[StandQuantity.Thrust, StandQuantity.Torque])
        {
            ColumnReading? open = columns.FirstOrDefault(column => column.Quantity == quantity && column.ToSI == 0);
            if (open is null) continue;
            ColumnReading told = ToldByModel(open, rows);
            columns = [.. columns.Select(column => column == open ? told : column)];
            rows = [.. rows.Select(row => (With(row.Row, quantity, row.Raw[quantity] * told.ToSI), row.Raw))];
        }
        return new(number, block.Title, block.HeadingLine, columns, [.. rows.Select(row => row.Row)], _refused, _notes);
    }

    private List<(StandRow Row, Dictionary<StandQuantity, double> Raw)> Rows(IReadOnlyList<ColumnReading> columns)
    {
        bool noLoad = QuantityNames.IsNoLoad(block.Title);
        double diameter = model.Rotor.Radius * 2 / TradeUnits.Inch;
        ColumnReading? propeller = columns.FirstOrDefault(column => column.Quantity == StandQuantity.Propeller);
        Dictionary<int, double> above = [];
        string name = "";
        int others = 0;
        List<(StandRow, Dictionary<StandQuantity, double>)> rows = [];
        foreach (CellRow cells in block.Rows)
        {
            if (propeller is not null && cells[propeller.Column - 1] is { Length: > 0 } written) name = written;
            if (!PropellerNames.Fits(name, diameter) && options.Block is null)
            {
                others++;
                continue;
            }
            StandRow row = new() { Line = cells.Line, NoPropeller = noLoad || QuantityNames.IsNoLoad(name) };
            Dictionary<StandQuantity, double> raw = [];
            string fault = "";
            foreach (ColumnReading column in columns.Where(c => c.Quantity is not (StandQuantity.Ignored or StandQuantity.Propeller)))
            {
                string cell = cells[column.Column - 1];
                double value = double.NaN, scale = column.ToSI == 0 ? double.NaN : column.ToSI;
                if (NumberText.IsMissing(cell))
                {
                    if (CarriesDown(column)) value = above.GetValueOrDefault(column.Column, double.NaN);
                }
                else
                {
                    (value, string unit) = NumberText.Parse(cell, marks);
                    if (double.IsNaN(value) && fault.Length == 0) fault = $"\"{column.Name}\" is '{cell}', not a number";
                    if (unit.Length > 0 && UnitNames.Find(column.Quantity, unit) is StandUnit own) scale = own.ToSI;
                    above[column.Column] = value;
                }
                raw[column.Quantity] = value;
                row = With(row, column.Quantity, ToSI(column, value, scale));
            }
            if (fault.Length > 0) _refused.Add(new(cells.Line, fault));
            else rows.Add((row, raw));
        }
        if (others > 0) _notes.Add($"{others} {(others == 1 ? "row" : "rows")} of other propellers than the build's {diameter:G3} in left out");
        return rows;
    }

    /// <summary>A supply voltage or a propeller is often written once for many rows.</summary>
    private bool CarriesDown(ColumnReading column)
    {
        if (column.Quantity != StandQuantity.Voltage) return false;
        int blanks = block.Rows.Count(row => row[column.Column - 1].Length == 0);
        return 2 * blanks > block.Rows.Count && blanks < block.Rows.Count;
    }

    private double ToSI(ColumnReading column, double value, double scale) => column.Quantity switch
    {
        StandQuantity.Throttle when column.Unit.StartsWith("pulse", StringComparison.Ordinal) => (value * scale) - 1,
        StandQuantity.ElectricalSpeed => value * scale / ((options.Poles ?? PolesOfBuild()) / 2.0),
        _ => value * scale,
    };

    private int PolesOfBuild() => (int)model.Build.Values.First(value => value.Key == "motor.poles").Typical;

    /// <summary>The one unit in which a column agrees with the model within a factor of about 1.5; refused where none or several do.</summary>
    private ColumnReading ToldByModel(ColumnReading column, List<(StandRow Row, Dictionary<StandQuantity, double> Raw)> rows)
    {
        List<(double Expected, double Raw)> pairs =
            [.. rows.Select(row => (Expected(row.Row, column.Quantity), row.Raw[column.Quantity])).Where(pair => pair.Item1 > 0 && pair.Item2 > 0)];
        string how = $"say the unit with --column \"{column.Name}={column.Quantity.ToString().ToLowerInvariant()}:{UnitNames.Of(column.Quantity)[0].Written[0]}\"; units are {ColumnReader.Known(column.Quantity)}";
        if (pairs.Count == 0)
            throw new FitException(source, block.HeadingLine, "The heading gives no unit, and without rotor speed or throttle nothing tells it.", how, column.Name);
        pairs.Sort((a, b) => a.Expected.CompareTo(b.Expected));
        // the upper half: near zero an offset of the scale would mislead
        (double Expected, double Raw)[] upper = [.. pairs.Skip(pairs.Count / 2)];
        double ratio = upper.Select(pair => pair.Raw / pair.Expected).Order().ElementAt(upper.Length / 2);
        List<StandUnit> fitting = [.. UnitNames.Of(column.Quantity).Where(unit => ratio * unit.ToSI is > 0.62 and < 1.6)];
        if (fitting.Count != 1)
        {
            string found = fitting.Count == 0 ? "in no unit do the numbers agree with the build" : $"{string.Join(" and ", fitting.Select(unit => unit.Words))} would both agree with the build";
            throw new FitException(source, block.HeadingLine, $"The heading gives no unit that is known, and {found}.", how, column.Name);
        }
        string because = $"no unit given that is known here; only so does it agree with the build, at {100 * ratio * fitting[0].ToSI:F0} % of the model";
        return column with { Unit = fitting[0].Words, ToSI = fitting[0].ToSI, Because = Joined(column.Because, because) };
    }

    /// <summary>What the build's model says of a quantity at a row: by speed, else by throttle and voltage; NaN where it cannot tell.</summary>
    private double Expected(StandRow row, StandQuantity quantity)
    {
        if (row.NoPropeller) return double.NaN;
        double speed = row.Speed;
        if (!(speed > 0) && row.Throttle > 0.2 && row.Voltage > 0) speed = model.SpeedAt(row.Throttle * row.Voltage);
        if (!(speed > 0)) return double.NaN;
        (double thrust, double torque) = model.Air(speed);
        return quantity == StandQuantity.Thrust ? thrust : torque;
    }

    private static StandRow With(StandRow row, StandQuantity quantity, double value) => quantity switch
    {
        StandQuantity.Throttle => row with { Throttle = value },
        StandQuantity.Thrust => row with { Thrust = value },
        StandQuantity.Torque => row with { Torque = value },
        StandQuantity.Voltage => row with { Voltage = value },
        StandQuantity.Current => row with { Current = value },
        StandQuantity.ElectricalPower => row with { ElectricalPower = value },
        StandQuantity.MechanicalPower => row with { MechanicalPower = value },
        StandQuantity.Speed or StandQuantity.ElectricalSpeed => row with { Speed = value },
        StandQuantity.Efficiency => row with { Efficiency = value },
        _ => row,
    };

    private static string Joined(string a, string b) => a.Length == 0 ? b : $"{a}; {b}";
}
