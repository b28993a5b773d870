using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Stand;

/// <summary>
/// A propeller alone in the steady flow of a wind tunnel, solved afresh at every working state by
/// <see cref="BladeElementSolver"/>, without the table that flights use.
/// </summary>
/// <param name="geometry">The propeller.</param>
/// <param name="air">The air in the tunnel.</param>
/// <param name="thrustFactor">Measured over modelled thrust.</param>
/// <param name="torqueFactor">Measured over modelled torque; counts for the in-plane drag, too.</param>
public sealed class WindTunnel(RotorGeometry geometry, AirState air, double thrustFactor = 1, double torqueFactor = 1)
{
    /// <summary>Radius over R at which <see cref="WindTunnelPoint.Reynolds"/> is given, as the trade does.</summary>
    public const double ReferenceRadius = 0.75;

    /// <summary>Advancing-tip Mach number above which the section's Mach corrections are no more than a guess.</summary>
    public const double HighestMach = 0.85;

    // what LowReynoldsPolar says it serves
    private const double LeastReynoldsOfDefault = 1e4;

    private readonly BladeElementSolver _solver = new(geometry, air);

    /// <summary>Lowest Reynolds number that the section's polar knows; below it the lowest row is held.</summary>
    public double LeastReynolds => geometry.Polar is TabulatedPolar table ? table.Reynolds[0] : LeastReynoldsOfDefault;

    /// <summary>Induced velocity of hover at a rotor speed by momentum theory, v_h = sqrt(T / (2 rho A)), m/s; 0 without lift.</summary>
    /// <param name="speed">Rotor speed, rad/s, above 0.</param>
    public double HoverInducedVelocity(double speed) =>
        MomentumTheory.HoverInducedVelocity(Math.Max(0, At(speed, 0, 0).Thrust), air.Density, geometry.DiscArea);

    /// <summary>Loads and coefficients of one working state.</summary>
    /// <param name="speed">Rotor speed, rad/s, above 0.</param>
    /// <param name="axial">Flow along the shaft, m/s, positive where the propeller climbs or drives forward.</param>
    /// <param name="edgewise">Flow in the disc's plane, m/s, at least 0.</param>
    public WindTunnelPoint At(double speed, double axial, double edgewise)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed);
        ArgumentOutOfRangeException.ThrowIfNegative(edgewise);
        RotorSolution solution = _solver.Solve(speed, axial, edgewise);
        double tip = speed * geometry.Radius;
        double flow = Math.Sqrt((tip * tip) + (axial * axial) + (edgewise * edgewise));
        double force = air.Density * geometry.DiscArea * flow * flow;
        var direction = new FlowDirection(tip / flow, axial / flow, edgewise / flow);
        double section = flow * direction.SectionSpeed(ReferenceRadius);
        return new(
            speed,
            axial,
            edgewise,
            thrustFactor * solution.Coefficients.Thrust * force,
            torqueFactor * solution.Coefficients.Torque * force * geometry.Radius,
            torqueFactor * solution.Coefficients.InPlane * force * direction.InPlane,
            solution.InducedVelocity,
            section * geometry.At(ReferenceRadius).Chord * geometry.Radius / air.KinematicViscosity,
            Math.Sqrt(((tip + edgewise) * (tip + edgewise)) + (axial * axial)) / air.SoundSpeed,
            air.Density,
            geometry.Diameter);
    }
}

/// <summary>
/// One working state of a propeller with its coefficients in both systems in use: the propeller's, over n = w/(2 pi) and
/// the diameter D, and the rotor's, over the tip speed wR and the disc's area A. Definitions after the UIUC Propeller
/// Data Site and Leishman, Principles of Helicopter Aerodynamics (2nd ed. 2006), ch. 2.
/// </summary>
/// <param name="Speed">Rotor speed, rad/s.</param>
/// <param name="Axial">Flow along the shaft, m/s, positive in climb and forward flight.</param>
/// <param name="Edgewise">Flow in the disc's plane, m/s.</param>
/// <param name="Thrust">T, N.</param>
/// <param name="Torque">Q, N m; negative where the flow drives the propeller.</param>
/// <param name="InPlane">Drag in the disc's plane, N.</param>
/// <param name="InducedVelocity">Mean induced velocity, m/s, along the flow that makes thrust.</param>
/// <param name="Reynolds">On the chord at <see cref="WindTunnel.ReferenceRadius"/>, mean of a turn, induced flow left out.</param>
/// <param name="TipMach">Mach number of the advancing tip.</param>
/// <param name="Density">Air density rho, kg/m^3.</param>
/// <param name="Diameter">D, m.</param>
public readonly record struct WindTunnelPoint(
    double Speed,
    double Axial,
    double Edgewise,
    double Thrust,
    double Torque,
    double InPlane,
    double InducedVelocity,
    double Reynolds,
    double TipMach,
    double Density,
    double Diameter)
{
    /// <summary>Rate of descent over the induced velocity of hover from which the model is weak.</summary>
    public const double SlowestWeakDescent = 0.5;

    /// <summary>Rate of descent over the induced velocity of hover up to which the model is weak.</summary>
    public const double FastestWeakDescent = 2;

    /// <summary>Shaft power P = Q w, W.</summary>
    public double Power => Torque * Speed;

    /// <summary>T / (rho n^2 D^4).</summary>
    public double PropellerThrustCoefficient => Thrust / (Density * Turns * Turns * Math.Pow(Diameter, 4));

    /// <summary>P / (rho n^3 D^5).</summary>
    public double PropellerPowerCoefficient => Power / (Density * Math.Pow(Turns, 3) * Math.Pow(Diameter, 5));

    /// <summary>J = V / (n D) with the axial flow V.</summary>
    public double AdvanceRatio => Axial / (Turns * Diameter);

    /// <summary>
    /// J CT / CP = T V / P, the in-plane drag left out; null in descent and where the flow drives the propeller, where it
    /// means nothing.
    /// </summary>
    public double? Efficiency => Axial >= 0 && Power > 0 ? Thrust * Axial / Power : null;

    /// <summary>T / (rho A (wR)^2).</summary>
    public double RotorThrustCoefficient => Thrust / (Density * Area * TipSpeed * TipSpeed);

    /// <summary>Q / (rho A (wR)^2 R).</summary>
    public double RotorTorqueCoefficient => Torque / (Density * Area * TipSpeed * TipSpeed * Diameter / 2);

    /// <summary>Ideal over actual power of hover, T sqrt(T / (2 rho A)) / P; null unless the propeller lifts in still air.</summary>
    public double? FigureOfMerit =>
        Axial == 0 && Edgewise == 0 && Thrust > 0 && Power > 0 ? MomentumTheory.HoverPower(Thrust, Density, Area) / Power : null;

    /// <summary>
    /// Whether the state is a descent through the own wake, where the torque comes out up to 54 % too low against Castles
    /// and Gray, NACA TN-2474 (1951). Edgewise flow of more than the induced velocity of hover sweeps the wake away
    /// (common practice).
    /// </summary>
    /// <param name="hoverInducedVelocity">That of this rotor speed, m/s: <see cref="WindTunnel.HoverInducedVelocity"/>.</param>
    public bool IsWeakDescent(double hoverInducedVelocity) =>
        Axial < 0
        && Edgewise <= hoverInducedVelocity
        && -Axial >= SlowestWeakDescent * hoverInducedVelocity
        && -Axial <= FastestWeakDescent * hoverInducedVelocity;

    private double Turns => Speed / (2 * Math.PI);

    private double Area => Math.PI * Diameter * Diameter / 4;

    private double TipSpeed => Speed * Diameter / 2;
}
