using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;
using AxialRow = (double Advance, double Thrust, double Power);

namespace Simfeel.Studies.Validation;

/// <summary>
/// A propeller whose blades and section are known, without and with airspeed. What it is compared with is in the deriving
/// type; the section is SDA1075 by XFOIL at Ncrit 4 (<see cref="SectionTables"/>), and that choice is the largest error: at Ncrit
/// 9 the lift below Reynolds 40 000 collapses and thrust is 35 to 45 % low.
/// </summary>
public abstract class PropellerCase : ValidationCase
{
    /// <inheritdoc/>
    public override string ShortSource => "UIUC volume 2";

    internal abstract MeasuredPropeller Propeller { get; }

    internal RotorGeometry Geometry => Propeller.Measured(SectionTables.Sda1075Polar);

    /// <summary>What is asked of CT in axial flow up to J 0.6.</summary>
    private protected abstract IEnumerable<ValidationCheck> AxialThrust(IReadOnlyList<PublishedPair> points);

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        RotorGeometry geometry = Geometry;
        Loads[] still = [.. Propeller.Static.Select(p => RotorRun.Propeller(geometry, p.Rpm, 0))];
        double[] zero = [.. Propeller.Sweeps.Select(sweep => ZeroThrust(geometry, sweep.Rpm))];
        Chart stand = new(
            "Without airspeed", new("rotor speed, rpm", 0, 8000), new("CT, CP", 0),
            [
                ChartSeries.Points("CT measured", 1, Propeller.Static.Select(p => (p.Rpm, p.Thrust))),
                ChartSeries.Curve("CT Simfeel", 1, 1200, 8000, 34, rpm => RotorRun.Propeller(geometry, rpm, 0).CT),
                ChartSeries.Points("CP measured", 2, Propeller.Static.Select(p => (p.Rpm, p.Power))),
                ChartSeries.Curve("CP Simfeel", 2, 1200, 8000, 34, rpm => RotorRun.Propeller(geometry, rpm, 0).CP),
            ],
            LegendPlace.LowerRight);
        (PublishedPair Thrust, PublishedPair Power)[] slow = [.. Propeller.Sweeps.SelectMany(sweep => sweep.Points
            .Where(p => p.Advance <= 0.6)
            .Select(p => (p, Loads: RotorRun.Propeller(geometry, sweep.Rpm, p.Advance)))
            .Select(pair => (new PublishedPair(pair.p.Thrust, pair.Loads.CT), new PublishedPair(pair.p.Power, pair.Loads.CP))))];
        return new(new(Title, 2, 350,
        [
            stand,
            Axial("Thrust in axial flow", "CT", 0.9, geometry, p => p.Thrust, (j, loads) => loads.CT, LegendPlace.LowerLeft),
            Axial("Power in axial flow", "CP", 0.9, geometry, p => p.Power, (j, loads) => loads.CP, LegendPlace.None),
            Axial(
                "Efficiency in axial flow", "efficiency J CT / CP", 0.9, geometry,
                p => p.Advance * p.Thrust / p.Power, (j, loads) => j * loads.CT / loads.CP, LegendPlace.None),
        ]),
        [
            ValidationCheck.Shares("static CT", 0.20, Propeller.Static.Select((p, i) => new PublishedPair(p.Thrust, still[i].CT))),
            ValidationCheck.Shares("static CP", 0.35, Propeller.Static.Select((p, i) => new PublishedPair(p.Power, still[i].CP))),
            .. AxialThrust([.. slow.Select(p => p.Thrust)]),
            ValidationCheck.Shares("axial CP, J up to 0.6", 0.25, slow.Select(p => p.Power)),
            ValidationCheck.Differences(
                "J without thrust", 0.07,
                Propeller.Sweeps.Select((sweep, i) => new PublishedPair(MeasuredZero(sweep), zero[i])).Where(p => !double.IsNaN(p.Published))),
            ValidationCheck.Differences(
                "J of best efficiency", 0.08,
                Propeller.Sweeps.Select((sweep, i) => new PublishedPair(
                    sweep.Points.MaxBy(p => p.Advance * p.Thrust / p.Power).Advance, BestAdvance(geometry, sweep.Rpm, zero[i])))),
        ]);
    }

    private Chart Axial(
        string title, string label, double to, RotorGeometry geometry,
        Func<AxialRow, double> measured, Func<double, Loads, double> model, LegendPlace legend) => new(
        title, new("advance ratio J", 0, to), new(label, 0),
        [
            .. Propeller.Sweeps.SelectMany((sweep, i) => new[]
            {
                ChartSeries.Points($"{sweep.Rpm:F0} rpm, measured", i + 1, sweep.Points.Where(p => p.Thrust > 0).Select(p => (p.Advance, measured(p)))),
                ChartSeries.Curve(
                    $"{sweep.Rpm:F0} rpm, Simfeel", i + 1, 0.02, ZeroThrust(geometry, sweep.Rpm), 40,
                    j => model(j, RotorRun.Propeller(geometry, sweep.Rpm, j))),
            }),
        ],
        legend);

    private static double ZeroThrust(RotorGeometry geometry, double rpm) =>
        RotorRun.Root(0.5, 1.2, j => RotorRun.Propeller(geometry, rpm, j).CT);

    private static double BestAdvance(RotorGeometry geometry, double rpm, double zero) =>
        Enumerable.Range(0, 100).Select(i => 0.3 + ((zero - 0.3) * i / 100)).MaxBy(j =>
        {
            Loads loads = RotorRun.Propeller(geometry, rpm, j);
            return j * loads.CT / loads.CP;
        });

    /// <summary>Where measured thrust changes its sign, by linear interpolation; NaN in a series that ends before.</summary>
    private static double MeasuredZero(Sweep sweep)
    {
        for (int i = 1; i < sweep.Points.Length; i++)
        {
            var (before, after) = (sweep.Points[i - 1], sweep.Points[i]);
            if (before.Thrust > 0 && after.Thrust <= 0)
                return before.Advance + ((after.Advance - before.Advance) * before.Thrust / (before.Thrust - after.Thrust));
        }
        return double.NaN;
    }
}

