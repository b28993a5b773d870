using Simfeel.Flight;

namespace Simfeel.Studies.Handling;

/// <summary>A body axis that a stick turns the craft about.</summary>
public enum HandlingAxis
{
    /// <summary>About x.</summary>
    Roll,

    /// <summary>About y.</summary>
    Pitch,

    /// <summary>About z.</summary>
    Yaw,
}

/// <summary>Sticks and curves of an axis.</summary>
internal static class HandlingAxes
{
    /// <summary>Sticks with one axis deflected and the throttle at hover.</summary>
    public static Sticks Deflected(this HandlingAxis axis, double deflection, double hover) => axis switch
    {
        HandlingAxis.Roll => new(deflection, 0, 0, hover),
        HandlingAxis.Pitch => new(0, deflection, 0, hover),
        _ => new(0, 0, deflection, hover),
    };

    /// <summary>Rate that the sticks command about the axis, rad/s.</summary>
    public static double Command(this HandlingAxis axis, PilotProfile profile, Sticks sticks) => profile.RateFor(sticks)[(int)axis];

    /// <summary>Stick curve of the axis.</summary>
    public static StickCurve Curve(this HandlingAxis axis, PilotProfile profile) =>
        axis == HandlingAxis.Yaw ? profile.Yaw : profile.RollPitch;
}
