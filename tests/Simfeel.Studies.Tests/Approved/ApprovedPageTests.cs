using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;
using Simfeel.Studies.Bench.Reading;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Tests.Bench;
using Simfeel.Studies.Tests.Sheet;

namespace Simfeel.Studies.Tests.Approved;

/// <summary>
/// Pages that somebody has looked at and found right, kept beside this file. Words, numbers and every stroke of a drawing stay as they
/// are until somebody looks again: <c>SIMFEEL_APPROVE=1 dotnet test tests/Simfeel.Studies.Tests --filter ApprovedPageTests</c> writes
/// them anew, for the change that goes with it to show.
/// </summary>
public class ApprovedPageTests
{
    private const string Readings =
        "[mass]\nmass_g = 603\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [31.0, 30.8, 31.1]\n"
        + "[yaw]\nspacing_mm = 150\nlength_mm = 900\ntimes_s = [33.1, 33.4]\n[balance_x]\nedge_mm = [-6, -5.5, -6.5]\n[balance_z]\nedge_mm = [4, 5]\n";

    private static readonly Dictionary<string, Func<string>> Pages = new()
    {
        ["worksheet.html"] = () => BenchWorksheet.Html(BenchPlan.Of(BenchCases.Wagtail)),
        ["worksheet-of-a-bent-frame.txt"] = () => BenchWorksheet.Markdown(BenchPlan.Of(BenchCases.Starter("kittiwake"))),
        ["readings.toml"] = () => BenchTemplate.Write(BenchPlan.Of(BenchCases.Wagtail)),
        ["bench.html"] = () => BenchResultPage.Html(BenchCases.Report(Readings)),
        ["bench.txt"] = () => BenchResultPage.Markdown(BenchCases.Report(Readings)),
        ["sheet.html"] = () => FeelSheetHtml.Write(SampleSheet.Of),
        ["sheet.txt"] = () => FeelSheetMarkdown.Write(SampleSheet.Of),
        ["sheet-with-gaps.txt"] = () => FeelSheetMarkdown.Write(SampleSheet.Missing("stop_time")),
    };

    public static TheoryData<string> Names => [.. Pages.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_page_is_the_one_that_was_approved(string name)
    {
        string path = Path.Combine(ProjectFolder.Root, "tests", "Simfeel.Studies.Tests", "Approved", name);
        // a line for each element makes differences readable
        string page = Pages[name]().ReplaceLineEndings("\n").Replace("><", ">\n<", StringComparison.Ordinal);
        if (Environment.GetEnvironmentVariable("SIMFEEL_APPROVE") == "1") File.WriteAllText(path, page);
        string[] approved = File.ReadAllText(path).ReplaceLineEndings("\n").Split('\n'), lines = page.Split('\n');
        int line = Enumerable.Range(0, Math.Max(approved.Length, lines.Length)).FirstOrDefault(n => approved.ElementAtOrDefault(n) != lines.ElementAtOrDefault(n), -1);
        Assert.True(line < 0, $"{name}, line {line + 1}: {lines.ElementAtOrDefault(line)}\nwas approved as: {approved.ElementAtOrDefault(line)}");
    }
}
