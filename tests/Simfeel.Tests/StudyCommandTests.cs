using System.Text.Json;
using System.Xml.Linq;

namespace Simfeel.Tests;

/// <summary>The verbs <c>blame</c> and <c>grow</c>, the feel sheet and the tuning policies, as users call them.</summary>
public class StudyCommandTests
{
    /// <summary>
    /// One run writes the page; it has no address to load anything from and tells of both builds. One run for page and JSON,
    /// since a feel sheet is the most work of all verbs.
    /// </summary>
    [Fact]
    public void Sheet_is_one_page_that_loads_nothing_and_its_json_holds_shares_that_sum()
    {
        using TempFolder temp = new();
        string path = temp.File("a sheet.html");
        CliResult result = Cli.Run("compare", "wagtail", "pipit", "--sheet", path, "--json", "--full", "--draws", "20");
        Assert.Equal(0, result.ExitCode);
        string page = File.ReadAllText(path);
        XDocument document = XDocument.Parse(page[(page.IndexOf('>', StringComparison.Ordinal) + 1)..]);
        Assert.Equal("html", document.Root!.Name.LocalName);
        Assert.DoesNotContain(document.Descendants().Attributes(), attribute =>
            attribute.Name.LocalName is "src" or "href" && attribute.Value.Contains("//", StringComparison.Ordinal));
        Assert.Contains("Wagtail", page, StringComparison.Ordinal);
        Assert.Contains("Pipit", page, StringComparison.Ordinal);
        Assert.False(File.Exists(path + ".part"));

        JsonElement root = JsonDocument.Parse(result.Output).RootElement;
        JsonElement[] ledgers = [.. root.GetProperty("blame").EnumerateArray()];
        Assert.NotEmpty(ledgers);
        foreach (JsonElement ledger in ledgers)
        {
            double sum = ledger.GetProperty("shares").EnumerateArray().Sum(share => share.EnumerateObject().First(field => field.Name.StartsWith("share", StringComparison.Ordinal)).Value.GetDouble());
            double difference = ledger.EnumerateObject().First(field => field.Name.StartsWith("difference", StringComparison.Ordinal)).Value.GetDouble();
            Assert.Equal(difference, sum, 1e-9);
        }
    }

    [Fact]
    public void Blame_prints_bars_and_their_sum()
    {
        CliResult result = Cli.Run("blame", "redshank", "greenshank", "--metric", "stop_time", "--order");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("together, ms", result.Output, StringComparison.Ordinal);
        Assert.Contains("|#", result.Output, StringComparison.Ordinal);
        // the pair differs in its motors only
        Assert.Contains("motor", result.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("propeller aerodynamics", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Grow_finds_a_like_build()
    {
        JsonElement root = JsonDocument.Parse(
            Cli.Run("grow", "wagtail", "--by", "propeller.diameter", "--points", "4", "--range", "0.8..1.05", "--like", "pipit", "--metric", "hover_power", "--json").Output).RootElement;
        Assert.Equal("propeller.diameter", root.GetProperty("part").GetString());
        Assert.True(root.GetProperty("match").GetProperty("target").GetDouble() > 0);
        Assert.NotEmpty(root.GetProperty("curves")[0].GetProperty("sentences").EnumerateArray());
    }

    [Theory]
    [InlineData("same-gains")]
    [InlineData("limit")]
    [InlineData("bare")]
    public void Policies_are_printed(string policy)
    {
        JsonElement root = JsonDocument.Parse(Cli.Run("compare", "wagtail", "pipit", "--policy", policy, "--json").Output).RootElement;
        Assert.Equal(policy, root.GetProperty("policy").GetString());
        Assert.All(root.GetProperty("work").EnumerateArray(), work => Assert.InRange(work.GetProperty("saturated_share_a").GetDouble(), 0, 1));
    }

    [Theory]
    [InlineData(2, "matched, same-gains, limit, bare", "compare", "wagtail", "curlew", "--policy", "nonsense")]
    [InlineData(2, ".html, .md or .json", "compare", "wagtail", "curlew", "--sheet", "sheet.pdf")]
    [InlineData(1, "there is no folder", "compare", "wagtail", "curlew", "--sheet", "no/such/folder/s.html")]
    [InlineData(2, "20 and 100000", "compare", "wagtail", "curlew", "--draws", "5")]
    [InlineData(2, "two percentages", "compare", "wagtail", "curlew", "--bands", "15,5")]
    [InlineData(2, "There is no metric 'speed'", "compare", "wagtail", "curlew", "--weights", "speed=2")]
    [InlineData(1, "There is no metric 'stop'", "blame", "wagtail", "curlew", "--metric", "stop")]
    [InlineData(1, "can grow", "grow", "wagtail", "--by", "motor.size")]
    [InlineData(2, "0.4..2.6", "grow", "wagtail", "--range", "2..1")]
    [InlineData(2, "3 and 1000", "grow", "wagtail", "--points", "2")]
    public void Mistakes_are_told_in_one_line(int code, string words, params string[] args)
    {
        CliResult result = Cli.Run(args);
        Assert.Equal(code, result.ExitCode);
        Assert.Contains(words, result.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", result.Errors, StringComparison.Ordinal);
    }
}
