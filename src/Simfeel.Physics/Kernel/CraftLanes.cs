using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <summary>The constants of <see cref="Craft"/>, one lane for each craft of a batch.</summary>
[StructLayout(LayoutKind.Sequential)]
public unsafe struct CraftLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>1 / mass, 1/kg.</summary>
    public T InverseMass;

    /// <summary>Elements of the inertia tensor about the centre of gravity, rotors standing still, kg m^2.</summary>
    public T Ixx, Iyy, Izz, Ixy, Ixz, Iyz;

    /// <summary>
    /// Elements of the inverse of the tensor less the rotors' spin inertias about z, 1/(kg m^2): the rotors are free to
    /// turn about that axis, so they do not resist yaw.
    /// </summary>
    public T Axx, Ayy, Azz, Axy, Axz, Ayz;

    /// <summary>Half the drag areas along x, y, z, m^2.</summary>
    public T HalfDragX, HalfDragY, HalfDragZ;

    /// <summary>Where the drag acts, from the centre of gravity, m.</summary>
    public T DragPointX, DragPointY, DragPointZ;

    /// <summary>The battery.</summary>
    public BatteryLanes<T> Battery;

    /// <summary>The rotors; the first <see cref="RotorCount"/> are used.</summary>
    public RotorLanesArray<T> Rotors;

    /// <summary>Lag of the rotors' inflow; used with <see cref="DynamicInflow"/> only.</summary>
    public InflowLanesArray<T> Inflow;

    /// <summary>Rotors of every craft of the batch.</summary>
    public int RotorCount;

    /// <summary>1 where the induced velocities are integrated, else 0.</summary>
    public int DynamicInflow;

    /// <summary>
    /// Polynomials in place of the rotors' tables (<see cref="Kernel{T}.FitRotors"/>), one for each rotor; null where the
    /// tables are flown.
    /// </summary>
    public RotorFitLanes<T>* Fits;
}

/// <summary>The constants of <see cref="BatteryConstants"/>.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct BatteryLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>1 / capacity, 1/(A s).</summary>
    public T InverseCapacity;

    /// <summary>
    /// Open-circuit voltage on state of charge s from 0 to 1 as offset + bend[0] s + sum over the ten inner charge nodes
    /// of bend[n] max(s, s_n), V: bend[0] is the slope at empty, the others are its changes.
    /// </summary>
    public T BendOffset;

    /// <summary>The bends, see <see cref="BendOffset"/>, V.</summary>
    public BendArray<T> Bends;

    /// <summary>Series resistance R0, ohm, and its inverse.</summary>
    public T Resistance, InverseResistance;

    /// <summary>1/C and 1/(R1 C) of the RC pair.</summary>
    public T InversePairCapacitance, PairRate;

    /// <summary>Power of the electronics, W.</summary>
    public T ElectronicsPower;
}

/// <summary>The constants of <see cref="RotorConstants"/>.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct RotorLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Hub position from the centre of gravity, m.</summary>
    public T X, Y, Z;

    /// <summary>+1 or -1, direction of rotation about +z.</summary>
    public T Spin;

    /// <summary>Tip radius R, m, disc area A, m^2, and 1/R, 1/m.</summary>
    public T Radius, DiscArea, InverseRadius;

    /// <summary>Disc area times the factors of the table's lift and drag, m^2; see <see cref="Rotors.RotorTable.Scaled"/>.</summary>
    public T LiftArea, DragArea;

    /// <summary>Spin inertia with the sign of <see cref="Spin"/>, kg m^2, and the inverse of its size.</summary>
    public T SignedSpinInertia, InverseSpinInertia;

    /// <summary>Torque constant, N m/A.</summary>
    public T Kt;

    /// <summary>Resistance, ohm, and commutation droop, ohm s/rad.</summary>
    public T Resistance, CommutationDroop;

    /// <summary>Current limits: driving (positive) and braking (zero or negative), A.</summary>
    public T CurrentLimit, BrakeLimit;

    /// <summary>Soft torque limit, N m, and one over the current at which it is reached, Kt / (3 limit), 1/A.</summary>
    public T TorqueLimit, SaturationPerAmpere;

    /// <summary>Constant loss torque, N m, and loss torque per speed, N m s/rad.</summary>
    public T LossTorque, LossTorquePerSpeed;

    /// <summary>The propeller's coefficients.</summary>
    public TableLanes Table;
}

