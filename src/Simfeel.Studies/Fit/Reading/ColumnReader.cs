namespace Simfeel.Studies.Fit.Reading;

/// <summary>Decides what every column of a block is, and in which unit.</summary>
internal sealed class ColumnReader(RawBlock block, StandReadingOptions options, NumberMarks marks, string source)
{
    private readonly Dictionary<int, StandUnit> _units = [];

    /// <summary>The unit of a column that is used, by column from 1; null where only the model can tell.</summary>
    public StandUnit? UnitOf(int column) => _units.GetValueOrDefault(column);

    /// <summary>How every column with a heading is read. Units that only a model can tell are left empty.</summary>
    public IReadOnlyList<ColumnReading> Read()
    {
        List<HeadingCell> cells = [.. block.Heading.Where(cell => cell.Label.Length > 0)];
        Dictionary<HeadingCell, (StandQuantity Quantity, string Because)> read = [];
        foreach (HeadingCell cell in cells)
        {
            ColumnOverride? said = options.Columns.FirstOrDefault(c => c.IsAbout(cell));
            (StandQuantity quantity, bool known) = said is null ? cell.Find() : (said.Quantity, true);
            read[cell] = (quantity, said is not null ? "as --column says" : known ? "" : "no quantity that a fit knows");
            if (said is { Unit.Length: > 0 }) _units[cell.Column] = UnitNames.Find(quantity, said.Unit)!;
        }
        foreach (StandQuantity quantity in Enum.GetValues<StandQuantity>().Where(q => q != StandQuantity.Ignored))
        {
            HeadingCell[] same = [.. cells.Where(cell => read[cell].Quantity == quantity)];
            HeadingCell? best = same.MinBy(cell => Rank(cell, quantity));
            foreach (HeadingCell cell in same.Where(cell => cell != best)) read[cell] = (StandQuantity.Ignored, $"column {best!.Column} is used for this");
        }
        HeadingCell? electrical = cells.FirstOrDefault(cell => read[cell].Quantity == StandQuantity.ElectricalSpeed);
        HeadingCell? turning = cells.FirstOrDefault(cell => read[cell].Quantity == StandQuantity.Speed);
        if (electrical is not null && turning is not null) read[electrical] = (StandQuantity.Ignored, $"column {turning.Column} is used for this");
        return [.. cells.Select(cell => Reading(cell, read[cell].Quantity, read[cell].Because))];
    }

    /// <summary>Lower is better: what the user names, means before extremes, filled before empty, with unit before without.</summary>
    private double Rank(HeadingCell cell, StandQuantity quantity)
    {
        bool said = options.Columns.Any(c => c.IsAbout(cell));
        bool empty = !block.Rows.Any(row => NumberText.LooksNumeric(row[cell.Column - 1]));
        return (said ? 0 : 1000) + (empty ? 500 : 0) + (QuantityNames.IsExtreme(cell.Label) ? 100 : 0)
            - (QuantityNames.IsMean(cell.Label) ? 50 : 0) + (cell.UnitOf(quantity) is null ? 10 : 0) + (0.01 * cell.Column);
    }

    private ColumnReading Reading(HeadingCell cell, StandQuantity quantity, string because)
    {
        if (quantity is StandQuantity.Ignored or StandQuantity.Propeller) return new(cell.Column, cell.Label, quantity, "", 0, because);
        List<(double Value, string Unit)> numbers =
            [.. block.Rows.Select(row => NumberText.Parse(row[cell.Column - 1], marks)).Where(number => double.IsFinite(number.Value))];
        StandUnit? unit = UnitOf(cell.Column) ?? cell.UnitOf(quantity);
        string why = because;
        if (unit is null && numbers.Select(number => UnitNames.Find(quantity, number.Unit)).FirstOrDefault(u => u is not null) is StandUnit beside)
            (unit, why) = (beside, Joined(because, "the unit stands in the cells"));
        if (quantity == StandQuantity.Throttle) (unit, why) = Throttle(cell, unit, numbers, why);
        string unknown = cell.UnknownUnit(quantity);
        bool toldByModel = quantity is StandQuantity.Thrust or StandQuantity.Torque;
        if (unit is null && unknown.Length > 0 && !toldByModel)
            throw new FitException(source, block.HeadingLine, $"'{unknown}' is no unit of {quantity} that is known here; known are {Known(quantity)}.", "say it with --column \"Name=quantity:unit\"", cell.Label);
        if (unit is null && !toldByModel) (unit, why) = (UnitNames.Of(quantity)[0], Joined(because, "no unit given, taken as usual"));
        if (unit is not null) _units[cell.Column] = unit;
        if (quantity == StandQuantity.ElectricalSpeed) why = Joined(why, "divided by the pole pairs");
        return new(cell.Column, cell.Label, quantity, unit?.Words ?? "", unit?.ToSI ?? 0, why) { Step = Step(cell.Column) };
    }

    /// <summary>The most decimals in a column are its step; without decimals it counts ones.</summary>
    private double Step(int column) =>
        Math.Pow(10, -block.Rows.Select(row => NumberText.Decimals(row[column - 1], marks)).DefaultIfEmpty(0).Max());

    /// <summary>Throttle without a unit tells by its size: up to 1, up to 100, or pulses above 800 us.</summary>
    private (StandUnit Unit, string Because) Throttle(HeadingCell cell, StandUnit? unit, List<(double Value, string Unit)> numbers, string because)
    {
        double most = numbers.Count > 0 ? numbers.Max(number => number.Value) : 0;
        // a spreadsheet may leave the shares of a column that it shows in percent
        if (unit == UnitNames.Percent && most <= 1.001 && numbers.All(number => number.Unit.Length == 0))
            return (UnitNames.Share, Joined(because, "the numbers do not exceed 1, so they are no percent"));
        if (unit is not null) return (unit, because);
        StandUnit told = most <= 1.001 ? UnitNames.Share : most <= 110 ? UnitNames.Percent : most is > 800 and < 2300 ? UnitNames.Pulse
            : throw new FitException(source, block.HeadingLine, $"A throttle up to {most:G5} is neither a share, percent nor a pulse width.", "say it with --column \"Name=throttle:%\", :0-1 or :us", cell.Label);
        return (told, Joined(because, "told by the size of the numbers"));
    }

    internal static string Known(StandQuantity quantity) => string.Join(", ", UnitNames.Of(quantity).Select(unit => unit.Written[0]));

    private static string Joined(string a, string b) => a.Length == 0 ? b : $"{a}; {b}";
}
