using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Simfeel.Physics.Rotors;

/// <summary>
/// The blades of an annulus with their polar in a row of <see cref="PolarRows"/>: the equations of <see cref="PolarBlades"/>
/// without angles, four blade positions at a time. Only + - * / sqrt and compare, element by element and summed in a
/// fixed order, so the bits do not depend on the instruction set.
/// </summary>
internal readonly unsafe ref struct RowBlades : IAnnulusBlades
{
    private const double Scale = PolarRows.Steps / 4.0;

    // Adding 2^52 rounds a number to an integer that then stands in the low bits.
    private const double Rounder = 4503599627370496.0;

    private readonly double* _row;
    private readonly double* _tipLoss;
    private readonly double* _sine;
    private readonly double* _cosine;
    private readonly int _positions;
    private readonly double _twistSine;
    private readonly double _twistCosine;
    private readonly double _halfBladeArea;
    private readonly double _friction;

    /// <param name="annulus">The annulus.</param>
    /// <param name="twist">Sine and cosine of its twist.</param>
    /// <param name="row">Lift and drag over angle.</param>
    /// <param name="friction">Skin friction.</param>
    /// <param name="tipLoss">Tip loss on <see cref="TipLossSteps"/> equal steps of sine, ends included.</param>
    /// <param name="sine">Sines of the blade positions.</param>
    /// <param name="cosine">Cosines of the blade positions.</param>
    /// <param name="positions">Number of blade positions, a multiple of 4.</param>
    public RowBlades(
        in RotorAnnulus annulus,
        (double Sine, double Cosine) twist,
        double* row,
        double friction,
        double* tipLoss,
        double* sine,
        double* cosine,
        int positions)
    {
        Radius = annulus.Radius;
        _halfBladeArea = annulus.HalfBladeArea;
        (_twistSine, _twistCosine) = twist;
        _row = row;
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

    public double TipLoss(double sine)
    {
        double at = Math.Min(sine, 1) * TipLossSteps;
        int i = Math.Min((int)at, TipLossSteps - 1);
        return _tipLoss[i] + ((at - i) * (_tipLoss[i + 1] - _tipLoss[i]));
    }

    public SectionForces Mean(double tangential, double axial)
    {
        double s = (_twistSine * tangential) - (_twistCosine * axial);
        double c = (_twistCosine * tangential) + (_twistSine * axial);
        double p = s / (Math.Abs(s) + Math.Abs(c) + 1e-30);
        double at = ((c >= 0 ? p : 2 - p) + 1) * Scale;
        int i = Math.Min((int)at, PolarRows.Steps - 1);
        double t = at - i;
        double* cell = _row + (2 * i);
        double lift = cell[0] + (t * (cell[2] - cell[0]));
        double drag = cell[1] + (t * (cell[3] - cell[1]));
        double scale = _halfBladeArea * Math.Sqrt((tangential * tangential) + (axial * axial));
        return new(scale * ((lift * tangential) - (drag * axial)), scale * ((lift * axial) + (drag * tangential)));
    }

    public double Thrust(in AnnulusFlow flow)
    {
        Vector256<double> sum = Vector256<double>.Zero;
        Vector256<double> tangential0 = Vector256.Create(flow.Tangential), inPlane = Vector256.Create(flow.InPlane);
        Vector256<double> axial0 = Vector256.Create(flow.Axial), gradient = Vector256.Create(flow.Gradient);
        for (int i = 0; i < _positions; i += 4)
        {
            Vector256<double> tangential = tangential0 + (inPlane * Vector256.Load(_sine + i));
            Vector256<double> axial = axial0 + (gradient * Vector256.Load(_cosine + i));
            Vector256<double> speed = Vector256.Sqrt((tangential * tangential) + (axial * axial));
            LiftAndDrag(tangential, axial, out Vector256<double> even, out Vector256<double> odd);
            Vector256<double> along = speed * tangential, down = -(speed * axial);
            sum += (even * EvenPairs(along, down)) + (odd * OddPairs(along, down));
        }
        double total = sum[0] + sum[1] + sum[2] + sum[3];
        return _halfBladeArea * total / _positions;
    }

    public AnnulusForces Forces(in AnnulusFlow flow)
    {
        double thrust = 0, drag = 0, inPlane = 0, front = 0;
        for (int i = 0; i < _positions; i++)
        {
            double sine = _sine[i], cosine = _cosine[i];
            double tangential = flow.Tangential + (flow.InPlane * sine);
            double axial = flow.Axial + (flow.Gradient * cosine);
            SectionForces f = Mean(tangential, axial);
            double along = flow.InPlane * cosine;
            double speed = Math.Sqrt((tangential * tangential) + (axial * axial) + (along * along));
            double friction = _halfBladeArea * _friction * speed * along;
            thrust += f.Thrust;
            drag += f.Drag;
            inPlane += (f.Drag * sine) + (friction * cosine);
            front -= f.Thrust * cosine;
        }
        double n = _positions;
        return new(thrust / n, drag / n, inPlane / n, front / n);
    }

    /// <summary>Pairs (lift, drag) of positions 0 and 2, and of 1 and 3.</summary>
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

        // Rounding at - 1/2 gives the step; on an edge either neighbour will do, both give the value of the edge.
        Vector256<double> step = Vector256.Min(
            Vector256.Max(at - Vector256.Create(0.5), Vector256<double>.Zero), Vector256.Create(PolarRows.Steps - 1.0));
        Vector256<double> rounded = step + Vector256.Create(Rounder);
        Vector256<long> index = rounded.AsInt64() & Vector256.Create(0xFFFL);
        Vector256<double> t = at - (rounded - Vector256.Create(Rounder));

        Pairs(_row + (2 * index[0]), _row + (2 * index[2]), EvenPairs(t, t), out even);
        Pairs(_row + (2 * index[1]), _row + (2 * index[3]), OddPairs(t, t), out odd);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Pairs(double* first, double* second, Vector256<double> t, out Vector256<double> pairs)
    {
        Vector256<double> start = Vector256.Create(Vector128.Load(first), Vector128.Load(second));
        Vector256<double> end = Vector256.Create(Vector128.Load(first + 2), Vector128.Load(second + 2));
        pairs = start + (t * (end - start));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> EvenPairs(Vector256<double> a, Vector256<double> b) =>
        Avx.IsSupported ? Avx.UnpackLow(a, b) : Vector256.Create(a[0], b[0], a[2], b[2]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> OddPairs(Vector256<double> a, Vector256<double> b) =>
        Avx.IsSupported ? Avx.UnpackHigh(a, b) : Vector256.Create(a[1], b[1], a[3], b[3]);
}