/// <summary>Constants of a rotor's <see cref="Rotors.DynamicInflow"/>.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct InflowLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Lift damping over density and tip speed, m^2.</summary>
    public T Damping;

    /// <summary>Apparent mass over density, m^3.</summary>
    public T ApparentVolume;
}

/// <summary>The air and gravity at one place and time, one lane for each craft.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct FieldLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Density of the air, kg/m^3.</summary>
    public T Density;

    /// <summary>Acceleration of gravity, downwards, m/s^2.</summary>
    public T Gravity;

    /// <summary>Velocity of the air in the world (north, east, down), m/s.</summary>
    public T WindX, WindY, WindZ;

    /// <summary>Thrust of each rotor over that of its table, from what surrounds it: wakes, ground. 1 in free air.</summary>
    public RotorFactors<T> ThrustFactor;
}

/// <summary>
/// Everything that a derivative works out on its way: loads, currents and voltages at the state it was given.
/// </summary>
[StructLayout(LayoutKind.Sequential)]
public struct LoadLanes<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Rotation matrix R_WB.</summary>
    public T R00, R01, R02, R10, R11, R12, R20, R21, R22;

    /// <summary>Velocity of the centre of gravity through the air, body axes, m/s.</summary>
    public T AirX, AirY, AirZ;

    /// <summary>Sum of the forces of air on rotors and body, body axes, N.</summary>
    public T ForceX, ForceY, ForceZ;

    /// <summary>Sum of the moments about the centre of gravity, motor reaction included, body axes, N m.</summary>
    public T MomentX, MomentY, MomentZ;

    /// <summary>Spin momentum of the rotors along body z, N m s.</summary>
    public T SpinMomentum;

    /// <summary>Open-circuit voltage less the RC pair's, voltage at the terminals, V, and pack current, A.</summary>
    public T SourceVoltage, PackVoltage, PackCurrent;

    /// <summary>Above 0 in lanes whose pack voltage has not yet been found.</summary>
    public T Unsettled;

    /// <summary>Of each rotor.</summary>
    public RotorLoadArray<T> Rotors;
}

/// <summary>What a derivative works out for one rotor.</summary>
[StructLayout(LayoutKind.Sequential)]
public struct RotorLoad<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Without limits the current is CurrentPerVolt V + ShortCurrent at a pack voltage V: A/V and A.</summary>
    public T CurrentPerVolt, ShortCurrent;

    /// <summary>The same for the current with which the pack's voltage was sought: 0 and a limit where that held.</summary>
    public T SoughtPerVolt, SoughtCurrent;

    /// <summary>Motor current, A.</summary>
    public T Current;

    /// <summary>Torque of the motor on the rotor after all losses, N m.</summary>
    public T MotorTorque;

    /// <summary>In-plane velocity of the hub through the air, body axes, m/s, and speed U of the flow at the blade tips.</summary>
    public T HubX, HubY, FlowSpeed;

    /// <summary>Axial velocity of the hub through the air, m/s, climb positive.</summary>
    public T Climb;

    /// <summary>Where that flow lies in the rotor's table.</summary>
    public CellLanes<T> Cell;

    /// <summary>Thrust along -z of the body, N.</summary>
    public T Thrust;

    /// <summary>Torque of the air against the rotation, N m.</summary>
    public T AirTorque;
}

/// <summary>Room for the rotors of a craft.</summary>
[InlineArray(Craft.MaxRotors)]
public struct RotorLanesArray<T>
    where T : unmanaged, ILane<T>
{
    private RotorLanes<T> _first;
}

/// <summary>Room for the inflow constants of the rotors of a craft.</summary>
[InlineArray(Craft.MaxRotors)]
public struct InflowLanesArray<T>
    where T : unmanaged, ILane<T>
{
    private InflowLanes<T> _first;
}

/// <summary>Room for a factor of each rotor of a craft.</summary>
[InlineArray(Craft.MaxRotors)]
public struct RotorFactors<T>
    where T : unmanaged, ILane<T>
{
    private T _first;
}

/// <summary>Room for the loads of the rotors of a craft.</summary>
[InlineArray(Craft.MaxRotors)]
public struct RotorLoadArray<T>
    where T : unmanaged, ILane<T>
{
    private RotorLoad<T> _first;
}

/// <summary>Room for the bends of the open-circuit voltage.</summary>
[InlineArray(11)]
public struct BendArray<T>
    where T : unmanaged, ILane<T>
{
    private T _first;
}
