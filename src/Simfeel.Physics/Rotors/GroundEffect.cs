namespace Simfeel.Physics.Rotors;

/// <summary>
/// Thrust of a rotor near flat ground over its thrust far from it, at the same power: an image of the rotor below the ground
/// blows against the inflow (Cheeseman and Bennett, ARC R&amp;M 3021, 1955; formula from memory).
/// </summary>
public static class GroundEffect
{
    /// <summary>
    /// Least height over the radius that the formula is used at. It grows without bound toward a quarter; measured gains
    /// level off about here.
    /// </summary>
    public const double LeastHeight = 0.5;

    /// <summary>1 / (1 - (R / 4 z)^2 / (1 + (V / v)^2)), 1 to 4/3.</summary>
    /// <param name="heightOverRadius">Height z of the disc above the ground over its radius R; held at <see cref="LeastHeight"/>.</param>
    /// <param name="speedOverInduced">In-plane speed V over the induced velocity v of hover.</param>
    public static double ThrustRatio(double heightOverRadius, double speedOverInduced)
    {
        double z = Math.Max(heightOverRadius, LeastHeight);
        return 1 / (1 - (1 / (16 * z * z) / (1 + (speedOverInduced * speedOverInduced))));
    }
}
