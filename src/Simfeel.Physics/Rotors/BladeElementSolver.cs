using Simfeel.Physics.Air;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Rotors;

/// <summary>A rotor's loads in one working state.</summary>
/// <param name="Coefficients">Loads in the bounded system.</param>
/// <param name="InducedVelocity">Induced velocity, mean over the area between root cut-out and tip, m/s, down positive.</param>
public readonly record struct RotorSolution(RotorCoefficients Coefficients, double InducedVelocity);

/// <summary>
/// Loads of a rigid rotor by blade elements and annular momentum, in any working state: hover, climb, descent, vortex
/// ring, windmill, edgewise, stopped or turning backwards. The polar is evaluated as it is, at every blade position:
/// clear and slow. <see cref="RotorTableBuilder"/> solves the same equations faster.
/// <para>
/// Forces of a section act with the local flow: dT = (B c / 2) W (cl uT - cd uP), dQ/r = (B c / 2) W (cl uP + cd uT). The
/// blade at azimuth psi (0 at the rear) meets uT = w r - swirl + Vx sin(psi) and uP = Vc + v (1 + k r cos(psi)). In-plane
/// drag adds the friction of flow along the span. Not modelled: coning and flapping (small propellers are stiff),
/// rotational stall delay, root loss, unsteady section flow.
/// </para>
/// Immutable; shared by threads.
/// </summary>
public sealed class BladeElementSolver
{
    /// <summary>
    /// Least in-plane flow over U. Coefficients that are divided by it take their limit from here; the others change
    /// by its square.
    /// </summary>
    internal const double LeastInPlane = 1e-4;

    private const double LeastSpeed = 1e-3;

    private readonly RotorGeometry _geometry;
    private readonly AirState _air;
    private readonly BladeElementOptions _options;
    private readonly RotorAnnulus[] _annuli;
    private readonly (double Sine, double Cosine)[] _azimuths;

    /// <summary>A solver for a propeller in still air of one state.</summary>
    /// <param name="geometry">The propeller.</param>
    /// <param name="air">Density and viscosity set Reynolds numbers, sound speed sets Mach numbers.</param>
    /// <param name="options">What to resolve; <see cref="BladeElementOptions.Default"/> if null.</param>
    public BladeElementSolver(RotorGeometry geometry, AirState air, BladeElementOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        _geometry = geometry;
        _air = air;
        _options = options ?? BladeElementOptions.Default;
        _annuli = RotorAnnulus.Divide(geometry, _options.Annuli, _options.EqualAnnuli);
        _azimuths = new (double, double)[_options.Azimuths];
        for (int i = 0; i < _azimuths.Length; i++) _azimuths[i] = Math.SinCos(Azimuth(i, _azimuths.Length));
    }

    /// <summary>Loads at speed w (rad/s) with axial (climb positive) and in-plane velocity of the hub, m/s.</summary>
    public RotorSolution Solve(double w, double axial, double inPlane)
    {
        double tip = w * _geometry.Radius;
        double speed = Math.Sqrt((tip * tip) + (axial * axial) + (inPlane * inPlane));
        return speed < LeastSpeed
            ? Solve(LeastSpeed, new FlowDirection(1, 0, 0)) with { InducedVelocity = 0 }
            : Solve(speed, new FlowDirection(tip / speed, axial / speed, Math.Abs(inPlane) / speed));
    }

    /// <summary>Angle of blade position i of n, rad.</summary>
    internal static double Azimuth(int i, int n) => 2 * Math.PI * (i + 0.5) / n;

    internal RotorSolution Solve(double speed, FlowDirection direction)
    {
        FlowDirection flow = direction with { InPlane = Math.Max(direction.InPlane, LeastInPlane) };
        FlowLanes<Lane1> lanes = new(Lane1.Of(flow.Rotation), Lane1.Of(flow.Axial), Lane1.Of(flow.InPlane));
        var sum = default(RotorSum);
        AnnulusForces forces = default;
        foreach (RotorAnnulus annulus in _annuli)
        {
            double w = speed * flow.SectionSpeed(annulus.Radius);
            double reynolds = w * annulus.Chord * _geometry.Radius / _air.KinematicViscosity;
            var blades = new PolarBlades(annulus, _geometry.Polar, reynolds, w / _air.SoundSpeed, _azimuths, _options);
            Lane1 induced = InflowSolver<Lane1>.InducedVelocity(blades, lanes);
            blades.Forces(InflowSolver<Lane1>.Flow(blades, lanes, induced, out _), new(ref forces));
            sum.Add(annulus, forces, induced.v);
        }
        return new(sum.Coefficients(flow), sum.InducedVelocity * speed);
    }
}
