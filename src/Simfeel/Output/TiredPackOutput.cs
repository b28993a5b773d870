using Simfeel.Builds;
using Simfeel.Physics.Maths;

namespace Simfeel.CommandLine.Output;

/// <summary>Says what a tired pack takes away.</summary>
internal static class TiredPackOutput
{
    /// <summary>One sentence.</summary>
    public static string Sentence(TiredPack packs)
    {
        (PackPoint fresh, PackPoint tired) = (packs.Fresh, packs.Tired);
        return $"Tired pack ({100 * TiredPack.TiredCharge:F0} percent charge, worn out) against a new full one, all motors at full throttle: "
            + $"{tired.Thrust / TradeUnits.GramForce:F0} instead of {fresh.Thrust / TradeUnits.GramForce:F0} gf per rotor ({Percent(fresh.Thrust, tired.Thrust)}), "
            + $"{tired.Speed * TradeUnits.RpmPerRadian:F0} instead of {fresh.Speed * TradeUnits.RpmPerRadian:F0} rpm ({Percent(fresh.Speed, tired.Speed)}), "
            + $"{tired.Voltage:F1} instead of {fresh.Voltage:F1} V ({Percent(fresh.Voltage, tired.Voltage)}), "
            + Reserve(fresh, tired);
    }

    /// <summary>Current limits do not tire: where they decide, nothing is lost.</summary>
    private static string Reserve(PackPoint fresh, PackPoint tired) =>
        tired.HoverReserveUp == fresh.HoverReserveUp
            ? $"and from hover the same {fresh.HoverReserveUp:F3} N m of torque reserve up, all motors at once (0 %: the speed controllers' current limit decides there)."
            : $"and from hover {tired.HoverReserveUp:F3} instead of {fresh.HoverReserveUp:F3} N m of torque reserve up, all motors at once ({Percent(fresh.HoverReserveUp, tired.HoverReserveUp)}).";

    /// <summary>The same for machines.</summary>
    public static Dictionary<string, object?> Json(TiredPack packs) => new()
    {
        ["fresh"] = Point(packs.Fresh, 1, 0),
        ["tired"] = Point(packs.Tired, TiredPack.TiredCharge, 100),
        ["change_percent"] = new Dictionary<string, object?>
        {
            ["thrust"] = Change(packs.Fresh.Thrust, packs.Tired.Thrust),
            ["rpm"] = Change(packs.Fresh.Speed, packs.Tired.Speed),
            ["pack_voltage"] = Change(packs.Fresh.Voltage, packs.Tired.Voltage),
            ["hover_reserve_up"] = Change(packs.Fresh.HoverReserveUp, packs.Tired.HoverReserveUp),
        },
    };

    private static Dictionary<string, object?> Point(PackPoint point, double charge, double wear) => new()
    {
        ["state_of_charge"] = charge,
        ["wear_percent"] = wear,
        ["thrust_N"] = point.Thrust,
        ["rpm"] = point.Speed * TradeUnits.RpmPerRadian,
        ["pack_voltage_V"] = point.Voltage,
        ["hover_reserve_up_Nm"] = point.HoverReserveUp,
    };

    private static double Change(double from, double to) => 100 * (to - from) / from;

    private static string Percent(double from, double to) => $"{Change(from, to):+0;-0;0} %";
}
