using Simfeel.Builds;

namespace Simfeel.Studies.Growth;

/// <summary>Which part to grow when a group is to blame, and how finely.</summary>
public static class GrowthKnobs
{
    /// <summary>The part whose size makes up a group; null where none does.</summary>
    public static BuildKnob? Of(PartGroups group) => group switch
    {
        PartGroups.Frame => BuildKnobs.ArmLength,
        PartGroups.MotorMass or PartGroups.BellInertia or PartGroups.MotorElectrics => BuildKnobs.MotorVolume,
        PartGroups.PropellerInertia or PartGroups.PropellerAerodynamics => BuildKnobs.PropellerDiameter,
        PartGroups.Battery => BuildKnobs.BatteryMass,
        _ => null,
    };

    /// <summary>Points of a curve: fewer where every size needs a rotor table of its own.</summary>
    public static int Points(BuildKnob knob) =>
        knob == BuildKnobs.PropellerDiameter || knob == BuildKnobs.PropellerPitch ? 9 : GrowthStudy.UsualPoints;
}
