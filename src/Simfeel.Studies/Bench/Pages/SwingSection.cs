using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>The swing test on the worksheet.</summary>
internal static class SwingSection
{
    public static Section Of(BenchPlan plan) => new("swing", "2. Swing it",
    [
        new Paragraph("Pack unplugged? Propellers on and free of the wires, standing still? Something soft below, nobody under it? Then hang it.", Tone.Warning),
        RigSketches.Swing(plan),
        new BulletList(
        [
            "Tie the stick across the craft and hang the wires from its two ends, upright and parallel: the same spacing at the beam and at the stick. For roll and pitch the stick goes to the arms that point up, for yaw across the top; it must lie higher than the balance point, or the craft tips over.",
            "The craft turns until its balance point hangs below the stick's middle. Shift the stick, also towards the pack's side, until the arms hang plumb (roll, pitch) or level (yaw), within 3 degrees against the plumb line. Measure spacing and free length then, not before.",
            $"Turn it by about 10 degrees without pushing it sideways, let go, hands away. Let it swing twice, then time {BenchPlan.Swings} swings: start at a turning point, say zero, and count each return to that side. Stop it before it sways; begin anew if it does.",
            $"At least {BenchPlan.Runs} timings of each axis: their scatter makes the band. A timing that is one swing longer or shorter was miscounted: strike it out.",
        ]),
        Readings(plan),
    ]);

    private static DataTable Readings(BenchPlan plan)
    {
        return new(
            "Suggested wires, the time to expect, and what you read",
            [new("reading"), Column.Unit, .. plan.Tests.Select(test => new Column(test.Axis.Turn()))],
            [
                new RowGroup("Suggested, and what to expect with it",
                [
                    Given("spacing of the wires, d", "mm", test => $"{1e3 * test.Spacing:F0}"),
                    Given("free length of the wires, L", "mm", test => $"{1e3 * test.Length:F0}"),
                    Given("one swing, there and back", "s", test => $"{test.Period:F2}"),
                    Given($"{BenchPlan.Swings} swings", "s", test => $"{BenchPlan.Swings * test.Period:F0}"),
                ]),
                new RowGroup("You read",
                [
                    Blanks("spacing of the wires, d", "mm"), Blanks("free length of the wires, L", "mm"),
                    .. Enumerable.Range(1, 4).Select(n => Blanks($"timing {n}: {BenchPlan.Swings} swings", "s")),
                    Blanks("angle at the start / at the end", "deg"), Blanks("stick: mass / length", "g / mm"),
                ]),
            ]);

        Row Given(string what, string unit, Func<SwingPlan, string> text) => new([what, unit, .. plan.Tests.Select(test => new Cell(text(test)))]);

        Row Blanks(string what, string unit) => new([what, unit, .. plan.Tests.Select(_ => BenchWorksheet.Blank)]);
    }

    /// <summary>What errors of the readings do to the inertias.</summary>
    public static DataTable Costs(BenchPlan plan)
    {
        // the last two are no readings but faults of the rig, which no band knows of
        const int readings = 5;
        ReadingCost[] first = [.. plan.Tests[0].Costs];
        return new(
            "For the swing test: how far off each reading may be (two in three within), and what that does to the inertia, %",
            [new("reading"), new("may be off by", true), .. plan.Tests.Select(test => new Column(test.Axis.Turn()))],
            [
                .. first.Select((cost, n) => new Row([cost.Reading, cost.Error, .. plan.Tests.Select(test => new Cell(Percent(test.Costs[n].Percent)))])),
                new Row(["band to expect, 95 %, without the last two", "", .. plan.Tests.Select(test =>
                    new Cell("+-" + Percent(2 * Math.Sqrt(test.Costs.Take(readings).Sum(cost => cost.Percent * cost.Percent)))))], true),
            ]);

        static string Percent(double value) => Numbers.Fixed(value, 2);
    }
}