/// <summary>DA4002 5 x 3.75, two blades: Deters, Ananda and Selig, AIAA 2014-2151; UIUC Propeller Data Site, volume 2.</summary>
public sealed class Da4002Case : PropellerCase
{
    /// <inheritdoc/>
    public override string Name => "da4002";

    /// <inheritdoc/>
    public override string Title => "5 x 3.75 inch propeller, two blades, section known";

    /// <inheritdoc/>
    public override string Source =>
        "Deters, Ananda and Selig, Reynolds Number Effects on the Performance of Small-Scale Propellers, AIAA 2014-2151; UIUC Propeller Data Site, volume 2 (DA4002), from a public copy";

    /// <inheritdoc/>
    public override string Note => "Measured blades, section SDA1075 by XFOIL at Ncrit 4, nothing fitted. The choice of Ncrit is the largest error.";

    internal override MeasuredPropeller Propeller => Da4002.Propeller;

    private protected override IEnumerable<ValidationCheck> AxialThrust(IReadOnlyList<PublishedPair> points) =>
        [ValidationCheck.Shares("axial CT, J up to 0.6", 0.15, points)];
}

/// <summary>DA4022 5 x 3.75, three blades: the same source.</summary>
public sealed class Da4022Case : PropellerCase
{
    /// <inheritdoc/>
    public override string Name => "da4022";

    /// <inheritdoc/>
    public override string Title => "5 x 3.75 inch propeller, three blades, section known";

    /// <inheritdoc/>
    public override string Source =>
        "Deters, Ananda and Selig, Reynolds Number Effects on the Performance of Small-Scale Propellers, AIAA 2014-2151; UIUC Propeller Data Site, volume 2 (DA4022), from a public copy";

    /// <inheritdoc/>
    public override string Note =>
        "As for two blades; a calculation of the same kind made elsewhere has thrust in axial flow too high by 20 % on average.";

    internal override MeasuredPropeller Propeller => Da4022.Propeller;

    private protected override IEnumerable<ValidationCheck> AxialThrust(IReadOnlyList<PublishedPair> points) =>
    [
        new("axial CT, J up to 0.6, mean", CheckRule.MeanWithin, true, 0.20, BoundBasis.SetBefore, points),
        ValidationCheck.Shares("axial CT, J up to 0.6, each", 0.40, points, BoundBasis.FromRun),
    ];
}
