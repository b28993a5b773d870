namespace Simfeel.Physics.Rotors;

/// <summary>
/// Default section of small propellers: thin, cambered, Reynolds 10 000 to 300 000, at any angle.
/// <para>
/// Attached flow: cl = a (alpha - alpha0) with Prandtl-Glauert's factor, cd = cd0 + k (cl - 0.1)^2. Stall hands over to
/// <see cref="FlatPlate"/> by logistic weights, lift first and drag a few degrees later, at an angle that grows
/// with the logarithm of Reynolds number.
/// </para>
/// <para>
/// Fitted to XFOIL 6.99 tables at Mach 0, SDA1075 section with Ncrit 4, Reynolds 20 000 to 100 000, alpha -4 to 16
/// degrees: slope a = 5.85 / rad (table 5.6 to 5.95), cd0 = 0.0138 (Re/1e5)^-0.45, k = 0.0076 (Re/1e5)^-0.8, weights
/// (30 / rad, centre 12.9 deg + 2.2 deg ln(Re/1e5)). The zero-lift angle, -2.5 degrees (SDA1075 -2.1, NACA 6405 and
/// 4412 about -4), was chosen on ten 4- to 5.5-inch propellers of the UIUC Propeller Data Site with their measured
/// geometry, sections unknown but for one: mean error of static CT -6 % and CP -6 %, of axial CT +6 % and CP +2 %; single
/// propellers lie between -29 and +29 % in CT, -25 and +23 % in CP. At -3 the axial CT is 12 % high, at -2 the static 9 % low.
/// </para>
/// </summary>
public sealed class LowReynoldsPolar : SectionPolar
{
    private const double Degree = Math.PI / 180;
    private const double ReferenceReynolds = 1e5;
    private const double Slope = 5.85;
    private const double ZeroLift = -2.5 * Degree;
    private const double Friction = 0.0138;
    private const double LiftDrag = 0.0076;
    private const double BestLift = 0.1;
    private const double Stall = 12.9 * Degree;
    private const double StallGrowth = 2.2 * Degree;
    private const double NegativeStall = -9.5 * Degree;
    private const double DragDelay = 4 * Degree;
    private const double Sharpness = 30;

    /// <summary>The polar; it has no state, so one serves all.</summary>
    public static LowReynoldsPolar Instance { get; } = new();

    private LowReynoldsPolar()
    {
    }

    /// <inheritdoc/>
    public override SectionCoefficients At(double angle, double reynolds, double mach)
    {
        double logRe = Math.Log(Math.Clamp(reynolds, 3e3, 5e5) / ReferenceReynolds);
        double friction = (Friction * Math.Exp(-0.45 * logRe)) + CompressibleFlow.WaveDrag(mach);
        SectionCoefficients plate = FlatPlate.At(angle, friction);

        double stall = Stall + (StallGrowth * logRe);
        double attachedLift = Weight(angle, NegativeStall, stall);
        double attachedDrag = Weight(angle, NegativeStall - DragDelay, stall + DragDelay);
        double incompressible = Slope * (angle - ZeroLift);
        double lift = incompressible * CompressibleFlow.LiftFactor(mach);
        double offBest = incompressible - BestLift;
        double drag = friction + (LiftDrag * Math.Exp(-0.8 * logRe) * offBest * offBest);
        return new(
            (attachedLift * lift) + ((1 - attachedLift) * plate.Lift),
            (attachedDrag * drag) + ((1 - attachedDrag) * plate.Drag));
    }

    private static double Weight(double angle, double low, double high) =>
        1 / ((1 + Math.Exp(Sharpness * (angle - high))) * (1 + Math.Exp(Sharpness * (low - angle))));
}
