using System.Text.RegularExpressions;
using Simfeel.Builds.Format;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Reading;

namespace Simfeel.Studies.Tests.Bench;

public partial class BenchTemplateTests
{
    private static readonly string Text = BenchTemplate.Write(BenchPlan.Of(BenchCases.Wagtail));

    [Fact]
    public void An_empty_file_reads_and_says_that_nothing_was_measured()
    {
        BenchResult result = BenchReader.Parse(Text, "mine-bench.toml");
        Assert.StartsWith("Nothing was measured yet", Assert.Single(result.Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_key_stands_there_once_with_its_range_and_meaning()
    {
        foreach (KeySpec key in BenchFormat.Keys)
        {
            string line = Assert.Single(Lines(key.Table), line => line.TrimStart('#', ' ').StartsWith(key.Key + " = ", StringComparison.Ordinal));
            Assert.Contains(key.Meaning, line, StringComparison.Ordinal);
            if (key.Unit.Length > 0) Assert.Contains(key.Unit + ": ", line, StringComparison.Ordinal);
        }
    }

    /// <summary>With the signs taken away and readings filled in, every key is taken; the two ways of balancing exclude each other.</summary>
    [Fact]
    public void Filled_in_it_reads_without_a_word()
    {
        Dictionary<string, string> readings = new()
        {
            ["mass_g"] = "598",
            ["mass_pm_g"] = "1",
            ["times_s"] = "[30.4, 30.5, 30.3]",
            ["front_g"] = "299",
            ["rear_g"] = "299",
            ["right_g"] = "299",
            ["left_g"] = "299",
            ["scale_pm_g"] = "1",
            ["hook_x_mm"] = "60",
            ["hook_angle_deg"] = "20",
        };
        string filled = KeyLine().Replace(Text, match =>
        {
            string key = match.Groups[1].Value;
            return key is "edge_mm" or "edge_pm_mm" ? match.Value : $"{key} = {readings.GetValueOrDefault(key, match.Groups[2].Value)} #";
        });
        BenchResult result = BenchReader.Parse(filled, "mine-bench.toml");
        Assert.Empty(result.Diagnostics);
        Assert.Equal((3, 3), (result.Readings!.Swings.Count, result.Readings.Balances.Count));
        Assert.Equal("Wagtail", result.Readings.BuildName);
        Assert.Equal(0.13, result.Readings.Swings[BenchAxis.X].Spacing.Value, 12);
    }

    [Fact]
    public void A_name_with_quotes_stays_text()
    {
        BenchPlan plan = BenchPlan.Of(BenchCases.Wagtail);
        string text = BenchTemplate.Write(plan with { Build = plan.Build with { Build = plan.Build.Build with { Name = "a \"b\" \\ \n[mass]\nc" } } });
        BenchResult result = BenchReader.Parse(text + "\n[extra]", "mine-bench.toml");
        Assert.DoesNotContain(result.Diagnostics, d => d.Message.Contains("TOML", StringComparison.Ordinal));
    }

    private static IEnumerable<string> Lines(string table)
    {
        string inside = "";
        foreach (string line in Text.Split('\n'))
        {
            if (line.StartsWith('[')) inside = line[1..line.IndexOf(']')];
            else if (inside == table) yield return line;
        }
    }

    [GeneratedRegex(@"^# ([a-z_0-9]+) = (\[[^\]]*\]|[-.\d]+) +#", RegexOptions.Multiline)]
    private static partial Regex KeyLine();
}
