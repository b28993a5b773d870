using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Lanes;

/// <summary>
/// Lookups in the packed cells of a <see cref="RotorTable"/> for every lane type. All round in the same order: with
/// h = (lower speed) + z (upper speed) and k = h (lower in-plane) + y h (upper in-plane), c = k (lower angle) + x k (upper
/// angle), so bits agree whatever the width. One cell is read as whole vectors (all four coefficients at once) and
/// transposed; gathering the numbers one coefficient at a time was 1.4 to 1.7 times slower when tried.
/// </summary>
/// <remarks>
/// Vectors are joined by shuffles of two sources, never by Vector512.Create(lower, upper): under SkipLocalsInit that fills
/// a variable that was never written, and the processor waits for its last use, in the rotor before.
/// </remarks>
internal static unsafe class CellLookup
{
    private const int RowStride = RotorTableGrid.AngleCells;
    private const int SlabStride = RotorTableGrid.AngleCells * RotorTableGrid.InPlaneCells;

    /// <summary>Bytes of a cell as powers of two.</summary>
    private const int DoubleCellShift = 8, SingleCellShift = 7;

    /// <summary>The cell of one craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(double angle, double inPlane, double speed, TableLanes* table, CellLanes<Lane1>* cell)
    {
        double i = Math.Truncate(angle), j = Math.Truncate(inPlane), k = Math.Truncate(speed);
        double number = Math.FusedMultiplyAdd(k, SlabStride, Math.FusedMultiplyAdd(j, RowStride, i));
        cell->Cell.Address[0] = table->Address[0] + (double.ConvertToIntegerNative<ulong>(number) << DoubleCellShift);
        cell->X.v = angle - i;
        cell->Y.v = inPlane - j;
        cell->Z.v = speed - k;
    }

