using Simfeel.Physics.Rotors;
using Simfeel.Studies.Plots;
using RotorRow = (double PitchDeg, double Thrust2, double Torque2, double Thrust5, double Torque5);
using SectionRow = (double AngleDeg, double Lift, double Drag);

namespace Simfeel.Studies.Validation;

/// <summary>
/// Knight and Hefner, Static Thrust Analysis of the Lifting Airscrew, NACA TN-626 (1937), from a secondary copy of its
/// tables: untwisted 5-foot rotors, chord 2 in, NACA 0015, 960 rpm, airfoil from R/6 on. Quoted precision 1 % in thrust and
/// torque. Coefficients are halved from the report's convention. The section (lift slope 5.75) was measured in the same
/// report at Reynolds 242 000; its drag rises with 0.75 alpha^2 in the wind tunnel and with 1.25 alpha^2 where the authors
/// read it back from their rotors, which is what the model takes.
/// </summary>
public sealed class KnightHefnerCase : ValidationCase
{
    private const double Slope = 5.75, LeastDrag = 0.0113, RotorDragRise = 1.25;

    /// <summary>Collective pitch, degrees; CT and CQ of two blades; of five blades.</summary>
    private static readonly RotorRow[] Measured =
    [
        (0, 0, 0.0000540, 0, 0.0001190),
        (2, 0.0004365, 0.0000625, 0.0005905, 0.0001350),
        (4, 0.001240, 0.0000955, 0.001810, 0.0001980),
        (6, 0.002210, 0.0001580, 0.003470, 0.0003400),
        (8, 0.003250, 0.0002470, 0.005515, 0.0005430),
        (10, 0.004235, 0.0003455, 0.007740, 0.0008175),
        (12, 0.004950, 0.0004390, 0.010000, 0.0011400),
    ];

    /// <summary>NACA 0015 in the wind tunnel (its Tables V and VI): angle of attack, degrees; lift; drag.</summary>
    private static readonly SectionRow[] Section =
    [
        (1.95, 0.185, 0.0113), (3.65, 0.351, 0.0131), (5.30, 0.534, 0.0172), (6.95, 0.711, 0.0222), (8.70, 0.830, 0.0284),
        (10.60, 0.899, 0.0383), (11.55, 0.906, 0.0504),
    ];

    /// <inheritdoc/>
    public override string Name => "knight-hefner";

    /// <inheritdoc/>
    public override string Title => "Hover of 5-foot rotors, two and five blades";

    /// <inheritdoc/>
    public override string Source => "Knight and Hefner, Static Thrust Analysis of the Lifting Airscrew, NACA TN-626 (1937), from a secondary copy of its tables";

    /// <inheritdoc/>
    public override string ShortSource => "NACA TN-626";

    /// <inheritdoc/>
    public override string Note =>
        "No number is fitted here, but the drag rise is the authors' own, read back from these rotors. The section taken never stalls; the real one does from 10 degrees on.";

    /// <summary>Two and five blades over collective pitch: published loads and the model's, for the bounds.</summary>
    internal static IEnumerable<(Loads Published, Loads Model)> Runs() => Measured.Where(m => m.PitchDeg > 0).SelectMany(m =>
        new[] { (new Loads(m.Thrust2, m.Torque2), Turn(2, m.PitchDeg)), (new Loads(m.Thrust5, m.Torque5), Turn(5, m.PitchDeg)) });

    /// <summary>CT of five blades (solidity 0.106), for a comparison between reports.</summary>
    internal static IEnumerable<(double PitchDeg, double Thrust)> FiveBlades => Measured.Select(m => (m.PitchDeg, m.Thrust5));

