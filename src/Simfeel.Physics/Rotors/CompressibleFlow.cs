namespace Simfeel.Physics.Rotors;

/// <summary>Corrections of a section's incompressible coefficients for Mach number.</summary>
internal static class CompressibleFlow
{
    private const double HighestMach = 0.85;
    private const double DragRiseMach = 0.58;
    private const double DragRiseFactor = 20;

    /// <summary>Prandtl-Glauert factor 1/sqrt(1 - M^2) on attached lift, held above Mach 0.85 where it no longer applies.</summary>
    public static double LiftFactor(double mach)
    {
        double m = Math.Min(mach, HighestMach);
        return 1 / Math.Sqrt(1 - (m * m));
    }

    /// <summary>
    /// Wave drag 20 (M - Mcr)^4 above the critical Mach number (Lock's fourth-power law, from memory). Mcr = 0.58 for a
    /// thin cambered section at working lift is an estimate: small propellers have no published polar there.
    /// </summary>
    public static double WaveDrag(double mach)
    {
        double over = Math.Clamp(mach - DragRiseMach, 0, 0.5);
        return DragRiseFactor * over * over * over * over;
    }
}
