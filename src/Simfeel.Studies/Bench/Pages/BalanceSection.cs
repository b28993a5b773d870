using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>The balance test on the worksheet.</summary>
internal static class BalanceSection
{
    public static Section Of(BenchPlan plan) => new("balance", "3. Balance it",
    [
        new Paragraph("Still unplugged. Never balance a craft whose propellers spin. Keep the craft low over something soft; catch it by the frame, not by pack or propellers, and let nothing rest on the pack alone.", Tone.Warning),
        RigSketches.Balance(plan),
        new BulletList(
        [
            "All places are measured from the middle of the bottom plate, the origin of the build file: x forward, y to the right, z down. Behind, left and above are negative.",
            "Forward and to the right, either way. On an edge: find where it just tips, three times, lifting it between. Or on two scales: tare each scale with its support on it, lay the craft level on both, read both, measure where the supports touch.",
            $"For this craft supports {1e3 * plan.Support:F0} mm ahead and behind, or right and left, are a good distance. Together the scales must show the mass.",
            "Height, either way. Lay the craft on its side upon the edge, arms upright. Or hang it by the nose from a hook in its middle plane, hold the plumb line beside it, take a picture from far away at the same height, and measure the angle between line and arms. The hook also needs the balance point forward.",
            "One millimetre is good enough: it is what the edge, the ruler and the middle of the plate leave open.",
        ]),
        Edges(),
        new Beside([Scales("x", "front", "rear", plan), Scales("y", "right", "left", plan)]),
        BenchWorksheet.Row("Height with a hook: places of the hook (each within 1 mm), angle of the plumb line (within 1 degree)", "hook", "x, mm", "z, mm", "angle, deg"),
    ]);

    private static DataTable Edges() => new(
        "On an edge: where it balances, mm from the middle, with sign; each place may be off by 1 mm",
        [new("direction"), new("first", true), new("second", true), new("third", true)],
        [
            Line("x, forward positive"), Line("y, right positive"), Line("z, down positive, on its side"),
        ]);

    private static Row Line(string name) => new([name, BenchWorksheet.Blank, BenchWorksheet.Blank, BenchWorksheet.Blank]);

    private static DataTable Scales(string axis, string first, string second, BenchPlan plan)
    {
        // both scales and both places, each with its error: near the middle each counts half
        double mass = plan.Build.Craft.Mass, scale = KitchenScale.Sigma(mass);
        double error = 1e3 * Math.Sqrt((2 * Math.Pow(plan.Support * scale / mass, 2)) + (0.5 * 1e-6));
        return new(
            $"Two scales, {axis}: scales within {1e3 * scale:G2} g and places within 1 mm give {axis} within {error:F1} mm",
            [new("support"), new("shows, g", true), new("stands at, mm", true)],
            [new Row([first, BenchWorksheet.Blank, BenchWorksheet.Blank]), new Row([second, BenchWorksheet.Blank, BenchWorksheet.Blank])]);
    }
}
