using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Simfeel.Physics.Lanes;

/// <summary>One craft in double precision: what flies in real time.</summary>
public unsafe struct Lane1 : ILane<Lane1>
{
    /// <summary>The numbers.</summary>
    public double v;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 operator +(Lane1 a, Lane1 b)
    {
        Lane1 r;
        r.v = a.v + b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 operator -(Lane1 a, Lane1 b)
    {
        Lane1 r;
        r.v = a.v - b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 operator *(Lane1 a, Lane1 b)
    {
        Lane1 r;
        r.v = a.v * b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 operator /(Lane1 a, Lane1 b)
    {
        Lane1 r;
        r.v = a.v / b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 operator -(Lane1 a)
    {
        Lane1 r;
        r.v = -a.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Of(double value)
    {
        Lane1 r;
        r.v = value;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Fma(Lane1 a, Lane1 b, Lane1 c)
    {
        Lane1 r;
        r.v = Math.FusedMultiplyAdd(a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Fms(Lane1 a, Lane1 b, Lane1 c)
    {
        Lane1 r;
        r.v = Math.FusedMultiplyAdd(a.v, b.v, -c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Fnma(Lane1 a, Lane1 b, Lane1 c)
    {
        Lane1 r;
        r.v = Math.FusedMultiplyAdd(-a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Sqrt(Lane1 a)
    {
        Lane1 r;
        r.v = Math.Sqrt(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Abs(Lane1 a)
    {
        Lane1 r;
        r.v = Math.Abs(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Min(Lane1 a, Lane1 b)
    {
        Lane1 r;
        r.v = double.MinNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 Max(Lane1 a, Lane1 b)
    {
        Lane1 r;
        r.v = double.MaxNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane1 IfLess(Lane1 a, Lane1 b, Lane1 then, Lane1 otherwise)
    {
        Lane1 r;
        // a select without a jump, which the processor could not predict
        r.v = Vector128.ConditionalSelect(
            Vector128.LessThan(Vector128.CreateScalarUnsafe(a.v), Vector128.CreateScalarUnsafe(b.v)),
            Vector128.CreateScalarUnsafe(then.v),
            Vector128.CreateScalarUnsafe(otherwise.v)).ToScalar();
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllEqual(Lane1 a, Lane1 b) => a.v == b.v;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(Lane1 angle, Lane1 inPlane, Lane1 speed, TableLanes* table, CellLanes<Lane1>* cell) =>
        CellLookup.Locate(angle.v, inPlane.v, speed.v, table, cell);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(CellLanes<Lane1>* cell, out Lane1 c0, out Lane1 c1, out Lane1 c2, out Lane1 c3) =>
        CellLookup.Interpolate(cell, out c0.v, out c1.v, out c2.v, out c3.v);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lane1 a, double* to) => *to = a.v;

    /// <inheritdoc/>
    public static int Width => 1;

    /// <inheritdoc/>
    public static bool IsSingle => false;
}
