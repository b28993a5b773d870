using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Growth;

/// <summary>What a growth curve says, in plain words.</summary>
internal static class GrowthSentences
{
    /// <summary>The sentences, most important first.</summary>
    public static IEnumerable<string> Of(GrowthCurve curve)
    {
        string what = curve.Metric.Title;
        if (curve.Best is not GrowthPoint best)
        {
            yield return MetricSense.Of(curve.Metric) == Sense.Neither
                ? $"For the {what} neither more nor less is better, so the curve has no best point."
                : $"No size in this range can be made and flown: {curve.Points[0].Refusal.TrimEnd('.')}.";
            yield break;
        }
        GrowthPoint[] valid = [.. curve.Points.Where(point => !double.IsNaN(point.Value))];
        GrowthPoint own = valid.FirstOrDefault(point => point.Factor == 1);
        string atOwn = own.Factor == 1 ? $"; as built it is {Value(curve, own.Value)}" : "";
        if (curve.InnerOptimum)
        {
            yield return $"{curve.Build}'s {what} is best, {Value(curve, best.Value)}, at {Times(best.Factor)} its {curve.Knob.Title}{atOwn}.";
            yield return curve.FlatRange.To > curve.FlatRange.From
                ? $"From {Times(curve.FlatRange.From)} to {Times(curve.FlatRange.To)} it stays within 5 % of that; beyond, more makes it worse: {Value(curve, valid[^1].Value)} at {Times(valid[^1].Factor)}."
                : $"Beyond, more makes it worse: {Value(curve, valid[^1].Value)} at {Times(valid[^1].Factor)}.";
        }
        else if (best.Factor == 1)
        {
            yield return $"{curve.Build}'s {what} is best as built, {Value(curve, best.Value)}: in this range no other size that flies is better.";
        }
        else
        {
            yield return $"{curve.Build}'s {what} goes on getting better to the end of the range: {Value(curve, best.Value)} at {Times(best.Factor)} its {curve.Knob.Title}{atOwn}.";
        }
        foreach (string sentence in Consequences(curve, valid)) yield return sentence;
        if (valid.Length < curve.Points.Count)
        {
            GrowthPoint refused = curve.Points.First(point => double.IsNaN(point.Value));
            yield return $"{curve.Points.Count - valid.Length} of {curve.Points.Count} sizes cannot be flown, the first at {Times(refused.Factor)}: {refused.Refusal}";
        }
    }

    /// <summary>What each consequence costs at the largest size, the costliest first.</summary>
    private static IEnumerable<string> Consequences(GrowthCurve curve, GrowthPoint[] valid)
    {
        int last = curve.Points.ToList().IndexOf(valid[^1]);
        bool less = MetricSense.Of(curve.Metric) == Sense.Less;
        var costs = curve.Variants
            .Select(variant => (variant, Cost: (valid[^1].Value - variant.Values[last]) * (less ? 1 : -1)))
            .Where(pair => !double.IsNaN(pair.Cost))
            .OrderByDescending(pair => pair.Cost);
        foreach ((GrowthVariant variant, double cost) in costs)
        {
            string end = Value(curve, variant.Values[last]);
            bool matters = Math.Abs(cost) > 0.02 * Math.Abs(valid[^1].Value);
            string there = $"If {variant.Name}: {end} at {Times(valid[^1].Factor)} in place of {Value(curve, valid[^1].Value)}";
            yield return !matters
                ? $"If {variant.Name}: {end} at {Times(valid[^1].Factor)}, hardly another curve."
                : cost <= 0
                    ? $"{there}; growing without it is worse."
                    : curve.InnerOptimum
                        ? $"{there}, and best at {Times(variant.BestFactor)}: this is part of what ends the cure."
                        : $"{there}: this is part of what growing costs.";
        }
    }

    internal static string Value(GrowthCurve curve, double value) => curve.Metric.Display.WithSymbol(value);

    internal static string Times(double factor) => $"{factor:0.00} times";
}
