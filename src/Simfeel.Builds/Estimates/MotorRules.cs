namespace Simfeel.Builds.Estimates;

/// <summary>
/// The motor out of a sheet. Missing constants scale with the stator volume V from one reference motor of the 5 inch
/// class (22 x 7 mm stator, 33 g, 60 mohm at 1800 rpm/V; common practice, no particular product):
/// torque limit and losses as V; motor constant Km^2 = Kt^2/R as V^(5/3), which follows from copper loss per volume
/// at equal current density; mass as V^0.85, which fits stators of 8 to 28 mm.
/// </summary>
internal static class MotorRules
{
    /// <summary>Stator volume of the reference motor, m^3: pi/4 x 22^2 x 7 mm^3.</summary>
    public const double ReferenceVolume = 2.6609e-6;

    /// <summary>Torque constant of the reference motor, N m/A.</summary>
    public const double ReferenceKt = 60 / (2 * Math.PI * 1800);

    /// <summary>Winding resistance of the reference motor, ohm.</summary>
    public const double ReferenceResistance = 0.060;

    /// <summary>Radius of gyration of a bell over its outer diameter: magnets and ring sit near the rim.</summary>
    public const double BellGyration = 0.41;

    /// <summary>Mass of the reference motor, kg.</summary>
    public const double ReferenceMass = 0.033;

    private const double ReferenceTorqueLimit = 0.48;
    private const double ReferenceLossTorque = 0.004;
    private const double ReferenceLossPerSpeed = 2.1e-6;
    private const double ReferenceInductance = 12e-6;

    // Mean resistance-like drop of a six-step commutated winding per electrical speed and inductance; with 14 poles and
    // 12 uH it brings full-throttle speed of the reference motor to what thrust stands show (common practice).
    private const double DroopFactor = 0.30;

    /// <summary>Winding resistance expected of a motor, ohm, from its torque constant (N m/A) and stator volume (m^3).</summary>
    public static double ExpectedResistance(double kt, double volume) =>
        ReferenceResistance * Square(kt / ReferenceKt) / Math.Pow(volume / ReferenceVolume, 5.0 / 3);

    public static MotorSpec Resolve(ValueLedger ledger)
    {
        double diameter = ledger.Given("motor.stator_diameter_mm");
        double height = ledger.Given("motor.stator_height_mm");
        double volume = Math.PI / 4 * diameter * diameter * height;
        double size = volume / ReferenceVolume;
        MotorBody body = new()
        {
            StatorDiameter = diameter,
            StatorHeight = height,
            Mass = ledger.OrRule("motor.mass_g", ReferenceMass * Math.Pow(size, 0.85), 0.12),
            OuterDiameter = ledger.OrRule("motor.outer_diameter_mm", 1.25 * diameter, 0.05),
            Height = ledger.OrRule("motor.height_mm", height + (0.5 * diameter), 0.15),
            RotatingShare = ledger.OrDefault("motor.rotating_share"),
        };
        double ring = BellGyration * body.OuterDiameter;
        MotorBell bell = new()
        {
            SpinInertia = ledger.OrRule("motor.bell_inertia_g_mm2", body.RotatingShare * body.Mass * ring * ring, 0.2),
        };
        return new(body, bell, Electrics(ledger, volume, size));
    }

    private static MotorElectrics Electrics(ValueLedger ledger, double volume, double size)
    {
        double kt = 1 / ledger.Given("motor.kv_rpm_per_V");
        double resistance = ledger.OrRule("motor.winding_resistance_mohm", ExpectedResistance(kt, volume), 0.25);
        double loss, lossPerSpeed;
        if (ledger.Has("motor.no_load_current_A") && ledger.Has("motor.no_load_voltage_V"))
        {
            // One measured point fixes the size of the losses; how they split is taken over from the reference motor.
            double current = ledger.Given("motor.no_load_current_A");
            double voltage = ledger.Given("motor.no_load_voltage_V");
            double speed = Math.Max(0, (voltage - (current * resistance)) / kt);
            double ratio = ReferenceLossPerSpeed / ReferenceLossTorque;
            loss = kt * current / (1 + (ratio * speed));
            lossPerSpeed = ratio * loss;
        }
        else
        {
            double factor = ledger.OrRule("motor.loss_factor", 1, 0.4, "as usual for the stator volume");
            (loss, lossPerSpeed) = (factor * ReferenceLossTorque * size, factor * ReferenceLossPerSpeed * size);
        }
        double polePairs = ledger.OrDefault("motor.poles") / 2;
        double inductance = ledger.OrRule(
            "motor.inductance_uH", ReferenceInductance * Square(kt / ReferenceKt) / Math.Cbrt(size), 0.4);
        return new MotorElectrics
        {
            Kt = kt,
            WindingResistance = resistance,
            TorqueLimit = ledger.OrRule("motor.torque_limit_mN_m", ReferenceTorqueLimit * size, 0.25),
            LossTorque = loss,
            LossTorquePerSpeed = lossPerSpeed,
            CommutationDroop = DroopFactor * polePairs * inductance,
        };
    }

    private static double Square(double x) => x * x;
}
