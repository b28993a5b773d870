namespace Simfeel.Builds.Format;

/// <content>Keys from the table of the battery to that of what was measured.</content>
public static partial class BuildFormat
{
    private static IReadOnlyList<KeySpec> Battery =>
    [
        Count("battery.cells", 1, 14, null, "cells in series"),
        Required("battery.capacity_mAh", "mAh", 3.6, 30, 60000, "capacity"),
        Choice("battery.cell_type", "flat pouch cells or round cells in steel cans", "pouch", "cylindrical"),
        Default("battery.wear_percent", "%", 0.01, 0, 100, 0, "age of the pack: 0 new, 100 worn out, with 80 % of the capacity and twice the cells' resistances, in proportion between; the other keys say what the new pack has (common practice: a cell counts as worn out at 80 % of its capacity, and has about doubled its resistance by then)"),
        Default("battery.full_cell_voltage_V", "V", 1, 4, 4.45, 4.2, "voltage of a full cell at rest"),
        Estimated("battery.mass_g", "g", Milli, 0.5, 10000, "140 Wh/kg for pouch, 200 Wh/kg for cylindrical cells", "mass with wires and plug"),
        Estimated("battery.length_mm", "mm", Milli, 5, 600, "box of 1.5 g/cm3, 2 : 1 : 1.2", "length, along x"),
        Estimated("battery.width_mm", "mm", Milli, 3, 400, "box of 1.5 g/cm3, 2 : 1 : 1.2", "width, along y"),
        Estimated("battery.height_mm", "mm", Milli, 3, 300, "box of 1.5 g/cm3, 2 : 1 : 1.2", "height"),
        Choice("battery.mount", "on the top plate or under the bottom plate", "top", "bottom"),
        Default("battery.x_mm", "mm", Milli, -500, 500, 0, "centre, forward"),
        Default("battery.y_mm", "mm", Milli, -500, 500, 0, "centre, to the right"),
        Estimated("battery.z_mm", "mm", Milli, -500, 500, "against the plate it is mounted on", "centre, down"),
        Estimated("battery.resistance_per_cell_mohm", "mohm", Milli, 0.1, 1000, "5 mohm Ah / capacity for pouch, 50 mohm Ah / capacity for cylindrical cells", "series resistance of one cell"),
        Default("battery.lead_resistance_mohm", "mohm", Milli, 0, 200, 3, "leads and plug together"),
        Estimated("battery.pair_resistance_per_cell_mohm", "mohm", Milli, 0, 1000, "30 % of resistance_per_cell", "further resistance of one cell that builds up with time"),
        Default("battery.pair_time_s", "s", 1, 0.2, 600, 15, "time in which it builds up"),
        Estimated("battery.current_rating_A", "A", 1, 0.5, 2000, "100 x capacity per hour for pouch, 10 x for cylindrical cells", "current that the pack stands for some seconds"),
    ];

    private static IReadOnlyList<KeySpec> Stack =>
    [
        Estimated("stack.mass_g", "g", Milli, 0.3, 2000, "30 % of the motors", "speed controllers, flight controller, receiver, video transmitter"),
        Estimated("stack.length_mm", "mm", Milli, 4, 300, "36 mm x (mass / 40 g)^(1/3)", "length"),
        Estimated("stack.width_mm", "mm", Milli, 4, 300, "36 mm x (mass / 40 g)^(1/3)", "width"),
        Estimated("stack.height_mm", "mm", Milli, 1, 150, "14 mm x (mass / 40 g)^(1/3)", "height"),
        Default("stack.x_mm", "mm", Milli, -500, 500, 0, "centre, forward"),
        Default("stack.y_mm", "mm", Milli, -500, 500, 0, "centre, to the right"),
        Estimated("stack.z_mm", "mm", Milli, -500, 500, "middle of the deck", "centre, down"),
        Estimated("stack.power_W", "W", 1, 0.05, 300, "0.4 W per gram of stack", "power that electronics and video draw all the time"),
        Estimated("stack.wiring_mass_g", "g", Milli, 0, 1000, "3 % of all other parts", "wires, solder, straps, antennas, spread near the centre"),
    ];

    private static IReadOnlyList<KeySpec> Camera =>
    [
        Default("camera.mass_g", "g", Milli, 0, 2000, 0, "flight camera, 0 for none"),
        Estimated("camera.size_mm", "mm", Milli, 3, 200, "cube of 1.2 g/cm3", "edge of the cube that stands for it"),
        Estimated("camera.x_mm", "mm", Milli, -500, 500, "front edge of the plate", "centre, forward"),
        Default("camera.y_mm", "mm", Milli, -500, 500, 0, "centre, to the right"),
        Estimated("camera.z_mm", "mm", Milli, -500, 500, "middle of the deck", "centre, down"),
        Default("camera.tilt_deg", "deg", Degree, -30, 90, 25, "how far it looks up from level"),
    ];

