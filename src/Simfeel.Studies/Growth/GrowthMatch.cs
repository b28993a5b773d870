using Simfeel.Builds;
using Simfeel.Studies.Batch;

namespace Simfeel.Studies.Growth;

/// <summary>What it would take for one build to be like another in one metric.</summary>
/// <param name="Other">Name of the other build.</param>
/// <param name="Target">Its value, SI.</param>
/// <param name="Found">Whether a size within the range meets it.</param>
/// <param name="Reached">The size that does, nearest to the build's own; else the closest within the range.</param>
/// <param name="Sentence">The answer in words; where nothing meets it, why.</param>
public sealed record GrowthMatch(string Other, double Target, bool Found, GrowthPoint Reached, string Sentence)
{
    private const int Rounds = 4, Between = 7;

    /// <summary>Searches along a curve.</summary>
    /// <param name="build">The build that grows.</param>
    /// <param name="knob">What grows.</param>
    /// <param name="curve">Its curve.</param>
    /// <param name="other">Name of the other build.</param>
    /// <param name="target">The other's value, SI.</param>
    /// <param name="conditions">What is the same for all.</param>
    public static GrowthMatch Solve(Build build, BuildKnob knob, GrowthCurve curve, string other, double target, StudyConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(knob);
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(conditions);
        string goal = $"{other}'s {curve.Metric.Title} of {GrowthSentences.Value(curve, target)}";
        if (double.IsNaN(target)) return new(other, target, false, default, $"{other} never gets there within the drill, so there is nothing to match.");
        (GrowthPoint Low, GrowthPoint High)[] crossings =
        [
            .. curve.Points.Zip(curve.Points.Skip(1))
                .Where(pair => (pair.First.Value - target) * (pair.Second.Value - target) <= 0)
                .OrderBy(pair => Math.Abs(Math.Log(pair.First.Factor * pair.Second.Factor))),
        ];
        if (crossings.Length > 0)
        {
            GrowthPoint met = Narrow(build, knob, curve, crossings[0], target, conditions);
            return new(
                other, target, true, met,
                $"{curve.Build} meets {goal} at {GrowthSentences.Times(met.Factor)} its {curve.Knob.Title} ({met.Size:G4} {curve.Knob.Unit}): {GrowthSentences.Value(curve, met.Value)}.");
        }
        GrowthPoint[] valid = [.. curve.Points.Where(point => !double.IsNaN(point.Value))];
        if (valid.Length == 0) return new(other, target, false, default, $"No size in this range can be flown: {curve.Points[0].Refusal}");
        GrowthPoint closest = valid.MinBy(point => Math.Abs(point.Value - target));
        return new(other, target, false, closest, Why(curve, goal, closest, target));
    }

    /// <summary>Evenly spaced sizes within the bracket, again and again: several fly at once, where bisection would fly one.</summary>
    private static GrowthPoint Narrow(
        Build build, BuildKnob knob, GrowthCurve curve, (GrowthPoint Low, GrowthPoint High) bracket, double target, StudyConditions conditions)
    {
        double own = knob.Size(build);
        for (int round = 0; round < Rounds; round++)
        {
            double[] factors = [.. Enumerable.Range(1, Between).Select(n => bracket.Low.Factor + ((bracket.High.Factor - bracket.Low.Factor) * n / (Between + 1)))];
            double[] values = GrowthStudy.At(build, knob, curve.Metric, conditions, factors);
            GrowthPoint[] points = [bracket.Low, .. factors.Select((factor, n) => new GrowthPoint(factor, factor * own, values[n])), bracket.High];
            foreach ((GrowthPoint low, GrowthPoint high) in points.Zip(points.Skip(1)))
            {
                if ((low.Value - target) * (high.Value - target) > 0 || double.IsNaN(low.Value + high.Value)) continue;
                bracket = (low, high);
                break;
            }
        }
        return Math.Abs(bracket.Low.Value - target) <= Math.Abs(bracket.High.Value - target) ? bracket.Low : bracket.High;
    }

    private static string Why(GrowthCurve curve, string goal, GrowthPoint closest, double target)
    {
        string said = $"No {curve.Knob.Title} between {GrowthSentences.Times(curve.Points[0].Factor)} and {GrowthSentences.Times(curve.Points[^1].Factor)} meets {goal}; the closest is {GrowthSentences.Value(curve, closest.Value)} at {GrowthSentences.Times(closest.Factor)}.";
        GrowthVariant[] helpers = [.. curve.Variants.Where(variant => Meets(variant.Values, target))];
        if (helpers.Length > 0) return $"{said} It could be met if {string.Join(", or if ", helpers.Select(variant => variant.Name))}.";
        (string Name, double Value)[] nearest =
        [
            .. curve.Variants
                .Select(variant => (variant.Name, Value: variant.Values.Where(value => !double.IsNaN(value)).DefaultIfEmpty(double.NaN).MinBy(value => Math.Abs(value - target))))
                .Where(pair => Math.Abs(pair.Value - target) < 0.8 * Math.Abs(closest.Value - target))
                .OrderBy(pair => Math.Abs(pair.Value - target)),
        ];
        return nearest.Length == 0
            ? $"{said} This part alone does not reach that far."
            : $"{said} What stands in the way most: if {nearest[0].Name} it would come to {GrowthSentences.Value(curve, nearest[0].Value)}, and still not there.";
    }

    private static bool Meets(IReadOnlyList<double> values, double target) =>
        values.Zip(values.Skip(1)).Any(pair => (pair.First - target) * (pair.Second - target) <= 0);
}
