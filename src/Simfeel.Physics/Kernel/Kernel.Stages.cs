using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Kernel;

/// <summary>
/// The flight kernel: rigid body, rotors, motors and battery of one craft in each lane. Only + - * /, square root, fused
/// multiply-add, min, max and compare are used, and nothing is allocated.
/// </summary>
/// <remarks>
/// This part holds the stages that turn a state into its time derivative, but for the battery and the motors, which have a
/// part of their own, as have the integrators. Each stage is a method of its own, small enough for the just-in-time
/// compiler to inline every lane operation in it, and leaves its results in a <see cref="LoadLanes{T}"/>.
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
    /// <param name="dx">
    /// Receives the derivative; the rate of charge that it holds at entry, of a state near by or 0, is where the search for
    /// the battery's voltage begins.
    /// </param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static void Derivative(
        T* x, T* command, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        Kinematics(x, field, load, dx);
        SourceVoltage(x, craft, load, dx);
        TerminalVoltage(x, command, craft, load);
        if (craft->Fits != null)
        {
            BodyAir(craft, field, load);
            FittedRotors(x, craft, field, load, dx);
            Motors(x, craft, load);
            Battery(x, command, craft, load, dx);
            MotorReactions(craft, load);
        }
        else
        {
            RotorFlow(x, craft, load);
            Motors(x, craft, load);
            Battery(x, command, craft, load, dx);
            BodyAir(craft, field, load);
            RotorAir(x, craft, field, load, dx);
        }
        Accelerations(x, craft, field, load, dx);
    }

    /// <summary>The first stages of <see cref="Derivative"/>: attitude and the flow at body and rotors, nothing else.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static void Flow(T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        Kinematics(x, field, load, dx);
        RotorFlow(x, craft, load);
    }

    /// <summary>Rotation matrix, velocity through the air in body axes, rates of position and attitude.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void Kinematics(T* x, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        T qw = x[StateIndex.Attitude], qx = x[StateIndex.Attitude + 1];
        T qy = x[StateIndex.Attitude + 2], qz = x[StateIndex.Attitude + 3];
        T one = T.Of(1), half = T.Of(0.5);
        T x2 = qx + qx, y2 = qy + qy, z2 = qz + qz;
        T wx2 = qw * x2, wy2 = qw * y2, wz2 = qw * z2;
        T r00 = T.Fnma(qy, y2, T.Fnma(qz, z2, one));
        T r01 = T.Fms(qx, y2, wz2);
        T r02 = T.Fma(qx, z2, wy2);
        T r10 = T.Fma(qx, y2, wz2);
        T r11 = T.Fnma(qx, x2, T.Fnma(qz, z2, one));
        T r12 = T.Fms(qy, z2, wx2);
        T r20 = T.Fms(qx, z2, wy2);
        T r21 = T.Fma(qy, z2, wx2);
        T r22 = T.Fnma(qx, x2, T.Fnma(qy, y2, one));

        T vx = x[StateIndex.Velocity], vy = x[StateIndex.Velocity + 1], vz = x[StateIndex.Velocity + 2];
        T ax = vx - field->WindX, ay = vy - field->WindY, az = vz - field->WindZ;
        T wx = half * x[StateIndex.Rate], wy = half * x[StateIndex.Rate + 1], wz = half * x[StateIndex.Rate + 2];
        load->AirX = T.Fma(r20, az, T.Fma(r10, ay, r00 * ax));
        load->AirY = T.Fma(r21, az, T.Fma(r11, ay, r01 * ax));
        load->AirZ = T.Fma(r22, az, T.Fma(r12, ay, r02 * ax));
        load->R00 = r00;
        load->R01 = r01;
        load->R02 = r02;
        load->R10 = r10;
        load->R11 = r11;
        load->R12 = r12;
        load->R20 = r20;
        load->R21 = r21;
        load->R22 = r22;
        dx[StateIndex.Position] = vx;
        dx[StateIndex.Position + 1] = vy;
        dx[StateIndex.Position + 2] = vz;

        // q' = q (0, w) / 2
        dx[StateIndex.Attitude] = -T.Fma(qz, wz, T.Fma(qy, wy, qx * wx));
        dx[StateIndex.Attitude + 1] = T.Fnma(qz, wy, T.Fma(qw, wx, qy * wz));
        dx[StateIndex.Attitude + 2] = T.Fnma(qx, wz, T.Fma(qw, wy, qz * wx));
        dx[StateIndex.Attitude + 3] = T.Fnma(qy, wx, T.Fma(qw, wz, qx * wy));
    }

    /// <summary>
    /// Drag of the body: F_i = -rho/2 (CdA)_i |v| v_i at the drag point. The first of the loads; the rotors add theirs.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void BodyAir(CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load)
    {
        T vx = load->AirX, vy = load->AirY, vz = load->AirZ;
        T pressure = -(field->Density * T.Sqrt(T.Fma(vx, vx, T.Fma(vy, vy, vz * vz))));
        T fx = pressure * craft->HalfDragX * vx;
        T fy = pressure * craft->HalfDragY * vy;
        T fz = pressure * craft->HalfDragZ * vz;
        T px = craft->DragPointX, py = craft->DragPointY, pz = craft->DragPointZ;
        load->ForceX = fx;
        load->ForceY = fy;
        load->ForceZ = fz;
        load->MomentX = T.Fms(py, fz, pz * fy);
        load->MomentY = T.Fms(pz, fx, px * fz);
        load->MomentZ = T.Fms(px, fy, py * fx);
    }

    /// <summary>The part of the air's force that acts on the rotors: all of it less that of <see cref="BodyAir"/>.</summary>
    /// <param name="craft">Constants.</param>
    /// <param name="field">Air.</param>
    /// <param name="load">Loads at a state.</param>
    /// <param name="force">Receives three lanes, body axes, N.</param>
    public static void RotorForce(CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* force)
    {
        T vx = load->AirX, vy = load->AirY, vz = load->AirZ;
        T pressure = field->Density * T.Sqrt(T.Fma(vx, vx, T.Fma(vy, vy, vz * vz)));
        force[0] = T.Fma(pressure * craft->HalfDragX, vx, load->ForceX);
        force[1] = T.Fma(pressure * craft->HalfDragY, vy, load->ForceY);
        force[2] = T.Fma(pressure * craft->HalfDragZ, vz, load->ForceZ);
    }

    /// <summary>
    /// Flow at the rotors, and where it lies in their tables. A loop apart from <see cref="RotorAir"/>, so that the
    /// processor works on the long chains of several rotors at once.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void RotorFlow(T* x, CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* flow = (RotorLoad<T>*)&load->Rotors;
        T* rotorSpeed = x + StateIndex.RotorSpeed, end = rotorSpeed + craft->RotorCount;
        T wx = x[StateIndex.Rate], wy = x[StateIndex.Rate + 1], wz = x[StateIndex.Rate + 2];
        T airX = load->AirX, airY = load->AirY, airZ = load->AirZ;
        for (; rotorSpeed < end; rotorSpeed++, rotor++, flow++)
        {
            T rx = rotor->X, ry = rotor->Y, rz = rotor->Z;
            T hubX = T.Fnma(wz, ry, T.Fma(wy, rz, airX));
            T hubY = T.Fnma(wx, rz, T.Fma(wz, rx, airY));
            T climb = T.Fnma(wx, ry, T.Fms(wy, rx, airZ));
            T tip = *rotorSpeed * rotor->Radius;
            T inPlane2 = T.Fma(hubX, hubX, hubY * hubY);
            T speed2 = T.Fma(climb, climb, T.Fma(tip, tip, T.Of(TinySpeedSquared))) + inPlane2;
            T speed = T.Sqrt(speed2);

            flow->HubX = hubX;
            flow->HubY = hubY;
            flow->FlowSpeed = speed;
            flow->Climb = climb;

            T slope = climb / (T.Abs(climb) + T.Abs(tip) + T.Of(TinySpeed));
            T angle = AngleIndex(T.IfLess(tip, T.Of(0), T.Of(2) - slope, slope));
            T inPlane = InPlaneIndex(inPlane2 / T.Fma(T.Of(RotorTableGrid.InPlaneWeight), speed2, inPlane2));
            T pace = SpeedIndex(speed / (speed + T.Of(RotorTableGrid.SpeedScale)));
            T.Locate(angle, inPlane, pace, &rotor->Table, &flow->Cell);
        }
    }

    /// <summary>Loads of the air on the rotors, added to those on the body, about the centre of gravity.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void RotorAir(T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* rotorLoad = (RotorLoad<T>*)&load->Rotors;
        T* factor = (T*)&field->ThrustFactor;
        T forceX = load->ForceX, forceY = load->ForceY, forceZ = load->ForceZ, density = field->Density;
        T momentX = load->MomentX, momentY = load->MomentY, momentZ = load->MomentZ, spin = T.Of(0);
        for (int k = 0; k < craft->RotorCount; k++, rotor++, rotorLoad++)
        {
            T.Interpolate(&rotorLoad->Cell, out T thrustC, out T torqueC, out T inPlaneC, out T pitchC);

            T speed = rotorLoad->FlowSpeed, hubX = rotorLoad->HubX, hubY = rotorLoad->HubY, radius = rotor->Radius;
            T lift = density * rotor->LiftArea * speed, flux = density * rotor->DragArea * speed;
            T thrust = thrustC * (lift * speed) * factor[k];
            if (craft->DynamicInflow != 0) thrust = LaggedThrust(x, k, thrust, craft, field, load, dx);
            T drag = inPlaneC * flux;
            // moment about the centre of gravity per in-plane velocity: the hub's own, and the drag's on its arm
            T pitch = T.Fnma(rotor->Z, drag, pitchC * (lift * radius));
            forceX = T.Fnma(drag, hubX, forceX);
            forceY = T.Fnma(drag, hubY, forceY);
            forceZ = forceZ - thrust;
            momentX = momentX - T.Fma(rotor->Y, thrust, pitch * hubY);
            momentY = momentY + T.Fma(rotor->X, thrust, pitch * hubX);
            T yaw = T.Fma(drag, T.Fms(rotor->X, hubY, rotor->Y * hubX), rotor->Spin * rotorLoad->MotorTorque);
            momentZ = momentZ - yaw;
            spin = T.Fma(rotor->SignedSpinInertia, x[StateIndex.RotorSpeed + k], spin);
            rotorLoad->Thrust = thrust;
            rotorLoad->AirTorque = torqueC * (flux * speed * radius);
        }
        load->ForceX = forceX;
        load->ForceY = forceY;
        load->ForceZ = forceZ;
        load->MomentX = momentX;
        load->MomentY = momentY;
        load->MomentZ = momentZ;
        load->SpinMomentum = spin;
    }

    /// <summary>
    /// Thrust of a rotor whose induced velocity lags behind, and the rate at which that velocity follows
    /// (<see cref="DynamicInflow"/>). The distance v_s - v to the steady state is the excess of the steady thrust over
    /// T_m(v), divided by the mean slope between the two, D = 2 rho A Vm + T_s / sqrt((Vm^2 + v_h^2) / 2): exact near
    /// the steady state of hover and of fast flow, and finite where nothing flows yet.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T LaggedThrust(
        T* x, int k, T steady, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors + k;
        InflowLanes<T>* lag = (InflowLanes<T>*)&craft->Inflow + k;
        int at = StateIndex.Inflow(craft->RotorCount) + k;
        T v = x[at], tip = T.Abs(x[StateIndex.RotorSpeed + k] * rotor->Radius);
        RotorLoad<T>* rotorLoad = (RotorLoad<T>*)&load->Rotors + k;
        T flow = rotorLoad->FlowSpeed, two = T.Of(2);
        T through2 = T.Max(T.Fms(flow, flow, tip * tip), T.Of(TinySpeedSquared));
        T massFlow2 = T.Fma(two, T.Max(rotorLoad->Climb * v, T.Of(0)), T.Fma(v, v, through2));
        T flux = T.Fma(two * field->Density, rotor->DiscArea, T.Of(TinyFlux)), size = T.Abs(steady);
        T perSpeed = flux * T.Sqrt(massFlow2);
        T excess = T.Fnma(perSpeed, v, steady);
        T slope = perSpeed + (size / T.Sqrt(T.Of(0.5) * (massFlow2 + (size / flux))));
        T damping = field->Density * lag->Damping * tip;
        T mass = T.Max(field->Density * lag->ApparentVolume, (slope + damping) * T.Of(Rotors.DynamicInflow.ShortestLag));
        T overshoot = excess * damping / slope;
        dx[at] = (excess + overshoot) / mass;
        return steady + overshoot;
    }

    /// <summary>Keep divisions finite where nothing moves: a speed, m/s, and a square of a speed, m^2/s^2.</summary>
    private const double TinySpeed = 1e-9, TinySpeedSquared = 1e-9;

    /// <summary>Keeps divisions finite where there is no air, kg/m.</summary>
    private const double TinyFlux = 1e-12;

    /// <summary>
    /// m v' = R f + m g and (I - sum J zz) w' = M - w x (I w + h), with h the rotors' spin momentum. The motors' torques
    /// stand in M as reactions, so the rotors' own change of momentum is already paid for. Rotor k follows
    /// J (w_k' + s_k w_z') = motor torque - torque of the air: speeds are relative to the turning body.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void Accelerations(T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
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
        T mx = T.Fnma(wy, lz, T.Fma(wz, ly, load->MomentX));
        T my = T.Fnma(wz, lx, T.Fma(wx, lz, load->MomentY));
        T mz = T.Fnma(wx, ly, T.Fma(wy, lx, load->MomentZ));
        T yaw = T.Fma(craft->Azz, mz, T.Fma(craft->Ayz, my, craft->Axz * mx));
        dx[StateIndex.Rate] = T.Fma(craft->Axz, mz, T.Fma(craft->Axy, my, craft->Axx * mx));
        dx[StateIndex.Rate + 1] = T.Fma(craft->Ayz, mz, T.Fma(craft->Ayy, my, craft->Axy * mx));
        dx[StateIndex.Rate + 2] = yaw;

        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* torque = (RotorLoad<T>*)&load->Rotors;
        T* acceleration = dx + StateIndex.RotorSpeed, end = acceleration + craft->RotorCount;
        for (; acceleration < end; acceleration++, rotor++, torque++)
            *acceleration = T.Fms(torque->MotorTorque - torque->AirTorque, rotor->InverseSpinInertia, rotor->Spin * yaw);
    }
}
