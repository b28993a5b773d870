using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Estimates;

/// <summary>The battery out of a sheet.</summary>
internal static class BatteryRules
{
    // Open-circuit voltage of a pouch cell at the kernel's charge nodes (common practice, no particular cell).
    private static readonly double[] Pouch = [3.30, 3.55, 3.66, 3.72, 3.76, 3.80, 3.84, 3.89, 3.96, 4.03, 4.11, 4.20];

    // Measured quasi open-circuit voltage of a high-rate 21700 cell (Sunil, Pattipati, Balasingam, IEEE Trans. Instrum.
    // Meas. 2025, data repository, cell A).
    private static readonly double[] RoundCharge = [0, 0.0151, 0.0452, 0.0955, 0.1508, 0.2915, 0.4573, 0.8342, 0.9497, 1];
    private static readonly double[] RoundVoltage = [2.5061, 2.8981, 3.1461, 3.3231, 3.4218, 3.5737, 3.7017, 4.0637, 4.1009, 4.1932];

    private const double PackDensity = 1500;
    private const double AmpereHour = 3600;

    // Shares by which a worn-out pack differs from the new one. The trade calls a cell worn out at 80 % of its capacity; that
    // its resistance has about doubled by then is common practice, too. (IEC 61960 ends its cycle test lower, at 60 %; from
    // memory.)
    private const double WornCapacityLoss = 0.2, WornResistanceGain = 1;

    public static BatterySpec Resolve(ValueLedger ledger, FrameSpec frame)
    {
        int cells = (int)ledger.Given("battery.cells");
        double capacity = ledger.Given("battery.capacity_mAh");
        bool round = ledger.Word("battery.cell_type") == "cylindrical";
        double energy = cells * (round ? 3.6 : 3.7) * capacity;
        double mass = ledger.OrRule("battery.mass_g", energy / AmpereHour / (round ? 200 : 140), 0.12);
        double edge = Math.Cbrt(mass / PackDensity / 2.4);
        Vec3 size = new(
            ledger.OrRule("battery.length_mm", 2 * edge, 0.1),
            ledger.OrRule("battery.width_mm", edge, 0.1),
            ledger.OrRule("battery.height_mm", 1.2 * edge, 0.1));
        bool top = ledger.Word("battery.mount") == "top";
        double z = top
            ? -(frame.DeckHeight + (frame.PlateThickness / 2) + frame.TopPlateThickness + (size.Z / 2))
            : (frame.PlateThickness / 2) + (size.Z / 2);
        double perCell = ledger.OrRule("battery.resistance_per_cell_mohm", (round ? 0.050 : 0.005) * AmpereHour / capacity, 0.3);
        double lead = ledger.OrDefault("battery.lead_resistance_mohm");
        double pair = ledger.OrRule("battery.pair_resistance_per_cell_mohm", 0.3 * perCell, 0.5);
        double full = ledger.OrDefault("battery.full_cell_voltage_V");
        double wear = ledger.OrDefault("battery.wear_percent");
        return new BatterySpec
        {
            Cells = cells,
            Capacity = (1 - (WornCapacityLoss * wear)) * capacity,
            Wear = wear,
            CellVoltage = CellVoltage(round, full),
            Mass = mass,
            Size = size,
            p_OC = new(
                ledger.OrDefault("battery.x_mm"),
                ledger.OrDefault("battery.y_mm"),
                ledger.OrRule("battery.z_mm", z, 0.1)),
            SeriesResistance = (cells * (1 + (WornResistanceGain * wear)) * perCell) + lead,
            PairResistance = cells * (1 + (WornResistanceGain * wear)) * pair,
            PairTime = ledger.OrDefault("battery.pair_time_s"),
            CurrentRating = ledger.OrRule("battery.current_rating_A", (round ? 10 : 100) * capacity / AmpereHour, 0.3),
            NominalEnergy = energy,
        };
    }

    /// <summary>One cell's voltage at the charge nodes. Another full voltage shifts it in proportion to the charge.</summary>
    internal static double[] CellVoltage(bool round, double full)
    {
        IReadOnlyList<double> nodes = BatteryConstants.ChargeNodes;
        double[] voltage = round ? [.. nodes.Select(s => Interpolated(s))] : [.. Pouch];
        double shift = full - voltage[^1];
        for (int i = 0; i < voltage.Length; i++) voltage[i] += shift * nodes[i];
        return voltage;

        static double Interpolated(double charge)
        {
            int i = 1;
            while (i < RoundCharge.Length - 1 && charge > RoundCharge[i]) i++;
            double share = (charge - RoundCharge[i - 1]) / (RoundCharge[i] - RoundCharge[i - 1]);
            return RoundVoltage[i - 1] + (share * (RoundVoltage[i] - RoundVoltage[i - 1]));
        }
    }
}
