using Simfeel.Builds;
using Simfeel.Studies.Batch;
using Simfeel.Studies.Growth;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet.Json;
using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>Growth curves for people and for machines.</summary>
internal static class GrowthOutput
{
    private const int PlotWidth = 40;

    /// <summary>Prints JSON.</summary>
    public static void PrintJson(BuildKnob knob, IReadOnlyList<GrowthCurve> curves, GrowthMatch? match, StudyConditions conditions) =>
        JsonOutput.Print(new()
        {
            ["build"] = curves[0].Build,
            ["part"] = knob.Name,
            ["rule"] = knob.Rule,
            ["policy"] = conditions.Policy,
            ["seed"] = conditions.Field.Seed,
            ["effort"] = conditions.Effort,
            ["curves"] = StudiesJson.Growth(curves),
            ["match"] = match is null ? null : new Dictionary<string, object?>
            {
                ["other"] = match.Other,
                ["target"] = match.Target,
                ["found"] = match.Found,
                ["factor"] = match.Reached.Factor,
                ["size"] = match.Reached.Size,
                ["value"] = match.Reached.Value,
                ["sentence"] = match.Sentence,
            },
        });

    /// <summary>Prints each curve as a table with a dot for every value.</summary>
    public static void Print(BuildKnob knob, IReadOnlyList<GrowthCurve> curves, GrowthMatch? match, StudyConditions conditions)
    {
        foreach (GrowthCurve curve in curves) Print(knob, curve);
        if (match is not null)
        {
            Console.WriteLine(match.Sentence);
            Console.WriteLine();
        }
        Console.WriteLine(knob.Rule);
        Console.WriteLine($"Every size is put together, tuned ({conditions.Policy}) and flown as a craft of its own. Stick effort {conditions.Effort:F2}, seed {conditions.Field.Seed}.");
    }

    private static void Print(BuildKnob knob, GrowthCurve curve)
    {
        DisplayUnit display = curve.Metric.Display;
        Console.WriteLine($"{curve.Build}: {curve.Metric.Title} ({curve.Metric.Drill.Name}) against the {knob.Title}");
        Table table = Tables.New(
            ["factor", knob.Unit.Length == 0 ? "size" : knob.Unit, display.Symbol.Length == 0 ? "value" : display.Symbol, "",
                .. curve.Variants.Select(variant => variant.Name)]);
        table.Columns[3].Alignment = Justify.Left;
        double least = curve.Points.Where(point => !double.IsNaN(point.Value)).Select(point => point.Value).DefaultIfEmpty(0).Min();
        double most = curve.Points.Where(point => !double.IsNaN(point.Value)).Select(point => point.Value).DefaultIfEmpty(0).Max();
        int decimals = display.Decimals + (display.Decimals == 0 ? 1 : 0);
        for (int n = 0; n < curve.Points.Count; n++)
        {
            GrowthPoint point = curve.Points[n];
            string mark = point.Factor == 1 ? "as built" : point.Factor == curve.Best?.Factor ? "best" : "";
            table.AddRow([
                $"{point.Factor:F2}", Size(point.Size), Number(point.Value), Dot(point.Value, least, most, mark),
                .. curve.Variants.Select(variant => Number(variant.Values[n]))]);
        }
        Tables.Print(table);
        foreach (string sentence in curve.Sentences) Console.WriteLine(sentence);
        Console.WriteLine();

        string Number(double value) => double.IsNaN(value) ? "-" : (value * display.PerSi).ToString("F" + decimals);

        static string Size(double size) => Math.Abs(size) >= 1000 ? size.ToString("F0") : size.ToString("G4");
    }

    private static string Dot(double value, double least, double most, string mark)
    {
        if (double.IsNaN(value)) return "cannot fly";
        int place = most > least ? (int)Math.Round((PlotWidth - 1) * (value - least) / (most - least)) : 0;
        return $"{new string(' ', place)}o {mark}".TrimEnd();
    }
}
