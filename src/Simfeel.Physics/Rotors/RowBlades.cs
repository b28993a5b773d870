using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Rotors;

/// <summary>
/// The blades of an annulus in four working states, each with its polar between two rows of <see cref="PolarRows"/>: the
/// equations of <see cref="PolarBlades"/> without angles. Only + - * / sqrt and compare, lane by lane and summed in a fixed order,
/// so the bits depend neither on the instruction set nor on the neighbours.
/// </summary>
internal readonly unsafe ref struct RowBlades : IAnnulusBlades<Lane4>
{
    private const double Scale = PolarRows.Steps / 4.0;

    // Adding 2^52 rounds a number to an integer that then stands in the low bits.
    private const double Rounder = 4503599627370496.0;

    private readonly double* _row0, _row1, _row2, _row3;
    private readonly Vector256<double> _share0, _share1, _share2, _share3;
    private readonly double* _tipLoss;
    private readonly double* _sine;
    private readonly double* _cosine;
    private readonly int _positions;
    private readonly double _twistSine;
    private readonly double _twistCosine;
    private readonly double _halfBladeArea;
    private readonly Vector256<double> _friction;

    /// <param name="annulus">The annulus.</param>
    /// <param name="twist">Sine and cosine of its twist.</param>
    /// <param name="rows">Lift and drag over angle: where the lower row of each begins, the upper one following it.</param>
    /// <param name="shares">Place of each between its rows.</param>
    /// <param name="friction">Skin friction of each.</param>
    /// <param name="tipLoss">Tip loss on <see cref="TipLossSteps"/> equal steps of sine, ends included.</param>
    /// <param name="sine">Sines of the blade positions.</param>
    /// <param name="cosine">Cosines of the blade positions.</param>
    /// <param name="positions">Number of blade positions.</param>
    public RowBlades(
        in RotorAnnulus annulus,
        (double Sine, double Cosine) twist,
        double** rows,
        double* shares,
        Vector256<double> friction,
        double* tipLoss,
        double* sine,
        double* cosine,
        int positions)
    {
        Radius = annulus.Radius;
        _halfBladeArea = annulus.HalfBladeArea;
        (_twistSine, _twistCosine) = twist;
        _row0 = rows[0];
        _row1 = rows[1];
        _row2 = rows[2];
        _row3 = rows[3];
        _share0 = Vector256.Create(shares[0]);
        _share1 = Vector256.Create(shares[1]);
        _share2 = Vector256.Create(shares[2]);
        _share3 = Vector256.Create(shares[3]);
        _friction = friction;
        _tipLoss = tipLoss;
        _sine = sine;
        _cosine = cosine;
        _positions = positions;
    }

    /// <summary>Steps of the tip loss table.</summary>
    public const int TipLossSteps = 256;

    public double Radius { get; }

    public bool Swirl => true;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lane4 TipLoss(Lane4 sine)
    {
        Vector256<double> at = Vector256.Min(sine.v, Vector256<double>.One) * Vector256.Create((double)TipLossSteps);
        Split(at, TipLossSteps - 1.0, out Vector256<long> index, out Vector256<double> t);
        Vector256<double> low = Vector256.Create(_tipLoss[index[0]], _tipLoss[index[1]], _tipLoss[index[2]], _tipLoss[index[3]]);
        Vector256<double> high = Vector256.Create(
            _tipLoss[index[0] + 1], _tipLoss[index[1] + 1], _tipLoss[index[2] + 1], _tipLoss[index[3] + 1]);
        Lane4 r;
        r.v = low + (t * (high - low));
        return r;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lane4 MeanDrag(Lane4 tangential, Lane4 axial)
    {
        Vector256<double> speed = Vector256.Sqrt((tangential.v * tangential.v) + (axial.v * axial.v));
        LiftAndDrag(tangential.v, axial.v, out Vector256<double> even, out Vector256<double> odd);
        Vector256<double> lift = speed * axial.v, drag = speed * tangential.v;
        Lane4 r;
        r.v = Vector256.Create(_halfBladeArea) * Joined(even * EvenPairs(lift, drag), odd * OddPairs(lift, drag));
        return r;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Lane4 Thrust(in AnnulusFlow<Lane4> flow)
    {
        Vector256<double> evenSum = Vector256<double>.Zero, oddSum = Vector256<double>.Zero;
        Vector256<double> tangential0 = flow.Tangential.v, inPlane = flow.InPlane.v, axial0 = flow.Axial.v, gradient = flow.Gradient.v;
        for (int i = 0; i < _positions; i++)
        {
            Vector256<double> tangential = tangential0 + (inPlane * Vector256.Create(_sine[i]));
            Vector256<double> axial = axial0 + (gradient * Vector256.Create(_cosine[i]));
            Vector256<double> speed = Vector256.Sqrt((tangential * tangential) + (axial * axial));
            LiftAndDrag(tangential, axial, out Vector256<double> even, out Vector256<double> odd);
            Vector256<double> along = speed * tangential, down = -(speed * axial);
            evenSum += even * EvenPairs(along, down);
            oddSum += odd * OddPairs(along, down);
        }
        Lane4 r;
        r.v = Vector256.Create(_halfBladeArea) * Joined(evenSum, oddSum) / Vector256.Create((double)_positions);
        return r;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Forces(in AnnulusFlow<Lane4> flow, Span<AnnulusForces> forces)
    {
        Vector256<double> area = Vector256.Create(_halfBladeArea), frictionArea = area * _friction;
        Vector256<double> thrust = Vector256<double>.Zero, drag = thrust, inPlane = thrust, front = thrust;
        for (int i = 0; i < _positions; i++)
        {
            Vector256<double> sine = Vector256.Create(_sine[i]), cosine = Vector256.Create(_cosine[i]);
            Vector256<double> tangential = flow.Tangential.v + (flow.InPlane.v * sine);
            Vector256<double> axial = flow.Axial.v + (flow.Gradient.v * cosine);
            Vector256<double> square = (tangential * tangential) + (axial * axial), speed = Vector256.Sqrt(square);
            LiftAndDrag(tangential, axial, out Vector256<double> even, out Vector256<double> odd);
            Vector256<double> forward = speed * tangential, down = speed * axial, up = -down;
            Vector256<double> lifting = area * Joined(even * EvenPairs(forward, up), odd * OddPairs(forward, up));
            Vector256<double> holding = area * Joined(even * EvenPairs(down, forward), odd * OddPairs(down, forward));
            Vector256<double> along = flow.InPlane.v * cosine;
            Vector256<double> friction = frictionArea * Vector256.Sqrt(square + (along * along)) * along;
            thrust += lifting;
            drag += holding;
            inPlane += (holding * sine) + (friction * cosine);
            front -= lifting * cosine;
        }
        double n = _positions;
        for (int lane = 0; lane < forces.Length; lane++)
            forces[lane] = new(thrust[lane] / n, drag[lane] / n, inPlane[lane] / n, front[lane] / n);
    }

    /// <summary>Pairs (lift, drag) of lanes 0 and 2, and of 1 and 3.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void LiftAndDrag(Vector256<double> tangential, Vector256<double> axial, out Vector256<double> even, out Vector256<double> odd)
    {
        Vector256<double> twistSine = Vector256.Create(_twistSine), twistCosine = Vector256.Create(_twistCosine);
        Vector256<double> s = (twistSine * tangential) - (twistCosine * axial);
        Vector256<double> c = (twistCosine * tangential) + (twistSine * axial);
        Vector256<double> p = s / (Vector256.Abs(s) + Vector256.Abs(c) + Vector256.Create(1e-30));
        Vector256<double> q = Vector256.ConditionalSelect(
            Vector256.GreaterThanOrEqual(c, Vector256<double>.Zero), p, Vector256.Create(2.0) - p);
        Vector256<double> at = (q + Vector256<double>.One) * Vector256.Create(Scale);
        Split(at, PolarRows.Steps - 1.0, out Vector256<long> index, out Vector256<double> t);
        even = Pairs(Cell(_row0 + (2 * index[0]), _share0), Cell(_row2 + (2 * index[2]), _share2), EvenPairs(t, t));
        odd = Pairs(Cell(_row1 + (2 * index[1]), _share1), Cell(_row3 + (2 * index[3]), _share3), OddPairs(t, t));
    }

    /// <summary>The step that a continuous index falls into, 0 to a last one, and the place in it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Split(Vector256<double> at, double last, out Vector256<long> index, out Vector256<double> t)
    {
        // Rounding at - 1/2 gives the step; on an edge either neighbour will do, both give the value of the edge.
        Vector256<double> step = Vector256.MinNative(
            Vector256.MaxNative(at - Vector256.Create(0.5), Vector256<double>.Zero), Vector256.Create(last));
        Vector256<double> rounded = step + Vector256.Create(Rounder);
        index = rounded.AsInt64() & Vector256.Create(0xFFFL);
        t = at - (rounded - Vector256.Create(Rounder));
    }

    /// <summary>Lift and drag at both ends of a step, between two rows.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Cell(double* low, Vector256<double> share)
    {
        Vector256<double> a = Vector256.Load(low), b = Vector256.Load(low + PolarRows.RowLength);
        return a + (share * (b - a));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Pairs(Vector256<double> first, Vector256<double> second, Vector256<double> t)
    {
        Vector256<double> start = Vector256.Create(first.GetLower(), second.GetLower());
        Vector256<double> end = Vector256.Create(first.GetUpper(), second.GetUpper());
        return start + (t * (end - start));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> EvenPairs(Vector256<double> a, Vector256<double> b) =>
        Avx.IsSupported ? Avx.UnpackLow(a, b) : Vector256.Create(a[0], b[0], a[2], b[2]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> OddPairs(Vector256<double> a, Vector256<double> b) =>
        Avx.IsSupported ? Avx.UnpackHigh(a, b) : Vector256.Create(a[1], b[1], a[3], b[3]);

    /// <summary>Sums of the pairs, lane by lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Joined(Vector256<double> even, Vector256<double> odd) => EvenPairs(even, odd) + OddPairs(even, odd);
}
