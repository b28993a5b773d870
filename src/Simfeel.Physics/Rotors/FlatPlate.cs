namespace Simfeel.Physics.Rotors;

/// <summary>
/// Fully separated flow over a thin blade, at any angle. The normal force of a plate is
/// CN = sign(s) / (0.69 + 0.09 / |s|), s = sin(angle): the form of Hoerner, Fluid-Dynamic Drag (1965), with the two
/// constants refitted, one to CN = 1.28 across the flow (Hoerner's value for a plate of finite length; from memory),
/// one to CN = 0.98 at 16 degrees, the stalled SDA1075 section at Reynolds 30 000 to 60 000 (XFOIL 6.99, Ncrit 4:
/// 0.91 to 1.01). Skin friction acts along the chord on top.
/// </summary>
internal static class FlatPlate
{
    private const double Across = 0.69;
    private const double Slope = 0.09;

    public static SectionCoefficients At(double angle, double friction)
    {
        (double s, double c) = Math.SinCos(angle);
        double normal = s / ((Across * Math.Abs(s)) + Slope);
        return new((normal * c) - (friction * c * s), (normal * s) + (friction * c * c));
    }
}
