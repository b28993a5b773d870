using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sweep;
using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>Results of a sweep for people and for machines.</summary>
internal static class SweepOutput
{
    private const int MostShown = 30, MostReasons = 3;

    /// <summary>Prints the front as JSON.</summary>
    public static void PrintJson(SweepTable table)
    {
        Metric[] metrics = SweepPlan.MetricsOf(table.Plan.Metrics);
        JsonOutput.Print(new()
        {
            ["build"] = table.Plan.Build,
            ["rows"] = table.Rows,
            ["refused"] = Refused(table),
            ["front_metrics"] = table.Plan.Front,
            ["front"] = Front(table).Select(row => new Dictionary<string, object?>
            {
                ["row"] = row,
                ["varied"] = table.Plan.Axes.Zip(table.Plan.Values(row)).ToDictionary(pair => pair.First.Column, pair => (object?)pair.Second),
                ["metrics"] = metrics.Zip(table.Values(row)).ToDictionary(pair => $"{pair.First.Name} ({pair.First.Unit})", pair => (object?)pair.Second),
            }).ToList(),
        });
    }

    /// <summary>Prints the front as a table.</summary>
    public static void Print(SweepTable table, IReadOnlyList<string> files)
    {
        SweepPlan plan = table.Plan;
        Metric[] metrics = SweepPlan.MetricsOf(plan.Metrics);
        int[] front = [.. Front(table)];
        Console.WriteLine($"{table.Rows} variants of {plan.Build}, {Refused(table)} of them refused. {front.Length} {(front.Length == 1 ? "stands" : "stand")} on the Pareto front of {string.Join(", ", plan.Front)}:");
        Table shown = Tables.New(["row", .. plan.Axes.Select(axis => axis.Column), .. metrics.Select(metric => metric.Display.Symbol.Length == 0 ? metric.Title : $"{metric.Title}, {metric.Display.Symbol}")]);
        foreach (int row in front.Take(MostShown))
        {
            shown.AddRow([
                row.ToString(), .. plan.Values(row).Select(value => value.ToString("G4")),
                .. metrics.Zip(table.Values(row)).Select(pair => pair.First.Display.Number(pair.Second))]);
        }
        Tables.Print(shown);
        if (front.Length > MostShown) Console.WriteLine($"The first {MostShown} of them are shown.");
        foreach (IGrouping<string, string> reason in Reasons(table).GroupBy(reason => reason).OrderByDescending(group => group.Count()).Take(MostReasons))
            Console.WriteLine($"Refused, {reason.Count()}: {reason.Key}");
        if (files.Count > 0) Console.WriteLine($"All rows stand in {string.Join(" and ", files)}.");
    }

    private static IEnumerable<int> Front(SweepTable table) => Enumerable.Range(0, table.Rows).Where(row => table.OnFront[row]);

    private static int Refused(SweepTable table) => Reasons(table).Count();

    private static IEnumerable<string> Reasons(SweepTable table) => Enumerable.Range(0, table.Rows).Select(table.Refusal).Where(reason => reason.Length > 0);
}
