namespace Simfeel.Physics.Rotors;

/// <summary>
/// How a rotor's thrust is lost and shaken when it sinks into its own wake, or when another rotor's wake is carried over it.
/// An estimate: the range and the worst place are as published for small rotors (range 0.6 to 1.6 of the hover induced
/// velocity, worst at 1.2 to 1.3; helicopter rotors likewise, Washizu and others, J. Aircraft 3(3), 1966, from memory; time
/// histories of small propellers in Shetty and Selig, AIAA 2011-1254), the sizes are common practice.
/// <para>
/// The mean loss that momentum theory explains is in the rotor table already; this is what comes on top.
/// </para>
/// </summary>
public static class WakeModel
{
    /// <summary>Descent speed over v_h where the wake begins to be felt, where it is worst, and where it is left behind.</summary>
    public const double Begin = 0.5, Worst = 1.25, End = 1.75;

    /// <summary>Share of the thrust lost on average in the worst state.</summary>
    public const double Loss = 0.10;

    /// <summary>Standard deviation of the thrust over its mean in the worst state.</summary>
    public const double Spread = 0.15;

    /// <summary>The shaking is held within this many standard deviations.</summary>
    public const double MostDeviations = 2.5;

    /// <summary>
    /// Time in which wake and shaking follow, in R / v_h: the time in which the wake's own flow crosses the disc. With 2 the
    /// noise of a 5 inch rotor ends at about 8 Hz.
    /// </summary>
    public const double LagInRadii = 2;

    /// <summary>
    /// How deep a rotor is in its own wake, 0 to 1. In-plane flow sweeps the wake away as it does the vortex ring in
    /// <see cref="MomentumTheory"/>, by 1 / (1 + (2 Vx / v_h)^4).
    /// </summary>
    /// <param name="descent">Descent speed over v_h.</param>
    /// <param name="inPlane">In-plane speed over v_h.</param>
    public static double Depth(double descent, double inPlane)
    {
        double up = Smooth((descent - Begin) / (Worst - Begin)), down = Smooth((End - descent) / (End - Worst));
        double swept = 4 * inPlane * inPlane;
        return up * down / (1 + (swept * swept));
    }

    private static double Smooth(double t)
    {
        double s = Math.Clamp(t, 0, 1);
        return s * s * (3 - (2 * s));
    }
}
