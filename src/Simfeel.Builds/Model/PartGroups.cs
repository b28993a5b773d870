namespace Simfeel.Builds;

/// <summary>Groups of properties that can be swapped between two builds, to share out a difference among them.</summary>
[Flags]
public enum PartGroups
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Arms, plates, motor positions and measured overrides.</summary>
    Frame = 1,

    /// <summary>Mass and size of the motors.</summary>
    MotorMass = 2,

    /// <summary>Spin inertia of the motors' bells.</summary>
    BellInertia = 4,

    /// <summary>Torque constant, resistance, losses and limits of the motors.</summary>
    MotorElectrics = 8,

    /// <summary>Mass and spin inertia of the propellers.</summary>
    PropellerInertia = 16,

    /// <summary>Shape of the propellers.</summary>
    PropellerAerodynamics = 32,

    /// <summary>Battery: mass, place and electrics.</summary>
    Battery = 64,

    /// <summary>Drag of the body.</summary>
    Drag = 128,

    /// <summary>Speed controllers, electronics, camera, extra parts, wiring, gyro filter.</summary>
    Electronics = 256,

    /// <summary>Stick curves.</summary>
    Pilot = 512,

    /// <summary>All of them.</summary>
    All = 1023,
}

/// <summary>Hybrids of two builds.</summary>
public static class Hybrid
{
    /// <summary>
    /// The build <paramref name="a"/> with the chosen groups taken from <paramref name="b"/>. With
    /// <see cref="PartGroups.None"/> it flies exactly as a, with <see cref="PartGroups.All"/> exactly as b. A hybrid
    /// cannot be edited by key and lists no values.
    /// </summary>
    public static Build Of(Build a, Build b, PartGroups fromB)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return a with
        {
            Name = $"{a.Name} + {fromB} of {b.Name}",
            Frame = Of(PartGroups.Frame).Frame,
            Measured = Of(PartGroups.Frame).Measured,
            Motor = new(
                Of(PartGroups.MotorMass).Motor.Body,
                Of(PartGroups.BellInertia).Motor.Bell,
                Of(PartGroups.MotorElectrics).Motor.Electrics),
            Propeller = new(
                Of(PartGroups.PropellerInertia).Propeller.Body,
                Of(PartGroups.PropellerAerodynamics).Propeller.Blades),
            Battery = Of(PartGroups.Battery).Battery,
            Drag = Of(PartGroups.Drag).Drag,
            SpeedController = Of(PartGroups.Electronics).SpeedController,
            Stack = Of(PartGroups.Electronics).Stack,
            Camera = Of(PartGroups.Electronics).Camera,
            Extras = Of(PartGroups.Electronics).Extras,
            Gyro = Of(PartGroups.Electronics).Gyro,
            Pilot = Of(PartGroups.Pilot).Pilot,
            Values = [],
            Sheet = null,
        };

        Build Of(PartGroups group) => fromB.HasFlag(group) ? b : a;
    }

    /// <summary>
    /// Whether two builds differ in any of some groups. Where they do not, taking the groups from one or the other gives the same craft
    /// bit for bit.
    /// </summary>
    public static bool Differ(Build a, Build b, PartGroups groups)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return Differs(PartGroups.Frame, !SameFrame(a.Frame, b.Frame) || a.Measured != b.Measured)
            || Differs(PartGroups.MotorMass, a.Motor.Body != b.Motor.Body)
            || Differs(PartGroups.BellInertia, a.Motor.Bell != b.Motor.Bell)
            || Differs(PartGroups.MotorElectrics, a.Motor.Electrics != b.Motor.Electrics)
            || Differs(PartGroups.PropellerInertia, a.Propeller.Body != b.Propeller.Body)
            || Differs(PartGroups.PropellerAerodynamics, a.Propeller.Blades != b.Propeller.Blades)
            || Differs(PartGroups.Battery, !SameBattery(a.Battery, b.Battery))
            || Differs(PartGroups.Drag, a.Drag != b.Drag)
            || Differs(PartGroups.Electronics, a.SpeedController != b.SpeedController || a.Stack != b.Stack || a.Camera != b.Camera
                || a.Gyro != b.Gyro || !a.Extras.SequenceEqual(b.Extras))
            || Differs(PartGroups.Pilot, a.Pilot != b.Pilot);

        bool Differs(PartGroups group, bool differs) => differs && groups.HasFlag(group);
    }

    // records compare their lists by reference
    private static bool SameFrame(FrameSpec a, FrameSpec b) => a == b with { Mounts = a.Mounts } && a.Mounts.SequenceEqual(b.Mounts);

    private static bool SameBattery(BatterySpec a, BatterySpec b) =>
        a == b with { CellVoltage = a.CellVoltage } && a.CellVoltage.SequenceEqual(b.CellVoltage);
}