    /// <inheritdoc/>
    public override CaseResult Run()
    {
        Loads[] two = [.. Measured.Select(m => Turn(2, m.PitchDeg))], five = [.. Measured.Select(m => Turn(5, m.PitchDeg))];
        return new(new(Title, 2, 340,
        [
            Rotor("Thrust", "CT x 1000", 1e3, m => m.Thrust2, m => m.Thrust5, loads => loads.CT, LegendPlace.UpperLeft),
            Rotor("Torque", "CQ x 10000", 1e4, m => m.Torque2, m => m.Torque5, loads => loads.CP, LegendPlace.None),
            Polar("Lift of the section", "lift coefficient", a => Slope * a, s => s.Lift, LegendPlace.UpperLeft),
            Polar("Drag of the section", "drag coefficient", a => LeastDrag + (RotorDragRise * a * a), s => s.Drag, LegendPlace.None),
        ]),
        [
            .. Band("6 deg", 6, 6, 0.15, 0.15),
            .. Band("8 and 10 deg", 8, 10, 0.08, 0.08),
            .. Band("12 deg", 12, 12, 0.10, 0.14),
            // The measured drag of the whole rotor lies below that of its section tests.
            ValidationCheck.Shares("CQ at 0 deg", 0.30, At(0, 0, torque: true)),
            new("CT rises from 0 to 2 to 4 deg", CheckRule.NeverBelow, false, 0, BoundBasis.SetBefore, Rises(loads => loads.CT)),
            new("CQ rises from 0 to 2 to 4 deg", CheckRule.NeverBelow, false, 0, BoundBasis.SetBefore, Rises(loads => loads.CP)),
            ValidationCheck.Shares(
                "section lift up to 9 deg", 0.10,
                Section.Where(s => s.AngleDeg < 9).Select(s => new PublishedPair(s.Lift, Slope * RotorRun.Radians(s.AngleDeg))), BoundBasis.FromRun),
        ]);

        ValidationCheck[] Band(string where, double from, double to, double thrust, double torque) =>
        [
            ValidationCheck.Shares($"CT at {where}", thrust, At(from, to, torque: false)),
            ValidationCheck.Shares($"CQ at {where}", torque, At(from, to, torque: true)),
        ];

        List<PublishedPair> At(double from, double to, bool torque)
        {
            List<PublishedPair> points = [];
            for (int i = 0; i < Measured.Length; i++)
            {
                if (Measured[i].PitchDeg < from || Measured[i].PitchDeg > to) continue;
                points.Add(torque ? new(Measured[i].Torque2, two[i].CP) : new(Measured[i].Thrust2, two[i].CT));
                points.Add(torque ? new(Measured[i].Torque5, five[i].CP) : new(Measured[i].Thrust5, five[i].CT));
            }
            return points;
        }

        PublishedPair[] Rises(Func<Loads, double> of) =>
        [
            new(of(two[0]), of(two[1])), new(of(two[1]), of(two[2])), new(of(five[0]), of(five[1])), new(of(five[1]), of(five[2])),
        ];
    }

    private static Loads Turn(int blades, double pitchDeg) => RotorRun.Rotor(
        RotorRun.Untwisted(1.524, blades, 0.0508 / 0.762, pitchDeg, 1.0 / 6, new LinearPolar(Slope, LeastDrag, RotorDragRise)), 960);

    private static Chart Rotor(
        string title, string label, double scale,
        Func<RotorRow, double> two,
        Func<RotorRow, double> five,
        Func<Loads, double> of, LegendPlace legend) =>
        new(title, new("collective pitch, degrees", -0.3, 12.5), new(label, 0),
        [
            ChartSeries.Points("5 blades, measured", 1, Measured.Select(m => (m.PitchDeg, scale * five(m)))),
            ChartSeries.Curve("5 blades, Simfeel", 1, 0, 12.5, 25, a => scale * of(Turn(5, a))),
            ChartSeries.Points("2 blades, measured", 2, Measured.Select(m => (m.PitchDeg, scale * two(m)))),
            ChartSeries.Curve("2 blades, Simfeel", 2, 0, 12.5, 25, a => scale * of(Turn(2, a))),
        ],
        legend);

    private static Chart Polar(
        string title, string label, Func<double, double> model, Func<SectionRow, double> measured, LegendPlace legend) =>
        new(title, new("angle of attack, degrees", 0, 12.5), new(label, 0),
        [
            ChartSeries.Points("NACA 0015, wind tunnel", 0, Section.Select(s => (s.AngleDeg, measured(s)))),
            ChartSeries.Curve("taken by the model", 1, 0, 12.5, 50, a => model(RotorRun.Radians(a))),
        ],
        legend);
}
