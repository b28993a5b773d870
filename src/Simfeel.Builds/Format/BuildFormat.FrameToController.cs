using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Format;

/// <content>Keys from the top of the file to the table of the speed controllers.</content>
public static partial class BuildFormat
{
    private static IReadOnlyList<KeySpec> Top =>
    [
        Count("format", 1, 1000, 1, "version of the file format"),
        Text("name", true, "name of the build"),
        Text("description", false, "a sentence or two about it"),
        Text("class", false, "size class as the trade says it, such as \"5 in\""),
    ];

    private static IReadOnlyList<KeySpec> Frame =>
    [
        Choice("frame.layout", "where the rotors stand, seen from above", "square", "wide", "stretched", "swept", "plus", "six", "eight"),
        Optional("frame.wheelbase_mm", "mm", Milli, 40, 1500, "required unless positions_mm is given", "distance between opposite motor shafts, through the centre"),
        Optional("frame.aspect", "", 1, 0.4, 2.5, "1.25 for wide, 0.8 for stretched", "side-to-side over front-to-back distance of the motors, wide and stretched only"),
        Default("frame.sweep_deg", "deg", Degree, 0, 35, 15, "how far the front arms are swept back, swept only"),
        Choice("frame.spin", "which way the front edges of the front propellers move", "inward", "outward"),
        new("frame.positions_mm", KeyKind.Positions, "mm", Milli, -1000, 1000, null, "from layout and wheelbase", "motor mounts [x forward, y right, z down] from the plate's centre; a fourth number is the spin, 1 clockwise seen from above, -1 the other way", []),
        Estimated("frame.arm_width_mm", "mm", Milli, 1, 80, "6.2 % of the wheelbase", "width of an arm"),
        Estimated("frame.arm_thickness_mm", "mm", Milli, 0.5, 30, "2.5 % of the wheelbase, 1.5 to 8 mm", "thickness of an arm"),
        Default("frame.material_density_g_cm3", "g/cm3", 1000, 0.5, 3, 1.58, "density of arms and plates; carbon laminate 1.55 to 1.6"),
        Estimated("frame.plate_length_mm", "mm", Milli, 10, 800, "48 % of the wheelbase", "length of the bottom plate"),
        Estimated("frame.plate_width_mm", "mm", Milli, 8, 500, "14 % of the wheelbase", "width of the bottom plate"),
        Estimated("frame.plate_thickness_mm", "mm", Milli, 0.3, 20, "70 % of the arm's thickness", "thickness of the bottom plate"),
        Estimated("frame.plate_mass_g", "g", Milli, 0.1, 3000, "80 % of a full plate", "mass of the bottom plate"),
        Estimated("frame.top_plate_thickness_mm", "mm", Milli, 0, 20, "2 mm; 0 below a wheelbase of 100 mm", "thickness of the top plate, 0 for none"),
        Estimated("frame.top_plate_mass_g", "g", Milli, 0, 2000, "80 % of a full plate", "mass of the top plate"),
        Estimated("frame.deck_height_mm", "mm", Milli, 0, 200, "12 % of the wheelbase", "height between the plates, where the electronics sit"),
        Estimated("frame.hardware_mass_g", "g", Milli, 0, 1000, "30 % of the plates", "screws, nuts, standoffs, printed mounts"),
        Default("frame.duct_mass_g", "g", Milli, 0, 200, 0, "one duct or guard ring around a propeller, 0 for none"),
        Estimated("frame.duct_height_mm", "mm", Milli, 1, 150, "35 % of the propeller's diameter", "height of a duct"),
    ];