    private static IReadOnlyList<KeySpec> Extra =>
    [
        Text("extra.name", false, "what it is"),
        Choice("extra.shape", "shape that stands for it", "point", "box", "cylinder", "rod", "sphere"),
        Required("extra.mass_g", "g", Milli, 0.01, 20000, "mass"),
        Optional("extra.length_mm", "mm", Milli, 0.1, 2000, "required for box and rod", "length, along x"),
        Optional("extra.width_mm", "mm", Milli, 0.1, 2000, "required for box", "width, along y"),
        Optional("extra.height_mm", "mm", Milli, 0.1, 2000, "required for box and cylinder", "height, along z, the axis of a cylinder"),
        Optional("extra.diameter_mm", "mm", Milli, 0.1, 2000, "required for cylinder and sphere", "diameter"),
        Default("extra.x_mm", "mm", Milli, -1000, 1000, 0, "centre, forward"),
        Default("extra.y_mm", "mm", Milli, -1000, 1000, 0, "centre, to the right"),
        Default("extra.z_mm", "mm", Milli, -1000, 1000, 0, "centre, down"),
        Default("extra.roll_deg", "deg", Degree, -180, 180, 0, "turned about x, after pitch and yaw"),
        Default("extra.pitch_deg", "deg", Degree, -90, 90, 0, "turned about y, nose up, after yaw"),
        Default("extra.yaw_deg", "deg", Degree, -180, 180, 0, "turned about z, to the right"),
    ];

    private static IReadOnlyList<KeySpec> Drag =>
    [
        Estimated("drag.area_x_cm2", "cm2", SquareCentimetre, 0.5, 20000, "from the parts", "drag area (coefficient x area) for flow from ahead, rotors apart"),
        Estimated("drag.area_y_cm2", "cm2", SquareCentimetre, 0.5, 20000, "from the parts", "drag area for flow from the side"),
        Estimated("drag.area_z_cm2", "cm2", SquareCentimetre, 0.5, 20000, "from the parts", "drag area for flow from above or below"),
        Estimated("drag.centre_x_mm", "mm", Milli, -500, 500, "from the parts", "point where the drag acts, forward"),
        Estimated("drag.centre_y_mm", "mm", Milli, -500, 500, "from the parts", "to the right"),
        Estimated("drag.centre_z_mm", "mm", Milli, -500, 500, "from the parts", "down"),
    ];

    private static IReadOnlyList<KeySpec> Gyro =>
    [
        Default("gyro.lowpass_Hz", "Hz", 1, 5, 4000, 150, "cut-off of the gyro's low-pass filter"),
    ];

    private static IReadOnlyList<KeySpec> Pilot =>
    [
        .. StickAxis("roll", 200, 800),
        .. StickAxis("pitch", 200, 800),
        .. StickAxis("yaw", 150, 500),
        Default("pilot.throttle_hover_stick", "", 1, 0.05, 0.95, 0.4, "stick position at which the craft hovers, 0 to 1"),
    ];

    private static IReadOnlyList<KeySpec> Measured =>
    [
        Optional("measured.all_up_mass_g", "g", Milli, 5, 50000, "sum of the parts", "weighed with battery; what the parts do not explain is spread near the centre as wiring"),
        Optional("measured.balance_x_mm", "mm", Milli, -500, 500, "from the parts", "balance point, forward"),
        Optional("measured.balance_y_mm", "mm", Milli, -500, 500, "from the parts", "balance point, to the right"),
        Optional("measured.balance_z_mm", "mm", Milli, -500, 500, "from the parts", "balance point, down"),
        Optional("measured.ixx_g_m2", "g m2", Milli, 1e-4, 10000, "from the parts", "roll inertia from a swing test"),
        Optional("measured.iyy_g_m2", "g m2", Milli, 1e-4, 10000, "from the parts", "pitch inertia from a swing test"),
        Optional("measured.izz_g_m2", "g m2", Milli, 1e-4, 10000, "from the parts", "yaw inertia from a swing test"),
    ];

    private static IReadOnlyList<KeySpec> StickAxis(string axis, double centre, double end) =>
    [
        Default($"pilot.{axis}_centre_deg_s", "deg/s", Degree, 5, 2000, centre, $"{axis} rate per full stick around the centre"),
        Default($"pilot.{axis}_end_deg_s", "deg/s", Degree, 20, 3000, end, $"{axis} rate at full stick"),
        Default($"pilot.{axis}_shape", "", 1, 0, 1, 0.5, $"{axis}: 0 rises early (cubic), 1 stays soft until near the end (fifth power)"),
    ];
}
