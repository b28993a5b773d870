using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Studies.Plots;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>The two flights over each other.</summary>
internal static class TraceSection
{
    private const int MostPoints = 260, RowsInWords = 10;
    private const double Degrees = 180 / Math.PI;

    /// <summary>One thing to see.</summary>
    /// <param name="Drill">Which drill.</param>
    /// <param name="What">What is shown.</param>
    /// <param name="Unit">Unit for people.</param>
    /// <param name="SiUnit">Unit of what <paramref name="Read"/> gives.</param>
    /// <param name="PerSi">How many of the unit for people make one SI unit.</param>
    /// <param name="Read">Reads it, SI.</param>
    /// <param name="Asked">What the stick asks for, SI; null where it asks for something else.</param>
    internal sealed record View(
        Drill Drill, string What, string Unit, string SiUnit, double PerSi, Func<Sample, double> Read, Func<PilotProfile, Sticks, double>? Asked = null);

    public static IReadOnlyList<View> Views { get; } =
    [
        new(DrillCatalogue.Stop, "roll rate", "deg/s", "rad/s", Degrees, sample => sample.State.w_WB_B.X, (pilot, sticks) => pilot.RateFor(sticks).X),
        new(DrillCatalogue.Drop, "height over the start", "m", "m", 1, sample => -sample.State.p_WB.Z),
        new(DrillCatalogue.Punch, "climb", "m/s", "m/s", 1, sample => -sample.State.v_WB.Z),
        new(DrillCatalogue.Yaw, "yaw rate", "deg/s", "rad/s", Degrees, sample => sample.State.w_WB_B.Z, (pilot, sticks) => pilot.RateFor(sticks).Z),
    ];

    public static Section Of(FeelSheet sheet) => new("traces", "The flights themselves",
    [
        new Paragraph("Both builds under the same thumbs. Time counts from the first stick movement."),
        new Beside([.. Views.Select(view => Drawing(sheet, view))]),
    ]);

    private static Figure Drawing(FeelSheet sheet, View view)
    {
        (string a, string b) = sheet.Comparison.Names;
        (FlightLog logA, FlightLog logB) = sheet.Comparison.Logs.First(pair => pair.A.Drill == view.Drill.Name);
        const string x = "time from the first stick movement, s";
        string y = Numbers.Axis(view.What, view.Unit), label = $"{Words.Capital(view.What)} of {a} and {b} in the drill {view.Drill.Name}";
        List<ChartSeries> series = [];
        if (view.Asked is not null)
            series.Add(ChartSeries.Line("what the stick asks", ChartPalette.Faint, Points(logA, row => view.PerSi * view.Asked(logA.Profile, logA.Sticks[row]))));
        series.Add(ChartSeries.Line($"{Signs.Of(false)} {a}", ChartPalette.BuildA, Points(logA, row => view.PerSi * view.Read(logA.Samples[row]))));
        series.Add(ChartSeries.Line($"{Signs.Of(true)} {b}", ChartPalette.BuildB, Points(logB, row => view.PerSi * view.Read(logB.Samples[row]))));
        Chart chart = new("", new(x), new(y), series);
        return new(
            label, $"{view.Drill.Name}: {view.Drill.Purpose}", [x, y], prefix => ChartSvg.Of(chart, label, prefix, 480, 340),
            Table(view, logA, logB, a, b));
    }

    private static IEnumerable<(double X, double Y)> Points(FlightLog log, Func<int, double> read) =>
        Rows(log).Select(row => (log.TimeOf(row) - Drill.LeadIn, read(row)));

    /// <summary>Few enough rows of a log for a page, from just before the first stick movement: the eye sees no more.</summary>
    public static IEnumerable<int> Rows(FlightLog log)
    {
        int first = (int)Math.Round(Drill.LeadIn / log.Period), step = Math.Max(1, (log.Samples.Count - first) / MostPoints);
        for (int row = Math.Max(0, first - (2 * step)); row < log.Samples.Count; row += step) yield return row;
    }

    private static DataTable Table(View view, FlightLog a, FlightLog b, string nameA, string nameB)
    {
        int first = (int)Math.Round(Drill.LeadIn / a.Period), last = a.Samples.Count - 1;
        return new(
            $"{Words.Capital(view.What)}, {view.Unit}, in the drill {view.Drill.Name}",
            [new("time s"), new(nameA), new(nameB)],
            [
                .. Enumerable.Range(0, RowsInWords + 1).Select(n => first + ((last - first) * n / RowsInWords)).Select(row => new Row(
                [
                    $"{a.TimeOf(row) - Drill.LeadIn:F2}", Numbers.Fixed(view.PerSi * view.Read(a.Samples[row]), 1), Numbers.Fixed(view.PerSi * view.Read(b.Samples[row]), 1),
                ])),
            ]);
    }
}
