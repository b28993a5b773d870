using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// What no rotor can beat, over all runs of the other cases: figure of merit 1 without airspeed, and the efficiency
/// 2 / (1 + sqrt(1 + 8 CT / (pi J^2))) in axial flow (momentum theory; Leishman 2006, Johnson 1980).
/// </summary>
public sealed class BoundsCase : ValidationCase
{
    /// <inheritdoc/>
    public override string Name => "bounds";

    /// <inheritdoc/>
    public override string Title => "Nothing beats momentum theory";

    /// <inheritdoc/>
    public override string Source => "Momentum theory (Leishman 2006, Johnson 1980); measured points of the cases knight-hefner, small-propellers, da4002 and da4022";

    /// <inheritdoc/>
    public override string ShortSource => "momentum theory";

    /// <inheritdoc/>
    public override string Note => "A model that passes here may still be wrong; one that fails is.";

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        (Loads Published, Loads Model)[] hover =
        [
            .. KnightHefnerCase.Runs().Select(run => (Propeller(run.Published), Propeller(run.Model))),
            .. SmallPropellersCase.Runs(),
            .. Static(),
        ];
        (double Ideal, double Efficiency)[] measured = [.. Axial().Select(run => Point(run.Advance, run.Published))];
        (double Ideal, double Efficiency)[] model = [.. Axial().Select(run => Point(run.Advance, run.Model)).Where(p => p.Efficiency > 0)];
        Chart merit = new(
            "Without airspeed", new("CT, propeller convention", 0), new("figure of merit", 0, 1.05),
            [
                ChartSeries.Line("limit", 0, [(0, 1), (0.25, 1)]),
                ChartSeries.Points("measured", 0, hover.Select(run => (run.Published.CT, RotorRun.FigureOfMerit(run.Published)))),
                ChartSeries.Points("Simfeel", 5, hover.Select(run => (run.Model.CT, RotorRun.FigureOfMerit(run.Model)))),
            ],
            LegendPlace.LowerRight);
        Chart efficiency = new(
            "In axial flow", new("efficiency of momentum theory", 0, 1), new("efficiency", 0, 1.05),
            [
                ChartSeries.Line("limit", 0, [(0, 0), (1, 1)]),
                ChartSeries.Points("measured", 0, measured),
                ChartSeries.Points("Simfeel", 5, model),
            ],
            LegendPlace.UpperLeft);
        return new(new(Title, 2, 380, [merit, efficiency]),
        [
            Limit("figure of merit of the model", hover.Select(run => new PublishedPair(1, RotorRun.FigureOfMerit(run.Model)))),
            Limit("figure of merit as measured", hover.Select(run => new PublishedPair(1, RotorRun.FigureOfMerit(run.Published)))),
            Limit("efficiency of the model", model.Select(p => new PublishedPair(p.Ideal, p.Efficiency))),
            Limit("efficiency as measured", measured.Select(p => new PublishedPair(p.Ideal, p.Efficiency))),
        ]);
    }

    private static ValidationCheck Limit(string what, IEnumerable<PublishedPair> points) =>
        new(what, CheckRule.NeverAbove, false, 0, BoundBasis.SetBefore, [.. points]);

    private static (double Ideal, double Efficiency) Point(double advance, Loads loads) =>
        (RotorRun.IdealEfficiency(Math.Max(loads.CT, 0), advance), advance * loads.CT / loads.CP);

    private static IEnumerable<(Loads Published, Loads Model)> Static() => Known().SelectMany(c => c.Propeller.Static.Select(p =>
        (new Loads(p.Thrust, p.Power), RotorRun.Propeller(c.Geometry, p.Rpm, 0))));

    private static IEnumerable<(double Advance, Loads Published, Loads Model)> Axial() => Known().SelectMany(c => c.Propeller.Sweeps.SelectMany(
        sweep => sweep.Points.Where(p => p.Thrust > 0).Select(p =>
            (p.Advance, new Loads(p.Thrust, p.Power), RotorRun.Propeller(c.Geometry, sweep.Rpm, p.Advance)))));

    private static PropellerCase[] Known() => [new Da4002Case(), new Da4022Case()];

    /// <summary>From the coefficients of a rotor to those of a propeller.</summary>
    private static Loads Propeller(Loads rotor) => new(rotor.CT * Math.Pow(Math.PI, 3) / 4, rotor.CP * Math.Pow(Math.PI, 4) / 4);
}
