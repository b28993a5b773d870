using Simfeel.Builds;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Growth;

/// <summary>Reads a growth curve: where its best size lies, how flat it is there, and what ends the cure.</summary>
internal static class GrowthReading
{
    /// <summary>A curve with its optimum and sentences.</summary>
    public static GrowthCurve Read(
        string build, BuildKnob knob, Metric metric, IReadOnlyList<GrowthPoint> points,
        IReadOnlyList<(string Name, double[] Values)> variants, double flat)
    {
        double[] values = [.. points.Select(point => point.Value)], factors = [.. points.Select(point => point.Factor)];
        int best = Best(values, metric);
        GrowthVariant[] read =
        [
            .. variants.Select(variant => new GrowthVariant(
                variant.Name, variant.Values, Best(variant.Values, metric) is int at and >= 0 ? factors[at] : double.NaN)),
        ];
        GrowthCurve curve = new()
        {
            Build = build,
            Knob = new(knob.Name, knob.Title, knob.Unit),
            Metric = metric,
            Points = points,
            Variants = read,
            Best = best < 0 ? null : points[best],
            InnerOptimum = best >= 0 && IsInner(values, best),
            FlatRange = best < 0 ? (double.NaN, double.NaN) : FlatAbout(values, factors, best, flat),
        };
        return curve with { Sentences = [.. GrowthSentences.Of(curve)] };
    }

    /// <summary>Index of the best value; -1 where there is none or neither way is better.</summary>
    public static int Best(IReadOnlyList<double> values, Metric metric)
    {
        Sense sense = MetricSense.Of(metric);
        int best = -1;
        if (sense == Sense.Neither) return best;
        for (int n = 0; n < values.Count; n++)
        {
            if (double.IsNaN(values[n])) continue;
            if (best < 0 || (sense == Sense.Less ? values[n] < values[best] : values[n] > values[best])) best = n;
        }
        return best;
    }

    /// <summary>Whether there are worse values, not missing ones, on both sides.</summary>
    private static bool IsInner(double[] values, int best) =>
        values.Take(best).Any(value => !double.IsNaN(value)) && values.Skip(best + 1).Any(value => !double.IsNaN(value));

    private static (double From, double To) FlatAbout(double[] values, double[] factors, int best, double flat)
    {
        int low = best, high = best;
        while (low > 0 && Close(values[low - 1])) low--;
        while (high < values.Length - 1 && Close(values[high + 1])) high++;
        return (factors[low], factors[high]);

        bool Close(double value) => Math.Abs(value - values[best]) <= flat * Math.Abs(values[best]);
    }
}
