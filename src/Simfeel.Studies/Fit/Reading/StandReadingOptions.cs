namespace Simfeel.Studies.Fit.Reading;

/// <summary>What the user says of a table beyond what it says itself.</summary>
public sealed record StandReadingOptions
{
    /// <summary>Columns whose reading is given.</summary>
    public IReadOnlyList<ColumnOverride> Columns { get; init; } = [];

    /// <summary>The block to use, counted from 1; null for all that fit the build's propeller.</summary>
    public int? Block { get; init; }

    /// <summary>Magnets of the motor, for electrical speeds; null for the build's number.</summary>
    public int? Poles { get; init; }

    /// <summary>Decimal mark; null to find out.</summary>
    public char? DecimalMark { get; init; }
}
