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
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    public static void Run(T* rate, T* command, ControllerLanes<T>* controller, ControllerState<T>* state, T* duty)
    {
        AxisLanes<T>* axes = (AxisLanes<T>*)&controller->Axes;
        AxisState<T>* memory = (AxisState<T>*)&state->Axes;
        T roll = Axis(rate[0], command[0], axes, memory);
        T pitch = Axis(rate[1], command[1], axes + 1, memory + 1);
        T yaw = Axis(rate[2], command[2], axes + 2, memory + 2);
        Mix(roll, pitch, yaw, command[3], controller, memory, duty);
    }

    /// <summary>Wanted angular acceleration of one axis, rad/s^2.</summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static T Axis(T rate, T command, AxisLanes<T>* axis, AxisState<T>* memory)
    {
        T before = memory->Rate;
        T filtered = T.Fma(axis->GyroShare, rate - before, before);
        T change = T.Fma(axis->DerivativeShare, filtered - before - memory->Change, memory->Change);
        T commandChange = T.Fma(axis->FeedForwardShare, command - memory->Command - memory->CommandChange, memory->CommandChange);
        T error = command - filtered;
        memory->Rate = filtered;
        memory->Change = change;
        memory->Command = command;
        memory->CommandChange = commandChange;
        memory->IntegralStep = axis->IntegralStep * error;
        T wanted = T.Fma(axis->Proportional, error, memory->Integral + memory->IntegralStep);
        return T.Fma(axis->FeedForwardRate, commandChange, wanted) - (axis->DerivativeRate * change);
    }

    /// <summary>
    /// Shares between idle and 1 for every rotor. Priority: roll and pitch are scaled only where they alone do not fit;
    /// the collective moves to make room for them; yaw takes what is left. Axes that were cut do not integrate.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Mix(
        T roll, T pitch, T yaw, T collective, ControllerLanes<T>* controller, AxisState<T>* memory, T* duty)
    {
        MixLanes<T>* mix = (MixLanes<T>*)&controller->Mix;
        T zero = T.Of(0), one = T.Of(1), idle = controller->Idle;
        int rotors = controller->RotorCount;

        T high = zero, low = zero;
        for (int k = 0; k < rotors; k++)
        {
            T share = T.Fma(mix[k].Roll, roll, mix[k].Pitch * pitch);
            duty[k] = share;
            high = T.Max(share, high);
            low = T.Min(share, low);
        }
        T room = one - idle;
        T tilt = room / T.Max(high - low, room);
        T level = T.Min(T.Max(collective, T.Fma(-low, tilt, idle)), T.Fma(-high, tilt, one));

        T turn = one;
        for (int k = 0; k < rotors; k++)
        {
            T share = T.Fma(duty[k], tilt, level);
            T wish = mix[k].Yaw * yaw;
            T space = T.IfLess(wish, zero, share - idle, one - share);
            turn = T.Min(T.Max(space, zero) / T.Max(T.Abs(wish), T.Of(TinyShare)), turn);
            duty[k] = share;
        }
        for (int k = 0; k < rotors; k++)
        {
            T share = T.Min(T.Max(T.Fma(mix[k].Yaw * yaw, turn, duty[k]), idle), one);
            T s = T.Sqrt(share);
            duty[k] = T.Min(s * T.Fma(s, T.Fma(s, controller->B3, controller->B2), controller->B1), one);
        }
        Integrate(tilt, turn, controller, memory);
    }

    private const double TinyShare = 1e-9;

    [MethodImpl(MethodImplOptions.NoInlining), SkipLocalsInit]
    private static void Integrate(T tilt, T turn, ControllerLanes<T>* controller, AxisState<T>* memory)
    {
        AxisLanes<T>* axes = (AxisLanes<T>*)&controller->Axes;
        T one = T.Of(1), zero = T.Of(0);
        for (int axis = 0; axis < 3; axis++)
        {
            T step = T.IfLess(axis < 2 ? tilt : turn, one, zero, memory[axis].IntegralStep);
            T limit = axes[axis].IntegralLimit;
            memory[axis].Integral = T.Min(T.Max(memory[axis].Integral + step, -limit), limit);
        }
    }
}
