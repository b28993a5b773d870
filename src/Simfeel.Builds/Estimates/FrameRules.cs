using Simfeel.Builds.Reading;

namespace Simfeel.Builds.Estimates;

/// <summary>The frame out of a sheet. Proportions of missing sizes are common practice.</summary>
internal static class FrameRules
{
    private const double PlateFill = 0.8;

    public static FrameSpec Resolve(ValueLedger ledger, BuildSheet sheet, double propellerDiameter)
    {
        bool outward = ledger.Word("frame.spin") == "outward";
        string layout = ledger.Word("frame.layout");
        IReadOnlyList<MotorMount> mounts;
        double wheelbase;
        if (sheet.Positions.Count > 0)
        {
            layout = "explicit";
            mounts = RotorLayout.Explicit(sheet.Positions, outward);
            wheelbase = 2 * mounts.Average(m => double.Hypot(m.p_OM.X, m.p_OM.Y));
        }
        else
        {
            wheelbase = ledger.Given("frame.wheelbase_mm");
            double aspect = layout is "wide" or "stretched"
                ? ledger.OrRule("frame.aspect", layout == "wide" ? 1.25 : 0.8, 0, "usual for this layout")
                : 1;
            double sweep = layout == "swept" ? ledger.OrDefault("frame.sweep_deg") : 0;
            mounts = RotorLayout.Named(layout, wheelbase, aspect, sweep, outward);
        }
        double density = ledger.OrDefault("frame.material_density_g_cm3");
        double armThickness = ledger.OrRule("frame.arm_thickness_mm", Math.Clamp(0.025 * wheelbase, 0.0015, 0.008), 0.2);
        double length = ledger.OrRule("frame.plate_length_mm", 0.48 * wheelbase, 0.2);
        double width = ledger.OrRule("frame.plate_width_mm", 0.14 * wheelbase, 0.2);
        double thickness = ledger.OrRule("frame.plate_thickness_mm", 0.7 * armThickness, 0.3);
        double plateMass = ledger.OrRule("frame.plate_mass_g", PlateFill * density * length * width * thickness, 0.2);
        double topThickness = ledger.OrRule("frame.top_plate_thickness_mm", wheelbase < 0.1 ? 0 : 0.002, 0);
        double topMass = ledger.OrRule("frame.top_plate_mass_g", PlateFill * density * length * width * topThickness, 0.2);
        double ductMass = ledger.OrDefault("frame.duct_mass_g");
        return new FrameSpec
        {
            Layout = layout,
            Mounts = mounts,
            Wheelbase = wheelbase,
            ArmWidth = ledger.OrRule("frame.arm_width_mm", 0.062 * wheelbase, 0.2),
            ArmThickness = armThickness,
            MaterialDensity = density,
            PlateLength = length,
            PlateWidth = width,
            PlateThickness = thickness,
            PlateMass = plateMass,
            TopPlateThickness = topThickness,
            TopPlateMass = topMass,
            DeckHeight = ledger.OrRule("frame.deck_height_mm", 0.12 * wheelbase, 0.2),
            HardwareMass = ledger.OrRule("frame.hardware_mass_g", 0.3 * (plateMass + topMass), 0.4),
            DuctMass = ductMass,
            DuctDiameter = 1.02 * propellerDiameter,
            DuctHeight = ductMass > 0 ? ledger.OrRule("frame.duct_height_mm", 0.35 * propellerDiameter, 0.2) : 0.35 * propellerDiameter,
        };
    }
}
