using Simfeel.Physics;

namespace Simfeel.Flight.Drills;

/// <summary>
/// A manoeuvre flown by a script: a declared start state and a rule for the sticks. The thumbs that move them are
/// limited in speed by the pilot's profile, the same for every build.
/// </summary>
/// <param name="Name">Short name, one word.</param>
/// <param name="Purpose">What it shows, in one sentence.</param>
/// <param name="Duration">Length, s.</param>
/// <param name="NewScript">Makes the rule for one flight from what flies, who flies and how hard.</param>
public sealed record Drill(
    string Name,
    string Purpose,
    double Duration,
    Func<ScriptStart, Func<PilotView, Sticks>> NewScript)
{
    /// <summary>A drill whose script needs no more than the hover stick position and the stick effort.</summary>
    public Drill(string name, string purpose, double duration, Func<double, double, Func<PilotView, Sticks>> script)
        : this(name, purpose, duration, start => script(start.Hover, start.Effort))
    {
    }

    /// <summary>Time that every drill goes on as it starts before its first stick movement, s.</summary>
    public const double LeadIn = 0.2;

    /// <summary>Speed of the level flight in which the drill starts, by stick effort, m/s; null for hover.</summary>
    public Func<double, double>? StartSpeed { get; init; }

    /// <summary>
    /// What is done to the steady start of a drill that begins unsteady, such as tilted or thrown; null for one that begins steady.
    /// </summary>
    public Func<TunedUnit, DrillStart, DrillStart>? Upset { get; init; }

    /// <summary>Whether its script goes by loads or accelerations, not by states alone.</summary>
    public bool FeelsLoads { get; init; }

    /// <summary>Whether the motors are off all the time.</summary>
    public bool MotorsOff { get; init; }

    /// <summary>
    /// Where a craft starts, at the field's origin: steady with the pack settled, in hover or in level flight to the north, and then as
    /// <see cref="Upset"/> has it.
    /// </summary>
    /// <param name="unit">The craft.</param>
    /// <param name="effort">Share of full stick, 0.25 to 1.</param>
    /// <param name="effects">Effects of the field.</param>
    public DrillStart Start(TunedUnit unit, double effort, AirEffects effects)
    {
        DrillStart steady = DrillStart.Level(unit, StartSpeed?.Invoke(effort) ?? 0, effects);
        return Upset is null ? steady : Upset(unit, steady);
    }
}

/// <summary>What a script is made from.</summary>
/// <param name="Unit">The craft and its gains.</param>
/// <param name="Profile">The pilot.</param>
/// <param name="Effort">Share of full stick, 0.25 to 1.</param>
/// <param name="Begin">Where it starts.</param>
public readonly record struct ScriptStart(TunedUnit Unit, PilotProfile Profile, double Effort, DrillStart Begin)
{
    /// <summary>What a script is made from where the start is hover.</summary>
    public ScriptStart(TunedUnit unit, PilotProfile profile, double effort)
        : this(unit, profile, effort, DrillStart.Hover(unit))
    {
    }

    /// <summary>Throttle stick at which the craft hovers.</summary>
    public double Hover => Unit.Throttle.HoverStick;
}
