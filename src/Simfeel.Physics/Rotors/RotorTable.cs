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

    /// <summary>Numbers in the packed cells of a table.</summary>
    internal const int PackedCount =
        RotorTableGrid.SpeedCells * RotorTableGrid.InPlaneCells * RotorTableGrid.AngleCells * CellSize;

    private const int Alignment = 64;

    private readonly double[] _nodes;

    // packed when first flown, as most tables are flown in one precision only
    private readonly Lazy<double[]> _packed;
    private readonly Lazy<float[]> _single;

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
        _packed = new(PackDouble);
        _single = new(PackSingle);
    }

    private RotorTable(RotorTable table, double lift, double drag)
    {
        (_nodes, _packed, _single) = (table._nodes, table._packed, table._single);
        (LiftFactor, DragFactor) = (table.LiftFactor * lift, table.DragFactor * drag);
    }

    /// <summary>What thrust and pitch coefficient, which go with the lift of the blades, are multiplied by.</summary>
    public double LiftFactor { get; } = 1;

    /// <summary>What torque and in-plane coefficient, which go with the drag of the blades, are multiplied by.</summary>
    public double DragFactor { get; } = 1;

    /// <summary>The same table with its coefficients multiplied, as a thrust stand may ask for; it shares this one's memory.</summary>
    /// <param name="lift">Factor of thrust and pitch coefficient, finite.</param>
    /// <param name="drag">Factor of torque and in-plane coefficient, finite.</param>
    /// <exception cref="ArgumentException">A factor is not finite.</exception>
    public RotorTable Scaled(double lift, double drag)
    {
        if (!double.IsFinite(lift)) throw new ArgumentException($"The factor {lift} is not finite.", nameof(lift));
        if (!double.IsFinite(drag)) throw new ArgumentException($"The factor {drag} is not finite.", nameof(drag));
        return new(this, lift, drag);
    }

    /// <summary>The nodes, in the order that the constructor states, without the factors.</summary>
    public ReadOnlySpan<double> Nodes => _nodes;

    /// <summary>Where the coefficients of node (angle i, in-plane j, speed k) start.</summary>
    public static int NodeOffset(int i, int j, int k) =>
        ((((k * (RotorTableGrid.InPlaneCells + 1)) + j) * (RotorTableGrid.AngleCells + 1)) + i) * CoefficientCount;

    /// <summary>The packed cells as doubles, 64-byte aligned; valid as long as this object is reachable.</summary>
    internal double* PackedDouble => (double*)Aligned(_packed.Value);

    /// <summary>The packed cells as floats, 64-byte aligned; valid as long as this object is reachable.</summary>
    internal float* PackedSingle => (float*)Aligned(_single.Value);

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
        return new(LiftFactor * sum[0], DragFactor * sum[1], DragFactor * sum[2], LiftFactor * sum[3]);

        static double Weight(double t, int upper) => upper == 1 ? t : 1 - t;
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
    private double[] PackDouble()
    {
        double[] packed = GC.AllocateUninitializedArray<double>(PackedCount + (Alignment / sizeof(double)), pinned: true);
        double* target = (double*)Aligned(packed);
        Vector256<double>* terms = stackalloc Vector256<double>[8];
        for (int cell = 0; cell < PackedCount / CellSize; cell++)
        {
            Terms(cell, terms);
            for (int n = 0; n < 8; n++, target += CoefficientCount) terms[n].Store(target);
        }
        return packed;
    }

    private float[] PackSingle()
    {
        float[] packed = GC.AllocateUninitializedArray<float>(PackedCount + (Alignment / sizeof(float)), pinned: true);
        float* target = (float*)Aligned(packed);
        Vector256<double>* terms = stackalloc Vector256<double>[8];
        for (int cell = 0; cell < PackedCount / CellSize; cell++)
        {
            Terms(cell, terms);
            for (int n = 0; n < 8; n += 2, target += 2 * CoefficientCount) Vector256.Narrow(terms[n], terms[n + 1]).Store(target);
        }
        return packed;
    }

    /// <summary>The eight terms of the trilinear form in a cell, all four coefficients of each.</summary>
    private void Terms(int cell, Vector256<double>* terms)
    {
        int i = cell % RotorTableGrid.AngleCells, row = cell / RotorTableGrid.AngleCells;
        int j = row % RotorTableGrid.InPlaneCells, k = row / RotorTableGrid.InPlaneCells;
        Vector256<double> n000 = Node(0, 0, 0), n100 = Node(1, 0, 0), n010 = Node(0, 1, 0), n110 = Node(1, 1, 0);
        Vector256<double> n001 = Node(0, 0, 1), n101 = Node(1, 0, 1), n011 = Node(0, 1, 1), n111 = Node(1, 1, 1);
        terms[0] = n000;
        terms[1] = n100 - n000;
        terms[2] = n010 - n000;
        terms[3] = n110 - n100 - n010 + n000;
        terms[4] = n001 - n000;
        terms[5] = n101 - n001 - n100 + n000;
        terms[6] = n011 - n001 - n010 + n000;
        terms[7] = n111 - n101 - n011 + n001 - (n110 - n100 - n010 + n000);

        Vector256<double> Node(int di, int dj, int dk) => Vector256.Create(_nodes.AsSpan(NodeOffset(i + di, j + dj, k + dk)));
    }
}
