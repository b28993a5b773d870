using System.Globalization;

namespace Simfeel.Studies.Fit.Reading;

/// <summary>What the user says of a column: <c>Name=thrust:gf</c>, <c>#3=rpm</c>, <c>Name=ignore</c>.</summary>
public sealed record ColumnOverride(string Name, StandQuantity Quantity, string Unit)
{
    private static readonly Dictionary<string, StandQuantity> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["throttle"] = StandQuantity.Throttle,
        ["thrust"] = StandQuantity.Thrust,
        ["torque"] = StandQuantity.Torque,
        ["voltage"] = StandQuantity.Voltage,
        ["current"] = StandQuantity.Current,
        ["power"] = StandQuantity.ElectricalPower,
        ["mechanical-power"] = StandQuantity.MechanicalPower,
        ["rpm"] = StandQuantity.Speed,
        ["erpm"] = StandQuantity.ElectricalSpeed,
        ["efficiency"] = StandQuantity.Efficiency,
        ["propeller"] = StandQuantity.Propeller,
        ["ignore"] = StandQuantity.Ignored,
    };

    /// <summary>Reads one; null where it is none, with what is wrong in <paramref name="fault"/>.</summary>
    public static ColumnOverride? Parse(string text, out string fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = "";
        int equals = text.LastIndexOf('=');
        if (equals <= 0)
        {
            fault = $"'{text}' is no column; write Name=quantity:unit, such as \"Thrust=thrust:gf\" or #3=rpm.";
            return null;
        }
        string name = text[..equals].Trim(), what = text[(equals + 1)..].Trim();
        int colon = what.IndexOf(':', StringComparison.Ordinal);
        string word = colon < 0 ? what : what[..colon], unit = colon < 0 ? "" : what[(colon + 1)..];
        if (!Words.TryGetValue(word, out StandQuantity quantity))
        {
            fault = $"'{word}' is no quantity; quantities are {string.Join(", ", Words.Keys)}.";
            return null;
        }
        if (unit.Length > 0 && UnitNames.Find(quantity, unit) is null)
        {
            fault = $"'{unit}' is no unit of {word}; units are {string.Join(", ", UnitNames.Of(quantity).Select(u => u.Written[0]))}.";
            return null;
        }
        return new(name, quantity, unit);
    }

    /// <summary>True where this is about a column.</summary>
    internal bool IsAbout(HeadingCell cell) =>
        Name.StartsWith('#') && int.TryParse(Name.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? number == cell.Column
            : ((string[])[cell.Name, cell.Label, cell.Bare]).Any(label => string.Equals(label, Name, StringComparison.OrdinalIgnoreCase));
}
