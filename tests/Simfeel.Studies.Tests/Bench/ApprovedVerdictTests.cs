using System.Text;
using Simfeel.Builds;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;
using Simfeel.Studies.Tests.Approved;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Verdicts word by word on a page of their own, <see cref="ApprovedPage"/>: high and low, near and far, weighed before or not.</summary>
public class ApprovedVerdictTests
{
    private static readonly (string Name, bool Weighed, string Readings)[] Cases =
    [
        ("heavier than the model", false, "[mass]\nmass_g = 640"),
        ("lighter than the model", false, "[mass]\nmass_g = 520"),
        ("off from an earlier weighing", true, "[mass]\nmass_g = 612"),
        ("balance, each way a little", true, "[balance_x]\nedge_mm = [3, 3.1, 2.9]\n[balance_y]\nedge_mm = [-6, -6.1, -5.9]\n[balance_z]\nedge_mm = [-30, -30.1, -29.9]"),
        ("balance, each way the other", true, "[balance_x]\nedge_mm = [-9, -9.1, -8.9]\n[balance_y]\nedge_mm = [6, 6.1, 5.9]\n[balance_z]\nedge_mm = [-10, -10.1, -9.9]"),
        ("inertias a little above", true, "[mass]\nmass_g = 598\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [31.6, 31.6, 31.6]\n[pitch]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [36, 36, 36]\n[yaw]\nspacing_mm = 150\nlength_mm = 1000\ntimes_s = [36, 36, 36]"),
        ("inertias far below", true, "[mass]\nmass_g = 598\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [24, 24, 24]\n[yaw]\nspacing_mm = 150\nlength_mm = 1000\ntimes_s = [22, 22, 22]"),
        ("no mass", true, "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [30.42, 30.44, 30.4]"),
    ];

    [Fact]
    public void Verdicts()
    {
        StringBuilder text = new();
        AssembledBuild weighed = BenchCases.Wagtail, parts = BenchCases.Assemble(BenchCases.TextOf("wagtail").Replace("all_up_mass_g = 598", "# ", StringComparison.Ordinal));
        foreach ((string name, bool isWeighed, string readings) in Cases)
        {
            BenchReport report = BenchCases.Report(readings, isWeighed ? weighed : parts);
            text.Append("# ").AppendLine(name).AppendLine(BenchWords.Headline(report));
            foreach (BenchQuantity quantity in report.Measured)
                text.AppendLine(string.Join(" | ", BenchWords.Cells(quantity))).AppendLine(BenchVerdicts.Of(report, quantity));
            foreach (string line in BenchPlausibility.Of(report)) text.AppendLine(line);
            foreach (string line in BenchWords.Notes(report)) text.AppendLine(line);
            text.AppendLine();
        }
        ApprovedPage.Check("bench-verdicts.txt", text.ToString());
    }

    [Fact]
    public void Shares_of_the_parts()
    {
        StringBuilder text = new();
        foreach (string name in (string[])["wagtail", "knot", "gannet"])
        {
            AssembledBuild build = BenchCases.Starter(name);
            text.Append("# ").AppendLine(name);
            foreach (PartShare part in PartShare.Of(build))
            {
                string kind = $"{(part.Single ? "one part" : "several")}{(part.PlaceTable.Length > 0 ? $" placed by [{part.PlaceTable}]" : "")}{(part.Estimated ? ", estimated" : "")}";
                string inertias = string.Join(", ", BenchAxes.All.Select(axis => $"{axis.Turn()} {1e3 * part.InertiaIn(build, axis):F4}"));
                text.AppendLine($"{part.Name}: {1e3 * part.Whole.Mass:F2} g; {string.Join(", ", part.MassKeys)}; {kind}; {inertias} g m2");
            }
            text.AppendLine();
        }
        ApprovedPage.Check("bench-parts.txt", text.ToString());
    }
}
