using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Simfeel.Physics.Rotors;

/// <summary>
/// Aerodynamic coefficients of one propeller over every working state, on the nodes of <see cref="RotorTableGrid"/>,
/// with trilinear interpolation. For the flight kernel the same numbers are packed by cell: the eight terms of the
/// trilinear form of all four coefficients side by side, so that one lookup reads one aligned block.
/// Immutable; shared by threads.
/// </summary>
public sealed unsafe class RotorTable
{
    /// <summary>Numbers stored for a node.</summary>
    public const int CoefficientCount = 4;

    /// <summary>Numbers stored for a cell: eight trilinear terms of four coefficients.</summary>
    public const int CellSize = 8 * CoefficientCount;

    /// <summary>Numbers in an array of nodes.</summary>
    public const int NodeCount =
        (RotorTableGrid.SpeedCells + 1) * (RotorTableGrid.InPlaneCells + 1) * (RotorTableGrid.AngleCells + 1) * CoefficientCount;

    private const int PackedCount =
        RotorTableGrid.SpeedCells * RotorTableGrid.InPlaneCells * RotorTableGrid.AngleCells * CellSize;

    private const int Alignment = 64;

    private readonly double[] _nodes;
    private readonly double[] _packed;
    private float[]? _packedSingle;

    /// <summary>A table from its nodes.</summary>
    /// <param name="nodes">
    /// Coefficients thrust, torque, in-plane, pitch (fastest index), then flow angle, in-plane flow and speed (slowest);
    /// <see cref="NodeCount"/> finite numbers, see <see cref="NodeOffset"/>. The array is kept, not copied.
    /// </param>
    /// <exception cref="ArgumentException">The length is wrong or a number is not finite.</exception>
    public RotorTable(double[] nodes)
    {
        ArgumentNullException.ThrowIfNull(nodes);
        if (nodes.Length != NodeCount)
            throw new ArgumentException($"A rotor table has {NodeCount} numbers, not {nodes.Length}.", nameof(nodes));
        for (int i = 0; i < nodes.Length; i++)
        {
            if (!double.IsFinite(nodes[i]))
                throw new ArgumentException($"Number {i} of the rotor table is {nodes[i]}, not finite.", nameof(nodes));
        }
        _nodes = nodes;
        _packed = GC.AllocateUninitializedArray<double>(PackedCount + (Alignment / sizeof(double)), pinned: true);
        Pack((double*)Aligned(_packed));
    }

    private RotorTable(double[] nodes, double[] packed) => (_nodes, _packed) = (nodes, packed);

    /// <summary>A table with each coefficient multiplied, as a thrust stand may ask for; much quicker than from scaled nodes.</summary>
    /// <param name="factors">One for each of the <see cref="CoefficientCount"/> coefficients, finite.</param>
    /// <exception cref="ArgumentException">There are more or fewer factors, or one is not finite.</exception>
    public RotorTable Scaled(ReadOnlySpan<double> factors)
    {
        if (factors.Length != CoefficientCount) throw new ArgumentException($"Give {CoefficientCount} factors, not {factors.Length}.", nameof(factors));
        foreach (double factor in factors)
        {
            if (!double.IsFinite(factor)) throw new ArgumentException($"The factor {factor} is not finite.", nameof(factors));
        }
        double[] nodes = GC.AllocateUninitializedArray<double>(_nodes.Length);
        double[] packed = GC.AllocateUninitializedArray<double>(_packed.Length, pinned: true);
        Multiply(new(_nodes), nodes, factors);
        // the terms of a cell are sums of its nodes, coefficient by coefficient, in the same order of four
        Multiply(new(PackedDouble, PackedCount), new(Aligned(packed), PackedCount), factors);
        return new(nodes, packed);
    }

    /// <summary>The nodes, in the order that the constructor states.</summary>
    public ReadOnlySpan<double> Nodes => _nodes;

    /// <summary>Where the coefficients of node (angle i, in-plane j, speed k) start.</summary>
    public static int NodeOffset(int i, int j, int k) =>
        ((((k * (RotorTableGrid.InPlaneCells + 1)) + j) * (RotorTableGrid.AngleCells + 1)) + i) * CoefficientCount;

