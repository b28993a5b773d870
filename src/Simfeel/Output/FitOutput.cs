using Simfeel.Studies.Fit;
using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>A fit of a thrust table for people and for machines.</summary>
internal static class FitOutput
{
    private const int MostRows = 30;

    /// <summary>Prints JSON.</summary>
    public static void PrintJson(StandFit fit, string? written) =>
        JsonOutput.Print(new()
        {
            ["build"] = fit.Before.Build.Name,
            ["table"] = fit.Table.Source,
            ["written"] = written,
            ["sentences"] = FitSentences.Of(fit),
            ["cautions"] = FitCautions.Of(fit),
            ["air_density_kg_m3"] = fit.Before.Air.Density,
            ["throttle_is_duty"] = fit.ThrottleIsDuty,
            ["throttle"] = fit.Throttle,
            ["blocks"] = fit.Table.Blocks.Select(block => new Dictionary<string, object?>
            {
                ["number"] = block.Number,
                ["title"] = block.Title,
                ["line"] = block.HeadingLine,
                ["columns"] = block.Columns.Select(column => new Dictionary<string, object?>
                {
                    ["column"] = column.Column,
                    ["name"] = column.Name,
                    ["quantity"] = column.Quantity.ToString(),
                    ["unit"] = column.Unit,
                    ["to_si"] = column.ToSI,
                    ["because"] = column.Because,
                }).ToList(),
            }).ToList(),
            ["constants"] = fit.Constants.Select(constant => new Dictionary<string, object?>
            {
                ["key"] = constant.Key,
                ["unit"] = constant.Unit,
                ["before"] = constant.Before,
                ["value"] = constant.Value,
                ["relative_standard_deviation"] = constant.RelativeSigma,
                ["determined"] = constant.Determined,
                ["why_not"] = constant.WhyNot,
            }).ToList(),
            ["residuals"] = fit.Residuals.Select(residual => new Dictionary<string, object?>
            {
                ["quantity"] = residual.Quantity,
                ["rows"] = residual.Rows,
                ["rms_percent"] = residual.RmsPercent,
            }).ToList(),
            ["rows_used"] = fit.Rows.Count,
            ["rows_excluded"] = fit.Refused.Select(row => new Dictionary<string, object?>
            {
                ["line"] = row.Line,
                ["reason"] = row.Reason,
            }).ToList(),
            ["notes"] = fit.Notes.Concat(fit.Table.Skipped).ToList(),
        });

    /// <summary>Prints the result in words, how the table was read, constants, residuals and what is missing.</summary>
    public static void PrintTable(StandFit fit, string? written)
    {
        foreach (string sentence in FitSentences.Of(fit)) Console.WriteLine(sentence);
        foreach (string caution in FitCautions.Of(fit)) Console.WriteLine(caution);
        Console.WriteLine();
        Console.WriteLine($"Read from {Path.GetFileName(fit.Table.Source)}, {fit.Table.Writing}:");
        foreach (StandBlock block in fit.Table.Blocks)
        {
            string title = block.Title.Length > 0 ? $" \"{block.Title}\"" : "";
            // blocks under the same heading are read alike
            bool again = block != fit.Table.Blocks[0] && block.Columns.Select(c => c.ToString()).SequenceEqual(fit.Table.Blocks[0].Columns.Select(c => c.ToString()));
            if (fit.Table.Blocks.Count + fit.Table.Skipped.Count > 1 || title.Length > 0)
                Console.WriteLine($"  block {block.Number}{title}, heading in line {block.HeadingLine}{(again ? $", columns as in block {fit.Table.Blocks[0].Number}" : "")}");
            if (again) continue;
            foreach (ColumnReading column in block.Columns) Console.WriteLine($"  {column}");
        }
        foreach (string note in fit.Table.Skipped.Concat(fit.Notes)) Console.WriteLine($"  {note}");
        Console.WriteLine($"  {fit.Rows.Count} rows are used; {fit.Throttle}");
        Console.WriteLine();

        Table table = Tables.New("constant", "before", "measured", "95 % +-", "what it is");
        table.Columns[4].Alignment = Justify.Left;
        foreach (FittedConstant constant in fit.Constants.Where(c => c.Determined))
        {
            table.AddRow(
                Markup.Escape(constant.Key), $"{constant.Before:G4}", $"{constant.Value:G4}",
                $"{200 * constant.RelativeSigma:F1} %", Markup.Escape(constant.Meaning));
        }
        Tables.Print(table);
        Console.WriteLine("Measured less fitted, root mean square: "
            + string.Join(", ", fit.Residuals.Select(r => $"{r.Quantity} {r.RmsPercent:F1} %")) + ".");
        Console.WriteLine("The +- is the scatter of the readings; what the model itself gets wrong is not in it.");
        Console.WriteLine($"Air of {fit.Before.Air.Density:F3} kg/m3; --altitude if the stand stood high.");
        List<FittedConstant> open = [.. fit.Constants.Where(c => !c.Determined)];
        if (open.Count > 0)
        {
            Console.WriteLine();
            Console.WriteLine("Could not be determined, and stay the build's:");
            foreach (FittedConstant constant in open) Console.WriteLine($"  {constant.Key} = {constant.Before:G4}{(constant.Unit.Length > 0 ? " " : "")}{constant.Unit}: {constant.WhyNot}");
        }
        Console.WriteLine("Torque limit, speed controller resistance and the split of the losses over speed are taken from the build.");
        if (fit.Refused.Count > 0)
        {
            Console.WriteLine();
            Console.WriteLine("Rows that are not used:");
            foreach (RefusedRow row in fit.Refused.Take(MostRows)) Console.WriteLine($"  line {row.Line}: {row.Reason}");
            if (fit.Refused.Count > MostRows) Console.WriteLine($"  and {fit.Refused.Count - MostRows} more (--json lists all)");
        }
        Console.WriteLine();
        if (written is not null) Console.WriteLine($"Written to {written}, a copy of the build with these numbers; the build itself is as it was.");
        Console.WriteLine("A propeller on a stand cuts: bolt it down, stay out of the disc's plane, run it from afar, and stop before the motor or the pack gets hot.");
    }
}
