using Simfeel.Flight;
using Simfeel.Physics;

namespace Simfeel.Cockpit.Pages.Start;

/// <summary>A build that can be picked.</summary>
/// <param name="Name">Name.</param>
/// <param name="Description">One line.</param>
/// <param name="Mass">Mass, kg.</param>
/// <param name="RollInertia">Moment of inertia about the roll axis, kg m2.</param>
/// <param name="ThrustToWeight">Full thrust with all rotors on the pack, in weights.</param>
/// <param name="Fault">Why it cannot be flown; null for a sound build, whose numbers count.</param>
public sealed record BuildChoice(
    string Name, string Description, double Mass, double RollInertia, double ThrustToWeight, string? Fault = null)
{
    /// <summary>A sound build with its numbers.</summary>
    public static BuildChoice Of(FlyableBuild build)
    {
        ArgumentNullException.ThrowIfNull(build);
        Craft craft = build.Assembled.Craft;
        double thrust = craft.Rotors.Count * build.Unit.Map.FullThrust;
        return new(build.Name, build.Assembled.Build.Description, craft.Mass, craft.I_BBcm_B.M00, thrust / (craft.Mass * build.Unit.Gravity));
    }
}
