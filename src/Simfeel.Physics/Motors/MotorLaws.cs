using System.Runtime.CompilerServices;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Motors;

/// <summary>
/// The laws of a permanent-magnet motor and its speed controller, quasi-static (winding inductance L/R is about 0.1 ms),
/// over lanes: the flight kernel and <see cref="MotorModel"/> both use these.
/// </summary>
internal static unsafe class MotorLaws<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Speed (rad/s) up to which the constant loss torque fades in, so that a rotor at rest stays at rest.</summary>
    private const double RubbingSpeed = 20;

    /// <summary>1 / (R + k_c |w|), 1/ohm: all that limits the current at a speed.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Conductance(RotorLanes<T>* rotor, T speed) =>
        T.Of(1) / T.Fma(rotor->CommutationDroop, T.Abs(speed), rotor->Resistance);

    /// <summary>i = (d V - e) / (R + k_c |w|), A: what would flow without limits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T FreeCurrent(T duty, T voltage, T backEmf, T conductance) =>
        T.Fms(duty, voltage, backEmf) * conductance;

    /// <summary>The free current held between the braking and the driving limit, A.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T HeldCurrent(T free, T least, T most) => T.Min(T.Max(free, least), most);

    /// <summary>
    /// Torque of the current, N m. While driving it saturates as the (3, 2) Pade approximant of tanh,
    /// x (27 + x^2) / (27 + 9 x^2) up to x = 3, where it meets 1 with zero slope: with x = 3 u, u (3 + u^2) / (1 + 3 u^2).
    /// While braking it is Kt i: a current that gives e i back to the pack must take as much from the shaft, and less torque
    /// would be energy from nothing.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T MagneticTorque(RotorLanes<T>* rotor, T current, T speed)
    {
        T one = T.Of(1), three = T.Of(3);
        T u = T.Min(T.Max(current * rotor->SaturationPerAmpere, T.Of(-1)), one), u2 = u * u;
        T driving = rotor->TorqueLimit * (u * (three + u2) / T.Fma(three, u2, one));
        return T.IfLess(current * speed, T.Of(0), rotor->Kt * current, driving);
    }

    /// <summary>Torque on the rotor after all losses, N m.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T ShaftTorque(RotorLanes<T>* rotor, T current, T speed)
    {
        T magnetic = MagneticTorque(rotor, current, speed);
        T rubbing = T.Min(T.Max(speed * T.Of(1 / RubbingSpeed), T.Of(-1)), T.Of(1));
        return T.Fnma(rotor->LossTorque, rubbing, T.Fnma(rotor->LossTorquePerSpeed, speed, magnetic));
    }
}
