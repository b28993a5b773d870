namespace Simfeel.Physics.Rotors;

/// <summary>Forces on all blades per unit of span of an annulus, in rho U^2 R.</summary>
/// <param name="Thrust">Along the shaft, up.</param>
/// <param name="Drag">In the disc plane against positive rotation.</param>
internal readonly record struct SectionForces(double Thrust, double Drag);

/// <summary>Means over a turn of the forces on an annulus per unit of span, in rho U^2 R.</summary>
internal readonly record struct AnnulusForces(double Thrust, double Drag, double InPlane, double FrontThrust);

/// <summary>Flow that a blade meets on its way round an annulus, in units of U.</summary>
/// <param name="Tangential">Speed of the blade through the swirling air, along rotation.</param>
/// <param name="Axial">Mean speed of the air down through the disc.</param>
/// <param name="InPlane">In-plane speed of the hub.</param>
/// <param name="Gradient">Extra downward speed at the rear of the disc, the front having as much less.</param>
internal readonly record struct AnnulusFlow(double Tangential, double Axial, double InPlane, double Gradient);

/// <summary>The blades of an annulus at one Reynolds and Mach number.</summary>
internal interface IAnnulusBlades
{
    /// <summary>Middle radius over R.</summary>
    double Radius { get; }

    /// <summary>Tip loss factor at the sine of an inflow angle.</summary>
    double TipLoss(double sine);

    /// <summary>Whether the wake turns.</summary>
    bool Swirl { get; }

    /// <summary>Forces in a flow that is the same all round.</summary>
    SectionForces Mean(double tangential, double axial);

    /// <summary>Mean thrust over a turn.</summary>
    double Thrust(in AnnulusFlow flow);

    /// <summary>All mean forces over a turn.</summary>
    AnnulusForces Forces(in AnnulusFlow flow);
}

/// <summary>Working state of a rotor as a direction: wR, Vc and Vx over U, squares summing to 1.</summary>
internal readonly record struct FlowDirection(double Rotation, double Axial, double InPlane)
{
    /// <summary>
    /// Mean speed over U that a blade meets at a radius, induced flow apart: sets its Reynolds and Mach number for the
    /// whole turn.
    /// </summary>
    public double SectionSpeed(double radius) =>
        Math.Sqrt((Rotation * radius * Rotation * radius) + (Axial * Axial) + (0.5 * InPlane * InPlane));
}

/// <summary>
/// Induced velocity of an annulus: thrust of the blades equals 4 pi r F v Vm (<see cref="MomentumTheory.MassFlowSpeed"/>),
/// with swirl from the torque likewise and a linear inflow gradient.
/// <para>
/// Momentum thrust rises with v from minus to plus infinity, so a root always exists, and blade thrust falls with v
/// except in deep stall, where there may be three. A lifting annulus takes the highest, found by steps down from above
/// all of them; an annulus that is pressed down without induced flow takes the root nearest to zero. Chandrupatla's method
/// closes the bracket. Fixed-point iteration, the usual way, diverges in descent.
/// </para>
/// </summary>
internal static class InflowSolver
{
    // Coleman's type of gradient: v (1 + k r cos(psi)), k = (15 pi / 32) tan(chi / 2), chi the wake's skew (Pitt and Peters).
    private const double GradientFactor = 15 * Math.PI / 32;
    private const double Highest = 0.6;
    private const double Step = 0.45;
    private const double Lowest = 0.01;
    private const double Tolerance = 1e-8;
    private const int SwirlPasses = 2;
    private const int MostSteps = 80;

    // Without through-flow the wake would spin up without bound; mixing stops it. Only rotors of almost no thrust see this.
    private const double LeastMassFlow = 0.02;
    private const double MostSwirl = 0.5;

    /// <summary>The induced velocity over U that closes the annulus.</summary>
    public static double InducedVelocity<TBlades>(in TBlades blades, in FlowDirection direction)
        where TBlades : struct, IAnnulusBlades, allows ref struct
    {
        double atRest = Residual(blades, direction, 0);
        return atRest < 0 ? FromRest(blades, direction, atRest) : FromAbove(blades, direction, atRest);
    }

