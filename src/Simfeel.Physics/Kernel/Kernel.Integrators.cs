using System.Runtime.CompilerServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <content>The two integrators.</content>
public static unsafe partial class Kernel<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>
    /// One step of the midpoint rule with one evaluation: the state half a step ahead is predicted with the derivative of
    /// the step before, the derivative is taken there, and the state moves along it. Second order while the
    /// commands are held, with an error of the square of the step at each change of them; explicit, stable for decay rates
    /// below 1 / step. Velocity and rates move by the mid-step acceleration, position and attitude by
    /// the mean of old and new velocity and rate, attitude along the exact arc of that rate.
    /// </summary>
    /// <param name="x">State.</param>
    /// <param name="dx">Derivative of the step before; for the first step: of x.</param>
    /// <param name="next">Receives the state after the step; may be x.</param>
    /// <param name="dnext">Receives this step's derivative; may be dx.</param>
    /// <param name="command">Duty of each speed controller, held over the step.</param>
    /// <param name="craft">Constants.</param>
    /// <param name="field">Air and gravity at mid-step.</param>
    /// <param name="load">Receives the loads at mid-step.</param>
    /// <param name="scratch">One block of <see cref="StateIndex.Stride"/> lanes.</param>
    /// <param name="step">Step, s.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static void MidpointStep(
        T* x, T* dx, T* next, T* dnext, T* command, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* scratch, double step)
    {
        int used = StateIndex.Used(craft->RotorCount, craft->DynamicInflow != 0);
        PredictMiddle(x, dx, scratch, 0.5 * step, used);
        dnext[StateIndex.Charge] = dx[StateIndex.Charge];
        Derivative(scratch, command, craft, field, load, dnext);
        AdvanceToEnd(x, dnext, next, step, used);
    }

    /// <summary>One step of the classical fourth-order Runge-Kutta method, the reference mode.</summary>
    /// <param name="x">State.</param>
    /// <param name="next">Receives the state after the step; may be x.</param>
    /// <param name="command">Duty of each speed controller, held over the step.</param>
    /// <param name="craft">Constants.</param>
    /// <param name="field">Air and gravity, held over the step.</param>
    /// <param name="load">Receives the loads of the last stage.</param>
    /// <param name="scratch">Three blocks of <see cref="StateIndex.Stride"/> lanes.</param>
    /// <param name="step">Step, s.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    public static void RungeKuttaStep(
        T* x, T* next, T* command, CraftLanes<T>* craft, FieldLanes<T>* field, LoadLanes<T>* load, T* scratch, double step)
    {
        T* k = scratch, y = scratch + StateIndex.Stride, sum = scratch + (2 * StateIndex.Stride);
        int used = StateIndex.Used(craft->RotorCount, craft->DynamicInflow != 0);
        k[StateIndex.Charge] = T.Of(0);
        Derivative(x, command, craft, field, load, k);
        Advance(x, k, sum, step / 6, used);
        Advance(x, k, y, step / 2, used);
        Derivative(y, command, craft, field, load, k);
        Advance(sum, k, sum, step / 3, used);
        Advance(x, k, y, step / 2, used);
        Derivative(y, command, craft, field, load, k);
        Advance(sum, k, sum, step / 3, used);
        Advance(x, k, y, step, used);
        Derivative(y, command, craft, field, load, k);
        AdvanceToUnit(sum, k, next, step / 6, used);
    }

    /// <summary>result = x + step dx.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void Advance(T* x, T* dx, T* result, double step, int used)
    {
        T h = T.Of(step);
        for (int n = 0; n < used; n++) result[n] = T.Fma(h, dx[n], x[n]);
    }

    /// <summary>result = x + step dx, with the attitude brought back to unit length.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void AdvanceToUnit(T* x, T* dx, T* result, double step, int used)
    {
        T h = T.Of(step);
        for (int axis = 0; axis < 3; axis++) result[axis] = T.Fma(h, dx[axis], x[axis]);
        PredictMiddle(x, dx, result, step, used);
    }

    /// <summary>The same without the position, on which no load depends: for states of which only the derivative is wanted.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void PredictMiddle(T* x, T* dx, T* result, double step, int used)
    {
        T h = T.Of(step);
        for (int n = StateIndex.Charge; n < used; n++) result[n] = T.Fma(h, dx[n], x[n]);
        T* q = x + StateIndex.Attitude, dq = dx + StateIndex.Attitude;
        StoreUnit(
            result + StateIndex.Attitude,
            T.Fma(h, dq[0], q[0]), T.Fma(h, dq[1], q[1]), T.Fma(h, dq[2], q[2]), T.Fma(h, dq[3], q[3]));
        for (int axis = 0; axis < 3; axis++)
        {
            const int v = StateIndex.Velocity, w = StateIndex.Rate;
            result[v + axis] = T.Fma(h, dx[v + axis], x[v + axis]);
            result[w + axis] = T.Fma(h, dx[w + axis], x[w + axis]);
        }
    }

    /// <summary>
    /// Stores an attitude, brought back to unit length by one Newton step of 1/sqrt from 1: it has that length but for
    /// rounding and a rest of higher order in the step, whose square is lost.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void StoreUnit(T* q, T qw, T qx, T qy, T qz)
    {
        T norm2 = T.Fma(qw, qw, qx * qx) + T.Fma(qy, qy, qz * qz);
        T mend = T.Fma(T.Of(-0.5), norm2, T.Of(1.5));
        q[0] = qw * mend;
        q[1] = qx * mend;
        q[2] = qy * mend;
        q[3] = qz * mend;
    }

    /// <summary>The state over a step of <see cref="MidpointStep"/>.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization), SkipLocalsInit]
    private static void AdvanceToEnd(T* x, T* dx, T* next, double step, int used)
    {
        T h = T.Of(step), half = T.Of(0.5 * step);
        for (int n = StateIndex.Charge; n < used; n++) next[n] = T.Fma(h, dx[n], x[n]);
        for (int axis = 0; axis < 3; axis++)
        {
            T v = x[StateIndex.Velocity + axis];
            T after = T.Fma(h, dx[StateIndex.Velocity + axis], v);
            next[StateIndex.Position + axis] = T.Fma(half, v + after, x[StateIndex.Position + axis]);
            next[StateIndex.Velocity + axis] = after;
        }

        T wx = x[StateIndex.Rate], wy = x[StateIndex.Rate + 1], wz = x[StateIndex.Rate + 2];
        T ax = half * T.Fma(half, dx[StateIndex.Rate], wx);
        T ay = half * T.Fma(half, dx[StateIndex.Rate + 1], wy);
        T az = half * T.Fma(half, dx[StateIndex.Rate + 2], wz);
        next[StateIndex.Rate] = T.Fma(h, dx[StateIndex.Rate], wx);
        next[StateIndex.Rate + 1] = T.Fma(h, dx[StateIndex.Rate + 1], wy);
        next[StateIndex.Rate + 2] = T.Fma(h, dx[StateIndex.Rate + 2], wz);

        // q <- q (cos |a|, a sin|a| / |a|), a half the angle turned; series good to |a|^6, the rest is mended below
        T a2 = T.Fma(ax, ax, T.Fma(ay, ay, az * az));
        T one = T.Of(1);
        T sinc = T.Fnma(a2, T.Fma(a2, T.Of(-1.0 / 120), T.Of(1.0 / 6)), one);
        T cos = T.Fnma(a2, T.Fma(a2, T.Of(-1.0 / 24), T.Of(0.5)), one);
        ax = ax * sinc;
        ay = ay * sinc;
        az = az * sinc;
        T* q = x + StateIndex.Attitude;
        T qw = q[0], qx = q[1], qy = q[2], qz = q[3];
        T nw = T.Fnma(qz, az, T.Fnma(qy, ay, T.Fms(qw, cos, qx * ax)));
        T nx = T.Fnma(qz, ay, T.Fma(qy, az, T.Fma(qw, ax, qx * cos)));
        T ny = T.Fnma(qx, az, T.Fma(qz, ax, T.Fma(qw, ay, qy * cos)));
        T nz = T.Fnma(qy, ax, T.Fma(qx, ay, T.Fma(qw, az, qz * cos)));
        StoreUnit(next + StateIndex.Attitude, nw, nx, ny, nz);
    }
}
