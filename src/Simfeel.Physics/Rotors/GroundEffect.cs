namespace Simfeel.Physics.Rotors;

/// <summary>
/// Thrust that a rotor gains near the ground at equal power, from the source under the ground that mirrors it:
/// Cheeseman and Bennett, The Effect of the Ground on a Helicopter Rotor in Forward Flight, ARC R&amp;M 3021 (1955); formula from memory.
/// </summary>
public static class GroundEffect
{
    /// <summary>
    /// Least height over radius, 0.5: below it the form leaves its measurements and grows without limit (infinite at a
    /// quarter of a radius), so it is held from here down.
    /// </summary>
    public const double LeastHeight = 0.5;

    /// <summary>Thrust over that of the same power far from the ground, 1 / (1 - (R / 4z)^2 / (1 + (V / v)^2)).</summary>
    /// <param name="heightOverRadius">Height z of the disc over the ground, in radii; held at <see cref="LeastHeight"/>.</param>
    /// <param name="speedOverInduced">In-plane airspeed V over the induced velocity v of hover; the sign does not matter.</param>
    /// <returns>1 (far away) to 4/3 (at <see cref="LeastHeight"/>, no speed).</returns>
    public static double ThrustRatio(double heightOverRadius, double speedOverInduced)
    {
        double mirror = 1 / (4 * Math.Max(heightOverRadius, LeastHeight));
        return 1 / (1 - (mirror * mirror / (1 + (speedOverInduced * speedOverInduced))));
    }
}
