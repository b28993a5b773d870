using System.Text;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>A unit of a quantity.</summary>
/// <param name="Words">As shown to people.</param>
/// <param name="ToSI">SI value of one.</param>
/// <param name="Written">Ways it is written, without blanks, dots and case.</param>
internal sealed record StandUnit(string Words, double ToSI, params string[] Written);

/// <summary>The units that stands and sheets use.</summary>
internal static class UnitNames
{
    private const double Gravity = StandardAtmosphere.StandardGravity;
    private const double Pound = 0.45359237;

    /// <summary>Pulses of 1000 to 2000 us, closed to full throttle (common practice).</summary>
    public static readonly StandUnit Pulse = new("pulse width, 1000 to 2000 us", 1e-3, "us", "\u00b5s", "usec", "microseconds", "microsec");

    /// <summary>Throttle from 0 to 1.</summary>
    public static readonly StandUnit Share = new("0 to 1", 1, "0-1", "0..1", "0to1", "1");

    /// <summary>Throttle in percent.</summary>
    public static readonly StandUnit Percent = new("percent", 0.01, "%", "percent", "pct", "prozent");

    private static readonly StandUnit Rpm = new("revolutions per minute", Math.PI / 30, "rpm", "1/min", "min-1", "u/min", "umin", "tr/min", "r/min", "rev/min", "upm", "erpm", "rpmel");

    private static readonly Dictionary<StandQuantity, StandUnit[]> Units = new()
    {
        [StandQuantity.Throttle] = [Percent, Share, Pulse, new("pulse width, 1 to 2 ms", 1, "ms", "msec")],
        [StandQuantity.Thrust] =
        [
            new("gram-force", 1e-3 * Gravity, "g", "gf", "gr", "gram", "grams", "gramm", "grammes", "gms", "grf", "pond"), new("kilogram-force", Gravity, "kg", "kgf", "kp"),
            new("newton", 1, "n", "newton", "newtons"), new("millinewton", 1e-3, "mn"),
            new("pound-force", Pound * Gravity, "lb", "lbs", "lbf"), new("ounce-force", Pound * Gravity / 16, "oz", "ozf"),
        ],
        [StandQuantity.Torque] =
        [
            new("newton metre", 1, "nm"), new("millinewton metre", 1e-3, "mnm", "nmm"), new("newton centimetre", 1e-2, "ncm"),
            new("gram-force centimetre", 1e-5 * Gravity, "gcm", "gfcm"), new("kilogram-force centimetre", 1e-2 * Gravity, "kgcm", "kgfcm"),
            new("pound-force inch", Pound * Gravity * TradeUnits.Inch, "inlb", "inlbf", "lbin", "lbfin"), new("ounce-force inch", Pound * Gravity * TradeUnits.Inch / 16, "inoz", "inozf", "ozin", "ozfin"),
        ],
        [StandQuantity.Voltage] = [new("volt", 1, "v", "volt", "volts"), new("millivolt", 1e-3, "mv")],
        [StandQuantity.Current] = [new("ampere", 1, "a", "amp", "amps", "ampere", "amperes"), new("milliampere", 1e-3, "ma")],
        [StandQuantity.ElectricalPower] = [new("watt", 1, "w", "watt", "watts"), new("kilowatt", 1e3, "kw")],
        [StandQuantity.MechanicalPower] = [new("watt", 1, "w", "watt", "watts"), new("kilowatt", 1e3, "kw")],
        [StandQuantity.Speed] = [Rpm, new("1000 revolutions per minute", 1e3 * Math.PI / 30, "krpm", "1000rpm"), new("radian per second", 1, "rad/s"), new("revolution per second", 2 * Math.PI, "hz", "1/s", "rps", "rev/s")],
        [StandQuantity.ElectricalSpeed] = [Rpm, new("radian per second", 1, "rad/s"), new("revolution per second", 2 * Math.PI, "hz", "1/s")],
        [StandQuantity.Efficiency] = [new("gram-force per watt", 1e-3 * Gravity, "g/w", "gf/w", "gr/w", "grams/watt", "grams/w", "gperw"), new("newton per watt", 1, "n/w"), new("kilogram-force per kilowatt", 1e-3 * Gravity, "kg/kw")],
    };

    /// <summary>The units of a quantity; the first is the usual one.</summary>
    public static IReadOnlyList<StandUnit> Of(StandQuantity quantity) => Units.GetValueOrDefault(quantity, []);

    /// <summary>The unit that a text names for a quantity; null where it names none.</summary>
    public static StandUnit? Find(StandQuantity quantity, string text)
    {
        string plain = Plain(text);
        return plain.Length == 0 ? null : Of(quantity).FirstOrDefault(unit => unit.Written.Contains(plain));
    }

    /// <summary>The quantity that a unit alone gives away: <c>V</c>, <c>g/W</c>; ignored where it could be several.</summary>
    public static StandQuantity QuantityOf(string text)
    {
        string plain = Plain(text);
        foreach (StandQuantity quantity in (StandQuantity[])[StandQuantity.Voltage, StandQuantity.Current, StandQuantity.Speed, StandQuantity.ElectricalPower, StandQuantity.Efficiency, StandQuantity.Torque, StandQuantity.Thrust, StandQuantity.Throttle])
        {
            if (plain is not "1" && Units[quantity].Any(unit => unit.Written.Contains(plain))) return plain == "erpm" ? StandQuantity.ElectricalSpeed : quantity;
        }
        return StandQuantity.Ignored;
    }

    /// <summary>True where a text is nothing but a unit, in brackets or not.</summary>
    public static bool IsUnit(string text)
    {
        string plain = Plain(text);
        return plain.Length > 0 && (plain is "-" or "\u00b0c" or "s" or "degc" or "c" || Units.Values.Any(units => units.Any(unit => unit.Written.Contains(plain))));
    }

    /// <summary>Lower case, without brackets, blanks, dots and multiplication signs.</summary>
    private static string Plain(string text)
    {
        StringBuilder plain = new();
        foreach (char c in text.Replace('\u03bc', '\u00b5'))
        {
            if (!" \t\u00a0[](){}.\u00b7\u22c5*^".Contains(c)) plain.Append(char.ToLowerInvariant(c));
        }
        string result = plain.ToString();
        // in-lb and N-m, but min-1 and 0-1 keep their dash
        return result.Contains('-') && result is not ("min-1" or "0-1" or "-") ? result.Replace("-", "", StringComparison.Ordinal) : result;
    }
}
