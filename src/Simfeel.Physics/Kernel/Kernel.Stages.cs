using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Motors;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Kernel;

/// <summary>
/// The flight kernel: rigid body, rotors, motors and battery of one craft in each lane. Only + - * /, square root, fused
/// multiply-add, min, max and compare are used, and nothing is allocated.
/// </summary>
/// <remarks>
/// This half holds the stages that turn a state into its time derivative, in the order in which they run; the other half
/// holds the integrators. Each stage is a method of its own, small enough for the just-in-time compiler to inline every
/// lane operation in it, and leaves its results in a <see cref="LoadLanes{T}"/>.
/// </remarks>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Time derivative of a state, and all loads at it.</summary>
    /// <param name="x">State, <see cref="StateIndex"/>.</param>
    /// <param name="command">Duty of each speed controller, 0 to 1.</param>
    /// <param name="craft">Constants of the craft.</param>
    /// <param name="field">Air and gravity.</param>
    /// <param name="load">Receives the loads.</param>
    /// <param name="dx">Receives the derivative.</param>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    public static void Derivative(
        T* x, T* command, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        Kinematics(x, field, load, dx);
        Battery(x, command, craft, load);
        Motors(x, command, craft, load, dx);
        RotorAir(x, craft, field, load);
        BodyAir(craft, field, load);
        RigidBody(x, craft, field, load, dx);
        RotorSpeeds(craft, load, dx);
    }

    /// <summary>Rotation matrix, velocity through the air in body axes, rates of position and attitude.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Kinematics(T* x, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        T qw = x[StateIndex.Attitude], qx = x[StateIndex.Attitude + 1];
        T qy = x[StateIndex.Attitude + 2], qz = x[StateIndex.Attitude + 3];
        T one = T.Of(1), two = T.Of(2), half = T.Of(0.5);
        load->R00 = one - (two * T.Fma(qy, qy, qz * qz));
        load->R01 = two * T.Fma(qx, qy, -(qw * qz));
        load->R02 = two * T.Fma(qx, qz, qw * qy);
        load->R10 = two * T.Fma(qx, qy, qw * qz);
        load->R11 = one - (two * T.Fma(qx, qx, qz * qz));
        load->R12 = two * T.Fma(qy, qz, -(qw * qx));
        load->R20 = two * T.Fma(qx, qz, -(qw * qy));
        load->R21 = two * T.Fma(qy, qz, qw * qx);
        load->R22 = one - (two * T.Fma(qx, qx, qy * qy));

        T vx = x[StateIndex.Velocity], vy = x[StateIndex.Velocity + 1], vz = x[StateIndex.Velocity + 2];
        dx[StateIndex.Position] = vx;
        dx[StateIndex.Position + 1] = vy;
        dx[StateIndex.Position + 2] = vz;
        vx = vx - field->WindX;
        vy = vy - field->WindY;
        vz = vz - field->WindZ;
        load->AirX = T.Fma(load->R20, vz, T.Fma(load->R10, vy, load->R00 * vx));
        load->AirY = T.Fma(load->R21, vz, T.Fma(load->R11, vy, load->R01 * vx));
        load->AirZ = T.Fma(load->R22, vz, T.Fma(load->R12, vy, load->R02 * vx));

        // q' = q (0, w) / 2
        T wx = half * x[StateIndex.Rate], wy = half * x[StateIndex.Rate + 1], wz = half * x[StateIndex.Rate + 2];
        dx[StateIndex.Attitude] = -T.Fma(qz, wz, T.Fma(qy, wy, qx * wx));
        dx[StateIndex.Attitude + 1] = T.Fma(qw, wx, qy * wz) - (qz * wy);
        dx[StateIndex.Attitude + 2] = T.Fma(qw, wy, qz * wx) - (qx * wz);
        dx[StateIndex.Attitude + 3] = T.Fma(qw, wz, qx * wy) - (qy * wx);
    }

    /// <summary>
    /// Terminal voltage V of the pack that feeds all motors at once. With E the source voltage and R0 its resistance,
    /// V^2 - E V + R0 (P_electronics + sum of P_k) = 0, where motor k takes P = i (e + R i) at
    /// i = (d V - e) / (R + k_c |w|): quadratic in V, or constant where the current limit holds. The motors at their
    /// limits are found by repeating from V = E until no lane changes; no delay is put into the loop, which could make it
    /// swing. A settled lane stays as it is, so its bits do not depend on how long the others take.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Battery(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        BatteryLanes<T>* battery = &craft->Battery;
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            T w = x[StateIndex.RotorSpeed + k];
            loads[k].BackEmf = rotors[k].Kt * w;
            loads[k].Conductance = MotorLaws<T>.Conductance(rotors + k, w);
        }

        T source = OpenCircuitVoltage(battery, x[StateIndex.Charge]) - x[StateIndex.PairVoltage];
        T voltage = source, low = T.Of(0), high = T.Of(HighVoltage);
        for (int pass = 0; pass < BatteryPasses; pass++)
        {
            T next = TerminalVoltage(voltage, source, command, craft, load, &low, &high);
            if (T.AllEqual(next, voltage)) break;
            voltage = next;
        }
        load->SourceVoltage = source;
        load->PackVoltage = voltage;
        load->PackCurrent = (source - voltage) * battery->InverseResistance;
    }

    /// <summary>
    /// One pass of <see cref="Battery"/>: the root for the motors that are at their limits at the voltage given. Where
    /// that leaves what is known of the root (the sign of the quadratic at every voltage tried), the middle is taken:
    /// without it a motor that meets its driving limit just between two voltages makes the search swing for ever.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static T TerminalVoltage(T voltage, T source, T* command, CraftLanes<T>* craft, LoadLanes<T>* load, T* low, T* high)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        T zero = T.Of(0), one = T.Of(1);
        T square = zero, linear = zero, constant = craft->Battery.ElectronicsPower;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            T d = command[k], e = loads[k].BackEmf, y = loads[k].Conductance, resistance = rotors[k].Resistance;
            T free = T.Fma(d, voltage, -e) * y;
            T held = T.Min(T.Max(free, rotors[k].BrakeLimit), rotors[k].CurrentLimit);
            // excess is above zero where a limit holds; there the power no longer depends on V
            T excess = T.Abs(free - held);
            T ry = resistance * y, dy = d * y;
            T rest = one - ry;
            T powerHeld = held * T.Fma(resistance, held, e);
            square = square + T.IfLess(zero, excess, zero, d * dy * ry);
            linear = linear + T.IfLess(zero, excess, zero, dy * e * (rest - ry));
            constant = constant + T.IfLess(zero, excess, powerHeld, -(e * e * y * rest));
        }
        T a = T.Fma(craft->Battery.Resistance, square, one);
        T b = T.Fma(craft->Battery.Resistance, linear, -source);
        T c = craft->Battery.Resistance * constant;
        T inside = T.Max(T.Fma(b, b, T.Of(-4) * a * c), zero);
        T root = (T.Sqrt(inside) - b) / (a + a);

        T here = T.Fma(T.Fma(a, voltage, b), voltage, c);
        T below = T.IfLess(here, zero, voltage, *low), above = T.IfLess(here, zero, *high, voltage);
        *low = below;
        *high = above;
        T middle = T.Of(0.5) * (below + above);
        T bracketed = T.IfLess(below, root, T.IfLess(root, above, root, middle), middle);
        return T.IfLess(zero, T.Abs(root - voltage), bracketed, root);
    }

    /// <summary>
    /// Most passes of the battery's search. In four million random states of mixed motors 90 % settled in the first pass,
    /// all but 261 in three and all in five; one more sees that nothing changes.
    /// </summary>
    private const int BatteryPasses = 8;

    /// <summary>A voltage above that of any pack, V.</summary>
    private const double HighVoltage = 1e4;

    /// <summary>Open-circuit voltage: straight lines between the charge nodes, as a sum of ramps so that no lane branches.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static T OpenCircuitVoltage(BatteryLanes<T>* battery, T charge)
    {
        T s = charge * battery->InverseCapacity;
        T* slope = (T*)&battery->Slopes;
        T zero = T.Of(0), twentieth = T.Of(0.05), tenth = T.Of(0.1);
        T voltage = battery->EmptyVoltage;
        voltage = T.Fma(slope[0], T.Min(T.Max(s, zero), twentieth), voltage);
        voltage = T.Fma(slope[1], T.Min(T.Max(s - twentieth, zero), twentieth), voltage);
        voltage = T.Fma(slope[2], T.Min(T.Max(s - tenth, zero), tenth), voltage);
        voltage = T.Fma(slope[3], T.Min(T.Max(s - T.Of(0.2), zero), tenth), voltage);
        voltage = T.Fma(slope[4], T.Min(T.Max(s - T.Of(0.3), zero), tenth), voltage);
        voltage = T.Fma(slope[5], T.Min(T.Max(s - T.Of(0.4), zero), tenth), voltage);
        voltage = T.Fma(slope[6], T.Min(T.Max(s - T.Of(0.5), zero), tenth), voltage);
        voltage = T.Fma(slope[7], T.Min(T.Max(s - T.Of(0.6), zero), tenth), voltage);
        voltage = T.Fma(slope[8], T.Min(T.Max(s - T.Of(0.7), zero), tenth), voltage);
        voltage = T.Fma(slope[9], T.Min(T.Max(s - T.Of(0.8), zero), tenth), voltage);
        return T.Fma(slope[10], T.Min(T.Max(s - T.Of(0.9), zero), tenth), voltage);
    }

    /// <summary>Currents and torques of the motors at the pack's voltage, and the drain of the battery.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Motors(T* x, T* command, CraftLanes<T>* craft, LoadLanes<T>* load, T* dx)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            T current = MotorLaws<T>.Current(
                rotors + k, command[k], load->PackVoltage, loads[k].BackEmf, loads[k].Conductance);
            loads[k].Current = current;
            loads[k].MotorTorque = MotorLaws<T>.ShaftTorque(rotors + k, current, x[StateIndex.RotorSpeed + k]);
        }
        BatteryLanes<T>* battery = &craft->Battery;
        dx[StateIndex.Charge] = -load->PackCurrent;
        dx[StateIndex.PairVoltage] = T.Fma(
            load->PackCurrent, battery->InversePairCapacitance, -(x[StateIndex.PairVoltage] * battery->PairRate));
    }

    /// <summary>Loads of the air on the rotors, summed about the centre of gravity.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void RotorAir(T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        T wx = x[StateIndex.Rate], wy = x[StateIndex.Rate + 1], wz = x[StateIndex.Rate + 2];
        T zero = T.Of(0);
        T forceX = zero, forceY = zero, forceZ = zero, momentX = zero, momentY = zero, momentZ = zero, spin = zero;
        for (int k = 0; k < craft->RotorCount; k++)
        {
            RotorLanes<T>* rotor = rotors + k;
            T w = x[StateIndex.RotorSpeed + k];

            // velocity of the hub through the air
            T hubX = T.Fma(wy, rotor->Z, load->AirX) - (wz * rotor->Y);
            T hubY = T.Fma(wz, rotor->X, load->AirY) - (wx * rotor->Z);
            T climb = T.Fma(wy, rotor->X, -load->AirZ) - (wx * rotor->Y);
            T tip = w * rotor->Radius;
            T inPlane2 = T.Fma(hubX, hubX, hubY * hubY);
            T speed2 = T.Fma(tip, tip, T.Fma(climb, climb, inPlane2)) + T.Of(TinySpeedSquared);
            T speed = T.Sqrt(speed2);

            // coordinates of the rotor table, see RotorTableGrid
            T slope = climb / (T.Abs(climb) + T.Abs(tip) + T.Of(TinySpeed));
            T angle = AngleIndex(T.IfLess(tip, zero, T.Of(2) - slope, slope));
            T edge = InPlaneIndex(inPlane2 / T.Fma(T.Of(RotorTableGrid.InPlaneWeight), speed2, inPlane2));
            T pace = SpeedIndex(speed / (speed + T.Of(RotorTableGrid.SpeedScale)));
            T.Lookup(angle, edge, pace, &rotor->Table, out T thrustC, out T torqueC, out T inPlaneC, out T pitchC);

            T mass = field->Density * rotor->DiscArea;
            T thrust = thrustC * (mass * speed2);
            T torque = torqueC * (mass * speed2 * rotor->Radius);
            T drag = inPlaneC * (mass * speed);
            T pitch = pitchC * (mass * speed * rotor->Radius);
            T hx = -(drag * hubX), hy = -(drag * hubY);
            forceX = forceX + hx;
            forceY = forceY + hy;
            forceZ = forceZ - thrust;
            momentX = momentX - T.Fma(rotor->Y, thrust, T.Fma(rotor->Z, hy, pitch * hubY));
            momentY = momentY + T.Fma(rotor->Z, hx, T.Fma(rotor->X, thrust, pitch * hubX));
            momentZ = momentZ + T.Fma(rotor->X, hy, -T.Fma(rotor->Y, hx, rotor->Spin * loads[k].MotorTorque));
            spin = T.Fma(rotor->Spin * rotor->SpinInertia, w, spin);
            loads[k].Thrust = thrust;
            loads[k].AirTorque = torque;
        }
        load->ForceX = forceX;
        load->ForceY = forceY;
        load->ForceZ = forceZ;
        load->MomentX = momentX;
        load->MomentY = momentY;
        load->MomentZ = momentZ;
        load->SpinMomentum = spin;
    }

    /// <summary>Keeps divisions finite where nothing moves, m/s and its square.</summary>
    private const double TinySpeed = 1e-9, TinySpeedSquared = 1e-9;

    /// <summary>Drag of the body: F_i = -rho/2 (CdA)_i |v| v_i at the drag point.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void BodyAir(CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load)
    {
        T vx = load->AirX, vy = load->AirY, vz = load->AirZ;
        T pressure = field->Density * T.Sqrt(T.Fma(vx, vx, T.Fma(vy, vy, vz * vz)));
        T fx = -(pressure * craft->HalfDragX * vx);
        T fy = -(pressure * craft->HalfDragY * vy);
        T fz = -(pressure * craft->HalfDragZ * vz);
        T px = craft->DragPointX, py = craft->DragPointY, pz = craft->DragPointZ;
        load->ForceX = load->ForceX + fx;
        load->ForceY = load->ForceY + fy;
        load->ForceZ = load->ForceZ + fz;
        load->MomentX = load->MomentX + T.Fma(py, fz, -(pz * fy));
        load->MomentY = load->MomentY + T.Fma(pz, fx, -(px * fz));
        load->MomentZ = load->MomentZ + T.Fma(px, fy, -(py * fx));
    }

    /// <summary>
    /// m v' = R f + m g and (I - sum J zz) w' = M - w x (I w + h), with h the rotors' spin momentum. The motors' torques
    /// stand in M as reactions, so the rotors' own change of momentum is already paid for.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void RigidBody(T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        T fx = load->ForceX, fy = load->ForceY, fz = load->ForceZ, inverseMass = craft->InverseMass;
        dx[StateIndex.Velocity] = T.Fma(load->R02, fz, T.Fma(load->R01, fy, load->R00 * fx)) * inverseMass;
        dx[StateIndex.Velocity + 1] = T.Fma(load->R12, fz, T.Fma(load->R11, fy, load->R10 * fx)) * inverseMass;
        dx[StateIndex.Velocity + 2] = T.Fma(
            T.Fma(load->R22, fz, T.Fma(load->R21, fy, load->R20 * fx)), inverseMass, field->Gravity);

        T wx = x[StateIndex.Rate], wy = x[StateIndex.Rate + 1], wz = x[StateIndex.Rate + 2];
        T lx = T.Fma(craft->Ixz, wz, T.Fma(craft->Ixy, wy, craft->Ixx * wx));
        T ly = T.Fma(craft->Iyz, wz, T.Fma(craft->Iyy, wy, craft->Ixy * wx));
        T lz = T.Fma(craft->Izz, wz, T.Fma(craft->Iyz, wy, T.Fma(craft->Ixz, wx, load->SpinMomentum)));
        T mx = load->MomentX - T.Fma(wy, lz, -(wz * ly));
        T my = load->MomentY - T.Fma(wz, lx, -(wx * lz));
        T mz = load->MomentZ - T.Fma(wx, ly, -(wy * lx));
        dx[StateIndex.Rate] = T.Fma(craft->Axz, mz, T.Fma(craft->Axy, my, craft->Axx * mx));
        dx[StateIndex.Rate + 1] = T.Fma(craft->Ayz, mz, T.Fma(craft->Ayy, my, craft->Axy * mx));
        dx[StateIndex.Rate + 2] = T.Fma(craft->Azz, mz, T.Fma(craft->Ayz, my, craft->Axz * mx));
    }

    /// <summary>J (w_k' + s_k w_z') = motor torque - torque of the air: speeds are relative to the turning body.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void RotorSpeeds(CraftLanes<T>* craft, LoadLanes<T>* load, T* dx)
    {
        RotorLanes<T>* rotors = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* loads = (RotorLoad<T>*)&load->Rotors;
        T yaw = dx[StateIndex.Rate + 2];
        for (int k = 0; k < craft->RotorCount; k++)
        {
            dx[StateIndex.RotorSpeed + k] = T.Fma(
                loads[k].MotorTorque - loads[k].AirTorque, rotors[k].InverseSpinInertia, -(rotors[k].Spin * yaw));
        }
    }
}
