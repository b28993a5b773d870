using Simfeel.Physics.Stand;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Plots;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>Torque that the motors still have, up and down, at every rotor speed they can hold.</summary>
internal static class ReserveSection
{
    private const int RowsInWords = 8;

    public static Section Of(FeelSheet sheet)
    {
        Comparison comparison = sheet.Comparison;
        ReserveCurve[] curves =
        [
            ReserveCurve.Of(comparison.A, comparison.Profile, comparison.Names.A, false), ReserveCurve.Of(comparison.B, comparison.Profile, comparison.Names.B, true),
        ];
        return new("reserve", "Torque in reserve",
        [
            new Paragraph(
                "What a motor can add to speed its rotor up, and what it can take away to slow it down, is what turns, stops and catches a craft. "
                    + "Reserve up: motor torque at full throttle less the torque in use. Reserve down: the torque in use and the motor's braking together. One rotor in still air, all motors on the pack; in hover every rotor lifts the same share."),
            new Beside([Drawing(curves, "up", point => point.ReserveUp), Drawing(curves, "down", point => point.ReserveDown)]),
            Table(curves),
        ]);
    }

    private static Figure Drawing(ReserveCurve[] curves, string way, Func<OperatingPoint, double> reserve)
    {
        const string x = "rotor speed, 1000 rpm";
        string y = $"torque reserve {way}, N m", label = $"Torque reserve {way} of one rotor of {curves[0].Name} and {curves[1].Name} against rotor speed";
        Chart chart = new(
            "", new(x, 0), new(y),
            [
                .. curves.Select(curve => ChartSeries.Line($"{Signs.Of(curve.IsB)} {curve.Name}", Look(curve), curve.Points.Select(At))),
                .. curves.Select(curve => ChartSeries.Points("", Look(curve), [At(curve.Hover), At(curve.Full)])),
            ])
        {
            Notes =
            [
                .. curves.SelectMany(curve => new[]
                {
                    new ChartNote("hover", At(curve.Hover).X, At(curve.Hover).Y),
                    new ChartNote("full", At(curve.Full).X, At(curve.Full).Y, -1),
                }),
            ],
        };
        DataTable numbers = new(
            $"Torque reserve {way} of one rotor, N m, by share of the rotor speed at full throttle",
            [new("share of full speed"), .. curves.SelectMany(curve => new[] { new Column($"{curve.Name} rpm"), new Column($"{curve.Name} N m") })],
            [
                .. Enumerable.Range(1, RowsInWords).Select(n => new Row(
                [
                    $"{100.0 * n / RowsInWords:F0} %",
                    .. curves.Select(curve => curve.Points[(n * ReserveCurve.Steps / RowsInWords) - 1])
                        .SelectMany(point => new Cell[] { Numbers.Fixed(Rpm(point), 0), Numbers.Fixed(reserve(point), 3) }),
                ])),
            ]);
        return new(label, $"Reserve {way}. Marks: hover and full throttle.", [x, y], prefix => ChartSvg.Of(chart, label, prefix), numbers);

        (double X, double Y) At(OperatingPoint point) => (Rpm(point) / 1000, Math.Max(0, reserve(point)));
    }

    private static DataTable Table(ReserveCurve[] curves)
    {
        return new(
            "Working points of one rotor",
            [new("what"), .. curves.Select(curve => new Column($"{Signs.Of(curve.IsB)} {curve.Name}", Tone: curve.IsB ? Tone.BuildB : Tone.BuildA)), Column.Unit],
            [
                Line("rotor speed in hover", "rpm", curve => Numbers.Fixed(Rpm(curve.Hover), 0)),
                Line("torque in use in hover", "N m", curve => Numbers.Fixed(curve.Hover.Torque, 3)),
                Line("reserve up in hover, the pack's voltage held", "N m", curve => Numbers.Fixed(curve.Hover.ReserveUp, 3)),
                Line("reserve up in hover, all motors at once, the pack sagging", "N m", curve => Numbers.Fixed(curve.Together, 3)),
                Line("reserve down in hover", "N m", curve => Numbers.Fixed(curve.Hover.ReserveDown, 3)),
                Line("rotor speed at full throttle", "rpm", curve => Numbers.Fixed(Rpm(curve.Full), 0)),
                Line("torque in use at full throttle", "N m", curve => Numbers.Fixed(curve.Full.Torque, 3)),
                Line("reserve down at full throttle", "N m", curve => Numbers.Fixed(curve.Full.ReserveDown, 3)),
                Line("pack voltage at full throttle", "V", curve => Numbers.Fixed(curve.Full.PackVoltage, 2)),
                Line("pack current at full throttle", "A", curve => Numbers.Fixed(curve.Full.PackCurrent, 0)),
            ]);

        Row Line(string what, string unit, Func<ReserveCurve, string> number) => new([what, .. curves.Select(curve => new Cell(number(curve))), unit]);
    }

    private static int Look(ReserveCurve curve) => curve.IsB ? ChartPalette.BuildB : ChartPalette.BuildA;

    private static double Rpm(OperatingPoint point) => point.Speed * 30 / Math.PI;
}
