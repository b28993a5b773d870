using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Lanes;

/// <summary>
/// Lookups in the packed cells of a <see cref="RotorTable"/> for every lane type. All round in the same order:
/// c = x (upper terms) + (lower terms), each of them z (y g + g) + (y g + g), so bits agree whatever the width.
/// One cell is read as whole vectors (all four coefficients at once) and transposed; gathering the numbers one
/// coefficient at a time was 1.4 to 1.7 times slower when tried.
/// </summary>
internal static unsafe class CellLookup
{
    private const int RowStride = RotorTableGrid.AngleCells;
    private const int SlabStride = RotorTableGrid.AngleCells * RotorTableGrid.InPlaneCells;

    /// <summary>One craft.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void One(
        double angle, double inPlane, double speed, TableLanes* table,
        out double c0, out double c1, out double c2, out double c3)
    {
        int i = double.ConvertToIntegerNative<int>(angle);
        int j = double.ConvertToIntegerNative<int>(inPlane);
        int k = double.ConvertToIntegerNative<int>(speed);
        double* cell = (double*)table->Address[0] + ((i + (j * RowStride) + (k * SlabStride)) * RotorTable.CellSize);
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
        Vector128<int> i = Avx.ConvertToVector128Int32WithTruncation(angle);
        Vector128<int> j = Avx.ConvertToVector128Int32WithTruncation(inPlane);
        Vector128<int> k = Avx.ConvertToVector128Int32WithTruncation(speed);
        Vector256<double> x = angle - Avx.ConvertToVector256Double(i);
        Vector256<double> y = inPlane - Avx.ConvertToVector256Double(j);
        Vector256<double> z = speed - Avx.ConvertToVector256Double(k);
        Vector128<int> at = (i + (j * RowStride) + (k * SlabStride)) * RotorTable.CellSize;
        int* p = (int*)&at;
        double* px = (double*)&x, py = (double*)&y, pz = (double*)&z;
        Vector256<double> r0 = Row((double*)table->Address[0] + p[0], px[0], py[0], pz[0]);
        Vector256<double> r1 = Row((double*)table->Address[1] + p[1], px[1], py[1], pz[1]);
        Vector256<double> r2 = Row((double*)table->Address[2] + p[2], px[2], py[2], pz[2]);
        Vector256<double> r3 = Row((double*)table->Address[3] + p[3], px[3], py[3], pz[3]);
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
        Vector256<int> i = Avx512F.ConvertToVector256Int32WithTruncation(angle);
        Vector256<int> j = Avx512F.ConvertToVector256Int32WithTruncation(inPlane);
        Vector256<int> k = Avx512F.ConvertToVector256Int32WithTruncation(speed);
        Vector512<double> x = angle - Avx512F.ConvertToVector512Double(i);
        Vector512<double> y = inPlane - Avx512F.ConvertToVector512Double(j);
        Vector512<double> z = speed - Avx512F.ConvertToVector512Double(k);
        Vector256<int> at = (i + (j * RowStride) + (k * SlabStride)) * RotorTable.CellSize;
        int* p = (int*)&at;
        double* px = (double*)&x, py = (double*)&y, pz = (double*)&z;
        ulong* t = table->Address;
        Vector512<double> r04 = Vector512.Create(
            WideRow((double*)t[0] + p[0], px[0], py[0], pz[0]), WideRow((double*)t[4] + p[4], px[4], py[4], pz[4]));
        Vector512<double> r15 = Vector512.Create(
            WideRow((double*)t[1] + p[1], px[1], py[1], pz[1]), WideRow((double*)t[5] + p[5], px[5], py[5], pz[5]));
        Vector512<double> r26 = Vector512.Create(
            WideRow((double*)t[2] + p[2], px[2], py[2], pz[2]), WideRow((double*)t[6] + p[6], px[6], py[6], pz[6]));
        Vector512<double> r37 = Vector512.Create(
            WideRow((double*)t[3] + p[3], px[3], py[3], pz[3]), WideRow((double*)t[7] + p[7], px[7], py[7], pz[7]));
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
        Vector512<int> i = Vector512.ConvertToInt32Native(angle);
        Vector512<int> j = Vector512.ConvertToInt32Native(inPlane);
        Vector512<int> k = Vector512.ConvertToInt32Native(speed);
        Vector512<float> x = angle - Vector512.ConvertToSingle(i);
        Vector512<float> y = inPlane - Vector512.ConvertToSingle(j);
        Vector512<float> z = speed - Vector512.ConvertToSingle(k);
        Vector512<int> at = (i + (j * RowStride) + (k * SlabStride)) * RotorTable.CellSize;
        int* p = (int*)&at;
        float* px = (float*)&x, py = (float*)&y, pz = (float*)&z;
        if (!Avx512F.IsSupported)
        {
            SixteenByOne(p, px, py, pz, table, out c0, out c1, out c2, out c3);
            return;
        }
        Vector512<float> r0 = Quad(table, 0, p, px, py, pz), r1 = Quad(table, 1, p, px, py, pz);
        Vector512<float> r2 = Quad(table, 2, p, px, py, pz), r3 = Quad(table, 3, p, px, py, pz);
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
            vz,
            Vector256.FusedMultiplyAdd(vy, Vector256.Load(cell + 24), Vector256.Load(cell + 16)),
            Vector256.FusedMultiplyAdd(vy, Vector256.Load(cell + 8), Vector256.Load(cell)));
        Vector256<double> upper = Vector256.FusedMultiplyAdd(
            vz,
            Vector256.FusedMultiplyAdd(vy, Vector256.Load(cell + 28), Vector256.Load(cell + 20)),
            Vector256.FusedMultiplyAdd(vy, Vector256.Load(cell + 12), Vector256.Load(cell + 4)));
        return Vector256.FusedMultiplyAdd(Vector256.Create(x), upper, lower);
    }

    /// <summary>As <see cref="Row"/>, a whole cell in four registers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> WideRow(double* cell, double x, double y, double z)
    {
        Vector512<double> vy = Vector512.Create(y);
        Vector512<double> both = Vector512.FusedMultiplyAdd(
            Vector512.Create(z),
            Vector512.FusedMultiplyAdd(vy, Vector512.Load(cell + 24), Vector512.Load(cell + 16)),
            Vector512.FusedMultiplyAdd(vy, Vector512.Load(cell + 8), Vector512.Load(cell)));
        return Vector256.FusedMultiplyAdd(Vector256.Create(x), both.GetUpper(), both.GetLower());
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<float> SingleRow(float* cell, float x, float y, float z)
    {
        Vector256<float> vy = Vector256.Create(y);
        Vector256<float> both = Vector256.FusedMultiplyAdd(
            Vector256.Create(z),
            Vector256.FusedMultiplyAdd(vy, Vector256.Load(cell + 24), Vector256.Load(cell + 16)),
            Vector256.FusedMultiplyAdd(vy, Vector256.Load(cell + 8), Vector256.Load(cell)));
        return Vector128.FusedMultiplyAdd(Vector128.Create(x), both.GetUpper(), both.GetLower());
    }

    /// <summary>Rows of lanes n, n + 4, n + 8, n + 12.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<float> Quad(TableLanes* table, int n, int* at, float* x, float* y, float* z) =>
        Vector512.Create(
            Vector256.Create(
                SingleRow((float*)table->Address[n] + at[n], x[n], y[n], z[n]),
                SingleRow((float*)table->Address[n + 4] + at[n + 4], x[n + 4], y[n + 4], z[n + 4])),
            Vector256.Create(
                SingleRow((float*)table->Address[n + 8] + at[n + 8], x[n + 8], y[n + 8], z[n + 8]),
                SingleRow((float*)table->Address[n + 12] + at[n + 12], x[n + 12], y[n + 12], z[n + 12])));

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
        int* at, float* x, float* y, float* z, TableLanes* table,
        out Vector512<float> c0, out Vector512<float> c1, out Vector512<float> c2, out Vector512<float> c3)
    {
        Vector512<float> r0 = default, r1 = default, r2 = default, r3 = default;
        for (int n = 0; n < 16; n++)
        {
            Vector128<float> row = SingleRow((float*)table->Address[n] + at[n], x[n], y[n], z[n]);
            ((float*)&r0)[n] = row[0];
            ((float*)&r1)[n] = row[1];
            ((float*)&r2)[n] = row[2];
            ((float*)&r3)[n] = row[3];
        }
        (c0, c1, c2, c3) = (r0, r1, r2, r3);
    }
}
