using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Kernel;

/// <content>
/// Rotors as polynomials: the table's value and slopes at one state make polynomials of low degree
/// (<see cref="RotorFitLanes{T}"/>) that hold for some steps. Between fits a rotor costs no division, no root and no lookup.
/// </content>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>
    /// Fits every rotor's polynomials to its table about the state that lies ahead by a time along a derivative: the middle
    /// of the time for which they will hold. There they have the table's values and slopes, so that their error grows with
    /// the square of the way that the state moves from there.
    /// </summary>
    /// <param name="x">State, <see cref="StateIndex"/>.</param>
    /// <param name="dx">Its derivative.</param>
    /// <param name="ahead">Time from x to the state of the fit, s.</param>
    /// <param name="craft">Constants of the craft.</param>
    /// <param name="field">Air; its density is in the polynomials.</param>
    /// <param name="load">Receives attitude and flow at the state of the fit.</param>
    /// <param name="scratch">Two blocks of <see cref="StateIndex.Stride"/> lanes.</param>
    /// <param name="fits">Receives the polynomials, one for each rotor.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static void FitRotors(
        T* x, T* dx, double ahead, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* scratch, RotorFitLanes<T>* fits)
    {
        AdvanceToUnit(x, dx, scratch, ahead, StateIndex.Used(craft->RotorCount, dynamicInflow: false));
        Flow(scratch, craft, field, load, scratch + StateIndex.Stride);
        for (int k = 0; k < craft->RotorCount; k++)
        {
            CellSlopes(load, k, fits + k);
            FitRotor(scratch, craft, field, load, k, fits + k);
        }
    }

    /// <summary>
    /// Value and slopes of the four coefficients in their cell, left in the places of a fit: value, slope along flow angle,
    /// in-plane flow and speed of each. The form within a cell is linear along each coordinate, so a difference over one
    /// whole cell is its slope.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void CellSlopes(LoadLanes<T>* load, int k, RotorFitLanes<T>* fit)
    {
        CellLanes<T>* cell = &((RotorLoad<T>*)&load->Rotors + k)->Cell;
        T* along = &cell->X;
        T one = T.Of(1);
        T.Interpolate(cell, out fit->Thrust.Constant, out fit->Torque.Constant, out fit->Drag.Constant, out fit->Pitch.Constant);
        T* slope = &fit->Thrust.Constant + 1;
        for (int axis = 0; axis < 3; axis++)
        {
            T here = along[axis];
            along[axis] = here + one;
            T.Interpolate(cell, out T thrust, out T torque, out T drag, out T pitch);
            along[axis] = here;
            slope[axis] = thrust - fit->Thrust.Constant;
            slope[4 + axis] = torque - fit->Torque.Constant;
            slope[8 + axis] = drag - fit->Drag.Constant;
            slope[12 + axis] = pitch - fit->Pitch.Constant;
        }
    }

    /// <summary>Least speeds in the divisions of <see cref="FitRotor"/>, m/s: below, hardly anything turns or moves.</summary>
    private const double LeastFitSpeed = 0.1;

    /// <summary>Square of the tip speed, m^2/s^2, below which slopes along the square of the rotor's speed fade out.</summary>
    private const double SlowTipSquared = 1;

    /// <summary>Flow between which the table's speed coordinate moves, m/s.</summary>
    private const double SlowestFlow = RotorTableGrid.SpeedScale * RotorTableGrid.FirstSpeed / (1 - RotorTableGrid.FirstSpeed);

    private const double FastestFlow = RotorTableGrid.SpeedScale * RotorTableGrid.LastSpeed / (1 - RotorTableGrid.LastSpeed);

    /// <summary>
    /// From value and slopes of the coefficients in their cell to the polynomials of one rotor, by the chain rule. With
    /// t = wR, c = Vc, s = Vx^2, r = t^2 + c^2, q = r + s, D = |c| + |t|, E = k q + s and U = sqrt(q) the coordinates of
    /// <see cref="RotorTableGrid"/> change by du = (t dc - c dt) / D^2, dg = k (r ds - s dr) / E^2 and
    /// dz = U0 dq / (2 U (U + U0)^2).
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void FitRotor(
        T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, int k, RotorFitLanes<T>* fit)
    {
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors + k;
        RotorLoad<T>* flow = (RotorLoad<T>*)&load->Rotors + k;
        T zero = T.Of(0), one = T.Of(1), half = T.Of(0.5), least = T.Of(LeastFitSpeed), weight = T.Of(RotorTableGrid.InPlaneWeight);
        T w = x[StateIndex.RotorSpeed + k], radius = rotor->Radius, tip = w * radius, climb = flow->Climb;
        T s = T.Fma(flow->HubX, flow->HubX, flow->HubY * flow->HubY), r = T.Fma(tip, tip, climb * climb);
        T speed = flow->FlowSpeed, u = T.Max(speed, least), q = u * u;
        T d = T.Max(T.Abs(climb) + T.Abs(tip), least), e = T.Fma(weight, q, s), far = u + T.Of(RotorTableGrid.SpeedScale);
        T d2 = d * d, e2 = e * e, far2 = far * far, inverse = one / (d2 * e2 * (u * far2));

        // nodes per unit of each coordinate, over the denominator of its change
        T perAngle = T.IfLess(climb, T.Of(0.45) * d, T.Of(Angle1), T.Of(Angle2));
        perAngle = T.IfLess(climb, T.Of(-0.4) * d, T.Of(Angle0), perAngle);
        perAngle = T.IfLess(tip, zero, T.Of(Angle3), perAngle) * (inverse * e2 * (u * far2));
        T perInPlane = T.IfLess(s, T.Of(0.88) * e, T.Of(InPlane1), T.Of(InPlane2));
        perInPlane = T.IfLess(s, T.Of(0.1) * e, T.Of(InPlane0), perInPlane) * weight * (inverse * d2 * (u * far2));
        T perSpeed = inverse * d2 * e2, halfOverFlow = half * far2 * perSpeed;
        perSpeed = perSpeed * T.Of(0.5 * SpeedNodes * RotorTableGrid.SpeedScale);
        perSpeed = T.IfLess(u, T.Of(SlowestFlow), zero, T.IfLess(T.Of(FastestFlow), u, zero, perSpeed));

        FitLanes by;
        by.AngleByTip = -(climb * perAngle);
        by.AngleByClimb = tip * perAngle;
        by.InPlaneByOther = -(s * perInPlane);
        by.InPlaneByInPlane = r * perInPlane;
        by.Speed = perSpeed;
        by.TwiceTip = tip + tip;
        by.TwiceClimb = climb + climb;
        by.Climb = climb;
        by.InPlane = s;

        T lift = field->Density * rotor->LiftArea, drag = field->Density * rotor->DragArea;
        T perSquare = half * radius * radius * tip / T.Fma(tip, tip, T.Of(SlowTipSquared));
        T liftFlux = lift * speed, dragFlux = drag * speed, turningDrag = drag * radius, turningLift = lift * radius;
        FitLoad(&fit->Thrust, &by, liftFlux * speed, lift, w * w, perSquare);
        FitLoad(&fit->Torque, &by, turningDrag * speed * speed, turningDrag, w * w, perSquare);
        FitLoad(&fit->Drag, &by, dragFlux, drag * halfOverFlow, w, radius);
        FitLoad(&fit->Pitch, &by, turningLift * speed, turningLift * halfOverFlow, w, radius);
        T arm = rotor->Z;
        fit->Pitch.Constant = T.Fnma(arm, fit->Drag.Constant, fit->Pitch.Constant);
        fit->Pitch.Speed = T.Fnma(arm, fit->Drag.Speed, fit->Pitch.Speed);
        fit->Pitch.Axial = T.Fnma(arm, fit->Drag.Axial, fit->Pitch.Axial);
        fit->Pitch.InPlane = T.Fnma(arm, fit->Drag.InPlane, fit->Pitch.InPlane);
    }

    /// <summary>How the table's coordinates change with the flow, and that flow.</summary>
    private struct FitLanes
    {
        public T AngleByTip, AngleByClimb, InPlaneByOther, InPlaneByInPlane, Speed, TwiceTip, TwiceClimb, Climb, InPlane;
    }

    /// <summary>
    /// Polynomial of a load F = f C from value and slopes of its coefficient C, which stand in its place; f changes by
    /// <paramref name="slope"/> dq, and the tip speed by <paramref name="perSpeed"/> for each unit of the variable
    /// <paramref name="speed"/> that stands for the rotor's speed.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void FitLoad(LoadFit<T>* fit, FitLanes* by, T force, T slope, T speed, T perSpeed)
    {
        T value = fit->Constant, angle = force * fit->Speed, inPlane = force * fit->Axial, pace = T.Fma(force * fit->InPlane, by->Speed, slope * value);
        T other = T.Fma(inPlane, by->InPlaneByOther, pace);
        T byTip = T.Fma(angle, by->AngleByTip, by->TwiceTip * other) * perSpeed;
        T byClimb = T.Fma(angle, by->AngleByClimb, by->TwiceClimb * other);
        T byInPlane = T.Fma(inPlane, by->InPlaneByInPlane, pace);
        fit->Speed = byTip;
        fit->Axial = byClimb;
        fit->InPlane = byInPlane;
        fit->Constant = T.Fnma(byTip, speed, T.Fnma(byClimb, by->Climb, T.Fnma(byInPlane, by->InPlane, force * value)));
    }

    /// <summary>
    /// Flow at the rotors and its loads by their polynomials, added to those on the body, about the centre of gravity: in
    /// place of <see cref="RotorFlow"/> and <see cref="RotorAir"/>. It does not wait for the motors, so that the processor
    /// works on it while the pack's voltage is found.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void FittedRotors(T* x, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* dx)
    {
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* rotorLoad = (RotorLoad<T>*)&load->Rotors;
        RotorFitLanes<T>* fit = craft->Fits;
        T* factor = (T*)&field->ThrustFactor, rotorSpeed = x + StateIndex.RotorSpeed;
        T wx = x[StateIndex.Rate], wy = x[StateIndex.Rate + 1], wz = x[StateIndex.Rate + 2];
        T airX = load->AirX, airY = load->AirY, airZ = load->AirZ;
        T forceX = load->ForceX, forceY = load->ForceY, forceZ = load->ForceZ;
        T momentX = load->MomentX, momentY = load->MomentY, momentZ = load->MomentZ, spin = T.Of(0);
        for (int k = 0; k < craft->RotorCount; k++, rotor++, rotorLoad++, fit++)
        {
            T rx = rotor->X, ry = rotor->Y, rz = rotor->Z, w = rotorSpeed[k];
            T hubX = T.Fnma(wz, ry, T.Fma(wy, rz, airX));
            T hubY = T.Fnma(wx, rz, T.Fma(wz, rx, airY));
            T climb = T.Fnma(wx, ry, T.Fms(wy, rx, airZ));
            T inPlane = T.Fma(hubX, hubX, hubY * hubY), w2 = w * w;

            T thrust = At(&fit->Thrust, w2, climb, inPlane) * factor[k];
            if (craft->DynamicInflow != 0)
            {
                T tip = w * rotor->Radius;
                rotorLoad->FlowSpeed = T.Sqrt(T.Fma(tip, tip, T.Fma(climb, climb, inPlane)) + T.Of(TinySpeedSquared));
                rotorLoad->Climb = climb;
                thrust = LaggedThrust(x, k, thrust, craft, field, load, dx);
            }
            T drag = At(&fit->Drag, w, climb, inPlane), pitch = At(&fit->Pitch, w, climb, inPlane);
            forceX = T.Fnma(drag, hubX, forceX);
            forceY = T.Fnma(drag, hubY, forceY);
            forceZ = forceZ - thrust;
            momentX = T.Fnma(pitch, hubY, T.Fnma(ry, thrust, momentX));
            momentY = T.Fma(pitch, hubX, T.Fma(rx, thrust, momentY));
            momentZ = T.Fnma(drag, T.Fms(rx, hubY, ry * hubX), momentZ);
            spin = T.Fma(rotor->SignedSpinInertia, w, spin);
            rotorLoad->Thrust = thrust;
            rotorLoad->AirTorque = At(&fit->Torque, w2, climb, inPlane);
        }
        load->ForceX = forceX;
        load->ForceY = forceY;
        load->ForceZ = forceZ;
        load->MomentX = momentX;
        load->MomentY = momentY;
        load->MomentZ = momentZ;
        load->SpinMomentum = spin;
    }

    /// <summary>The motors' reactions, added to the moments that <see cref="FittedRotors"/> left.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void MotorReactions(CraftLanes<T>* craft, LoadLanes<T>* load)
    {
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        RotorLoad<T>* motor = (RotorLoad<T>*)&load->Rotors;
        T moment = load->MomentZ;
        for (int k = 0; k < craft->RotorCount; k++, rotor++, motor++) moment = T.Fnma(rotor->Spin, motor->MotorTorque, moment);
        load->MomentZ = moment;
    }

    /// <summary>Value of a polynomial.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T At(LoadFit<T>* fit, T speed, T axial, T inPlane) =>
        T.Fma(fit->Speed, speed, T.Fma(fit->Axial, axial, T.Fma(fit->InPlane, inPlane, fit->Constant)));
}
