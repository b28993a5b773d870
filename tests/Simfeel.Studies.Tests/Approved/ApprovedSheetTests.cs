using Simfeel.Studies.Sheet;
using Simfeel.Studies.Tests.Sheet;

namespace Simfeel.Studies.Tests.Approved;

/// <summary>Feel sheets, <see cref="ApprovedPage"/>.</summary>
public class ApprovedSheetTests
{
    [Fact]
    public void Sheet() => ApprovedPage.Check("sheet.html", FeelSheetHtml.Write(SampleSheet.Of));

    [Fact]
    public void Sheet_as_text() => ApprovedPage.Check("sheet.txt", FeelSheetMarkdown.Write(SampleSheet.Of));

    [Fact]
    public void Sheet_with_gaps() => ApprovedPage.Check("sheet-with-gaps.txt", FeelSheetMarkdown.Write(SampleSheet.Missing("stop_time")));
}
