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

    /// <summary>One craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void One(
        double angle, double inPlane, double speed, TableLanes* table,
        out double c0, out double c1, out double c2, out double c3)
    {
        double i = Math.Truncate(angle), j = Math.Truncate(inPlane), k = Math.Truncate(speed);
        double number = Math.FusedMultiplyAdd(k, SlabStride, Math.FusedMultiplyAdd(j, RowStride, i));
        double* cell = (double*)table->Address[0] + (double.ConvertToIntegerNative<long>(number) * RotorTable.CellSize);
        Vector256<double> c = Row(cell, angle - i, inPlane - j, speed - k);
        c0 = c.ToScalar();
        c1 = c.GetElement(1);
        c2 = c.GetElement(2);
        c3 = c.GetElement(3);
    }

    /// <summary>Four craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Four(
        Vector256<double> angle, Vector256<double> inPlane, Vector256<double> speed, TableLanes* table,
        out Vector256<double> c0, out Vector256<double> c1, out Vector256<double> c2, out Vector256<double> c3)
    {
        if (!Avx2.IsSupported)
        {
            FourByOne(angle, inPlane, speed, table, out c0, out c1, out c2, out c3);
            return;
        }
        Vector256<double> i = Vector256.Truncate(angle), j = Vector256.Truncate(inPlane), k = Vector256.Truncate(speed);
        Vector256<double> x = angle - i, y = inPlane - j, z = speed - k;
        Vector256<double> number = Vector256.FusedMultiplyAdd(
            k, Vector256.Create((double)SlabStride), Vector256.FusedMultiplyAdd(j, Vector256.Create((double)RowStride), i));
        Vector256<long> at = Vector256.WidenLower(Avx.ConvertToVector128Int32WithTruncation(number).ToVector256Unsafe());
        at = (at << DoubleCellShift) + Vector256.Load((long*)table->Address);
        double** cell = (double**)&at;
        double* px = (double*)&x, py = (double*)&y, pz = (double*)&z;
        Vector256<double> r0 = Row(cell[0], px[0], py[0], pz[0]), r1 = Row(cell[1], px[1], py[1], pz[1]);
        Vector256<double> r2 = Row(cell[2], px[2], py[2], pz[2]), r3 = Row(cell[3], px[3], py[3], pz[3]);
        Vector256<double> even01 = Avx.UnpackLow(r0, r1), odd01 = Avx.UnpackHigh(r0, r1);
        Vector256<double> even23 = Avx.UnpackLow(r2, r3), odd23 = Avx.UnpackHigh(r2, r3);
        c0 = Avx.Permute2x128(even01, even23, 0x20);
        c2 = Avx.Permute2x128(even01, even23, 0x31);
        c1 = Avx.Permute2x128(odd01, odd23, 0x20);
        c3 = Avx.Permute2x128(odd01, odd23, 0x31);
    }

    /// <summary>Eight craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Eight(
        Vector512<double> angle, Vector512<double> inPlane, Vector512<double> speed, TableLanes* table,
        out Vector512<double> c0, out Vector512<double> c1, out Vector512<double> c2, out Vector512<double> c3)
    {
        if (!Avx512F.IsSupported)
        {
            EightByOne(angle, inPlane, speed, table, out c0, out c1, out c2, out c3);
            return;
        }
        Vector512<double> i = Vector512.Truncate(angle), j = Vector512.Truncate(inPlane), k = Vector512.Truncate(speed);
        Vector512<double> x = angle - i, y = inPlane - j, z = speed - k;
        Vector512<double> number = Vector512.FusedMultiplyAdd(
            k, Vector512.Create((double)SlabStride), Vector512.FusedMultiplyAdd(j, Vector512.Create((double)RowStride), i));
        Vector512<long> at = (Vector512.ConvertToInt64Native(number) << DoubleCellShift) + Vector512.Load((long*)table->Address);
        double** cell = (double**)&at;
        double* py = (double*)&y, pz = (double*)&z;
        Vector512<double> r04 = Pair(HalfRow(cell[0], py, pz), HalfRow(cell[4], py + 4, pz + 4), Avx512F.Permute4x64(x, 0x00));
        Vector512<double> r15 = Pair(HalfRow(cell[1], py + 1, pz + 1), HalfRow(cell[5], py + 5, pz + 5), Avx512F.Permute4x64(x, 0x55));
        Vector512<double> r26 = Pair(HalfRow(cell[2], py + 2, pz + 2), HalfRow(cell[6], py + 6, pz + 6), Avx512F.Permute4x64(x, 0xAA));
        Vector512<double> r37 = Pair(HalfRow(cell[3], py + 3, pz + 3), HalfRow(cell[7], py + 7, pz + 7), Avx512F.Permute4x64(x, 0xFF));
        Vector512<double> even01 = Avx512F.UnpackLow(r04, r15), odd01 = Avx512F.UnpackHigh(r04, r15);
        Vector512<double> even23 = Avx512F.UnpackLow(r26, r37), odd23 = Avx512F.UnpackHigh(r26, r37);
        Vector512<long> first = Vector512.Create(0L, 1, 8, 9, 4, 5, 12, 13);
        Vector512<long> second = Vector512.Create(2L, 3, 10, 11, 6, 7, 14, 15);
        c0 = Avx512F.PermuteVar8x64x2(even01, first, even23);
        c2 = Avx512F.PermuteVar8x64x2(even01, second, even23);
        c1 = Avx512F.PermuteVar8x64x2(odd01, first, odd23);
        c3 = Avx512F.PermuteVar8x64x2(odd01, second, odd23);
    }

    /// <summary>Sixteen craft in single precision.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Sixteen(
        Vector512<float> angle, Vector512<float> inPlane, Vector512<float> speed, TableLanes* table,
        out Vector512<float> c0, out Vector512<float> c1, out Vector512<float> c2, out Vector512<float> c3)
    {
        Vector512<float> i = Vector512.Truncate(angle), j = Vector512.Truncate(inPlane), k = Vector512.Truncate(speed);
        Vector512<float> x = angle - i, y = inPlane - j, z = speed - k;
        Vector512<float> number = Vector512.FusedMultiplyAdd(
            k, Vector512.Create((float)SlabStride), Vector512.FusedMultiplyAdd(j, Vector512.Create((float)RowStride), i));
        Vector512<int> whole = Vector512.ConvertToInt32Native(number);
        Vector512<long>* address = (Vector512<long>*)table->Address;
        Vector512<long> atLow = (Vector512.WidenLower(whole) << SingleCellShift) + address[0];
        Vector512<long> atHigh = (Vector512.WidenUpper(whole) << SingleCellShift) + address[1];
        float** low = (float**)&atLow, high = (float**)&atHigh;
        float* pz = (float*)&z;
        if (!Avx512F.IsSupported)
        {
            SixteenByOne(low, high, (float*)&x, (float*)&y, pz, out c0, out c1, out c2, out c3);
            return;
        }
        Vector512<float> r0 = Quad(low, high, pz, Avx512F.Permute4x32(y, 0x00), Avx512F.Permute4x32(x, 0x00));
        Vector512<float> r1 = Quad(low + 1, high + 1, pz + 1, Avx512F.Permute4x32(y, 0x55), Avx512F.Permute4x32(x, 0x55));
        Vector512<float> r2 = Quad(low + 2, high + 2, pz + 2, Avx512F.Permute4x32(y, 0xAA), Avx512F.Permute4x32(x, 0xAA));
        Vector512<float> r3 = Quad(low + 3, high + 3, pz + 3, Avx512F.Permute4x32(y, 0xFF), Avx512F.Permute4x32(x, 0xFF));
        Vector512<float> low01 = Avx512F.UnpackLow(r0, r1), high01 = Avx512F.UnpackHigh(r0, r1);
        Vector512<float> low23 = Avx512F.UnpackLow(r2, r3), high23 = Avx512F.UnpackHigh(r2, r3);
        c0 = Avx512F.Shuffle(low01, low23, 0x44);
        c1 = Avx512F.Shuffle(low01, low23, 0xEE);
        c2 = Avx512F.Shuffle(high01, high23, 0x44);
        c3 = Avx512F.Shuffle(high01, high23, 0xEE);
    }

    /// <summary>The four coefficients of one craft, in halves of a cell as AVX holds them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Row(double* cell, double x, double y, double z)
    {
        Vector256<double> vy = Vector256.Create(y), vz = Vector256.Create(z);
        Vector256<double> lower = Vector256.FusedMultiplyAdd(
            vy,
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 24), Vector256.Load(cell + 8)),
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 16), Vector256.Load(cell)));
        Vector256<double> upper = Vector256.FusedMultiplyAdd(
            vy,
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 28), Vector256.Load(cell + 12)),
            Vector256.FusedMultiplyAdd(vz, Vector256.Load(cell + 20), Vector256.Load(cell + 4)));
        return Vector256.FusedMultiplyAdd(Vector256.Create(x), upper, lower);
    }

    /// <summary>What is left of <see cref="Row"/> before x: constant terms in the lower half, those times x in the upper.</summary>
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
    private static Vector512<float> Quad(float** low, float** high, float* z, Vector512<float> y, Vector512<float> x)
    {
        Vector512<float> a = AtSpeed(low[0], z), b = AtSpeed(low[4], z + 4);
        Vector512<float> c = AtSpeed(high[0], z + 8), d = AtSpeed(high[4], z + 12);
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

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void FourByOne(
        Vector256<double> angle, Vector256<double> inPlane, Vector256<double> speed, TableLanes* table,
        out Vector256<double> c0, out Vector256<double> c1, out Vector256<double> c2, out Vector256<double> c3)
    {
        Vector256<double> r0 = default, r1 = default, r2 = default, r3 = default;
        ByOne(4, (double*)&angle, (double*)&inPlane, (double*)&speed, table,
            (double*)&r0, (double*)&r1, (double*)&r2, (double*)&r3);
        (c0, c1, c2, c3) = (r0, r1, r2, r3);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void EightByOne(
        Vector512<double> angle, Vector512<double> inPlane, Vector512<double> speed, TableLanes* table,
        out Vector512<double> c0, out Vector512<double> c1, out Vector512<double> c2, out Vector512<double> c3)
    {
        Vector512<double> r0 = default, r1 = default, r2 = default, r3 = default;
        ByOne(8, (double*)&angle, (double*)&inPlane, (double*)&speed, table,
            (double*)&r0, (double*)&r1, (double*)&r2, (double*)&r3);
        (c0, c1, c2, c3) = (r0, r1, r2, r3);
    }

    private static void ByOne(
        int lanes, double* angle, double* inPlane, double* speed, TableLanes* table,
        double* c0, double* c1, double* c2, double* c3)
    {
        for (int n = 0; n < lanes; n++)
        {
            TableLanes one;
            one.Address[0] = table->Address[n];
            One(angle[n], inPlane[n], speed[n], &one, out c0[n], out c1[n], out c2[n], out c3[n]);
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void SixteenByOne(
        float** low, float** high, float* x, float* y, float* z,
        out Vector512<float> c0, out Vector512<float> c1, out Vector512<float> c2, out Vector512<float> c3)
    {
        Vector512<float> r0 = default, r1 = default, r2 = default, r3 = default;
        for (int n = 0; n < 16; n++)
        {
            float* cell = n < 8 ? low[n] : high[n - 8];
            Vector128<float> vx = Vector128.Create(x[n]), vy = Vector128.Create(y[n]), vz = Vector128.Create(z[n]);
            Vector128<float> row = Vector128.FusedMultiplyAdd(
                vx,
                Vector128.FusedMultiplyAdd(vy, AtSpeedOne(cell + 12, vz), AtSpeedOne(cell + 4, vz)),
                Vector128.FusedMultiplyAdd(vy, AtSpeedOne(cell + 8, vz), AtSpeedOne(cell, vz)));
            ((float*)&r0)[n] = row[0];
            ((float*)&r1)[n] = row[1];
            ((float*)&r2)[n] = row[2];
            ((float*)&r3)[n] = row[3];
        }
        (c0, c1, c2, c3) = (r0, r1, r2, r3);
    }

    private static Vector128<float> AtSpeedOne(float* terms, Vector128<float> z) =>
        Vector128.FusedMultiplyAdd(z, Vector128.Load(terms + 16), Vector128.Load(terms));
}
