using System.Globalization;
using System.Text;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Tests.Sheet;

namespace Simfeel.Studies.Tests.Approved;

/// <summary>Feel sheets, <see cref="ApprovedPage"/>.</summary>
public class ApprovedSheetTests
{
    /// <summary>The flights behind all pages here, made once.</summary>
    [Fact]
    public void Its_flights_have_every_number() =>
        Assert.All(SampleSheet.Of.Comparison.Metrics, pair => Assert.True(double.IsFinite(pair.A) && double.IsFinite(pair.B), pair.Metric.Name));

    [Fact]
    public void Sheet() => ApprovedPage.Check("sheet.html", FeelSheetHtml.Write(SampleSheet.Of));

    [Fact]
    public void Sheet_as_text() => ApprovedPage.Check("sheet.txt", FeelSheetMarkdown.Write(SampleSheet.Of));

    [Fact]
    public void Sheet_with_gaps() => ApprovedPage.Check("sheet-with-gaps.txt", FeelSheetMarkdown.Write(SampleSheet.Missing("stop_time")));

    /// <summary>Six digits, without what rounding leaves of nothing; of long lists the first, the middle and the last, and how many there are.</summary>
    [Fact]
    public void Sheet_for_machines()
    {
        StringBuilder text = new();
        Write(text, "", FeelSheetJson.Of(SampleSheet.Of));
        ApprovedPage.Check("sheet-for-machines.txt", text.ToString());
    }

    private static void Write(StringBuilder text, string path, object? value)
    {
        switch (value)
        {
            case Dictionary<string, object?> map:
                foreach ((string key, object? inner) in map) Write(text, path.Length == 0 ? key : $"{path}.{key}", inner);
                break;
            case System.Collections.IEnumerable list and not string:
                object?[] all = [.. list.Cast<object?>()];
                bool isLong = all.Length > 12;
                int[] shown = isLong ? [0, all.Length / 2, all.Length - 1] : [.. Enumerable.Range(0, all.Length)];
                if (isLong) text.Append(CultureInfo.InvariantCulture, $"{path}: {all.Length} of them\n");
                foreach (int n in shown) Write(text, $"{path}[{n}]", all[n]);
                break;
            default:
                text.Append(CultureInfo.InvariantCulture, $"{path}: {(value is double number ? (Math.Abs(number) < 1e-12 ? 0 : number).ToString("G6", CultureInfo.InvariantCulture) : value ?? "null")}\n");
                break;
        }
    }
}
