using Simfeel.Builds;

namespace Simfeel.Studies.Blame;

/// <summary>The groups of parts in the order in which they are shown, and what people and machines call them.</summary>
public static class PartGroupNames
{
    /// <summary>Every group.</summary>
    public static IReadOnlyList<PartGroups> All { get; } =
    [
        PartGroups.Frame, PartGroups.MotorMass, PartGroups.BellInertia, PartGroups.MotorElectrics, PartGroups.PropellerInertia,
        PartGroups.PropellerAerodynamics, PartGroups.Battery, PartGroups.Drag, PartGroups.Electronics, PartGroups.Pilot,
    ];

    /// <summary>For people.</summary>
    public static string Title(PartGroups group) => group switch
    {
        PartGroups.Frame => "arms and frame",
        PartGroups.MotorMass => "motor mass and size",
        PartGroups.BellInertia => "motor bell inertia",
        PartGroups.MotorElectrics => "motor electrics",
        PartGroups.PropellerInertia => "propeller mass and inertia",
        PartGroups.PropellerAerodynamics => "propeller aerodynamics",
        PartGroups.Battery => "battery",
        PartGroups.Drag => "body drag",
        PartGroups.Electronics => "electronics and extras",
        PartGroups.Pilot => "stick curves in the build file",
        _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Give one group."),
    };

    /// <summary>For machines, in snake_case.</summary>
    public static string Key(PartGroups group) => group switch
    {
        PartGroups.Frame => "frame",
        PartGroups.MotorMass => "motor_mass",
        PartGroups.BellInertia => "bell_inertia",
        PartGroups.MotorElectrics => "motor_electrics",
        PartGroups.PropellerInertia => "propeller_inertia",
        PartGroups.PropellerAerodynamics => "propeller_aerodynamics",
        PartGroups.Battery => "battery",
        PartGroups.Drag => "drag",
        PartGroups.Electronics => "electronics",
        PartGroups.Pilot => "pilot",
        _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Give one group."),
    };
}
