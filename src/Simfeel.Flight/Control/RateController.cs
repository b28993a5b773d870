using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Flight.Control;

/// <summary>
/// The rate controller and mixer over lanes: filtered gyro, proportional and integral action on the error, derivative on the
/// measurement, feed-forward of the command, then shares of thrust for every rotor and the duty that makes them.
/// </summary>
public static unsafe class RateController<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>One run.</summary>
    /// <param name="rate">Measured rates about x, y, z, three lanes, rad/s.</param>
    /// <param name="command">Commanded rates about x, y, z, rad/s, and the collective share of full thrust: four lanes.</param>
    /// <param name="controller">Constants.</param>
    /// <param name="state">Memory, renewed.</param>
    /// <param name="duty">Receives the duty of every rotor.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static void Run(T* rate, T* command, ControllerLanes<T>* controller, ControllerState<T>* state, T* duty)
    {
        AxisLanes<T>* axes = (AxisLanes<T>*)&controller->Axes;
        AxisState<T>* memory = (AxisState<T>*)&state->Axes;
        T roll = Axis(rate[0], command[0], axes, memory, out T rollStep);
        T pitch = Axis(rate[1], command[1], axes + 1, memory + 1, out T pitchStep);
        T yaw = Axis(rate[2], command[2], axes + 2, memory + 2, out T yawStep);

        T tilt = MixRollPitch(roll, pitch, command[3], controller, duty);
        T turn = RoomForYaw(yaw, controller, duty);
        Duties(yaw * turn, controller, duty);

        // axes that were cut do not integrate
        Integrate(tilt, rollStep, axes, memory);
        Integrate(tilt, pitchStep, axes + 1, memory + 1);
        Integrate(turn, yawStep, axes + 2, memory + 2);
    }

    /// <summary>Wanted angular acceleration of one axis, rad/s^2, and what it would add to its integral.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Axis(T rate, T command, AxisLanes<T>* axis, AxisState<T>* memory, out T step)
    {
        T before = memory->Rate, changeBefore = memory->Change, commandChangeBefore = memory->CommandChange;
        T filtered = T.Fma(axis->GyroShare, rate - before, before), error = command - filtered;
        T change = T.Fma(axis->DerivativeShare, filtered - before - changeBefore, changeBefore);
        T commandChange = T.Fma(
            axis->FeedForwardShare, command - memory->Command - commandChangeBefore, commandChangeBefore);
        memory->Rate = filtered;
        memory->Change = change;
        memory->Command = command;
        memory->CommandChange = commandChange;
        step = axis->IntegralStep * error;
        T wanted = T.Fma(axis->Proportional, error, memory->Integral + step);
        return T.Fnma(axis->DerivativeRate, change, T.Fma(axis->FeedForwardRate, commandChange, wanted));
    }

    /// <summary>
    /// Shares of full thrust for roll and pitch, scaled only where they alone do not fit between idle and 1; the collective
    /// moves to make room for them. Returns by how much they were scaled.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T MixRollPitch(T roll, T pitch, T collective, ControllerLanes<T>* controller, T* share)
    {
        MixLanes<T>* mix = (MixLanes<T>*)&controller->Mix;
        T one = T.Of(1), idle = controller->Idle, high = T.Of(0), low = T.Of(0);
        for (int k = 0; k < controller->RotorCount; k++)
        {
            T wish = T.Fma(mix[k].Roll, roll, mix[k].Pitch * pitch);
            share[k] = wish;
            high = T.Max(wish, high);
            low = T.Min(wish, low);
        }
        T room = one - idle;
        T tilt = room / T.Max(high - low, room);
        T level = T.Min(T.Max(collective, T.Fma(-low, tilt, idle)), T.Fma(-high, tilt, one));
        for (int k = 0; k < controller->RotorCount; k++) share[k] = T.Fma(share[k], tilt, level);
        return tilt;
    }

    /// <summary>How much of the wanted yaw fits into what roll, pitch and thrust have left, 0 to 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T RoomForYaw(T yaw, ControllerLanes<T>* controller, T* share)
    {
        MixLanes<T>* mix = (MixLanes<T>*)&controller->Mix;
        T zero = T.Of(0), one = T.Of(1), idle = controller->Idle, turn = one;
        for (int k = 0; k < controller->RotorCount; k++)
        {
            T wish = mix[k].Yaw * yaw;
            T space = T.IfLess(wish, zero, share[k] - idle, one - share[k]);
            turn = T.Min(T.Max(space, zero) / T.Max(T.Abs(wish), T.Of(TinyShare)), turn);
        }
        return turn;
    }

    private const double TinyShare = 1e-9;

    /// <summary>Adds the yaw and turns shares into duties.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Duties(T yaw, ControllerLanes<T>* controller, T* duty)
    {
        MixLanes<T>* mix = (MixLanes<T>*)&controller->Mix;
        T one = T.Of(1), idle = controller->Idle, b1 = controller->B1, b2 = controller->B2, b3 = controller->B3;
        for (int k = 0; k < controller->RotorCount; k++)
        {
            T share = T.Min(T.Max(T.Fma(mix[k].Yaw, yaw, duty[k]), idle), one);
            T s = T.Sqrt(share);
            duty[k] = T.Min(s * T.Fma(s, T.Fma(s, b3, b2), b1), one);
        }
    }

    /// <summary>Lets an axis integrate, unless the mixer cut it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Integrate(T left, T step, AxisLanes<T>* axis, AxisState<T>* memory)
    {
        T sum = memory->Integral + T.IfLess(left, T.Of(1), T.Of(0), step), limit = axis->IntegralLimit;
        memory->Integral = T.Min(T.Max(sum, -limit), limit);
    }
}
