using Simfeel.Studies.Metrics;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>Numbers as a sheet prints them; what is missing is a dash, what rounds to nothing has no sign.</summary>
internal static class Numbers
{
    public const string Missing = "-";

    /// <summary>With fixed decimals.</summary>
    public static string Fixed(double value, int decimals)
    {
        if (!double.IsFinite(value)) return Missing;
        double rounded = Math.Round(value, decimals);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals);
    }

    /// <summary>With fixed decimals and a sign.</summary>
    public static string Signed(double value, int decimals)
    {
        string text = Fixed(value, decimals);
        return double.IsFinite(value) && Math.Round(value, decimals) > 0 ? "+" + text : text;
    }

    /// <summary>A value of a metric with its unit.</summary>
    public static string Of(Metric metric, double value) => metric.Display.WithSymbol(value);

    /// <summary>A difference or share of a metric with a sign, without its unit; a decimal more than the values where they have none.</summary>
    public static string Difference(Metric metric, double value)
    {
        double shown = value * metric.Display.PerSi;
        return Signed(shown, metric.Display.Decimals == 0 && Math.Abs(shown) < 100 ? 1 : metric.Display.Decimals);
    }

    /// <summary>The same with its unit.</summary>
    public static string DifferenceOf(Metric metric, double value) => metric.Display.WithSymbol(Difference(metric, value));

    /// <summary>From the low to the high end of a band.</summary>
    public static string Of(Metric metric, Band band) =>
        double.IsFinite(band.Low + band.High) ? $"{Difference(metric, band.Low)} to {Difference(metric, band.High)}" : Missing;

    /// <summary>Percent with a sign.</summary>
    public static string Percent(double value) => Signed(value, 0) is string text && text != Missing ? text + " %" : Missing;

    /// <summary>Label of an axis: what it shows and its unit, "ratio" where it has none.</summary>
    public static string Axis(string what, string unit) => $"{what}, {(unit.Length > 0 ? unit : "ratio")}";

    /// <summary>A number of a build file: about four digits, without a power of ten where it can be read without.</summary>
    public static string Plain(double value)
    {
        if (!double.IsFinite(value)) return Missing;
        double size = Math.Abs(value);
        // what is left of a sum that should vanish
        if (size < 1e-9) return "0";
        return size >= 1e4 ? value.ToString("F0") : size < 1e-3 ? value.ToString("G3") : Math.Round(value, 9).ToString("G4");
    }
}
