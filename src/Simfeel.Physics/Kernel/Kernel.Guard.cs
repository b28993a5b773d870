using System.Runtime.CompilerServices;
using Simfeel.Physics.Guards;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <content>The look at every state that a step ends with.</content>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>
    /// Whether all invariants hold in all lanes (<see cref="Guard"/>): every number finite, the attitude of unit length, and no
    /// more energy than at the look before and what a step can have added. Leaves the energy for the next look, and which
    /// lanes are broken.
    /// </summary>
    /// <param name="x">State at the end of a step.</param>
    /// <param name="craft">Constants.</param>
    /// <param name="field">Gravity and wind of that step.</param>
    /// <param name="guard">Bounds and the energy before.</param>
    /// <param name="step">Step, s.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static bool IsSound(T* x, CraftLanes<T>* craft, FieldLanes<T>* field, GuardLanes<T>* guard, double step)
    {
        T zero = T.Of(0), one = T.Of(1), two = T.Of(2), half = T.Of(0.5);
        RotorLanes<T>* rotor = (RotorLanes<T>*)&craft->Rotors;
        T* speed = x + StateIndex.RotorSpeed, end = speed + craft->RotorCount;
        T momentum = zero, rotors = zero;
        for (; speed < end; speed++, rotor++)
        {
            T w = *speed, own = rotor->SignedSpinInertia * w;
            momentum = momentum + own;
            rotors = T.Fma(rotor->Spin * own, w, rotors);
        }

        // twice the energy of motion through the air; rotors turn at w_k + s_k w_z in space, of which w_z^2 is in the tensor
        T vx = x[StateIndex.Velocity] - field->WindX, vy = x[StateIndex.Velocity + 1] - field->WindY;
        T vz = x[StateIndex.Velocity + 2] - field->WindZ;
        T wx = x[StateIndex.Rate], wy = x[StateIndex.Rate + 1], wz = x[StateIndex.Rate + 2];
        T lx = T.Fma(craft->Ixx, wx, two * T.Fma(craft->Ixz, wz, craft->Ixy * wy));
        T ly = T.Fma(craft->Iyy, wy, two * (craft->Iyz * wz));
        T lz = T.Fma(craft->Izz, wz, two * momentum);
        T motion = T.Fma(wx, lx, T.Fma(wy, ly, T.Fma(wz, lz, rotors)));
        motion = half * T.Fma(guard->Mass, T.Fma(vx, vx, T.Fma(vy, vy, vz * vz)), motion);
        T height = guard->Mass * field->Gravity * x[StateIndex.Position + 2];
        T before = T.Fma(guard->MostPower, T.Of(step), guard->Energy);
        guard->Energy = motion - height;
        T excess = T.Fma(motion, T.Of(1 - Guard.GrowthMargin), -height) - before;

        // 0 times a number is 0, but not where it is infinite or not a number
        T odd = zero * x[StateIndex.Position], even = zero * x[StateIndex.Position + 1];
        // without end below, energy falls, which no bound on its rise would see
        odd = T.Fma(zero, x[StateIndex.Position + 2], odd);
        even = T.Fma(zero, x[StateIndex.Charge], even);
        odd = T.Fma(zero, x[StateIndex.PairVoltage], odd);
        if (craft->DynamicInflow != 0)
        {
            T* inflow = end, last = end + craft->RotorCount;
            for (; inflow < last; inflow++) even = T.Fma(zero, *inflow, even);
        }
        T* q = x + StateIndex.Attitude;
        T off = T.Fma(q[0], q[0], T.Fma(q[1], q[1], T.Fma(q[2], q[2], T.Fma(q[3], q[3], T.Of(-1)))));
        excess = excess + (odd + even);
        guard->Broken = T.IfLess(excess, zero, T.IfLess(T.Abs(off), T.Of(Guard.AttitudeTolerance), zero, one), one);
        return T.AllEqual(guard->Broken, zero);
    }
}
