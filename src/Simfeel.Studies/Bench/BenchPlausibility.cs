using Simfeel.Builds;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench;

/// <summary>Whether measurements can be true at all, and of this build.</summary>
public static class BenchPlausibility
{
    private const double MostMassOff = 0.1, PackTolerance = 0.15, ScaleTolerance = 0.02;

    /// <summary>What looks wrong, in sentences; empty where nothing does.</summary>
    public static IReadOnlyList<string> Of(BenchReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return [.. Name(report), .. Mass(report), .. Scales(report), .. Inside(report), .. Triangle(report), .. Far(report)];
    }

    private static IEnumerable<string> Name(BenchReport report)
    {
        string said = report.Readings.BuildName.Trim(), name = report.Build.Build.Name;
        if (said.Length > 0 && !said.Equals(name, StringComparison.OrdinalIgnoreCase))
            yield return $"The readings are of \"{said}\" and the build is \"{name}\".";
    }

    private static IEnumerable<string> Mass(BenchReport report)
    {
        if (report.Readings.Mass is not WithSigma mass) yield break;
        double model = report.Build.Craft.Mass, lost = model - mass.Value, pack = report.Build.Build.Battery.Mass;
        if (Math.Abs(lost) <= MostMassOff * model) yield break;
        yield return Math.Abs(lost - pack) <= PackTolerance * pack
            ? $"The craft is {1e3 * lost:F0} g lighter than the build, about the battery's mass: was the pack strapped in?"
            : $"The craft weighs {1e3 * mass.Value:F0} g and the build {1e3 * model:F0} g: is it the same craft, ready to fly?";
    }

    private static IEnumerable<string> Scales(BenchReport report)
    {
        if (report.Readings.Mass is not WithSigma mass) yield break;
        foreach ((BenchAxis axis, BalanceReadings test) in report.Readings.Balances.OrderBy(pair => pair.Key))
        {
            if (test is not ScaleReadings scales) continue;
            double sum = scales.First.Value + scales.Second.Value;
            double error = Math.Sqrt((mass.Sigma * mass.Sigma) + (scales.First.Sigma * scales.First.Sigma) + (scales.Second.Sigma * scales.Second.Sigma));
            if (Math.Abs(sum - mass.Value) > Math.Max(ScaleTolerance * mass.Value, 3 * error))
                yield return $"The two scales of [{axis.BalanceTable()}] show {1e3 * sum:F0} g together and the craft weighs {1e3 * mass.Value:F0} g: were the supports tared, and did nothing else carry?";
        }
    }

    /// <summary>The balance point of a rigid body lies within the hull of its parts; here within their box.</summary>
    private static IEnumerable<string> Inside(BenchReport report)
    {
        IReadOnlyList<MotorMount> mounts = report.Build.Build.Frame.Mounts;
        foreach (BenchQuantity quantity in report.Measured.Where(quantity => quantity.Kind == BenchKind.Balance))
        {
            int n = (int)quantity.Axis;
            (double least, double most) = quantity.Axis == BenchAxis.Z
                ? (report.Build.Parts.Min(part => Height(part, -1)), report.Build.Parts.Max(part => Height(part, 1)))
                : (mounts.Min(mount => mount.p_OM[n]), mounts.Max(mount => mount.p_OM[n]));
            double value = quantity.Measured!.Value, half = quantity.Measured.HalfBand;
            if (value + half < least || value - half > most)
                yield return $"The balance point at {quantity.Axis.Letter()} = {quantity.Text(value)} mm lies outside the craft ({1e3 * least:F0} to {1e3 * most:F0} mm): check sign and origin, x forward, y right, z down, from the middle of the bottom plate.";
        }
    }

    private static double Height(PartMass part, int end)
    {
        PartShape shape = part.Shape;
        double half = shape.Kind is ShapeKind.Box or ShapeKind.Cylinder or ShapeKind.Ring ? shape.Size.Z / 2 : shape.Kind == ShapeKind.Sphere ? shape.Size.X / 2 : 0;
        return shape.p_OC.Z + (end * half);
    }

    /// <summary>No moment of inertia of a solid exceeds the sum of the two others.</summary>
    private static IEnumerable<string> Triangle(BenchReport report)
    {
        BenchQuantity[] inertias = [.. report.Quantities.Where(quantity => quantity.Kind == BenchKind.Inertia).OrderByDescending(Value)];
        if (inertias.All(quantity => quantity.Measured is null)) yield break;
        double excess = Value(inertias[0]) - Value(inertias[1]) - Value(inertias[2]);
        if (excess <= 0) yield break;
        double band = Math.Sqrt(inertias.Sum(quantity => quantity.Measured is null ? 0 : quantity.Measured.HalfBand * quantity.Measured.HalfBand));
        string numbers = string.Join(", ", inertias.Select(quantity => $"{quantity.Axis.Turn()} {quantity.Text(Value(quantity))}{(quantity.Measured is null ? " (model)" : "")}"));
        yield return excess > band
            ? $"No body has these inertias ({numbers} g m2): none can be more than the sum of the two others. Check axes, wires and the number of swings."
            : $"These inertias ({numbers} g m2) are at the edge of what a body can have, though within their bands: none can be more than the sum of the two others.";

        static double Value(BenchQuantity quantity) => quantity.Measured?.Value ?? quantity.Model;
    }

    private static IEnumerable<string> Far(BenchReport report) =>
        report.Measured.Where(quantity => quantity.Kind == BenchKind.Inertia)
            .SelectMany(quantity => FitCautions.OfSwing(quantity.Measured!.Value, quantity.Model).Select(caution => $"{Words.Capital(quantity.Title)}: {caution}"));
}
