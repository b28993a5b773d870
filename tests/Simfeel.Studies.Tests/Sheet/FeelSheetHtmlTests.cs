using System.Text.RegularExpressions;
using System.Xml.Linq;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Tests.Sheet;

public partial class FeelSheetHtmlTests
{
    private static readonly Lazy<string> Page = new(() => FeelSheetHtml.Write(SampleSheet.Of));
    private static readonly Lazy<XElement> Root = new(() => XDocument.Parse(Page.Value).Root!);

    private static IEnumerable<XElement> All(string name) => Root.Value.Descendants(name);

    [Fact]
    public void It_asks_for_no_other_file()
    {
        Assert.StartsWith("<!DOCTYPE html>", Page.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("http", Page.Value, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", Page.Value, StringComparison.Ordinal);
        Assert.DoesNotContain(Root.Value.DescendantsAndSelf(), element => element.Name.LocalName is "script" or "link" or "img" or "iframe" or "object");
        Assert.All(Root.Value.Descendants().Attributes().Where(attribute => attribute.Name.LocalName is "href" or "src"), link => Assert.StartsWith("#", link.Value));
        // url() may only point within the page
        Assert.All(Urls().Matches(Page.Value), url => Assert.StartsWith("url(#", url.Value));
        Assert.Equal("en", Root.Value.Attribute("lang")?.Value);
    }

    [Fact]
    public void Ids_are_unique_and_what_they_are_asked_for_is_there()
    {
        string[] ids = [.. Root.Value.Descendants().Attributes("id").Select(id => id.Value)];
        Assert.NotEmpty(ids);
        Assert.Equal(ids.Length, ids.Distinct().Count());
        string[] asked =
        [
            .. Urls().Matches(Page.Value).Select(url => url.Value[5..^1]),
            .. Root.Value.Descendants().Attributes("aria-labelledby").Select(label => label.Value),
        ];
        Assert.NotEmpty(asked);
        Assert.All(asked, id => Assert.Contains(id, ids));
    }

    [Fact]
    public void Every_drawing_can_be_read_aloud_and_has_its_words_as_text()
    {
        Assert.NotEmpty(All("svg"));
        Assert.All(All("svg"), svg =>
        {
            Assert.False(string.IsNullOrWhiteSpace(svg.Attribute("aria-label")?.Value));
            Assert.Equal(svg.Attribute("aria-label")!.Value, svg.Element("title")?.Value);
            Assert.NotNull(svg.Attribute("viewBox"));
            Assert.NotEmpty(svg.Descendants("text"));
            Assert.All(svg.Descendants("text"), text => Assert.EndsWith("sans-serif", text.Attribute("font-family")?.Value));
        });
        Assert.All(All("figure"), figure => Assert.False(string.IsNullOrWhiteSpace(figure.Element("figcaption")?.Value)));
    }

    [Fact]
    public void Every_axis_says_its_unit_and_stands_in_its_drawing()
    {
        Figure[] figures = [.. SheetPages.Of(SampleSheet.Of).Sections.SelectMany(section => section.Blocks).SelectMany(Flat).OfType<Figure>()];
        Assert.Equal(All("svg").Count(), figures.Length);
        // one ledger, one growth curve, reserve up and down, mass, four traces, one tornado
        Assert.Equal(10, figures.Length);
        foreach ((Figure figure, XElement svg) in figures.Zip(All("svg")))
        {
            Assert.Equal(figure.Label, svg.Attribute("aria-label")!.Value);
            Assert.NotEmpty(figure.Axes);
            Assert.All(figure.Axes, axis =>
            {
                Assert.Matches(", (ms|m|m/s|s|min|deg|deg/s|N m|1000 rpm|g|A|W|ratio)$", axis);
                Assert.Contains(svg.Descendants("text"), text => text.Value == axis);
            });
        }
    }

    [Fact]
    public void Tables_have_captions_scopes_and_rows_as_wide_as_their_heads()
    {
        Assert.All(All("table"), table =>
        {
            Assert.False(string.IsNullOrWhiteSpace(table.Element("caption")?.Value));
            int columns = table.Element("thead")!.Element("tr")!.Elements("th").Count();
            Assert.All(table.Descendants("tr"), row =>
                Assert.Equal(columns, row.Elements().Sum(cell => (int?)cell.Attribute("colspan") ?? 1)));
            Assert.All(table.Descendants("th"), head => Assert.NotNull(head.Attribute("scope")));
        });
    }

    [Fact]
    public void Elements_without_content_are_not_shortened() =>
        Assert.DoesNotMatch("<(?:td|th|p|div|span|dd|li|section)(?: [^<>]*)?/>", Page.Value);

    [Fact]
    public void The_table_says_what_is_felt_and_undecided_outweighs_it()
    {
        Assert.Contains("felt", Row(Root.Value, "time to stop the roll, ms")[4], StringComparison.Ordinal);
        Assert.Equal("? undecided", Row(Root.Value, "climb in the first second, m")[4]);
        Assert.Equal("\u00B7 a reading", Row(Root.Value, "power to hover, W")[4]);
        string words = Root.Value.Descendants("section").Single(section => section.Attribute("id")?.Value == "words").Value;
        Assert.Contains("Undecided, since too little is known of the parts: climb in the first second", words, StringComparison.Ordinal);
        Assert.DoesNotContain("thrown open in a hover", words, StringComparison.Ordinal);
    }

    /// <summary>Of two like builds nothing is undecided: a narrow band about zero is not felt.</summary>
    [Fact]
    public void Like_builds_are_not_undecided_but_not_felt()
    {
        FeelSheet sheet = SampleSheet.Of;
        FeelSheet alike = sheet with
        {
            B = sheet.A,
            Comparison = sheet.Comparison with
            {
                B = sheet.Comparison.A,
                Metrics = [.. sheet.Comparison.Metrics.Select(pair => pair with { B = pair.A })],
            },
            Uncertainty = sheet.Uncertainty with { Metrics = [.. sheet.Uncertainty.Metrics.Select(known => known with { Difference = new(0, 0, 0) })] },
            Blame = [.. sheet.Blame.Select(ledger => ledger with { B = ledger.A, Gap = null, Shares = [.. ledger.Shares.Select(share => share with { Share = 0, OneAtATime = 0, LastOneIn = 0 })] })],
        };
        XElement root = XDocument.Parse(FeelSheetHtml.Write(alike)).Root!;
        Assert.Equal("\u25A1\u25A1 not felt", Row(root, "time to stop the roll, ms")[4]);
        Assert.Contains("The build files say the same in every number.", root.Value, StringComparison.Ordinal);
        Assert.Contains("The builds do not differ in any part.", root.Value, StringComparison.Ordinal);
        Assert.Contains("fly exactly alike", root.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_is_a_dash()
    {
        XElement root = XDocument.Parse(FeelSheetHtml.Write(SampleSheet.Missing("stop_time"))).Root!;
        string[] row = Row(root, "time to stop the roll, ms");
        Assert.Equal("-", row[2]);
        Assert.Equal("-", row[3]);
        Assert.Equal("- unknown", row[4]);
        Assert.DoesNotContain("NaN", root.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ledger_with_a_gap_says_why_in_place_of_its_chart()
    {
        FeelSheet gaps = SampleSheet.Of with { Blame = [.. SampleSheet.Of.Blame.Select(ledger => ledger with { Gap = "no hybrid flies." })] };
        XElement blame = XDocument.Parse(FeelSheetHtml.Write(gaps)).Root!.Descendants("section").Single(section => section.Attribute("id")?.Value == "blame");
        Assert.Empty(blame.Descendants("svg"));
        Assert.Equal(gaps.Blame.Count, blame.Descendants("p").Count(text => text.Value == "No blame can be shared out: no hybrid flies."));
    }

    [Fact]
    public void Whatever_a_build_is_called_stays_text()
    {
        string page = FeelSheetHtml.Write(SampleSheet.Named(SampleSheet.Hostile, "<b>&amp;"));
        XElement root = XDocument.Parse(page).Root!;
        Assert.Empty(root.Descendants("script"));
        Assert.Empty(root.Descendants("b"));
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        string shown = SampleSheet.Hostile.Replace('\u0001', '\uFFFD');
        Assert.Contains(root.Descendants("h2"), plate => plate.Value == "\u25CF A " + shown);
        Assert.Contains(root.Descendants("h2"), plate => plate.Value == "\u25B2 B <b>&amp;");
    }

    /// <summary>Names from right to left keep their direction to themselves; others stand in the text as ever.</summary>
    [Fact]
    public void Names_from_right_to_left_do_not_turn_the_numbers_beside_them()
    {
        const string hebrew = "\u05E2\u05D5\u05E8\u05D1 \u05D2\u05D3\u05D5\u05DC", arabic = "\u0637\u064F\u0648\u0644 5 \u0630\u0631\u0627\u0639";
        XElement root = XDocument.Parse(FeelSheetHtml.Write(SampleSheet.Named(hebrew, arabic))).Root!;
        XText[] turned = [.. root.Descendants().Where(element => element.Name != "bdi" && !element.AncestorsAndSelf().Any(outer => outer.Name == "svg" || outer.Name == "head"))
            .SelectMany(element => element.Nodes().OfType<XText>()).Where(text => text.Value.Any(c => c is >= '\u0590' and <= '\u08FF'))];
        Assert.Empty(turned);
        Assert.Contains(root.Descendants("bdi"), name => name.Value == hebrew);
        Assert.Contains(root.Descendants("h2"), plate => plate.Value == "\u25B2 B " + arabic);
        // the number between two words of a name, and all others, stand outside
        Assert.DoesNotContain(root.Descendants("bdi"), name => name.Value.Any(char.IsAsciiDigit));
        Assert.DoesNotContain("<bdi>", Page.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_builds_of_one_name_are_told_apart()
    {
        XElement root = XDocument.Parse(FeelSheetHtml.Write(SampleSheet.Named("Twin", "Twin"))).Root!;
        Assert.Equal("Twin (A) and Twin (B): how they differ in flight", root.Descendants("h1").Single().Value);
    }

    [Fact]
    public void The_same_sheet_gives_the_same_bytes() => Assert.Equal(Page.Value, FeelSheetHtml.Write(SampleSheet.Of));

    [Fact]
    public void Shares_are_printed_with_the_sum_that_they_make()
    {
        string blame = All("section").Single(section => section.Attribute("id")?.Value == "blame").Value;
        string difference = Numbers.DifferenceOf(SampleSheet.Metric("stop_time"), SampleSheet.Of.Blame[0].Difference);
        Assert.Contains($"The shares add up to {difference}, the whole difference.", blame, StringComparison.Ordinal);
    }

    private static string[] Row(XElement root, string what) =>
        [.. root.Descendants("section").Single(section => section.Attribute("id")?.Value == "numbers")
            .Descendants("tr").First(row => row.Element("th")?.Value == what).Elements().Select(cell => cell.Value)];

    private static IEnumerable<Block> Flat(Block block) => block switch
    {
        Beside beside => beside.Blocks.SelectMany(Flat),
        Fold fold => fold.Blocks.SelectMany(Flat),
        _ => [block],
    };

    [GeneratedRegex(@"url\([^)]*\)")]
    private static partial Regex Urls();
}
