using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;
using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>The plan and the result of <c>bench</c> for people and for machines.</summary>
internal static class BenchOutput
{
    /// <summary>Prints the plan and what to do with it.</summary>
    public static void Print(BenchPlan plan, string build, string? worksheet, string? template)
    {
        Console.WriteLine($"To measure {plan.Build.Build.Name}: wires whose swings can be timed well, {BenchPlan.Swings} swings in one timing, {BenchPlan.Runs} timings of each axis.");
        Table table = Tables.New("swing about", "spacing mm", "length mm", "one swing s", $"{BenchPlan.Swings} swings s");
        foreach (SwingPlan test in plan.Tests)
            table.AddRow(BenchWords.Turn(test.Axis), $"{1e3 * test.Spacing:F0}", $"{1e3 * test.Length:F0}", $"{test.Period:F2}", $"{BenchPlan.Swings * test.Period:F0}");
        Tables.Print(table);
        if (worksheet is not null) Console.WriteLine($"Worksheet to print: {worksheet}");
        if (template is not null) Console.WriteLine($"Readings file to fill in: {template}");
        if (worksheet is null) Console.WriteLine($"A sheet to print, with sketches and room for readings: ./simfeel bench {build} --worksheet bench.html");
        if (template is null) Console.WriteLine($"A readings file to fill in: ./simfeel bench {build} --template mine-bench.toml");
        Console.WriteLine($"Then hold the model against it: ./simfeel bench {build} --results {template ?? "mine-bench.toml"}");
        Console.WriteLine();
        Console.WriteLine(BenchWords.Caution);
    }

    /// <summary>Prints the plan as JSON.</summary>
    public static void PrintJson(BenchPlan plan, string? worksheet, string? template) =>
        JsonOutput.Print(new()
        {
            ["build"] = plan.Build.Build.Name,
            ["swings_in_one_timing"] = BenchPlan.Swings,
            ["timings"] = BenchPlan.Runs,
            ["swing_angle_rad"] = BenchPlan.SwingAngle,
            ["tests"] = plan.Tests.Select(test => new Dictionary<string, object?>
            {
                ["axis"] = BenchWords.Turn(test.Axis),
                ["spacing_m"] = test.Spacing,
                ["length_m"] = test.Length,
                ["expected_period_s"] = test.Period,
                ["costs"] = test.Costs.Select(cost => new Dictionary<string, object?>
                {
                    ["reading"] = cost.Reading,
                    ["error"] = cost.Error,
                    ["percent"] = cost.Percent,
                }).ToList(),
            }).ToList(),
            ["support_distance_from_middle_m"] = plan.Support,
            ["worksheet"] = worksheet,
            ["template"] = template,
            ["cautions"] = BenchWords.Cautions,
        });

    /// <summary>Prints model against measurement.</summary>
    public static void Print(BenchReport report, string? sheet, string? copy)
    {
        Console.WriteLine(BenchWords.Headline(report));
        Console.WriteLine();
        Table table = Tables.New("quantity", "unit", "model", "measured", "95 % +-", "model less measured", "verdict");
        table.Columns[1].Alignment = table.Columns[6].Alignment = Justify.Left;
        foreach (BenchQuantity quantity in report.Quantities)
            table.AddRow([.. BenchWords.Cells(quantity).Select(Markup.Escape)]);
        Tables.Print(table);
        foreach (string sentence in BenchWords.Disagreements(report)) Console.WriteLine(sentence);
        foreach (string finding in BenchPlausibility.Of(report)) Console.WriteLine("Look again: " + finding);
        Console.WriteLine();
        foreach (string note in BenchWords.Notes(report)) Console.WriteLine(note);
        if (sheet is not null) Console.WriteLine($"Written to {sheet}.");
        if (copy is not null) Console.WriteLine($"Written to {copy}, a copy of the build with the measured numbers; the build itself is as it was.");
    }

    /// <summary>Prints the same as JSON.</summary>
    public static void PrintJson(BenchReport report, string? sheet, string? copy) =>
        JsonOutput.Print(new()
        {
            ["build"] = report.Build.Build.Name,
            ["readings"] = report.Readings.Source,
            ["quantities"] = report.Quantities.Select(quantity => new Dictionary<string, object?>
            {
                ["quantity"] = quantity.Title,
                ["key"] = quantity.Key,
                ["unit"] = quantity.Kind switch { BenchKind.Mass => "kg", BenchKind.Balance => "m", _ => "kg m2" },
                ["model"] = quantity.Model,
                ["model_was_measured"] = quantity.ModelMeasured,
                ["measured"] = quantity.Measured?.Value,
                ["half_band_95"] = quantity.Measured?.HalfBand,
                ["standard_error"] = quantity.Measured?.Sigma,
                ["degrees_of_freedom"] = quantity.Measured?.Freedom,
                ["variance_shares"] = quantity.Measured?.Shares().ToDictionary(share => share.Name.Replace(' ', '_'), share => share.Share),
                ["model_less_measured"] = quantity.Measured is null ? null : quantity.Difference,
                ["percent"] = quantity.Percent,
                ["agrees"] = quantity.Measured is null ? null : quantity.Agrees,
                ["verdict"] = BenchVerdicts.Of(report, quantity),
            }).ToList(),
            ["findings"] = BenchPlausibility.Of(report),
            ["notes"] = BenchWords.Notes(report),
            ["sheet"] = sheet,
            ["written"] = copy,
        });
}
