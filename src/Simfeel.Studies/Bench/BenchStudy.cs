using Simfeel.Builds;
using Simfeel.Builds.Writing;
using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Bench;

/// <summary>A build held against measurements on the finished craft.</summary>
public sealed record BenchReport
{
    /// <summary>The build.</summary>
    public required AssembledBuild Build { get; init; }

    /// <summary>What was read.</summary>
    public required BenchReadings Readings { get; init; }

    /// <summary>Mass, three coordinates of the balance point, three moments of inertia.</summary>
    public required IReadOnlyList<BenchQuantity> Quantities { get; init; }

    /// <summary>Whether the mass of the swing tests is the build's weighed one, since the readings have none.</summary>
    public required bool MassFromBuild { get; init; }

    /// <summary>What was measured.</summary>
    public IEnumerable<BenchQuantity> Measured => Quantities.Where(quantity => quantity.Measured is not null);

    /// <summary>The measured numbers with their bands for a copy of the build.</summary>
    public IEnumerable<MeasuredNumber> Numbers() => Measured.Select(quantity =>
    {
        double value = BenchQuantity.PerSi * quantity.Measured!.Value, half = BenchQuantity.PerSi * quantity.Measured.HalfBand;
        return new MeasuredNumber(quantity.Key, value - half, value, value + half);
    });
}

/// <summary>Holds a build against bench readings.</summary>
public static class BenchStudy
{
    /// <summary>Every quantity that the readings tell, with its band.</summary>
    /// <exception cref="FitException">The readings cannot be true of any craft, or a mass is missing.</exception>
    public static BenchReport Run(AssembledBuild build, BenchReadings readings)
    {
        ArgumentNullException.ThrowIfNull(build);
        ArgumentNullException.ThrowIfNull(readings);
        bool borrowed = readings.Mass is null && readings.Swings.Count > 0;
        WithSigma mass = readings.Mass ?? (borrowed ? Weighed(build, readings) : default);
        Scatter scatter = Scatter.Pooled(readings.Swings.Values.Select(swing => swing.Times), readings.Timing.RunSigma);
        Dictionary<BenchAxis, Measurement> balances = [];
        foreach (BenchAxis axis in BenchAxes.All.Where(readings.Balances.ContainsKey))
            balances[axis] = BalanceMeasurement.Of(readings.Balances[axis], balances.GetValueOrDefault(BenchAxis.X), readings.Source);
        HashSet<string> before = [.. build.Values.Where(value => !value.FilledIn).Select(value => value.Key)];
        return new()
        {
            Build = build,
            Readings = readings,
            MassFromBuild = borrowed,
            Quantities =
            [
                Quantity(BenchKind.Mass, BenchAxis.X, "measured.all_up_mass_g", "mass", build.Craft.Mass,
                    readings.Mass is WithSigma scale ? new(scale.Value, [new("scale", scale.Sigma)]) : null),
                .. BenchAxes.All.Select(axis => Quantity(
                    BenchKind.Balance, axis, axis.BalanceKey(), $"balance point, {Direction(axis)}", build.p_OBcm[(int)axis], balances.GetValueOrDefault(axis))),
                .. BenchAxes.All.Select(axis => Quantity(
                    BenchKind.Inertia, axis, axis.InertiaKey(), $"inertia, {axis.Turn()}", axis.Moment(build.Craft.I_BBcm_B),
                    readings.Swings.ContainsKey(axis) ? SwingMeasurement.Of(axis, readings, mass, scatter) : null)),
            ],
        };

        BenchQuantity Quantity(BenchKind kind, BenchAxis axis, string key, string title, double model, Measurement? measured) =>
            new(kind, axis, key, title, model, before.Contains(key), measured);
    }

    private static WithSigma Weighed(AssembledBuild build, BenchReadings readings)
    {
        if (build.Values.Any(value => value.Key == "measured.all_up_mass_g" && !value.FilledIn))
            return new(build.Craft.Mass, KitchenScale.Sigma(build.Craft.Mass));
        throw new FitException([new(Severity.Error, readings.Source, readings.Swings.Values.Min(swing => swing.Line), null, "mass.mass_g", "",
            "The mass is missing; a swing test gives the inertia only with it. Allowed is 5 to 50000 g.", "weigh the craft ready to fly and add mass_g = ... under [mass]")]);
    }

    private static string Direction(BenchAxis axis) => axis switch { BenchAxis.X => "forward", BenchAxis.Y => "to the right", _ => "down" };
}
