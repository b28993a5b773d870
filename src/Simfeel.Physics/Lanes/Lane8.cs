using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Simfeel.Physics.Lanes;

/// <summary>Eight craft side by side in double precision.</summary>
public unsafe struct Lane8 : ILane<Lane8>
{
    /// <summary>The numbers.</summary>
    public Vector512<double> v;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 operator +(Lane8 a, Lane8 b)
    {
        Lane8 r;
        r.v = a.v + b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 operator -(Lane8 a, Lane8 b)
    {
        Lane8 r;
        r.v = a.v - b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 operator *(Lane8 a, Lane8 b)
    {
        Lane8 r;
        r.v = a.v * b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 operator /(Lane8 a, Lane8 b)
    {
        Lane8 r;
        r.v = a.v / b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 operator -(Lane8 a)
    {
        Lane8 r;
        r.v = -a.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Of(double value)
    {
        Lane8 r;
        r.v = Vector512.Create(value);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Fma(Lane8 a, Lane8 b, Lane8 c)
    {
        Lane8 r;
        r.v = Vector512.FusedMultiplyAdd(a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Fms(Lane8 a, Lane8 b, Lane8 c)
    {
        Lane8 r;
        r.v = Vector512.FusedMultiplyAdd(a.v, b.v, -c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Fnma(Lane8 a, Lane8 b, Lane8 c)
    {
        Lane8 r;
        if (Avx512F.IsSupported) r.v = Avx512F.FusedMultiplyAddNegated(a.v, b.v, c.v);
        else r.v = Vector512.FusedMultiplyAdd(-a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Sqrt(Lane8 a)
    {
        Lane8 r;
        r.v = Vector512.Sqrt(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Abs(Lane8 a)
    {
        Lane8 r;
        r.v = Vector512.Abs(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Min(Lane8 a, Lane8 b)
    {
        Lane8 r;
        r.v = Vector512.MinNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 Max(Lane8 a, Lane8 b)
    {
        Lane8 r;
        r.v = Vector512.MaxNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lane8 IfLess(Lane8 a, Lane8 b, Lane8 then, Lane8 otherwise)
    {
        Lane8 r;
        r.v = Vector512.ConditionalSelect(Vector512.LessThan(a.v, b.v), then.v, otherwise.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllEqual(Lane8 a, Lane8 b) => Vector512.EqualsAll(a.v, b.v);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(Lane8 angle, Lane8 inPlane, Lane8 speed, TableLanes* table, CellLanes<Lane8>* cell) =>
        CellLookup.Locate(angle.v, inPlane.v, speed.v, table, cell);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(CellLanes<Lane8>* cell, out Lane8 c0, out Lane8 c1, out Lane8 c2, out Lane8 c3) =>
        CellLookup.Interpolate(cell, out c0.v, out c1.v, out c2.v, out c3.v);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lane8 a, double* to) => a.v.Store(to);

    /// <inheritdoc/>
    public static int Width => 8;

    /// <inheritdoc/>
    public static bool IsSingle => false;
}
