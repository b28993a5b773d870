using Simfeel.Studies.Sheet;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Tests.Sheet;

public class FeelSheetMarkdownTests
{
    private static readonly Lazy<string> Text = new(() => FeelSheetMarkdown.Write(SampleSheet.Of));

    /// <summary>Rows of tables side by side; a stroke that is escaped parts no cells.</summary>
    private static IEnumerable<int[]> Tables(string text)
    {
        List<int> rows = [];
        foreach (string line in text.Split('\n').Append(""))
        {
            if (line.StartsWith('|'))
            {
                rows.Add(line.Replace("\\\\", "", StringComparison.Ordinal).Replace("\\|", "", StringComparison.Ordinal).Count(letter => letter == '|'));
            }
            else if (rows.Count > 0)
            {
                yield return [.. rows];
                rows.Clear();
            }
        }
    }

    [Fact]
    public void Rows_of_a_table_have_as_many_cells_as_its_head()
    {
        Assert.True(Tables(Text.Value).Count() > 12);
        Assert.All(Tables(Text.Value), rows => Assert.Single(rows.Distinct()));
        Assert.All(Tables(FeelSheetMarkdown.Write(SampleSheet.Named(SampleSheet.Hostile, "a|b\\|c\nd"))), rows => Assert.Single(rows.Distinct()));
    }

    [Fact]
    public void It_has_the_sections_of_the_page()
    {
        SheetPage page = SheetPages.Of(SampleSheet.Of);
        Assert.Equal(
            page.Sections.Skip(1).Select(section => "## " + section.Title),
            Text.Value.Split('\n').Where(line => line.StartsWith("## ", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("*bold*", @"\*bold\*")]
    [InlineData("[x](y)", @"\[x\](y)")]
    [InlineData("<b>", @"\<b\>")]
    [InlineData("`c` a_b _c_", @"\`c\` a_b \_c\_")]
    public void Whatever_a_build_is_called_stays_text(string name, string expected) =>
        Assert.StartsWith($"# {expected} and x: how they differ in flight\n", FeelSheetMarkdown.Write(SampleSheet.Named(name, "x")));

    [Fact]
    public void A_sentence_starts_no_list() =>
        Assert.Contains("\n- 1\\. of all\n", FeelSheetMarkdown.Write(SampleSheet.Of with { NotModelled = ["1. of all"] }), StringComparison.Ordinal);

    [Fact]
    public void What_is_missing_is_a_dash() =>
        Assert.Contains("| time to stop the roll, ms | 58 | - | - | - unknown |", FeelSheetMarkdown.Write(SampleSheet.Missing("stop_time")), StringComparison.Ordinal);

    [Fact]
    public void The_same_sheet_gives_the_same_text() => Assert.Equal(Text.Value, FeelSheetMarkdown.Write(SampleSheet.Of));
}
