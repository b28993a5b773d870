namespace Simfeel.Physics;

/// <summary>
/// Effects of moving air on the rotors beyond the steady loads of their tables; each can be left out.
/// </summary>
[Flags]
public enum AirEffects
{
    /// <summary>Steady loads only.</summary>
    None = 0,

    /// <summary>Induced velocity follows thrust with a lag (<see cref="Rotors.DynamicInflow"/>). Theory.</summary>
    DynamicInflow = 1,

    /// <summary>
    /// Thrust lost and shaken in a rotor's own wake and in its neighbours' (<see cref="Rotors.WakeModel"/>). An estimate.
    /// </summary>
    Wake = 2,

    /// <summary>Thrust gained near flat ground (<see cref="Rotors.GroundEffect"/>). Theory of one rotor.</summary>
    Ground = 4,

    /// <summary>All of them.</summary>
    All = DynamicInflow | Wake | Ground,
}
