using Simfeel.Physics;

namespace Simfeel.Flight.Drills;

/// <summary>
/// A manoeuvre flown by a script: a declared start state and a rule for the sticks. The thumbs that move them are
/// limited in speed by the pilot's profile, the same for every build.
/// </summary>
/// <param name="Name">Short name, one word.</param>
/// <param name="Purpose">What it shows, in one sentence.</param>
/// <param name="Duration">Length, s.</param>
/// <param name="NewScript">
/// Makes the rule for one flight from the hover stick position and the stick effort (0.25 to 1).
/// </param>
public sealed record Drill(
    string Name,
    string Purpose,
    double Duration,
    Func<double, double, Func<PilotView, Sticks>> NewScript)
{
    /// <summary>Time that every drill hovers before its first stick movement, s.</summary>
    public const double LeadIn = 0.2;

    /// <summary>
    /// Start of every drill: level hover at rest, pack settled, at the field's origin. All rotors start at the same speed; where
    /// the centre of gravity lies off their middle the integrators already carry the difference and the rotors find theirs
    /// within the lead-in.
    /// </summary>
    public static CraftState Start(TunedUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return unit.Hover.State;
    }
}
