namespace Simfeel.Physics.Rotors;

/// <summary>One annulus of a rotor disc, lengths over the tip radius R.</summary>
/// <param name="Radius">Middle radius.</param>
/// <param name="Width">Width.</param>
/// <param name="Chord">Chord of one blade.</param>
/// <param name="Twist">Angle of the chord to the disc plane, rad.</param>
/// <param name="Blades">Number of blades.</param>
internal readonly record struct RotorAnnulus(double Radius, double Width, double Chord, double Twist, int Blades)
{
    // Prandtl's loss stands for vortex sheets of a lifting rotor. With the flow steeper than 30 degrees the sheets are
    // far apart and the formula loses its meaning (it would unload a stopped propeller): fade it out toward 64 degrees.
    private const double FadeFrom = 0.5;
    private const double FadeWidth = 0.4;
    private const double LeastFactor = 0.05;
    private const double LeastSine = 0.02;

    /// <summary>B c / 2: area of all blades per unit of span, halved, for forces in rho U^2.</summary>
    public double HalfBladeArea => 0.5 * Blades * Chord;

    /// <summary>
    /// Prandtl's factor F = (2/pi) acos(exp(-f)), f = (B/2)(1 - r)/(r sin(phi)), faded to 1 in steep flow.
    /// </summary>
    /// <param name="sine">Sine of the inflow angle phi at the blade, 0 to 1.</param>
    public double TipLoss(double sine)
    {
        double factor = Math.Max(Prandtl(Blades, Radius, Math.Max(sine, LeastSine)), LeastFactor);
        double t = Math.Clamp((sine - FadeFrom) / FadeWidth, 0, 1);
        double fade = t * t * (3 - (2 * t));
        return factor + (fade * (1 - factor));
    }

    /// <summary>Prandtl's factor of a blade count, radius over R and sine of the inflow angle.</summary>
    public static double Prandtl(int blades, double radius, double sine) =>
        2 / Math.PI * Math.Acos(Math.Exp(-0.5 * blades * (1 - radius) / (radius * sine)));

    /// <summary>The annuli of a rotor from root cut-out to tip.</summary>
    public static RotorAnnulus[] Divide(RotorGeometry geometry, int count, bool equal)
    {
        var annuli = new RotorAnnulus[count];
        double root = geometry.RootCutOut, span = 1 - root;
        for (int i = 0; i < count; i++)
        {
            double inner = root + (span * Edge(i)), outer = root + (span * Edge(i + 1));
            BladeStation s = geometry.At(0.5 * (inner + outer));
            annuli[i] = new(s.Radius, outer - inner, s.Chord, s.Twist, geometry.Blades);
        }
        return annuli;

        // The load falls to zero at the tip like a square root: a quarter sine wave puts narrow annuli there.
        double Edge(int i) => equal ? (double)i / count : Math.Sin(0.5 * Math.PI * i / count);
    }
}
