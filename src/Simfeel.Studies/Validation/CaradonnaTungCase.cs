using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// Caradonna and Tung, Experimental and Analytical Studies of a Model Helicopter Rotor in Hover, NASA TM-81232 (1981), from a
/// secondary copy: two untwisted blades, NACA 0012, R 1.143 m, chord 0.1905 m. CT is integrated from pressures on the
/// blade. Root cut-out 0.2 R and lift slope 5.73 are those of the calculation made elsewhere.
/// </summary>
public sealed class CaradonnaTungCase : ValidationCase
{
    /// <summary>CT at 5, 8 and 12 degrees of collective pitch; the fastest series runs at 2250 and 2279 rpm and has no 5 degrees.</summary>
    private static readonly (string Name, double Five, double Eight, double Twelve)[] Measured =
    [
        ("1250 rpm", 0.00213, 0.00459, 0.00796),
        ("1750 rpm", 0.00218, 0.00455, 0.00807),
        ("2250 rpm", double.NaN, 0.00462, 0.00792),
    ];

    /// <inheritdoc/>
    public override string Name => "caradonna-tung";

    /// <inheritdoc/>
    public override string Title => "Hover of a two-bladed rotor measured by pressures: ratios only";

    /// <inheritdoc/>
    public override string Source =>
        "Caradonna and Tung, Experimental and Analytical Studies of a Model Helicopter Rotor in Hover, NASA TM-81232 (1981), from a secondary copy";

    /// <inheritdoc/>
    public override string ShortSource => "NASA TM-81232";

    /// <inheritdoc/>
    public override string Note =>
        "Thrust integrated from pressures lies about 17 % below what a balance measured on the rotor of the same solidity in TN-626 (8 degrees), so only the shape over pitch is compared.";

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        double five = Thrust(5), eight = Thrust(8), twelve = Thrust(12);
        Chart shape = new(
            "Compared: thrust over that of 8 degrees", new("collective pitch, degrees", 0, 13), new("CT over CT at 8 degrees", 0, 2.1),
            [
                .. Measured.Select((m, i) => ChartSeries.Points(m.Name, i == 0 ? 0 : i + 1, Points(m, m.Eight))),
                ChartSeries.Curve("Simfeel", 1, 0, 13, 26, a => Thrust(a) / eight),
            ],
            LegendPlace.UpperLeft);
        Chart absolute = new(
            "Not compared: two reports, one solidity", new("collective pitch, degrees", 0, 13), new("CT x 1000", 0, 12),
            [
                ChartSeries.Points("pressures, 1250 rpm", 0, Points(Measured[0], 1e-3)),
                ChartSeries.Points("balance, TN-626, 5 blades", 4, KnightHefnerCase.FiveBlades.Select(p => (p.PitchDeg, 1e3 * p.Thrust))),
                ChartSeries.Curve("Simfeel, this rotor", 1, 0, 13, 26, a => 1e3 * Thrust(a)),
            ],
            LegendPlace.UpperLeft);
        return new(new(Title, 2, 380, [shape, absolute]),
        [
            ValidationCheck.Shares("CT at 12 over CT at 8 deg", 0.12, Measured.Select(m => new PublishedPair(m.Twelve / m.Eight, twelve / eight))),
            ValidationCheck.Shares(
                "CT at 8 over CT at 5 deg", 0.12,
                Measured.Where(m => !double.IsNaN(m.Five)).Select(m => new PublishedPair(m.Eight / m.Five, eight / five))),
        ]);
    }

    private static IEnumerable<(double, double)> Points((string Name, double Five, double Eight, double Twelve) m, double over)
    {
        if (!double.IsNaN(m.Five)) yield return (5, m.Five / over);
        yield return (8, m.Eight / over);
        yield return (12, m.Twelve / over);
    }

    private static double Thrust(double pitchDeg) =>
        RotorRun.Rotor(RotorRun.Untwisted(2.286, 2, 0.1905 / 1.143, pitchDeg, 0.2, new LinearPolar(5.73, 0.01, 0.75)), 1250).CT;
}
