using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// The section that Simfeel takes when it does not know better, beside three sections computed with XFOIL 6.99
/// (<see cref="SectionTables"/>). One type for lift and drag, two cases.
/// </summary>
public abstract class DefaultSectionCase : ValidationCase
{
    /// <summary>Extra camber of the default section over SDA1075, degrees of zero-lift angle.</summary>
    private const double CamberDeg = 0.4;

    private static readonly double[] Reynolds = [30e3, 60e3, 100e3, 200e3];

    /// <inheritdoc/>
    public override string Source =>
        "XFOIL 6.99 (Drela, 1989) at Mach 0: NACA 4412 and 6405 with Ncrit 9; SDA1075 (Deters, Ananda and Selig, AIAA 2014-2151) with Ncrit 4";

    /// <inheritdoc/>
    public override string ShortSource => "XFOIL 6.99";

    /// <inheritdoc/>
    public override string Note =>
        "A blend for blades of unknown section, fitted to SDA1075 with 0.4 degrees more camber, not to 4412 and 6405. XFOIL is a calculation, and below Reynolds 60 000 its laminar bubbles depend on a guess (Ncrit).";

    private protected abstract string Quantity { get; }

    private protected abstract (double From, double To) Range { get; }

    private protected abstract double[][] Values(SectionTable table);

    private protected abstract double Of(SectionCoefficients coefficients);

    /// <summary>The same quantity of the default section.</summary>
    private protected double Model(double angleDeg, double reynolds) =>
        Of(LowReynoldsPolar.Instance.At(RotorRun.Radians(angleDeg), reynolds, 0));

    private protected static CaseResult Result(ChartSheet sheet, params ValidationCheck[] checks) => new(sheet, checks);

    private protected ChartSheet Sheet() => new(Title, 2, 310, [.. Reynolds.Select((re, i) => new Chart(
        $"Reynolds {re:F0}", new("angle of attack, degrees", -8, 17), new(Quantity, Range.From, Range.To),
        [
            ChartSeries.Points("NACA 4412", 2, Row(SectionTables.Naca4412, re)),
            ChartSeries.Points("NACA 6405", 3, Row(SectionTables.Naca6405, re)),
            ChartSeries.Points("SDA1075", 0, Row(SectionTables.Sda1075, re)),
            ChartSeries.Curve("default section", 1, -8, 17, 100, a => Model(a, re)),
        ],
        i == 0 ? LegendPlace.UpperLeft : LegendPlace.None))]);

    /// <summary>Published values of a table within some angles, and the default section's.</summary>
    private protected List<PublishedPair> Points(SectionTable table, double fromDeg, double toDeg, double shiftDeg = 0) =>
    [
        .. table.Reynolds.SelectMany((re, row) => table.AnglesDeg
            .Select((angle, i) => (Angle: angle, Value: Values(table)[row][i]))
            .Where(p => !double.IsNaN(p.Value) && p.Angle >= fromDeg && p.Angle <= toDeg)
            .Select(p => new PublishedPair(p.Value, Model(p.Angle - shiftDeg, re)))),
    ];

    /// <summary>SDA1075 at angles that give the default section the same lift.</summary>
    private protected List<PublishedPair> Fitted(double toDeg) => Points(SectionTables.Sda1075, -4, toDeg, CamberDeg);

    private IEnumerable<(double, double)> Row(SectionTable table, double reynolds)
    {
        int row = Array.IndexOf(table.Reynolds, reynolds);
        return row < 0 ? [] : table.AnglesDeg.Select((angle, i) => (angle, Values(table)[row][i])).Where(p => !double.IsNaN(p.Item2));
    }
}

/// <summary>Lift of the default section beside XFOIL 6.99: NACA 4412 and 6405 (Ncrit 9), SDA1075 (Ncrit 4).</summary>
public sealed class DefaultSectionLiftCase : DefaultSectionCase
{
    /// <inheritdoc/>
    public override string Name => "section-lift";

    /// <inheritdoc/>
    public override string Title => "Lift of the default section beside computed sections";

    private protected override string Quantity => "lift coefficient";

    private protected override (double From, double To) Range => (-0.8, 1.7);

    /// <inheritdoc/>
    public override CaseResult Run() => Result(
        Sheet(),
        ValidationCheck.Differences("cl, SDA1075 (fitted to it), each", 0.15, Fitted(16)),
        new("cl, SDA1075 (fitted to it)", CheckRule.RootMeanSquareWithin, false, 0.065, BoundBasis.SetBefore, Fitted(16)),
        new("cl, NACA 4412, -4 to 10 deg", CheckRule.RootMeanSquareWithin, false, 0.30, BoundBasis.FromRun, Points(SectionTables.Naca4412, -4, 10)),
        new("cl, NACA 6405, -4 to 10 deg", CheckRule.RootMeanSquareWithin, false, 0.35, BoundBasis.FromRun, Points(SectionTables.Naca6405, -4, 10)));

    private protected override double[][] Values(SectionTable table) => table.Lift;

    private protected override double Of(SectionCoefficients coefficients) => coefficients.Lift;
}

/// <summary>Drag of the default section beside XFOIL 6.99: NACA 4412 and 6405 (Ncrit 9), SDA1075 (Ncrit 4).</summary>
public sealed class DefaultSectionDragCase : DefaultSectionCase
{
    /// <inheritdoc/>
    public override string Name => "section-drag";

    /// <inheritdoc/>
    public override string Title => "Drag of the default section beside computed sections";

    private protected override string Quantity => "drag coefficient";

    private protected override (double From, double To) Range => (0, 0.2);

    /// <inheritdoc/>
    public override CaseResult Run() => Result(
        Sheet(),
        ValidationCheck.Shares("cd, SDA1075 up to 8 deg (fitted to it)", 0.20, Fitted(8)),
        new("cd, NACA 4412, -4 to 10 deg", CheckRule.RootMeanSquareWithin, false, 0.025, BoundBasis.FromRun, Points(SectionTables.Naca4412, -4, 10)),
        new("cd, NACA 6405, -4 to 10 deg", CheckRule.RootMeanSquareWithin, false, 0.035, BoundBasis.FromRun, Points(SectionTables.Naca6405, -4, 10)));

    private protected override double[][] Values(SectionTable table) => table.Drag;

    private protected override double Of(SectionCoefficients coefficients) => coefficients.Drag;
}