    private static IReadOnlyList<KeySpec> Motor =>
    [
        Required("motor.stator_diameter_mm", "mm", Milli, 3, 120, "stator diameter, the first two digits of the size"),
        Required("motor.stator_height_mm", "mm", Milli, 1, 60, "stator height, the last two digits of the size"),
        Required("motor.kv_rpm_per_V", "rpm/V", RpmPerVolt, 20, 60000, "no-load speed per volt"),
        Estimated("motor.mass_g", "g", Milli, 0.3, 1500, "33 g x (stator volume / 2661 mm3)^0.85", "one motor with its short wires"),
        Estimated("motor.outer_diameter_mm", "mm", Milli, 4, 150, "1.25 stator diameters", "diameter of the bell"),
        Estimated("motor.height_mm", "mm", Milli, 2, 150, "stator height + half a stator diameter", "height without the shaft"),
        Default("motor.rotating_share", "", 1, 0.2, 0.8, 0.45, "bell, magnets and shaft over the motor's mass"),
        Estimated("motor.bell_inertia_g_mm2", "g mm2", GramSquareMillimetre, 0.1, 1e6, "rotating mass x (0.41 outer diameters)^2", "spin inertia of the bell"),
        Estimated("motor.winding_resistance_mohm", "mohm", Milli, 1, 5000, "Kt^2/R = 0.000469 (N m)^2/W x (stator volume / 2661 mm3)^(5/3)", "resistance between two wires"),
        Optional("motor.no_load_current_A", "A", 1, 0.01, 20, "losses from loss_factor", "current without a propeller; goes with no_load_voltage_V"),
        Optional("motor.no_load_voltage_V", "V", 1, 0.5, 60, "losses from loss_factor", "voltage of that measurement"),
        Estimated("motor.loss_factor", "", 1, 0.1, 10, "1", "iron and friction losses over those usual for the stator, 4 mN m + 2.1e-6 N m s x speed at 2661 mm3; not used where a no-load current is given"),
        Estimated("motor.inductance_uH", "uH", 1e-6, 0.05, 5000, "12 uH x (Kt / 0.0053 N m/A)^2 x (stator volume / 2661 mm3)^(-1/3)", "inductance between two wires; slows the motor at high speed"),
        Estimated("motor.torque_limit_mN_m", "mN m", Milli, 0.5, 20000, "480 mN m x stator volume / 2661 mm3", "torque toward which the motor saturates"),
        Count("motor.poles", 2, 60, 14, "number of magnets"),
    ];

    private static IReadOnlyList<KeySpec> Propeller =>
    [
        Required("propeller.diameter_in", "in", TradeUnits.Inch, 0.8, 20, "diameter"),
        Optional("propeller.pitch_in", "in", TradeUnits.Inch, 0.2, 20, "required unless stations are given", "pitch; with stations a label only"),
        Count("propeller.blades", 2, 8, null, "number of blades"),
        Estimated("propeller.mass_g", "g", Milli, 0.03, 300, "1.5 g per blade x (diameter / 5.1 in)^2.1", "one propeller"),
        Default("propeller.hub_mass_share", "", 1, 0.02, 0.8, 0.22, "hub over the propeller's mass"),
        Default("propeller.chord_scale", "", 1, 0.4, 2.5, 1, "blade width over that of a usual blade"),
        Estimated("propeller.spin_inertia_g_mm2", "g mm2", GramSquareMillimetre, 0.1, 1e8, "blade mass x k^2 R^2 from the planform, hub as a disc of 0.11 R", "spin inertia"),
        new("propeller.stations", KeyKind.Stations, "", 1, 0, 0, null, "from pitch_in and chord_scale", "measured blade: radius over the tip radius R, chord over R, angle of the chord to the disc in degrees; replaces pitch and planform, and the first radius is where the blade begins", []),
        new("propeller.polar", KeyKind.PolarFile, "", 1, 0, 0, null, "a thin cambered section for low Reynolds numbers", "lift and drag of the blade's section, see below", []),
        Default("propeller.thrust_factor", "", 1, 0.5, 1.5, 1, "thrust over that of the blade-element model, from a thrust stand"),
        Default("propeller.torque_factor", "", 1, 0.5, 1.5, 1, "torque over that of the blade-element model, from a thrust stand"),
    ];

    private static IReadOnlyList<KeySpec> SpeedController =>
    [
        Estimated("speed_controller.current_limit_A", "A", 1, 0.5, 500, "60 A x (stator volume / 2661 mm3)^0.75", "largest current into one motor"),
        Estimated("speed_controller.resistance_mohm", "mohm", Milli, 0.1, 200, "4 mohm x sqrt(60 A / current limit)", "resistance of the transistors and wires in the current's way"),
        new("speed_controller.braking", KeyKind.Flag, "", 1, 0, 0, 1, "true", "true where it brakes the motor actively, false where it lets it coast", []),
        Estimated("speed_controller.brake_current_limit_A", "A", 1, 0, 500, "as current_limit_A", "largest current while braking"),
        Default("speed_controller.command_delay_ms", "ms", Milli, 0, 50, 1, "from the flight controller's command to the changed voltage"),
        Default("speed_controller.idle_percent", "%", 0.01, 0, 25, 5.5, "smallest duty in flight, of full duty, so that the rotors keep turning"),
    ];
}
