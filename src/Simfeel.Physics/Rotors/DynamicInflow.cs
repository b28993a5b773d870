namespace Simfeel.Physics.Rotors;

/// <summary>
/// Lag of the induced velocity: the air that a rotor drags along has mass, so its downwash needs time to follow the thrust.
/// <para>
/// m dv/dt = T - T_m(v) with the apparent mass m = (8/3) rho R^3 (Pitt and Peters, Vertica 5, 1981: 8/(3 pi) in their units;
/// it is 63.7 % of the air in the sphere around the disc, the value of Carpenter and Fridovich, NACA TN 3044, 1953; both
/// from memory), T_m(v) = 2 rho A v Vm the thrust that momentum theory gives for v, and T the thrust of the blades, larger
/// than its steady value while v has not yet grown: T = T_s + K (v_s - v), K = -dT/dv of the blades at constant speed.
/// </para>
/// <para>
/// The kernel takes Vm^2 = Vx^2 + (Vc + v)^2 in climb, and v^2 + Vc^2 in place of the last term in descent, where theory would
/// not be monotone; it decides only how fast the steady thrust of the table is reached, not which.
/// </para>
/// </summary>
public static class DynamicInflow
{
    /// <summary>Apparent mass over rho R^3.</summary>
    public const double ApparentMassFactor = 8.0 / 3;

    /// <summary>
    /// Shortest time constant that is followed, s. The smallest rotors at full speed would be faster, which no pilot and no
    /// controller could tell, but an explicit step could not follow: steps must be shorter than this.
    /// </summary>
    public const double ShortestLag = 3e-4;

    /// <summary>
    /// Largest <see cref="LiftDamping"/> taken from a table. Strip theory has solidity times lift slope over 4 for a blade of
    /// constant chord, below 1 for any propeller.
    /// </summary>
    public const double MostDamping = 1;

    /// <summary>Tip speed at which the constants of a table are read, m/s: about that of hover.</summary>
    private const double TipSpeed = 80;

    /// <summary>Thrust coefficient of hover, T / (rho A (wR)^2), of a table.</summary>
    public static double HoverThrust(RotorTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return table.At(TipSpeed, 1, 0, 0).Thrust;
    }

    /// <summary>v_h / (wR) of hover: sqrt(CT / 2); 0 where the table gives no thrust.</summary>
    public static double HoverInflow(RotorTable table) => Math.Sqrt(Math.Max(HoverThrust(table), 0) / 2);

    /// <summary>
    /// Lift damping K / (rho A wR) of a table's blades. In slow climb momentum and blades together give
    /// -dT/dVc = 2 rho A v K / (K + 4 rho A v); the table's slope is that left side, so K follows from it (from the side of
    /// climb: in descent the vortex ring changes the momentum). 0 where blades near stall gain no thrust from less inflow, at most
    /// <see cref="MostDamping"/>.
    /// </summary>
    public static double LiftDamping(RotorTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        double inflow = HoverInflow(table), step = 0.25 * inflow * TipSpeed;
        if (inflow == 0) return 0;
        double slope = ((3 * Thrust(0)) - (4 * Thrust(step)) + Thrust(2 * step)) / (2 * step * TipSpeed);
        double momentum = 2 * inflow;
        if (slope <= 0) return 0;
        return slope >= momentum ? MostDamping : Math.Min(2 * momentum * slope / (momentum - slope), MostDamping);

        // thrust over rho A: the coefficients refer to the whole flow speed
        double Thrust(double axial) => table.At(TipSpeed, 1, axial, 0).Thrust * ((TipSpeed * TipSpeed) + (axial * axial));
    }
}
