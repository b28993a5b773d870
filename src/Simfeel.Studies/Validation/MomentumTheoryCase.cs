using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// Closed forms of the actuator disc: Leishman, Principles of Helicopter Aerodynamics, 2nd ed. 2006, ch. 2, and Johnson,
/// Helicopter Theory, 1980. The formulas are from memory, the values were worked out apart from this project.
/// </summary>
public sealed class MomentumTheoryCase : ValidationCase
{
    /// <summary>x = V / v_h and v / v_h in climb.</summary>
    private static readonly (double X, double Ratio)[] Climb =
        [(0.5, 0.780776406), (1, 0.618033989), (2, 0.414213562), (3, 0.302775638)];

    /// <summary>x, v / v_h and power over that of hover in the windmill state.</summary>
    private static readonly (double X, double Ratio, double Power)[] Windmill =
        [(-2, 1, -1), (-2.5, 0.5, -2), (-3, 0.381966011, -2.618034), (-4, 0.267949192, -3.732051)];

    /// <summary>Vx / v_h and v / v_h with the disc edge-on to the flow.</summary>
    private static readonly (double X, double Ratio)[] Edgewise =
        [(0.5, 0.939564909), (1, 0.786151378), (2, 0.485868272), (3, 0.331318922), (5, 0.199840446)];

    /// <inheritdoc/>
    public override string Name => "momentum-theory";

    /// <inheritdoc/>
    public override string Title => "Induced velocity by momentum theory";

    /// <inheritdoc/>
    public override string Source =>
        "Leishman, Principles of Helicopter Aerodynamics, 2nd ed. 2006, ch. 2; Johnson, Helicopter Theory, 1980 (values worked out apart from this project)";

    /// <inheritdoc/>
    public override string ShortSource => "Leishman 2006, Johnson 1980";

    /// <inheritdoc/>
    public override string Note => "Theory against theory: it shows that the formulas are computed right, not that they are true.";

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        Chart axial = new(
            "Along the axis", new("climb speed V over v_h", -4.2, 3.2), new("induced velocity v over v_h", 0, 3),
            [
                ChartSeries.Points("closed form, worked out apart", 0, [.. Climb, .. Windmill.Select(w => (w.X, w.Ratio))]),
                ChartSeries.Curve("Simfeel's single branch", 1, -4.2, 3.2, 296, MomentumTheory.InducedVelocityRatio),
                ChartSeries.Curve("momentum theory, windmill", 2, -4.2, -2, 66, MomentumTheory.WindmillRatio),
                ChartSeries.Curve("momentum theory, climb", 3, 0, 3.2, 64, MomentumTheory.ClimbRatio),
            ],
            LegendPlace.UpperRight);
        Chart edgewise = new(
            "Disc edge-on to the flow", new("in-plane speed over v_h", 0, 5.2), new("induced velocity v over v_h", 0, 1.1),
            [
                ChartSeries.Points("closed form, worked out apart", 0, Edgewise),
                ChartSeries.Curve("Simfeel", 1, 0, 5.2, 100, MomentumTheory.EdgewiseRatio),
            ],
            LegendPlace.UpperRight);
        return new(new(Title, 2, 360, [axial, edgewise]),
        [
            ValidationCheck.Differences("v/v_h in climb", 1e-9, Climb.Select(p => new PublishedPair(p.Ratio, MomentumTheory.ClimbRatio(p.X)))),
            ValidationCheck.Differences(
                "v/v_h in climb, single branch", 1e-9, Climb.Select(p => new PublishedPair(p.Ratio, MomentumTheory.InducedVelocityRatio(p.X)))),
            ValidationCheck.Differences("v/v_h as a windmill", 1e-9, Windmill.Select(p => new PublishedPair(p.Ratio, MomentumTheory.WindmillRatio(p.X)))),
            // The branch joins at induction 0.4, x = -2.04.
            ValidationCheck.Differences(
                "v/v_h as a windmill, single branch from 2.5 v_h on", 1e-9,
                Windmill.Where(p => p.X <= -2.5).Select(p => new PublishedPair(p.Ratio, MomentumTheory.InducedVelocityRatio(p.X)))),
            // Published to six decimals.
            ValidationCheck.Differences(
                "P/P_h as a windmill", 1e-6, Windmill.Select(p => new PublishedPair(p.Power, p.X + MomentumTheory.WindmillRatio(p.X)))),
            ValidationCheck.Differences("v/v_h edge-on", 1e-9, Edgewise.Select(p => new PublishedPair(p.Ratio, MomentumTheory.EdgewiseRatio(p.X)))),
            ValidationCheck.Differences(
                "thrust of that v/v_h, single branch", 1e-8,
                Edgewise.Select(p => new PublishedPair(1, p.Ratio * MomentumTheory.MassFlowSpeed(p.Ratio, 0, p.X)))),
        ]);
    }
}
