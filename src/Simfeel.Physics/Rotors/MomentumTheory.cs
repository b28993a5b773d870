namespace Simfeel.Physics.Rotors;

/// <summary>
/// Momentum theory of the actuator disc: the closed forms (Leishman, Principles of Helicopter Aerodynamics, 2nd ed.
/// 2006, ch. 2; Johnson, Helicopter Theory, 1980), and one single-valued branch through every axial and edgewise state.
/// <para>
/// The branch. With thrust T = 2 rho A v Vm, theory gives the mass-flow speed Vm = |V + v| (V axial climb speed, v
/// induced), which fails between hover and the windmill (-2 &lt; V/v_h &lt; 0). Written as Vm = v G(y), y = -V/v, the
/// measured states are single-valued in y: G is 1 - y in climb, y - 1 in the windmill from y = 2.5 on (induction
/// a = 1/y up to 0.4, where Glauert's and Buhl's corrections of wind-turbine theory begin, too), and a smooth
/// (C2) curve between. Its knots are fitted to Castles and Gray, NACA TN-2474 (1951), runs 4 and 5, held below their
/// values by the 5 to 10 % that their hover (v/v_h = 1.05 to 1.10) contains of losses that an annular closure computes
/// itself, and held to 2G &gt; y G', so that thrust rises with v at every fixed V: the closure has one root for any
/// falling blade thrust.
/// </para>
/// <para>
/// In-plane speed Vx joins as in Glauert's flow, Vm^2 = Vx^2 + (V + v)^2, with the difference to theory faded out
/// by 1 / (1 + (2 Vx / v)^4): the vortex ring is swept away by in-plane flow of about half the induced velocity
/// (common practice puts its edge at Vx of 0.5 to 1 v_h).
/// </para>
/// </summary>
public static class MomentumTheory
{
    private const double KnotSpacing = 0.25;
    private const double LastKnot = 2.5;
    private const double FadeSpeed = 0.5;

    private static readonly double[] Knots = [1, 0.56, 0.31, 0.262, 0.343, 0.470, 0.626, 0.803, 1.012, 1.247, 1.5];
    private static readonly double[] Slopes = ClampedSplineSlopes(Knots, KnotSpacing, -1, 1);

    /// <summary>Induced velocity of hover v_h = sqrt(T / (2 rho A)), m/s, from thrust N, density kg/m^3 and area m^2.</summary>
    public static double HoverInducedVelocity(double thrust, double density, double area) =>
        Math.Sqrt(thrust / (2 * density * area));

    /// <summary>Ideal power of hover T v_h, W.</summary>
    public static double HoverPower(double thrust, double density, double area) =>
        thrust * HoverInducedVelocity(thrust, density, area);

    /// <summary>v / v_h in axial climb at x = V / v_h, at least 0.</summary>
    public static double ClimbRatio(double x) => (-x / 2) + Math.Sqrt((x * x / 4) + 1);

    /// <summary>v / v_h in the windmill state at x = V / v_h, at most -2.</summary>
    public static double WindmillRatio(double x) => (-x / 2) - Math.Sqrt((x * x / 4) - 1);

    /// <summary>v / v_h with the disc edge-on to a flow of x = Vx / v_h.</summary>
    public static double EdgewiseRatio(double x)
    {
        double square = x * x;
        // The reciprocal form keeps its digits at large x.
        return 1 / Math.Sqrt((square / 2) + Math.Sqrt((square * square / 4) + 1));
    }

    /// <summary>
    /// v / v_h at x = V / v_h in [-2, 0] by the quartic in common use, kappa + 1.125 d - 1.372 d^2 + 1.718 d^3 - 0.655 d^4,
    /// d = -x (Leishman, section 2.13.6). For comparison only: it meets the windmill branch with a kink.
    /// </summary>
    /// <param name="x">Climb speed over v_h.</param>
    /// <param name="kappa">Measured v / v_h of hover.</param>
    public static double VortexRingQuartic(double x, double kappa)
    {
        double d = -x;
        return kappa + (d * (1.125 + (d * (-1.372 + (d * (1.718 - (0.655 * d)))))));
    }

    /// <summary>v / v_h of the single branch at x = V / v_h, any x.</summary>
    public static double InducedVelocityRatio(double x)
    {
        double low = 0, high = 4;
        while (true)
        {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high) return middle;
            if (middle * MassFlowSpeed(middle, x, 0) > 1) high = middle;
            else low = middle;
        }
    }

    /// <summary>
    /// Mass-flow speed Vm of the single branch: momentum thrust is T = 2 rho A v Vm, of the sign of v. All in one unit of
    /// speed.
    /// </summary>
    /// <param name="induced">Induced velocity v, down through the disc.</param>
    /// <param name="axial">Axial speed V of the hub, climb positive.</param>
    /// <param name="inPlane">In-plane speed Vx of the hub.</param>
    public static double MassFlowSpeed(double induced, double axial, double inPlane)
    {
        double through = axial + induced;
        double square = (inPlane * inPlane) + (through * through);
        // Down-thrust in climb mirrors thrust in descent.
        double v = Math.Abs(induced);
        double opposed = induced >= 0 ? -axial : axial;
        if (opposed > 0 && opposed < LastKnot * v)
        {
            double y = opposed / v;
            double g = Branch(y);
            double ideal = 1 - y;
            double m = inPlane / (FadeSpeed * v);
            double m2 = m * m;
            square += v * v * ((g * g) - (ideal * ideal)) / (1 + (m2 * m2));
        }
        return Math.Sqrt(square);
    }

    private static double Branch(double y)
    {
        double at = y / KnotSpacing;
        int i = Math.Min((int)at, Knots.Length - 2);
        double t = at - i;
        double a = Knots[i], b = Knots[i + 1], sa = Slopes[i] * KnotSpacing, sb = Slopes[i + 1] * KnotSpacing;
        return a + (t * (sa + (t * ((3 * (b - a)) - (2 * sa) - sb + (t * ((2 * (a - b)) + sa + sb))))));
    }

    /// <summary>Slopes at the knots of the cubic spline with given end slopes (Thomas's elimination).</summary>
    private static double[] ClampedSplineSlopes(double[] values, double spacing, double first, double last)
    {
        int n = values.Length;
        double[] slopes = new double[n], ratio = new double[n];
        slopes[0] = first;
        for (int i = 1; i < n - 1; i++)
        {
            double pivot = 4 - ratio[i - 1];
            ratio[i] = 1 / pivot;
            slopes[i] = ((3 * (values[i + 1] - values[i - 1]) / spacing) - slopes[i - 1]) / pivot;
        }
        slopes[n - 1] = last;
        for (int i = n - 2; i > 0; i--) slopes[i] -= ratio[i] * slopes[i + 1];
        return slopes;
    }
}
