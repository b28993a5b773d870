using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;
using Simfeel.Studies.Bench.Reading;
using Simfeel.Studies.Tests.Bench;

namespace Simfeel.Studies.Tests.Approved;

/// <summary>Pages of the workbench, <see cref="ApprovedPage"/>.</summary>
public class ApprovedBenchTests
{
    private const string Readings =
        "[mass]\nmass_g = 603\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [31.0, 30.8, 31.1]\n"
        + "[yaw]\nspacing_mm = 150\nlength_mm = 900\ntimes_s = [33.1, 33.4]\n[balance_x]\nedge_mm = [-6, -5.5, -6.5]\n[balance_z]\nedge_mm = [4, 5]\n";

    [Fact]
    public void Worksheet() => ApprovedPage.Check("worksheet.html", BenchWorksheet.Html(BenchPlan.Of(BenchCases.Wagtail)));

    [Fact]
    public void Worksheet_of_a_bent_frame() =>
        ApprovedPage.Check("worksheet-of-a-bent-frame.txt", BenchWorksheet.Markdown(BenchPlan.Of(BenchCases.Starter("kittiwake"))));

    [Fact]
    public void File_for_readings() => ApprovedPage.Check("readings.toml", BenchTemplate.Write(BenchPlan.Of(BenchCases.Wagtail)));

    [Fact]
    public void Result() => ApprovedPage.Check("bench.html", BenchResultPage.Html(BenchCases.Report(Readings)));

    [Fact]
    public void Result_as_text() => ApprovedPage.Check("bench.txt", BenchResultPage.Markdown(BenchCases.Report(Readings)));
}
