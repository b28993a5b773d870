using System.Runtime.CompilerServices;
using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Rotors;

/// <summary>
/// Induced velocity of an annulus: thrust of the blades equals 4 pi r F v Vm (<see cref="MomentumTheory.MassFlowSpeed"/>),
/// with swirl from the torque likewise and a linear inflow gradient. One annulus in each lane, each on its own path to its
/// root: a lane's bits do not depend on its neighbours.
/// <para>
/// Momentum thrust rises with v from minus to plus infinity, so a root always exists, and blade thrust falls with v
/// except in deep stall, where there may be three. A lifting annulus takes the highest, found by steps down from above
/// all of them; an annulus that is pressed down without induced flow takes the root nearest to zero. Chandrupatla's method
/// closes the bracket. Fixed-point iteration, the usual way, diverges in descent.
/// </para>
/// </summary>
internal static unsafe class InflowSolver<T>
    where T : unmanaged, ILane<T>
{
    // Coleman's type of gradient: v (1 + k r cos(psi)), k = (15 pi / 32) tan(chi / 2), chi the wake's skew (Pitt and Peters).
    private const double GradientFactor = 15 * Math.PI / 32;
    private const double Highest = 0.6;
    private const double Step = 0.45;
    private const double Lowest = 0.01;
    private const double Tolerance = 1e-8;
    private const int SwirlPasses = 2;
    private const int MostSteps = 80;

    // Without through-flow the wake would spin up without bound; mixing stops it. Only rotors of almost no thrust see this.
    private const double LeastMassFlow = 0.02;
    private const double MostSwirl = 0.5;

    /// <summary>The induced velocity over U that closes the annulus.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static T InducedVelocity<TBlades>(in TBlades blades, in FlowLanes<T> direction)
        where TBlades : struct, IAnnulusBlades<T>, allows ref struct
    {
        T zero = T.Of(0), one = T.Of(1), atRest = Residual(blades, direction, zero);
        // yes is 1 and no is 0; what is pressed down has its upper end at rest already
        T lifts = T.IfLess(atRest, zero, zero, one), topped = one - lifts, found = zero;
        T low = zero, atLow = atRest, high = zero, atHigh = atRest;
        T probe = Select(lifts, T.Of(Highest), T.Of(-Lowest));
        while (!T.AllEqual(found, one))
        {
            T residual = Residual(blades, direction, probe);
            T rising = (one - topped) * T.IfLess(zero, residual, one, zero);
            T hit = (one - found) * topped * T.IfLess(residual, zero, zero, one);
            low = Select(hit, probe, low);
            atLow = Select(hit, residual, atLow);
            found = found + hit;
            T passed = (one - found) * (one - rising);
            high = Select(passed, probe, high);
            atHigh = Select(passed, residual, atHigh);
            topped = T.Max(topped, passed);
            probe = Select(rising, probe + probe, Select(lifts, high * T.Of(Step), high / T.Of(Step)));
            // the last bracket of what lifts ends at rest
            found = found + ((one - found) * topped * lifts * T.IfLess(probe, T.Of(Lowest), one, zero));
        }
        return Close(blades, direction, low, atLow, high, atHigh);
    }

    /// <summary>The flow at the blades for an induced velocity.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static AnnulusFlow<T> Flow<TBlades>(in TBlades blades, in FlowLanes<T> direction, T induced, out T momentum)
        where TBlades : struct, IAnnulusBlades<T>, allows ref struct
    {
        T r = T.Of(blades.Radius), tiny = T.Of(1e-30);
        T axial = direction.Axial + induced;
        T blade = direction.Rotation * r;
        T massFlow = MassFlow(induced, direction.Axial, direction.InPlane);
        T sine = T.Abs(axial) / T.Sqrt((axial * axial) + (blade * blade) + tiny);
        T perMassFlow = T.Of(4 * Math.PI * blades.Radius) * blades.TipLoss(sine);
        momentum = perMassFlow * induced * massFlow;

        T swirl = T.Of(0);
        if (blades.Swirl)
        {
            T carrier = perMassFlow * T.Sqrt((massFlow * massFlow) + T.Of(LeastMassFlow * LeastMassFlow));
            for (int pass = 0; pass < SwirlPasses; pass++)
            {
                T next = blades.MeanDrag(blade - swirl, axial) / carrier;
                swirl = T.Max(T.Min(next, T.Of(MostSwirl)), T.Of(-MostSwirl));
            }
        }
        T skew = direction.InPlane / (massFlow + T.Abs(axial) + tiny);
        return new(blade - swirl, axial, direction.InPlane, T.Of(GradientFactor) * skew * r * induced);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static T Residual<TBlades>(in TBlades blades, in FlowLanes<T> direction, T induced)
        where TBlades : struct, IAnnulusBlades<T>, allows ref struct
    {
        AnnulusFlow<T> flow = Flow(blades, direction, induced, out T momentum);
        return blades.Thrust(flow) - momentum;
    }

    /// <summary>Root in [low, high] with residuals of opposite sign, by Chandrupatla's method (1997).</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static T Close<TBlades>(in TBlades blades, in FlowLanes<T> direction, T low, T atLow, T high, T atHigh)
        where TBlades : struct, IAnnulusBlades<T>, allows ref struct
    {
        T zero = T.Of(0), one = T.Of(1), half = T.Of(0.5);
        T a = low, fa = atLow, b = high, fb = atHigh, root = low, closed = zero;
        T t = fa / (fa - fb);
        for (int step = 0; step < MostSteps; step++)
        {
            // a lane that has its root stays there until the others have theirs
            T x = Select(closed, root, a + (t * (b - a)));
            T fx = Residual(blades, direction, x);
            T same = one - T.Abs(T.IfLess(fx, zero, zero, one) - T.IfLess(fa, zero, zero, one));
            T c = Select(same, a, b), fc = Select(same, fa, fb);
            b = Select(same, b, a);
            fb = Select(same, fb, fa);
            a = x;
            fa = fx;
            T best = T.IfLess(T.Abs(fa), T.Abs(fb), a, b), atBest = T.IfLess(T.Abs(fa), T.Abs(fb), fa, fb);
            T limit = T.Of(Tolerance) / T.Abs(b - c);
            T near = T.IfLess(limit, half, T.IfLess(zero, T.Abs(atBest), zero, one), one);
            root = Select(closed, root, best);
            closed = T.Max(closed, near);
            if (T.AllEqual(closed, one)) return root;

            T xi = (a - b) / (c - b), phi = (fa - fb) / (fc - fb);
            T curved = (fa / (fb - fa) * (fc / (fb - fc))) + ((c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb)));
            T smooth = T.IfLess((one - phi) * (one - phi), one - xi, curved, half);
            t = T.Min(T.Max(T.IfLess(phi * phi, xi, smooth, half), limit), one - limit);
        }
        return root;
    }

    /// <summary>The first where a choice is 1, the second where it is 0.</summary>
    private static T Select(T choice, T yes, T no) => T.IfLess(T.Of(0), choice, yes, no);

    /// <summary><see cref="MomentumTheory.MassFlowSpeed"/>; where no lane pushes against its axial flow that is plain theory.</summary>
    private static T MassFlow(T induced, T axial, T inPlane)
    {
        T zero = T.Of(0), opposed = T.IfLess(induced, zero, axial, -axial);
        if (T.AllEqual(T.Max(opposed, zero), zero))
        {
            T through = axial + induced;
            return T.Sqrt((inPlane * inPlane) + (through * through));
        }
        T result = induced;
        for (int n = 0; n < T.Width; n++)
            LaneMemory.Set(&result, n, MomentumTheory.MassFlowSpeed(LaneMemory.Get(&induced, n), LaneMemory.Get(&axial, n), LaneMemory.Get(&inPlane, n)));
        return result;
    }
}
