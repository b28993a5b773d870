using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Simfeel.Physics.Lanes;

/// <summary>Four craft side by side in double precision.</summary>
public unsafe struct Lane4 : ILane<Lane4>
{
    /// <summary>The numbers.</summary>
    public Vector256<double> v;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 operator +(Lane4 a, Lane4 b)
    {
        Lane4 r;
        r.v = a.v + b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 operator -(Lane4 a, Lane4 b)
    {
        Lane4 r;
        r.v = a.v - b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 operator *(Lane4 a, Lane4 b)
    {
        Lane4 r;
        r.v = a.v * b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 operator /(Lane4 a, Lane4 b)
    {
        Lane4 r;
        r.v = a.v / b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 operator -(Lane4 a)
    {
        Lane4 r;
        r.v = -a.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Of(double value)
    {
        Lane4 r;
        r.v = Vector256.Create(value);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Fma(Lane4 a, Lane4 b, Lane4 c)
    {
        Lane4 r;
        r.v = Vector256.FusedMultiplyAdd(a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Fms(Lane4 a, Lane4 b, Lane4 c)
    {
        Lane4 r;
        r.v = Vector256.FusedMultiplyAdd(a.v, b.v, -c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Fnma(Lane4 a, Lane4 b, Lane4 c)
    {
        Lane4 r;
        if (System.Runtime.Intrinsics.X86.Fma.IsSupported) r.v = System.Runtime.Intrinsics.X86.Fma.MultiplyAddNegated(a.v, b.v, c.v);
        else r.v = Vector256.FusedMultiplyAdd(-a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Sqrt(Lane4 a)
    {
        Lane4 r;
        r.v = Vector256.Sqrt(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Abs(Lane4 a)
    {
        Lane4 r;
        r.v = Vector256.Abs(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Min(Lane4 a, Lane4 b)
    {
        Lane4 r;
        r.v = Vector256.MinNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 Max(Lane4 a, Lane4 b)
    {
        Lane4 r;
        r.v = Vector256.MaxNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane4 IfLess(Lane4 a, Lane4 b, Lane4 then, Lane4 otherwise)
    {
        Lane4 r;
        r.v = Vector256.ConditionalSelect(Vector256.LessThan(a.v, b.v), then.v, otherwise.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllEqual(Lane4 a, Lane4 b) => Vector256.EqualsAll(a.v, b.v);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(Lane4 angle, Lane4 inPlane, Lane4 speed, TableLanes* table, CellLanes<Lane4>* cell) =>
        CellLookup.Locate(angle.v, inPlane.v, speed.v, table, cell);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(CellLanes<Lane4>* cell, out Lane4 c0, out Lane4 c1, out Lane4 c2, out Lane4 c3) =>
        CellLookup.Interpolate(cell, out c0.v, out c1.v, out c2.v, out c3.v);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lane4 a, double* to) => a.v.Store(to);

    /// <inheritdoc/>
    public static int Width => 4;

    /// <inheritdoc/>
    public static bool IsSingle => false;
}
