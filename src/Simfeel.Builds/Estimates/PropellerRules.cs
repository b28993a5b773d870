using Simfeel.Builds.Reading;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Estimates;

/// <summary>The propeller and the speed controller out of a sheet.</summary>
internal static class PropellerRules
{
    // A hub is taken as a disc of this share of the tip radius (common practice: 5 mm shaft, 13 mm hub at 5 inch).
    private const double HubRadius = 0.11;

    // How far thrust and torque of a propeller known by its size only may lie from the model: the scatter (rms) over the twelve
    // measured propellers of the validation, 21 % and 23 %, which are less alike than those that one trade sells.
    private const double ThrustSpread = 0.2, TorqueSpread = 0.23;

    public static PropellerSpec Resolve(ValueLedger ledger, BuildSheet sheet)
    {
        double diameter = ledger.Given("propeller.diameter_in");
        PropellerBlades blades = new()
        {
            Diameter = diameter,
            Pitch = sheet.Stations is BladeStations stations
                ? ledger.OrRule("propeller.pitch_in", PitchOf(stations, diameter), 0.1, "2 pi r tan(twist) at 75 % of the radius")
                : ledger.Given("propeller.pitch_in"),
            Count = (int)ledger.Given("propeller.blades"),
            ChordScale = ledger.OrDefault("propeller.chord_scale"),
            ThrustFactor = ledger.OrDefault("propeller.thrust_factor", ThrustSpread),
            TorqueFactor = ledger.OrDefault("propeller.torque_factor", TorqueSpread),
            Stations = sheet.Stations,
            Polar = sheet.Polar?.Polar,
        };
        double mass = ledger.OrRule(
            "propeller.mass_g", 0.0015 * blades.Count * Math.Pow(blades.Diameter / (5.1 * TradeUnits.Inch), 2.1), 0.2);
        double hub = ledger.OrDefault("propeller.hub_mass_share");
        double radius = blades.Diameter / 2;
        double k2 = blades.Geometry().GyrationRadiusSquared;
        double inertia = mass * radius * radius * (((1 - hub) * k2) + (hub * 0.5 * HubRadius * HubRadius));
        return new(
            new PropellerBody { Mass = mass, SpinInertia = ledger.OrRule("propeller.spin_inertia_g_mm2", inertia, 0.15) },
            blades);
    }

    /// <summary>The pitch that a propeller of these stations is called by, m: that of its section at three quarters of the radius.</summary>
    private static double PitchOf(BladeStations stations, double diameter)
    {
        const double r = 0.75;
        double twist = new RotorGeometry(diameter, 1, stations.Items, stations[0].Radius, LowReynoldsPolar.Instance).At(r).Twist;
        return Math.PI * diameter * r * Math.Tan(Math.Min(twist, 1.5));
    }

    public static SpeedControllerSpec ResolveController(ValueLedger ledger, MotorBody motor)
    {
        double limit = ledger.OrRule(
            "speed_controller.current_limit_A", 60 * Math.Pow(motor.StatorVolume / MotorRules.ReferenceVolume, 0.75), 0.25);
        bool braking = ledger.OrDefault("speed_controller.braking") > 0;
        return new SpeedControllerSpec
        {
            CurrentLimit = limit,
            BrakeCurrentLimit = braking ? ledger.OrRule("speed_controller.brake_current_limit_A", limit, 0) : 0,
            Resistance = ledger.OrRule("speed_controller.resistance_mohm", 0.004 * Math.Sqrt(60 / limit), 0.4),
            CommandDelay = ledger.OrDefault("speed_controller.command_delay_ms"),
            IdleDuty = ledger.OrDefault("speed_controller.idle_percent"),
        };
    }
}