    /// <summary>The packed cells as doubles, 64-byte aligned; valid as long as this object is reachable.</summary>
    internal double* PackedDouble => (double*)Aligned(_packed);

    /// <summary>The packed cells as floats, 64-byte aligned; valid as long as this object is reachable.</summary>
    internal float* PackedSingle
    {
        get
        {
            if (_packedSingle is null)
            {
                float[] single = GC.AllocateUninitializedArray<float>(PackedCount + (Alignment / sizeof(float)), pinned: true);
                float* target = (float*)Aligned(single);
                double* source = PackedDouble;
                for (int i = 0; i < PackedCount; i++) target[i] = (float)source[i];
                // another thread may have been first; its array is the one whose address is already in use
                Interlocked.CompareExchange(ref _packedSingle, single, null);
            }
            return (float*)Aligned(_packedSingle);
        }
    }

    /// <summary>Interpolated coefficients of a working state: w in rad/s, radius in m, velocities in m/s.</summary>
    public RotorCoefficients At(double w, double radius, double axial, double inPlane)
    {
        (double a, double b, double c) = RotorTableGrid.IndicesOf(w, radius, axial, inPlane);
        int i = Math.Min((int)a, RotorTableGrid.AngleCells - 1);
        int j = Math.Min((int)b, RotorTableGrid.InPlaneCells - 1);
        int k = Math.Min((int)c, RotorTableGrid.SpeedCells - 1);
        Span<double> sum = stackalloc double[CoefficientCount];
        sum.Clear();
        for (int corner = 0; corner < 8; corner++)
        {
            int di = corner & 1, dj = (corner >> 1) & 1, dk = corner >> 2;
            double weight = Weight(a - i, di) * Weight(b - j, dj) * Weight(c - k, dk);
            int at = NodeOffset(i + di, j + dj, k + dk);
            for (int q = 0; q < CoefficientCount; q++) sum[q] += weight * _nodes[at + q];
        }
        return new(sum[0], sum[1], sum[2], sum[3]);

        static double Weight(double t, int upper) => upper == 1 ? t : 1 - t;
    }

    private static void Multiply(ReadOnlySpan<double> from, Span<double> to, ReadOnlySpan<double> factors)
    {
        Vector256<double> four = Vector256.Create(factors);
        for (int i = 0; i < from.Length; i += CoefficientCount) (Vector256.Create(from[i..]) * four).CopyTo(to[i..]);
    }

    private static void* Aligned<T>(T[] pinned)
        where T : unmanaged
    {
        nuint address = (nuint)Unsafe.AsPointer(ref pinned[0]);
        return (void*)((address + (Alignment - 1)) & ~(nuint)(Alignment - 1));
    }

    /// <summary>
    /// Cell (i, j, k) holds eight groups of four numbers. With local coordinates x (angle), y (in-plane), z (speed) in
    /// [0, 1] the coefficients are (g0 + x g1) + y (g2 + x g3) + z ((g4 + x g5) + y (g6 + x g7)).
    /// </summary>
    private void Pack(double* target)
    {
        for (int k = 0; k < RotorTableGrid.SpeedCells; k++)
            for (int j = 0; j < RotorTableGrid.InPlaneCells; j++)
                for (int i = 0; i < RotorTableGrid.AngleCells; i++)
                {
                    for (int q = 0; q < CoefficientCount; q++)
                    {
                        double n000 = Node(0, 0, 0), n100 = Node(1, 0, 0), n010 = Node(0, 1, 0), n110 = Node(1, 1, 0);
                        double n001 = Node(0, 0, 1), n101 = Node(1, 0, 1), n011 = Node(0, 1, 1), n111 = Node(1, 1, 1);
                        target[q] = n000;
                        target[q + 4] = n100 - n000;
                        target[q + 8] = n010 - n000;
                        target[q + 12] = n110 - n100 - n010 + n000;
                        target[q + 16] = n001 - n000;
                        target[q + 20] = n101 - n001 - n100 + n000;
                        target[q + 24] = n011 - n001 - n010 + n000;
                        target[q + 28] = (n111 - n101 - n011 + n001) - (n110 - n100 - n010 + n000);

                        double Node(int di, int dj, int dk) => _nodes[NodeOffset(i + di, j + dj, k + dk) + q];
                    }
                    target += CellSize;
                }
    }
}
