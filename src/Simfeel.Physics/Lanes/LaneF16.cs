using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Simfeel.Physics.Lanes;

/// <summary>Sixteen craft side by side in single precision, for large sweeps only.</summary>
public unsafe struct LaneF16 : ILane<LaneF16>
{
    /// <summary>The numbers.</summary>
    public Vector512<float> v;

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 operator +(LaneF16 a, LaneF16 b)
    {
        LaneF16 r;
        r.v = a.v + b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 operator -(LaneF16 a, LaneF16 b)
    {
        LaneF16 r;
        r.v = a.v - b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 operator *(LaneF16 a, LaneF16 b)
    {
        LaneF16 r;
        r.v = a.v * b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 operator /(LaneF16 a, LaneF16 b)
    {
        LaneF16 r;
        r.v = a.v / b.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 operator -(LaneF16 a)
    {
        LaneF16 r;
        r.v = -a.v;
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Of(double value)
    {
        LaneF16 r;
        r.v = Vector512.Create((float)value);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Fma(LaneF16 a, LaneF16 b, LaneF16 c)
    {
        LaneF16 r;
        r.v = Vector512.FusedMultiplyAdd(a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Fms(LaneF16 a, LaneF16 b, LaneF16 c)
    {
        LaneF16 r;
        r.v = Vector512.FusedMultiplyAdd(a.v, b.v, -c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Fnma(LaneF16 a, LaneF16 b, LaneF16 c)
    {
        LaneF16 r;
        if (Avx512F.IsSupported) r.v = Avx512F.FusedMultiplyAddNegated(a.v, b.v, c.v);
        else r.v = Vector512.FusedMultiplyAdd(-a.v, b.v, c.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Sqrt(LaneF16 a)
    {
        LaneF16 r;
        r.v = Vector512.Sqrt(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Abs(LaneF16 a)
    {
        LaneF16 r;
        r.v = Vector512.Abs(a.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Min(LaneF16 a, LaneF16 b)
    {
        LaneF16 r;
        r.v = Vector512.MinNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 Max(LaneF16 a, LaneF16 b)
    {
        LaneF16 r;
        r.v = Vector512.MaxNative(a.v, b.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static LaneF16 IfLess(LaneF16 a, LaneF16 b, LaneF16 then, LaneF16 otherwise)
    {
        LaneF16 r;
        r.v = Vector512.ConditionalSelect(Vector512.LessThan(a.v, b.v), then.v, otherwise.v);
        return r;
    }

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllEqual(LaneF16 a, LaneF16 b) => Vector512.EqualsAll(a.v, b.v);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(LaneF16 angle, LaneF16 inPlane, LaneF16 speed, TableLanes* table, CellLanes<LaneF16>* cell) =>
        CellLookup.Locate(angle.v, inPlane.v, speed.v, table, cell);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(CellLanes<LaneF16>* cell, out LaneF16 c0, out LaneF16 c1, out LaneF16 c2, out LaneF16 c3) =>
        CellLookup.Interpolate(cell, out c0.v, out c1.v, out c2.v, out c3.v);

    /// <inheritdoc/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(LaneF16 a, double* to)
    {
        (Vector512<double> low, Vector512<double> high) = Vector512.Widen(a.v);
        low.Store(to);
        high.Store(to + 8);
    }

    /// <inheritdoc/>
    public static int Width => 16;

    /// <inheritdoc/>
    public static bool IsSingle => true;
}
