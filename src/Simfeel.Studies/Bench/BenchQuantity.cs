using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Bench;

/// <summary>What a quantity of the bench is.</summary>
public enum BenchKind
{
    /// <summary>Mass.</summary>
    Mass,

    /// <summary>A coordinate of the balance point.</summary>
    Balance,

    /// <summary>A moment of inertia.</summary>
    Inertia,
}

/// <summary>One number of a craft as the model has it and as it was measured. SI units.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Axis">Its axis; of no meaning for the mass.</param>
/// <param name="Key">Key of a build file that takes the measured number, in thousandths of the SI unit.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="Model">The model's number.</param>
/// <param name="ModelMeasured">Whether the model has it from an earlier measurement, in the build's table <c>[measured]</c>.</param>
/// <param name="Measured">What was measured; null where nothing was.</param>
public sealed record BenchQuantity(
    BenchKind Kind, BenchAxis Axis, string Key, string Title, double Model, bool ModelMeasured, Measurement? Measured)
{
    /// <summary>Thousandths of the SI unit in one SI unit: all of these are shown in g, mm and g m^2.</summary>
    public const double PerSi = 1e3;

    /// <summary>Unit for people.</summary>
    public string Unit => Kind switch { BenchKind.Mass => "g", BenchKind.Balance => "mm", _ => "g m2" };

    /// <summary>Model less measured, in SI; NaN where nothing was measured.</summary>
    public double Difference => Measured is null ? double.NaN : Model - Measured.Value;

    /// <summary>The same in percent of what was measured; NaN for a coordinate, whose zero is a choice.</summary>
    public double Percent => Kind == BenchKind.Balance || Measured is null ? double.NaN : 100 * Difference / Measured.Value;

    /// <summary>Half the 95 % band in percent of what was measured; NaN for a coordinate.</summary>
    public double BandPercent => Kind == BenchKind.Balance || Measured is null ? double.NaN : 100 * Measured.HalfBand / Measured.Value;

    /// <summary>Whether the model lies within the band of the measurement.</summary>
    public bool Agrees => Measured is not null && Math.Abs(Difference) <= Measured.HalfBand;

    /// <summary>A number of this quantity in its unit for people.</summary>
    public string Text(double value)
    {
        double shown = value * PerSi;
        int decimals = Kind == BenchKind.Inertia ? FourDigits(shown) : Kind == BenchKind.Mass && Math.Abs(shown) >= 100 ? 0 : 1;
        return Numbers.Fixed(shown, decimals);
    }

    /// <summary>Decimals that show four digits of a number.</summary>
    private static int FourDigits(double value) => value > 0 ? Math.Clamp(3 - (int)Math.Floor(Math.Log10(value)), 0, 9) : 1;
}
