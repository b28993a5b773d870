using Simfeel.Builds;

namespace Simfeel.Studies.Fit;

/// <summary>One constant of a build as a fit found it, in the unit of its key.</summary>
/// <param name="Key">Key of the build file.</param>
/// <param name="Unit">Unit; empty for plain numbers.</param>
/// <param name="Meaning">What it is, in words.</param>
/// <param name="Before">The build's value.</param>
/// <param name="Value">The fitted value; the build's where the table does not tell.</param>
/// <param name="RelativeSigma">Standard deviation over the value.</param>
/// <param name="Determined">True where the table tells it.</param>
/// <param name="WhyNot">Why it could not be determined; else empty.</param>
public sealed record FittedConstant(
    string Key, string Unit, string Meaning, double Before, double Value, double RelativeSigma, bool Determined, string WhyNot)
{
    /// <summary>Low end of the 95 % band.</summary>
    public double Low => Value * Math.Max(0, 1 - (2 * RelativeSigma));

    /// <summary>High end of the 95 % band.</summary>
    public double High => Value * (1 + (2 * RelativeSigma));
}

/// <summary>How well the fit meets one column.</summary>
/// <param name="Quantity">The column's quantity.</param>
/// <param name="Rows">Number of readings.</param>
/// <param name="RmsPercent">Root mean square of measured less fitted, in percent of the fitted value.</param>
public sealed record ColumnResidual(string Quantity, int Rows, double RmsPercent);

/// <summary>What a thrust table says of a build.</summary>
public sealed record StandFit
{
    /// <summary>The table as it was read.</summary>
    public required StandTable Table { get; init; }

    /// <summary>The build before.</summary>
    public required AssembledBuild Before { get; init; }

    /// <summary>The build with the fitted constants.</summary>
    public required Build After { get; init; }

    /// <summary>All constants, determined or not.</summary>
    public required IReadOnlyList<FittedConstant> Constants { get; init; }

    /// <summary>Residuals by column.</summary>
    public required IReadOnlyList<ColumnResidual> Residuals { get; init; }

    /// <summary>Rows that the fit rests on.</summary>
    public required IReadOnlyList<StandRow> Rows { get; init; }

    /// <summary>Rows that are not used, by line, with reasons.</summary>
    public required IReadOnlyList<RefusedRow> Refused { get; init; }

    /// <summary>Whether the throttle was taken as duty, and why.</summary>
    public required string Throttle { get; init; }

    /// <summary>True where the throttle was taken as duty in every row.</summary>
    public required bool ThrottleIsDuty { get; init; }

    /// <summary>Findings worth knowing: rows at rest, cross-checks, choices made.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>A constant by its key.</summary>
    public FittedConstant Constant(string key) => Constants.Single(constant => constant.Key == key);
}
