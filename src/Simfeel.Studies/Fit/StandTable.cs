namespace Simfeel.Studies.Fit;

/// <summary>How a column was read.</summary>
/// <param name="Column">Counted from 1.</param>
/// <param name="Name">The heading as written.</param>
/// <param name="Quantity">What it holds.</param>
/// <param name="Unit">Its unit in words; empty where the column is ignored.</param>
/// <param name="ToSI">SI value of one unit.</param>
/// <param name="Because">Why so, where that does not follow from the heading; else empty.</param>
public sealed record ColumnReading(int Column, string Name, StandQuantity Quantity, string Unit, double ToSI, string Because)
{
    /// <summary>Smallest step that the cells are written with, in the column's unit.</summary>
    public double Step { get; init; }

    /// <summary>One line: <c>column 3 "Schub [g]": thrust, gram-force</c>.</summary>
    public override string ToString()
    {
        string what = Quantity switch
        {
            StandQuantity.Ignored => "ignored",
            StandQuantity.Propeller => "propeller",
            StandQuantity.ElectricalPower => $"electrical power, {Unit}",
            StandQuantity.MechanicalPower => $"mechanical power, {Unit}",
            StandQuantity.ElectricalSpeed => $"electrical speed, {Unit}",
            StandQuantity.Speed => $"rotor speed, {Unit}",
            StandQuantity.Efficiency => $"efficiency, {Unit}, a cross-check only",
            _ => $"{Quantity.ToString().ToLowerInvariant()}, {Unit}",
        };
        return $"column {Column} \"{Name}\": {what}{(Because.Length > 0 ? $" ({Because})" : "")}";
    }
}

/// <summary>One row in SI units; NaN stands for what is not given.</summary>
public sealed record StandRow
{
    /// <summary>Line in the file, counted from 1.</summary>
    public required int Line { get; init; }

    /// <summary>Throttle command, 0 to 1.</summary>
    public double Throttle { get; init; } = double.NaN;

    /// <summary>Thrust, N.</summary>
    public double Thrust { get; init; } = double.NaN;

    /// <summary>Shaft torque, N m.</summary>
    public double Torque { get; init; } = double.NaN;

    /// <summary>Voltage at the speed controller, V.</summary>
    public double Voltage { get; init; } = double.NaN;

    /// <summary>Current into the speed controller, A.</summary>
    public double Current { get; init; } = double.NaN;

    /// <summary>Power into the speed controller, W.</summary>
    public double ElectricalPower { get; init; } = double.NaN;

    /// <summary>Power on the shaft, W.</summary>
    public double MechanicalPower { get; init; } = double.NaN;

    /// <summary>Rotor speed, rad/s.</summary>
    public double Speed { get; init; } = double.NaN;

    /// <summary>Thrust over electrical power, N/W.</summary>
    public double Efficiency { get; init; } = double.NaN;

    /// <summary>True where the motor ran without a propeller.</summary>
    public bool NoPropeller { get; init; }
}

/// <summary>A row that is not used.</summary>
/// <param name="Line">Line in the file, counted from 1.</param>
/// <param name="Reason">Why not.</param>
public sealed record RefusedRow(int Line, string Reason);

/// <summary>One block of a table: a heading and the rows below it.</summary>
/// <param name="Number">Counted from 1.</param>
/// <param name="Title">The lines above the heading; may be empty.</param>
/// <param name="HeadingLine">Line of the heading.</param>
/// <param name="Columns">How every column was read.</param>
/// <param name="Rows">Rows that can be read; whether they can be true is checked later.</param>
/// <param name="Refused">Rows that cannot be read.</param>
/// <param name="Notes">What else was met: summary rows, rows of other propellers, values carried down.</param>
public sealed record StandBlock(
    int Number,
    string Title,
    int HeadingLine,
    IReadOnlyList<ColumnReading> Columns,
    IReadOnlyList<StandRow> Rows,
    IReadOnlyList<RefusedRow> Refused,
    IReadOnlyList<string> Notes)
{
    /// <summary>Smallest step in SI units with which a quantity is written; 0 where it is not given.</summary>
    public double StepOf(StandQuantity quantity) =>
        Columns.Where(column => column.Quantity == quantity).Select(column => column.Step * column.ToSI).FirstOrDefault();
}

/// <summary>A stand table as it was read.</summary>
/// <param name="Source">The file as the caller gave it.</param>
/// <param name="Writing">Delimiter and decimal mark in words.</param>
/// <param name="Blocks">The blocks that are used.</param>
/// <param name="Skipped">Blocks that are not used, and why.</param>
public sealed record StandTable(string Source, string Writing, IReadOnlyList<StandBlock> Blocks, IReadOnlyList<string> Skipped);
