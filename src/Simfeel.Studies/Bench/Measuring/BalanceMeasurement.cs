using Simfeel.Builds;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench.Measuring;

/// <summary>A balance test into a coordinate of the balance point, m from the build's origin.</summary>
internal static class BalanceMeasurement
{
    /// <summary>Nearest that a hook may be to the balance point, m along x: nearer, the angle tells nothing.</summary>
    private const double LeastHook = 0.015;

    /// <summary>The coordinate.</summary>
    /// <param name="test">The test.</param>
    /// <param name="x">The coordinate x, for a test with a hook; null where it was not measured.</param>
    /// <param name="source">The file, for messages.</param>
    /// <exception cref="FitException">The hook is too near to the balance point.</exception>
    public static Measurement Of(BalanceReadings test, Measurement? x, string source) => test switch
    {
        EdgeReadings edge => Edge(edge),
        ScaleReadings scales => Scales(scales),
        HookReadings hook => Hook(hook, x!, source),
        _ => throw new ArgumentOutOfRangeException(nameof(test), test, "A kind of balance test that is not known."),
    };

    private static Measurement Edge(EdgeReadings edge)
    {
        Scatter scatter = Scatter.Pooled([edge.Places], edge.PlaceSigma);
        // one or two tries: the stated error is all that is known, and it is in already
        ErrorPart[] tries = double.IsFinite(scatter.Freedom) || scatter.Sigma > edge.PlaceSigma
            ? [new("scatter of the tries", scatter.Sigma / Math.Sqrt(edge.Places.Count), scatter.Freedom)]
            : [];
        return new(edge.Places.Average(), [.. tries, new("place of the edge", edge.PlaceSigma)]);
    }

    /// <summary>Moments about the origin: what each scale carries times where it stands, over the sum (balance of a lever).</summary>
    private static Measurement Scales(ScaleReadings s)
    {
        double sum = s.First.Value + s.Second.Value;
        double value = ((s.First.Value * s.FirstAt.Value) + (s.Second.Value * s.SecondAt.Value)) / sum;
        return new(value,
        [
            new("scales", Math.Abs(s.FirstAt.Value - value) / sum * s.First.Sigma),
            new("scales", Math.Abs(s.SecondAt.Value - value) / sum * s.Second.Sigma),
            new("places of the supports", s.First.Value / sum * s.FirstAt.Sigma),
            new("places of the supports", s.Second.Value / sum * s.SecondAt.Sigma),
        ]);
    }

    /// <summary>The balance point hangs below the hook: z = z_hook - |x_hook - x| tan(angle), the angle counted towards the top.</summary>
    private static Measurement Hook(HookReadings hook, Measurement x, string source)
    {
        double reach = Math.Abs(hook.HookX.Value - x.Value), slope = Math.Tan(hook.Angle.Value);
        if (reach < LeastHook)
        {
            throw new FitException([new(Severity.Error, source, hook.Line, null, "balance_z.hook_x_mm", $"{1e3 * hook.HookX.Value:G4}",
                $"The hook is only {1e3 * reach:F1} mm ahead or behind of the balance point; at least {1e3 * LeastHook:F0} mm are needed.", "hang it by the nose or the tail")]);
        }
        return new(hook.HookZ.Value - (reach * slope),
        [
            new("place of the hook", hook.HookZ.Sigma),
            new("place of the hook", Math.Abs(slope) * hook.HookX.Sigma),
            new("balance point along x", Math.Abs(slope) * x.Sigma, x.Freedom),
            new("angle", reach * (1 + (slope * slope)) * hook.Angle.Sigma),
        ]);
    }
}
