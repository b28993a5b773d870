using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// Static coefficients of small propellers with the default section: with their measured blades, and as Simfeel takes a
/// propeller of which only diameter, pitch and number of blades are known. Sources: <see cref="SmallPropellers"/>; full scale
/// of the nr640: Hartman and Biermann, NACA TR-640 (1938), three blades, 15 degrees, a reading of its chart.
/// </summary>
public sealed class SmallPropellersCase : ValidationCase
{
    private const double FullScaleDiameter = 3.048, FullScaleRpm = 1000, FullScaleAdvance = 0.194;

    /// <inheritdoc/>
    public override string Name => "small-propellers";

    /// <inheritdoc/>
    public override string Title => "Small propellers without airspeed, section not known";

    /// <inheritdoc/>
    public override string Source =>
        "UIUC Propeller Data Site: volume 2, Deters, Ananda and Selig, AIAA 2014-2151; volume 1, Brandt and Selig, AIAA 2011-1255; from a public copy";

    /// <inheritdoc/>
    public override string ShortSource => "UIUC volumes 1 and 2";

    /// <inheritdoc/>
    public override string Note =>
        "The ten of volume 2 are the set on which the default section was chosen: their mean is no prediction, their scatter is what to expect. The rig of volume 1 reads thrust low.";

    /// <summary>All twelve by size, ten with measured blades: measured loads and the model's, for the bounds.</summary>
    internal static IEnumerable<(Loads Published, Loads Model)> Runs() => Errors().SelectMany(e => e.BySize.Concat(e.Blades));

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        List<PropellerErrors> all = [.. Errors()], second = [.. all.Where(e => e.Blades.Count > 0)];
        Loads small = Nr640(5 * TradeUnits.Inch, 9016), full = Nr640(FullScaleDiameter, FullScaleRpm);
        return new(new(Title, 2, 420, [Chart("Thrust", all, l => l.CT, LegendPlace.LowerRight), Chart("Power", all, l => l.CP, LegendPlace.None)]),
        [
            new("CT, measured blades, mean of ten", CheckRule.MeanWithin, true, 0.10, BoundBasis.SetBefore, Of(second, e => e.Blades, l => l.CT)),
            new("CP, measured blades, mean of ten", CheckRule.MeanWithin, true, 0.10, BoundBasis.SetBefore, Of(second, e => e.Blades, l => l.CP)),
            new("CT, measured blades, each", CheckRule.WorstWithin, true, 0.35, BoundBasis.FromRun, Means(second, e => e.Blades, l => l.CT)),
            new("CP, measured blades, each", CheckRule.WorstWithin, true, 0.25, BoundBasis.FromRun, Means(second, e => e.Blades, l => l.CP)),
            new("CT, by size only, each", CheckRule.WorstWithin, true, 0.40, BoundBasis.FromRun, Means(all, e => e.BySize, l => l.CT)),
            new("CP, by size only, each", CheckRule.WorstWithin, true, 0.60, BoundBasis.FromRun, Means(all, e => e.BySize, l => l.CP)),
            ValidationCheck.Shares("axial CT above 0.07, measured blades, two of ten", 0.25, Axial(l => l.CT)),
            ValidationCheck.Shares("axial CP there", 0.30, Axial(l => l.CP)),
            // TR-640 at J 0.194: CT 0.12, CP 0.0576; the 5-inch model measured CT 0.0962, CP 0.0600 at J 0.213.
            new("nr640, CT of 10 feet above that of 5 inch", CheckRule.NeverBelow, false, 0, BoundBasis.SetBefore, [new(small.CT, full.CT)]),
            new(
                "nr640, CT/CP of 10 feet above that of 5 inch", CheckRule.NeverBelow, false, 0, BoundBasis.SetBefore,
                [new(small.CT / small.CP, full.CT / full.CP)]),
        ]);
    }

    /// <summary>The highest speeds of two propellers with airspeed, where thrust is still worth the name.</summary>
    private static IEnumerable<PublishedPair> Axial(Func<Loads, double> of)
    {
        foreach (MeasuredPropeller propeller in SmallPropellers.WithBlades.Where(p => p.Sweeps.Length > 0 && p.Blades == 2))
        {
            RotorGeometry geometry = propeller.Measured(LowReynoldsPolar.Instance);
            Sweep sweep = propeller.Sweeps[^1];
            foreach (var (advance, thrust, power) in sweep.Points.Where(p => p.Thrust > 0.07))
                yield return new(of(new(thrust, power)), of(RotorRun.Propeller(geometry, sweep.Rpm, advance)));
        }
    }

    private static Loads Nr640(double diameter, double rpm) => RotorRun.Propeller(
        (SmallPropellers.Nr640ThreeBlades with { Diameter = diameter }).Measured(LowReynoldsPolar.Instance), rpm, FullScaleAdvance);

    private static IEnumerable<PropellerErrors> Errors() =>
        SmallPropellers.WithBlades.AddRange(SmallPropellers.FirstVolume).Select(propeller => new PropellerErrors(
            propeller.Name,
            propeller.Stations.Length > 0 ? Turn(propeller, propeller.Measured(LowReynoldsPolar.Instance)) : [],
            Turn(propeller, propeller.BySize)));

    private static List<(Loads Published, Loads Model)> Turn(MeasuredPropeller propeller, RotorGeometry geometry) =>
        [.. propeller.Static.Select(p => (new Loads(p.Thrust, p.Power), RotorRun.Propeller(geometry, p.Rpm, 0)))];

    private static List<PublishedPair> Of(
        List<PropellerErrors> all, Func<PropellerErrors, List<(Loads Published, Loads Model)>> runs, Func<Loads, double> of) =>
        [.. all.SelectMany(e => runs(e)).Select(p => new PublishedPair(of(p.Published), of(p.Model)))];

    /// <summary>Each propeller's mean ratio of model to measurement, beside 1.</summary>
    private static List<PublishedPair> Means(
        List<PropellerErrors> all, Func<PropellerErrors, List<(Loads Published, Loads Model)>> runs, Func<Loads, double> of) =>
        [.. all.Select(e => new PublishedPair(1, runs(e).Average(p => of(p.Model) / of(p.Published))))];

    private static Chart Chart(string title, IEnumerable<PropellerErrors> fromTop, Func<Loads, double> of, LegendPlace legend)
    {
        List<PropellerErrors> all = [.. fromTop.Reverse()];
        return new(
            title, new("error of the model, % (mean over speeds)", -60, 60),
            new("", -2.6, all.Count - 0.3) { Names = [.. all.Select(e => e.Name)] },
            [
                ChartSeries.Line("", 6, [(0, -3), (0, all.Count)]),
                ChartSeries.Points("measured blades", 1, Rows(e => e.Blades)),
                ChartSeries.Points("by size only", 2, Rows(e => e.BySize)),
            ],
            legend);

        IEnumerable<(double, double)> Rows(Func<PropellerErrors, List<(Loads Published, Loads Model)>> runs) =>
            all.Select((e, i) => (Runs: runs(e), Row: (double)i)).Where(r => r.Runs.Count > 0)
                .Select(r => (100 * (r.Runs.Average(p => of(p.Model) / of(p.Published)) - 1), r.Row));
    }

    private sealed record PropellerErrors(string Name, List<(Loads Published, Loads Model)> Blades, List<(Loads Published, Loads Model)> BySize);
}