    /// <summary>The cells of four craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(
        Vector256<double> angle, Vector256<double> inPlane, Vector256<double> speed, TableLanes* table, CellLanes<Lane4>* cell)
    {
        Vector256<double> i = Vector256.Truncate(angle), j = Vector256.Truncate(inPlane), k = Vector256.Truncate(speed);
        Vector256<double> row = Vector256.Create((double)RowStride), slab = Vector256.Create((double)SlabStride);
        Vector256<double> number = Vector256.FusedMultiplyAdd(k, slab, Vector256.FusedMultiplyAdd(j, row, i));
        Vector256<long> offset = Vector256.ConvertToInt64Native(number) << DoubleCellShift;
        (offset + Vector256.Load((long*)table->Address)).Store((long*)cell->Cell.Address);
        cell->X.v = angle - i;
        cell->Y.v = inPlane - j;
        cell->Z.v = speed - k;
    }

    /// <summary>The cells of eight craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(
        Vector512<double> angle, Vector512<double> inPlane, Vector512<double> speed, TableLanes* table, CellLanes<Lane8>* cell)
    {
        Vector512<double> i = Vector512.Truncate(angle), j = Vector512.Truncate(inPlane), k = Vector512.Truncate(speed);
        Vector512<double> row = Vector512.Create((double)RowStride), slab = Vector512.Create((double)SlabStride);
        Vector512<double> number = Vector512.FusedMultiplyAdd(k, slab, Vector512.FusedMultiplyAdd(j, row, i));
        Vector512<long> offset = Vector512.ConvertToInt64Native(number) << DoubleCellShift;
        (offset + Vector512.Load((long*)table->Address)).Store((long*)cell->Cell.Address);
        cell->X.v = angle - i;
        cell->Y.v = inPlane - j;
        cell->Z.v = speed - k;
    }

    /// <summary>The cells of sixteen craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Locate(
        Vector512<float> angle, Vector512<float> inPlane, Vector512<float> speed, TableLanes* table, CellLanes<LaneF16>* cell)
    {
        Vector512<float> i = Vector512.Truncate(angle), j = Vector512.Truncate(inPlane), k = Vector512.Truncate(speed);
        Vector512<float> row = Vector512.Create((float)RowStride), slab = Vector512.Create((float)SlabStride);
        Vector512<float> number = Vector512.FusedMultiplyAdd(k, slab, Vector512.FusedMultiplyAdd(j, row, i));
        Vector512<int> whole = Vector512.ConvertToInt32Native(number);
        Vector512<long> low = Vector512.WidenLower(whole) << SingleCellShift;
        Vector512<long> high = Vector512.WidenUpper(whole) << SingleCellShift;
        (low + Vector512.Load((long*)table->Address)).Store((long*)cell->Cell.Address);
        (high + Vector512.Load((long*)table->Address + 8)).Store((long*)cell->Cell.Address + 8);
        cell->X.v = angle - i;
        cell->Y.v = inPlane - j;
        cell->Z.v = speed - k;
    }

    /// <summary>The coefficients of one craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(CellLanes<Lane1>* cell, out double c0, out double c1, out double c2, out double c3)
    {
        double** at = (double**)cell->Cell.Address;
        Vector256<double> c = Row(at[0], &cell->X.v, &cell->Y.v, &cell->Z.v);
        c0 = c.ToScalar();
        c1 = c.GetElement(1);
        c2 = c.GetElement(2);
        c3 = c.GetElement(3);
    }

    /// <summary>The coefficients of four craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(
        CellLanes<Lane4>* cell,
        out Vector256<double> c0, out Vector256<double> c1, out Vector256<double> c2, out Vector256<double> c3)
    {
        if (!Avx.IsSupported)
        {
            OneByOne(cell, out c0, out c1, out c2, out c3);
            return;
        }
        double** at = (double**)cell->Cell.Address;
        double* x = (double*)&cell->X, y = (double*)&cell->Y, z = (double*)&cell->Z;
        Vector256<double> r0 = Row(at[0], x, y, z), r1 = Row(at[1], x + 1, y + 1, z + 1);
        Vector256<double> r2 = Row(at[2], x + 2, y + 2, z + 2), r3 = Row(at[3], x + 3, y + 3, z + 3);
        Vector256<double> even01 = Avx.UnpackLow(r0, r1), odd01 = Avx.UnpackHigh(r0, r1);
        Vector256<double> even23 = Avx.UnpackLow(r2, r3), odd23 = Avx.UnpackHigh(r2, r3);
        c0 = Avx.Permute2x128(even01, even23, 0x20);
        c2 = Avx.Permute2x128(even01, even23, 0x31);
        c1 = Avx.Permute2x128(odd01, odd23, 0x20);
        c3 = Avx.Permute2x128(odd01, odd23, 0x31);
    }

    /// <summary>The coefficients of eight craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(
        CellLanes<Lane8>* cell,
        out Vector512<double> c0, out Vector512<double> c1, out Vector512<double> c2, out Vector512<double> c3)
    {
        if (!Avx512F.IsSupported)
        {
            OneByOne(cell, out c0, out c1, out c2, out c3);
            return;
        }
        double** at = (double**)cell->Cell.Address;
        double* y = (double*)&cell->Y, z = (double*)&cell->Z;
        Vector512<double> x = cell->X.v;
        Vector512<double> r04 = Pair(HalfRow(at[0], y, z), HalfRow(at[4], y + 4, z + 4), Avx512F.Permute4x64(x, 0x00));
        Vector512<double> r15 = Pair(HalfRow(at[1], y + 1, z + 1), HalfRow(at[5], y + 5, z + 5), Avx512F.Permute4x64(x, 0x55));
        Vector512<double> r26 = Pair(HalfRow(at[2], y + 2, z + 2), HalfRow(at[6], y + 6, z + 6), Avx512F.Permute4x64(x, 0xAA));
        Vector512<double> r37 = Pair(HalfRow(at[3], y + 3, z + 3), HalfRow(at[7], y + 7, z + 7), Avx512F.Permute4x64(x, 0xFF));
        Vector512<double> even01 = Avx512F.UnpackLow(r04, r15), odd01 = Avx512F.UnpackHigh(r04, r15);
        Vector512<double> even23 = Avx512F.UnpackLow(r26, r37), odd23 = Avx512F.UnpackHigh(r26, r37);
        Vector512<long> first = Vector512.Create(0L, 1, 8, 9, 4, 5, 12, 13);
        Vector512<long> second = Vector512.Create(2L, 3, 10, 11, 6, 7, 14, 15);
        c0 = Avx512F.PermuteVar8x64x2(even01, first, even23);
        c2 = Avx512F.PermuteVar8x64x2(even01, second, even23);
        c1 = Avx512F.PermuteVar8x64x2(odd01, first, odd23);
        c3 = Avx512F.PermuteVar8x64x2(odd01, second, odd23);
    }

    /// <summary>The coefficients of sixteen craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Interpolate(
        CellLanes<LaneF16>* cell,
        out Vector512<float> c0, out Vector512<float> c1, out Vector512<float> c2, out Vector512<float> c3)
    {
        if (!Avx512F.IsSupported)
        {
            OneByOne(cell, out c0, out c1, out c2, out c3);
            return;
        }
        float** at = (float**)cell->Cell.Address;
        float* z = (float*)&cell->Z;
        Vector512<float> x = cell->X.v, y = cell->Y.v;
        Vector512<float> r0 = Quad(at, z, Avx512F.Permute4x32(y, 0x00), Avx512F.Permute4x32(x, 0x00));
        Vector512<float> r1 = Quad(at + 1, z + 1, Avx512F.Permute4x32(y, 0x55), Avx512F.Permute4x32(x, 0x55));
        Vector512<float> r2 = Quad(at + 2, z + 2, Avx512F.Permute4x32(y, 0xAA), Avx512F.Permute4x32(x, 0xAA));
        Vector512<float> r3 = Quad(at + 3, z + 3, Avx512F.Permute4x32(y, 0xFF), Avx512F.Permute4x32(x, 0xFF));
        Vector512<float> low01 = Avx512F.UnpackLow(r0, r1), high01 = Avx512F.UnpackHigh(r0, r1);
        Vector512<float> low23 = Avx512F.UnpackLow(r2, r3), high23 = Avx512F.UnpackHigh(r2, r3);
        c0 = Avx512F.Shuffle(low01, low23, 0x44);
        c1 = Avx512F.Shuffle(low01, low23, 0xEE);
        c2 = Avx512F.Shuffle(high01, high23, 0x44);
        c3 = Avx512F.Shuffle(high01, high23, 0xEE);
    }

    /// <summary>The four coefficients of one craft, in halves of a cell as AVX holds them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Row(double* cell, double* x, double* y, double* z)
    {
        Vector256<double> vy = Vector256.Create(*y), vz = Vector256.Create(*z);
        Vector256<double> lower = Vector256.FusedMultiplyAdd(
            vy,
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 24), Vector256.Load(cell + 8)),
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 16), Vector256.Load(cell)));
        Vector256<double> upper = Vector256.FusedMultiplyAdd(
            vy,
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 28), Vector256.Load(cell + 12)),
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 20), Vector256.Load(cell + 4)));
        return Vector256.FusedMultiplyAdd(Vector256.Create(*x), upper, lower);
    }

    /// <summary>What is left of a row before x: constant terms in the lower half, those times x in the upper.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> HalfRow(double* cell, double* y, double* z)
    {
        Vector512<double> vz = Vector512.Create(*z);
        return Vector512.FusedMultiplyAdd(
            Vector512.Create(*y),
            Vector512.FusedMultiplyAdd(vz, Vector512.Load(cell + 24), Vector512.Load(cell + 8)),
            Vector512.FusedMultiplyAdd(vz, Vector512.Load(cell + 16), Vector512.Load(cell)));
    }

    /// <summary>The rows of two craft side by side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Pair(Vector512<double> a, Vector512<double> b, Vector512<double> x) =>
        Vector512.FusedMultiplyAdd(x, Avx512F.Shuffle4x128(a, b, 0xEE), Avx512F.Shuffle4x128(a, b, 0x44));

    /// <summary>The rows of craft n, n + 4, n + 8, n + 12.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<float> Quad(float** at, float* z, Vector512<float> y, Vector512<float> x)
    {
        Vector512<float> a = AtSpeed(at[0], z), b = AtSpeed(at[4], z + 4);
        Vector512<float> c = AtSpeed(at[8], z + 8), d = AtSpeed(at[12], z + 12);
        Vector512<float> lowAb = Avx512F.Shuffle4x128(a, b, 0x44), highAb = Avx512F.Shuffle4x128(a, b, 0xEE);
        Vector512<float> lowCd = Avx512F.Shuffle4x128(c, d, 0x44), highCd = Avx512F.Shuffle4x128(c, d, 0xEE);
        Vector512<float> constant = Vector512.FusedMultiplyAdd(
            y, Avx512F.Shuffle4x128(highAb, highCd, 0x88), Avx512F.Shuffle4x128(lowAb, lowCd, 0x88));
        Vector512<float> timesX = Vector512.FusedMultiplyAdd(
            y, Avx512F.Shuffle4x128(highAb, highCd, 0xDD), Avx512F.Shuffle4x128(lowAb, lowCd, 0xDD));
        return Vector512.FusedMultiplyAdd(x, timesX, constant);
    }

    /// <summary>A cell at a speed: its terms of 1, x, y, xy.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<float> AtSpeed(float* cell, float* z) =>
        Vector512.FusedMultiplyAdd(Vector512.Create(*z), Vector512.Load(cell + 16), Vector512.Load(cell));

    /// <summary>As for doubles: the four coefficients of one craft.</summary>
    private static Vector128<float> Row(float* cell, float* x, float* y, float* z)
    {
        Vector128<float> vy = Vector128.Create(*y), vz = Vector128.Create(*z);
        Vector128<float> lower = Vector128.FusedMultiplyAdd(
            vy,
            Vector128.FusedMultiplyAdd(vz, Vector128.Load(cell + 24), Vector128.Load(cell + 8)),
            Vector128.FusedMultiplyAdd(vz, Vector128.Load(cell + 16), Vector128.Load(cell)));
        Vector128<float> upper = Vector128.FusedMultiplyAdd(
            vy,
            Vector128.FusedMultiplyAdd(vz, Vector128.Load(cell + 28), Vector128.Load(cell + 12)),
            Vector128.FusedMultiplyAdd(vz, Vector128.Load(cell + 20), Vector128.Load(cell + 4)));
        return Vector128.FusedMultiplyAdd(Vector128.Create(*x), upper, lower);
    }

    // Where the hardware lacks the shuffles: correct, not fast. CraftBatch users pick a width that the hardware has.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void OneByOne(
        CellLanes<Lane4>* cell, out Vector256<double> c0, out Vector256<double> c1, out Vector256<double> c2, out Vector256<double> c3)
    {
        Vector256<double> r0 = default, r1 = default, r2 = default, r3 = default;
        double* x = (double*)&cell->X, y = (double*)&cell->Y, z = (double*)&cell->Z;
        for (int n = 0; n < Lane4.Width; n++)
        {
            Vector256<double> row = Row((double*)cell->Cell.Address[n], x + n, y + n, z + n);
            ((double*)&r0)[n] = row[0];
            ((double*)&r1)[n] = row[1];
            ((double*)&r2)[n] = row[2];
            ((double*)&r3)[n] = row[3];
        }
        (c0, c1, c2, c3) = (r0, r1, r2, r3);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void OneByOne(
        CellLanes<Lane8>* cell, out Vector512<double> c0, out Vector512<double> c1, out Vector512<double> c2, out Vector512<double> c3)
    {
        Vector512<double> r0 = default, r1 = default, r2 = default, r3 = default;
        double* x = (double*)&cell->X, y = (double*)&cell->Y, z = (double*)&cell->Z;
        for (int n = 0; n < Lane8.Width; n++)
        {
            Vector256<double> row = Row((double*)cell->Cell.Address[n], x + n, y + n, z + n);
            ((double*)&r0)[n] = row[0];
            ((double*)&r1)[n] = row[1];
            ((double*)&r2)[n] = row[2];
            ((double*)&r3)[n] = row[3];
        }
        (c0, c1, c2, c3) = (r0, r1, r2, r3);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void OneByOne(
        CellLanes<LaneF16>* cell, out Vector512<float> c0, out Vector512<float> c1, out Vector512<float> c2, out Vector512<float> c3)
    {
        Vector512<float> r0 = default, r1 = default, r2 = default, r3 = default;
        float* x = (float*)&cell->X, y = (float*)&cell->Y, z = (float*)&cell->Z;
        for (int n = 0; n < LaneF16.Width; n++)
        {
            Vector128<float> row = Row((float*)cell->Cell.Address[n], x + n, y + n, z + n);
            ((float*)&r0)[n] = row[0];
            ((float*)&r1)[n] = row[1];
            ((float*)&r2)[n] = row[2];
            ((float*)&r3)[n] = row[3];
        }
        (c0, c1, c2, c3) = (r0, r1, r2, r3);
    }
}
