using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics;

/// <summary>
/// The constants of one craft, derived once from its parts and shared by threads. Body axes B: origin at the
/// centre of gravity, x forward, y right, z down (ISO 1151). SI units and radians.
/// </summary>
public sealed record Craft
{
    /// <summary>All-up mass, kg; above 0.</summary>
    public required double Mass { get; init; }

    /// <summary>
    /// Inertia tensor of everything, rotors included as if they stood still, about the centre of gravity in body
    /// axes, kg m^2. Off-diagonal elements are minus the products of inertia.
    /// </summary>
    public required Mat3 I_BBcm_B { get; init; }

    /// <summary>The rotors, one to <see cref="MaxRotors"/>; all thrust along -z of the body.</summary>
    public required IReadOnlyList<RotorConstants> Rotors { get; init; }

    /// <summary>The battery and what the electronics draw from it.</summary>
    public required BatteryConstants Battery { get; init; }

    /// <summary>
    /// Drag area Cd A of the body, rotors apart, for flow along x, y, z, m^2:
    /// F_i = -rho/2 (CdA)_i |v| v_i.
    /// </summary>
    public Vec3 DragArea { get; init; }

    /// <summary>Point where the body's drag acts, from the centre of gravity, m.</summary>
    public Vec3 p_BcmD_B { get; init; }

    /// <summary>The largest number of rotors that the kernel has room for.</summary>
    public const int MaxRotors = 8;
}

/// <summary>One rotor (propeller and motor bell) with its motor and speed controller.</summary>
public sealed record RotorConstants
{
    /// <summary>Hub position from the craft's centre of gravity, body axes, m.</summary>
    public required Vec3 p_BcmR_B { get; init; }

    /// <summary>+1 where the rotor turns about +z (clockwise seen from above), -1 where it turns the other way.</summary>
    public required int Spin { get; init; }

    /// <summary>Tip radius, m.</summary>
    public required double Radius { get; init; }

    /// <summary>Aerodynamic coefficients of the propeller.</summary>
    public required RotorTable Table { get; init; }

    /// <summary>Spin inertia of propeller and motor bell about the shaft, kg m^2.</summary>
    public required double SpinInertia { get; init; }

    /// <summary>Motor torque constant, N m/A, equal to the back-EMF constant in V s/rad: 60/(2 pi KV).</summary>
    public required double Kt { get; init; }

    /// <summary>Resistance of winding and speed controller together, ohm.</summary>
    public required double Resistance { get; init; }

    /// <summary>Commutation droop k_c, ohm s/rad: an apparent resistance k_c |w| that limits current but burns no power.</summary>
    public double CommutationDroop { get; init; }

    /// <summary>Largest motor current while driving, A.</summary>
    public required double CurrentLimit { get; init; }

    /// <summary>Largest motor current while braking, A; 0 where the speed controller lets the motor coast.</summary>
    public required double BrakeCurrentLimit { get; init; }

    /// <summary>Torque toward which the motor saturates softly while it drives, N m.</summary>
    public required double TorqueLimit { get; init; }

    /// <summary>Iron and friction loss torque that does not depend on speed, N m.</summary>
    public double LossTorque { get; init; }

    /// <summary>Iron and friction loss torque that grows with speed, N m s/rad.</summary>
    public double LossTorquePerSpeed { get; init; }
}

/// <summary>A battery: open-circuit voltage on charge, series resistance and one RC pair (Thevenin model).</summary>
public sealed record BatteryConstants
{
    /// <summary>States of charge (0 empty, 1 full) at which <see cref="OpenCircuitVoltage"/> is given.</summary>
    public static IReadOnlyList<double> ChargeNodes { get; } =
        [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

    /// <summary>Open-circuit voltage of the whole pack at the twelve <see cref="ChargeNodes"/>, V; rising.</summary>
    public required IReadOnlyList<double> OpenCircuitVoltage { get; init; }

    /// <summary>Charge of the full pack, A s.</summary>
    public required double Capacity { get; init; }

    /// <summary>Series resistance of pack, leads and plug, ohm.</summary>
    public required double SeriesResistance { get; init; }

    /// <summary>Resistance of the RC pair, ohm.</summary>
    public double PairResistance { get; init; }

    /// <summary>Capacitance of the RC pair, F; above 0 where <see cref="PairResistance"/> is above 0.</summary>
    public double PairCapacitance { get; init; } = 1;

    /// <summary>Power that the electronics draw all the time, W.</summary>
    public double ElectronicsPower { get; init; }

    /// <summary>Open-circuit voltage (V) at a state of charge, 0 to 1: straight lines between the nodes.</summary>
    public double OpenCircuitVoltageAt(double stateOfCharge)
    {
        double s = Math.Clamp(stateOfCharge, 0, 1);
        int n = 1;
        while (n < ChargeNodes.Count - 1 && s > ChargeNodes[n]) n++;
        double share = (s - ChargeNodes[n - 1]) / (ChargeNodes[n] - ChargeNodes[n - 1]);
        return OpenCircuitVoltage[n - 1] + (share * (OpenCircuitVoltage[n] - OpenCircuitVoltage[n - 1]));
    }
}