    /// <summary>The flow at the blades for an induced velocity.</summary>
    public static AnnulusFlow Flow<TBlades>(in TBlades blades, in FlowDirection direction, double induced, out double momentum)
        where TBlades : struct, IAnnulusBlades, allows ref struct
    {
        double r = blades.Radius;
        double axial = direction.Axial + induced;
        double blade = direction.Rotation * r;
        double massFlow = MomentumTheory.MassFlowSpeed(induced, direction.Axial, direction.InPlane);
        double sine = Math.Abs(axial) / Math.Sqrt((axial * axial) + (blade * blade) + 1e-30);
        double perMassFlow = 4 * Math.PI * r * blades.TipLoss(sine);
        momentum = perMassFlow * induced * massFlow;

        double swirl = 0;
        if (blades.Swirl)
        {
            double carrier = perMassFlow * Math.Sqrt((massFlow * massFlow) + (LeastMassFlow * LeastMassFlow));
            for (int pass = 0; pass < SwirlPasses; pass++)
            {
                double next = blades.Mean(blade - swirl, axial).Drag / carrier;
                swirl = Math.Clamp(next, -MostSwirl, MostSwirl);
            }
        }
        double skew = direction.InPlane / (massFlow + Math.Abs(axial) + 1e-30);
        return new(blade - swirl, axial, direction.InPlane, GradientFactor * skew * r * induced);
    }

    private static double Residual<TBlades>(in TBlades blades, in FlowDirection direction, double induced)
        where TBlades : struct, IAnnulusBlades, allows ref struct
    {
        AnnulusFlow flow = Flow(blades, direction, induced, out double momentum);
        return blades.Thrust(flow) - momentum;
    }

    private static double FromAbove<TBlades>(in TBlades blades, in FlowDirection direction, double atRest)
        where TBlades : struct, IAnnulusBlades, allows ref struct
    {
        double high = Highest;
        double atHigh = Residual(blades, direction, high);
        while (atHigh > 0)
        {
            high *= 2;
            atHigh = Residual(blades, direction, high);
        }
        while (true)
        {
            double low = high * Step;
            if (low < Lowest) return Close(blades, direction, 0, atRest, high, atHigh);
            double atLow = Residual(blades, direction, low);
            if (atLow >= 0) return Close(blades, direction, low, atLow, high, atHigh);
            high = low;
            atHigh = atLow;
        }
    }

    private static double FromRest<TBlades>(in TBlades blades, in FlowDirection direction, double atRest)
        where TBlades : struct, IAnnulusBlades, allows ref struct
    {
        double high = 0, atHigh = atRest;
        double low = -Lowest;
        while (true)
        {
            double atLow = Residual(blades, direction, low);
            if (!(atLow < 0)) return Close(blades, direction, low, atLow, high, atHigh);
            high = low;
            atHigh = atLow;
            low /= Step;
        }
    }

    /// <summary>Root in [low, high] with residuals of opposite sign, by Chandrupatla's method (1997).</summary>
    private static double Close<TBlades>(
        in TBlades blades, in FlowDirection direction, double low, double atLow, double high, double atHigh)
        where TBlades : struct, IAnnulusBlades, allows ref struct
    {
        double a = low, fa = atLow, b = high, fb = atHigh, c = low, fc = atLow;
        double t = fa / (fa - fb);
        for (int step = 0; step < MostSteps; step++)
        {
            double x = a + (t * (b - a));
            double fx = Residual(blades, direction, x);
            if ((fx >= 0) == (fa >= 0))
            {
                c = a;
                fc = fa;
            }
            else
            {
                c = b;
                fc = fb;
                b = a;
                fb = fa;
            }
            a = x;
            fa = fx;
            (double best, double atBest) = Math.Abs(fa) < Math.Abs(fb) ? (a, fa) : (b, fb);
            double limit = Tolerance / Math.Abs(b - c);
            if (atBest == 0 || limit >= 0.5) return best;

            double xi = (a - b) / (c - b), phi = (fa - fb) / (fc - fb);
            bool smooth = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
            t = smooth
                ? (fa / (fb - fa) * (fc / (fb - fc))) + ((c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb)))
                : 0.5;
            t = Math.Clamp(t, limit, 1 - limit);
        }
        return a;
    }
}
