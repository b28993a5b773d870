using Simfeel.Studies.Plots;
using HoverRow = (double PitchDeg, double Thrust, double Torque);

namespace Simfeel.Studies.Validation;

/// <summary>Hover of the same rotor: Castles and Gray, NACA TN-2474 (1951), Table V, runs 15 (1200 rpm) and 16 (1600 rpm).</summary>
public sealed class CastlesGrayHoverCase : ValidationCase
{
    /// <summary>Collective pitch at 0.75 R, degrees; CT; CQ beyond that of zero thrust.</summary>
    private static readonly HoverRow[]
        Run15 = [(4.91, 0.00168, 0.000070), (6.68, 0.00289, 0.000137), (8.46, 0.00400, 0.000226), (10.29, 0.00488, 0.000342)],
        Run16 = [(3.96, 0.00160, 0.000053), (5.55, 0.00255, 0.000108), (7.18, 0.00346, 0.000194), (8.85, 0.00421, 0.000301)];

    /// <inheritdoc/>
    public override string Name => "castles-gray-hover";

    /// <inheritdoc/>
    public override string Title => "Hover of a 6-foot rotor, three blades";

    /// <inheritdoc/>
    public override string Source => CastlesGrayRotor.Report + ", Table V, runs 15 and 16";

    /// <inheritdoc/>
    public override string ShortSource => "NACA TN-2474";

    /// <inheritdoc/>
    public override string Note =>
        "Nothing is fitted. A plain tip-loss calculation made elsewhere lies 2 % below to 14 % above in thrust of run 15, and 1 % below to 6 % above in torque. " +
        "At the same thrust run 16 needs up to a fifth more torque than run 15, which a section without Mach number cannot give.";

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        Loads[] run15 = Model(Run15, 1200, CastlesGrayRotor.Slope1200), run16 = Model(Run16, 1600, CastlesGrayRotor.Slope1600);
        return new(new(Title, 2, 400,
        [
            Chart("Thrust", "CT x 1000", 1e3, run => run.CT, p => p.Thrust, 0),
            Chart("Torque", "(CQ less CQ of zero thrust) x 10000", 1e4, run => run.CP, p => p.Torque, 1),
        ]),
        [
            ValidationCheck.Shares("CT, run 15", 0.15, Run15.Select((p, i) => new PublishedPair(p.Thrust, run15[i].CT))),
            ValidationCheck.Shares("CQ - CQ0, run 15", 0.10, Run15.Select((p, i) => new PublishedPair(p.Torque, run15[i].CP))),
            ValidationCheck.Shares("CT, run 16", 0.15, Run16.Select((p, i) => new PublishedPair(p.Thrust, run16[i].CT))),
            ValidationCheck.Shares("CQ - CQ0, run 16", 0.20, Run16.Select((p, i) => new PublishedPair(p.Torque, run16[i].CP)), BoundBasis.FromRun),
        ]);
    }

    /// <summary>CT and CQ beyond that of zero thrust.</summary>
    private static Loads[] Model(HoverRow[] run, double rpm, double slope) =>
        [.. run.Select(p => Beyond(p.PitchDeg, rpm, slope))];

    private static Loads Beyond(double pitchDeg, double rpm, double slope)
    {
        Loads loads = CastlesGrayRotor.Turn(pitchDeg, rpm, slope);
        return loads with { CP = loads.CP - CastlesGrayRotor.FlatTorque(rpm, slope) };
    }

    private static Chart Chart(
        string title, string label, double scale, Func<Loads, double> model, Func<HoverRow, double> measured, int panel) =>
        new(title, new("collective pitch, degrees", 0, 11), new(label, 0),
        [
            ChartSeries.Points("run 15, 1200 rpm", 0, Run15.Select(p => (p.PitchDeg, scale * measured(p)))),
            ChartSeries.Points("run 16, 1600 rpm", 2, Run16.Select(p => (p.PitchDeg, scale * measured(p)))),
            ChartSeries.Curve("Simfeel, 1200 rpm", 1, 0, 11, 22, a => scale * model(Beyond(a, 1200, CastlesGrayRotor.Slope1200))),
            ChartSeries.Curve("Simfeel, 1600 rpm", 2, 0, 11, 22, a => scale * model(Beyond(a, 1600, CastlesGrayRotor.Slope1600))),
        ],
        panel == 0 ? LegendPlace.UpperLeft : LegendPlace.None);
}
