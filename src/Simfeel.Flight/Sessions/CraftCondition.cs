namespace Simfeel.Flight;

/// <summary>How a craft of a session fares beyond what is integrated.</summary>
/// <param name="Armed">Its rotors may turn.</param>
/// <param name="Crashed">It hit something too hard, lies on its back, or fell into the sea; a restart mends it.</param>
/// <param name="StruckRotors">A bit for each rotor whose propeller struck something and stands still, rotor 1 in bit 0.</param>
/// <param name="Touching">Something touches it now.</param>
/// <param name="ImpactSpeed">Fastest approach of the last stick reading's contacts, m/s.</param>
public readonly record struct CraftCondition(
    bool Armed,
    bool Crashed,
    int StruckRotors,
    bool Touching,
    double ImpactSpeed);
