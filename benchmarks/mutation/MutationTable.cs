using System.Globalization;
using System.Text;

namespace Simfeel.Mutation;

/// <summary>Writes the results of a project as a page: a line for each file, then a line for each survivor.</summary>
internal static class MutationTable
{
    /// <summary>
    /// Reads the results and what is said about survivors (three columns: file and line, the change, the reason; a reason
    /// that begins with "killed" counts the mutant as killed, by the test it names).
    /// </summary>
    public static int Write(string root, string project)
    {
        List<string[]> rows = [.. File.ReadLines(Campaign.Results(root, project)).Select(l => l.Split('\t'))];
        string reasonsFile = Campaign.Results(root, project).Replace(".tsv", "-reasons.tsv", StringComparison.Ordinal);
        Dictionary<string, string> reasons = [];
        if (File.Exists(reasonsFile))
        {
            foreach (string[] line in File.ReadLines(reasonsFile).Select(l => l.Split('\t'))) reasons[$"{line[0]}\t{line[1]}"] = line[2];
        }
        StringBuilder page = new();
        string name = project["Simfeel.".Length..].ToLowerInvariant();
        page.AppendLine(CultureInfo.InvariantCulture, $"# Mutation score of {project}\n");
        page.AppendLine(CultureInfo.InvariantCulture, $"Made by `benchmarks/mutation.sh {project}`, which says what is changed and how. A mutant that runs four times as long as the unchanged code, and 3 s of the processor more (60 s where it is run once more by itself), is timed out and counts as killed. Of the tests that run a place only the cheapest are tried, up to a price for each mutant (`--price`; 4 s of the processor, 0.8 to 3 s where machine time was short, 6 s for survivors run once more), so that a survivor may be one that a dearer test would see. Where fewer mutants were run than there are, they were drawn at random, seeded by the file's name; the totals weigh each file by the mutants in it; whoever wrote tests for survivors had seen them, so that a fresh draw (a larger `--sample`) may score less; the band holds with 95 % (stratified sampling, each file's share moved by one success and one failure).\n");
        page.AppendLine("| file | mutants | run | killed | timed out | survived | score % |\n|---|--:|--:|--:|--:|--:|--:|");
        foreach (IGrouping<string, string[]> file in rows.GroupBy(r => r[0]))
        {
            int killed = file.Count(r => r[5] == "killed"), late = file.Count(r => r[5] == "timed out"), run = file.Count();
            page.AppendLine(CultureInfo.InvariantCulture, $"| {file.Key} | {file.First()[1]} | {run} | {killed} | {late} | {run - killed - late} | {100.0 * (killed + late) / run:F0} |");
        }
        page.AppendLine(Total("together", rows));
        List<string[]> open = [.. rows.Where(r => !(r[5] == "survived" && Reason(r, reasons).StartsWith("equivalent", StringComparison.Ordinal)))];
        page.AppendLine(Total("without mutants that change nothing", open));
        page.AppendLine("\n## Survivors\n");
        foreach (string[] row in rows.Where(r => r[5] == "survived"))
        {
            string where = row[6].Length > 0 ? " (no test reaches it)" : "";
            page.AppendLine(CultureInfo.InvariantCulture, $"- {row[0]}:{row[2]} `{row[4]}`{where}: {Reason(row, reasons)}");
        }
        File.WriteAllText(Path.Combine(root, "benchmarks", "results", $"mutation-{name}.md"), page.ToString());
        Console.Write(page.ToString());
        return 0;
    }

    private static string Reason(string[] row, Dictionary<string, string> reasons) =>
        reasons.TryGetValue($"{row[0]}:{row[2]}\t{row[4]}", out string? reason) ? reason : "not looked at yet";

    private static string Total(string what, List<string[]> rows)
    {
        double mutants = 0, dead = 0, variance = 0;
        foreach (IGrouping<string, string[]> file in rows.GroupBy(r => r[0]))
        {
            double all = double.Parse(file.First()[1], CultureInfo.InvariantCulture), run = file.Count();
            double killed = file.Count(r => r[5] != "survived");
            double share = (killed + 1) / (run + 2);
            mutants += all;
            dead += all * killed / run;
            variance += all * all * share * (1 - share) / run * (1 - (run / all));
        }
        int survived = rows.Count(r => r[5] == "survived");
        return string.Create(CultureInfo.InvariantCulture, $"| **{what}** | {mutants:F0} | {rows.Count} | {rows.Count(r => r[5] == "killed")} | {rows.Count(r => r[5] == "timed out")} | {survived} | **{100 * dead / mutants:F1} +- {196 * Math.Sqrt(Math.Max(0, variance)) / mutants:F1}** |");
    }
}
