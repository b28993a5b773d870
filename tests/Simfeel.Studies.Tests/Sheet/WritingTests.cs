using System.Xml.Linq;
using Simfeel.Builds;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Sheet.Sections;
using Simfeel.Studies.Sheet.Writing;
using Simfeel.Studies.Tests.Metrics;

namespace Simfeel.Studies.Tests.Sheet;

/// <summary>Every kind of block in both forms, and what text may hold; by hand.</summary>
public class WritingTests
{
    private static readonly DataTable Numbers = new(
        "few numbers", [new("what"), new("words", true), new("value"), Column.Unit],
        [new RowGroup("", [new(["a", "b", "1", "m"])]), new RowGroup("more|less", [new(["c", "*d*", "-2", "s"]), new(["sum", "", "-1", ""], true)])]);

    private static readonly SheetPage Page = new("Title *x*", "A line.",
    [
        new("plates", "Kind", [new Plate("Gull", "Small.", [("mass", "1 g"), ("-sign", "2")], false), new Plate("Tern", "Large.", [], true)]),
        new("body", "Second <part>",
        [
            new Paragraph("+ plain", Tone.Plain), new Paragraph("loud", Tone.Warning), new Heading("A heading"), new BulletList(["one", "2) two", "10. ten", "3 three"]), Numbers,
            new Beside([new Paragraph("left"), new Paragraph("right")]), new Fold("Folded", [new Paragraph("inside")]),
            new Figure("label", "caption", ["x, m"], id => new XElement("svg", new XElement("g", new XAttribute("id", id))), Numbers),
            new Figure("other", "no numbers", [], id => new XElement("svg", new XElement("g", new XAttribute("id", id)))),
        ]),
    ]);

    [Fact]
    public void Markdown_has_every_block()
    {
        const string table = "*few numbers*\n\n| what | words | value | unit |\n| --- | --- | ---: | --- |\n| a | b | 1 | m |\n| **more\\|less** |  |  |  |\n| c | \\*d\\* | -2 | s |\n| **sum** |  | -1 |  |\n\n";
        Assert.Equal(
            "# Title \\*x\\*\n\nA line.\n\n**\u25CF A Gull**: Small.\n\n- mass: 1 g\n- \\-sign: 2\n\n**\u25B2 B Tern**: Large.\n\n\n"
            + "## Second \\<part\\>\n\n\\+ plain\n\nloud\n\n### A heading\n\n- one\n- 2\\) two\n- 10\\. ten\n- 3 three\n\n"
            + table + "left\n\nright\n\n### Folded\n\ninside\n\ncaption\n\n" + table + "no numbers\n",
            MarkdownPage.Write(Page));
    }

    [Fact]
    public void Html_has_every_block()
    {
        string html = HtmlPage.Write(Page, "p{}");
        const string cell = "</tr><tr><th scope=\"row\">";
        foreach (string part in (string[])[
            "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\" /><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" /><title>Title *x*</title><style>p{}</style></head><body><main>",
            "<header id=\"plates\"><p class=\"kind\">Kind</p><h1>Title *x*</h1><p class=\"line\">A line.</p><div class=\"plates\"><div class=\"plate a\"><h2>\u25CF A Gull</h2><p>Small.</p><dl><div><dt>mass</dt><dd>1 g</dd></div>",
            "<div class=\"plate b\"><h2>\u25B2 B Tern</h2><p>Large.</p><dl></dl></div></div></header>",
            "<section id=\"body\" aria-labelledby=\"body-title\"><h2 id=\"body-title\">Second &lt;part&gt;</h2><p>+ plain</p><p class=\"warning\">loud</p><h3>A heading</h3><ul><li>one</li>",
            "<div class=\"scroll short\" role=\"region\" tabindex=\"0\" aria-label=\"few numbers\"><table><caption><span>few numbers</span></caption><thead><tr><th scope=\"col\">what</th><th scope=\"col\" data-words=\"\">words</th><th scope=\"col\">value</th><th scope=\"col\" data-words=\"short\">unit</th></tr></thead>",
            "<tbody><tr><th scope=\"row\">a</th><td data-words=\"\">b</td><td>1</td><td data-words=\"short\">m</td></tr></tbody>",
            "<tbody><tr class=\"group\"><th scope=\"rowgroup\" colspan=\"4\"><span>more|less</span></th>" + cell + "c</th>",
            "<tr class=\"sum\"><th scope=\"row\">sum</th><td data-words=\"\"></td><td>-1</td>",
            "<div class=\"beside\"><div><p>left</p></div><div><p>right</p></div></div><details open=\"open\"><summary>Folded</summary><p>inside</p></details>",
            "<figure><svg><g id=\"d1-\" /></svg><figcaption>caption</figcaption></figure><figure><svg><g id=\"d2-\" /></svg><figcaption>no numbers</figcaption></figure></section></main></body></html>\n",
        ]) Assert.Contains(part, html, StringComparison.Ordinal);
    }

    /// <summary>Fourteen rows stay on one sheet of paper, fifteen do not.</summary>
    [Theory]
    [InlineData(14, "scroll short")]
    [InlineData(15, "scroll")]
    public void Long_tables_may_be_parted(int rows, string expected)
    {
        HtmlBlocks blocks = new();
        XElement table = blocks.Of(new DataTable("t", [new("n")], [new RowGroup("", [.. Enumerable.Range(0, 7).Select(n => new Row([$"{n}"]))]), new RowGroup("", [.. Enumerable.Range(0, rows - 7).Select(n => new Row([$"{n}"]))])]));
        Assert.Equal(expected, table.Attribute("class")!.Value);
    }

    [Fact]
    public void Tones_are_classes()
    {
        HtmlBlocks blocks = new();
        string[] classes = [.. Enum.GetValues<Tone>().Select(tone => blocks.Of(new Paragraph("x", tone)).Attribute("class")?.Value ?? "none")];
        Assert.Equal(["none", "a", "b", "felt", "perhaps", "quiet", "undecided", "warning", "blank"], classes);
    }

    [Theory]
    [InlineData("plain", "plain")]
    [InlineData("a\nb\tc\rd", "a b c d")]
    [InlineData("a\u0001b\u007Fc\uFFFEd", "a\uFFFDb\uFFFDc\uFFFDd")]
    [InlineData("\U0001F600!", "\U0001F600!")]
    public void What_no_page_may_hold_is_replaced(string text, string clean) => Assert.Equal(clean, HtmlPage.Clean(text));

    /// <summary>Halves of a pair, which no attribute of a test can hold.</summary>
    [Fact]
    public void Half_a_pair_is_replaced()
    {
        Assert.Equal("\uFFFDx", HtmlPage.Clean("\uD83Dx"));
        Assert.Equal("x\uFFFD", HtmlPage.Clean("x\uDE00"));
        Assert.Equal("x\uFFFD", HtmlPage.Clean("x\uD83D"));
        Assert.Equal("\uFFFD\U0001F600", HtmlPage.Clean("\uDE00\U0001F600"));
    }

    /// <summary>An underscore within a word is no command of Markdown; at its ends it is.</summary>
    [Theory]
    [InlineData("a_b", "a_b")]
    [InlineData("_ab", "\\_ab")]
    [InlineData("ab_", "ab\\_")]
    [InlineData("a _b", "a \\_b")]
    [InlineData("a_ b", "a\\_ b")]
    [InlineData("`[x]&~\\|>", "\\`\\[x\\]\\&\\~\\\\\\|\\>")]
    [InlineData("-5 m", "\\-5 m")]
    [InlineData("=x", "\\=x")]
    [InlineData("#1", "\\#1")]
    [InlineData("12.", "12\\.")]
    [InlineData("1.5 m", "1\\.5 m")]
    [InlineData("12", "12")]
    [InlineData("x1.", "x1.")]
    [InlineData("", "")]
    public void Nothing_in_a_text_is_a_command(string text, string written) =>
        Assert.Equal($"# \n\n\n\n{written}".TrimEnd('\n') + "\n", MarkdownPage.Write(new("", "", [new("", "", [new Paragraph(text)])])));

    /// <summary>
    /// 1000 readings behind the first stick movement at 0.2 s: every third of them, from two steps before it, as far as the log goes.
    /// </summary>
    [Fact]
    public void A_trace_has_few_rows_from_just_before_the_first_movement()
    {
        int first = (int)Math.Round(Drill.LeadIn / 0.001);
        int[] rows = [.. TraceSection.Rows(SyntheticLog.Of(Drill.LeadIn + 1))];
        Assert.Equal((first - 6, first - 3), (rows[0], rows[1]));
        Assert.InRange(rows[^1], first + 998, first + 1000);
        int[] few = [.. TraceSection.Rows(SyntheticLog.Of(Drill.LeadIn + 0.1))];
        Assert.Equal([.. Enumerable.Range(first - 2, 103)], few);
    }

    [Fact]
    public void Builds_differ_in_the_numbers_that_differ_and_in_those_that_only_one_has()
    {
        Build wagtail = Read("wagtail"), curlew = Read("curlew");
        Assert.Empty(BuildDifference.Between(wagtail, wagtail));
        BuildValue mass = wagtail.Values.First(value => value.Key == "battery.mass_g");
        BuildDifference one = Assert.Single(BuildDifference.Between(wagtail, wagtail with { Values = [.. wagtail.Values.Select(value => value.Key == mass.Key ? value with { Typical = value.Typical + 1 } : value)] }));
        Assert.Equal((mass.Key, "battery", mass.Typical, mass.Typical + 1), (one.Key, one.Group, one.A!.Typical, one.B!.Typical));
        // what rounding leaves is no difference
        Assert.Empty(BuildDifference.Between(wagtail, wagtail with { Values = [.. wagtail.Values.Select(value => value with { Typical = value.Typical + 5e-10 })] }));
        // a number that only one build has, on either side
        Build without = wagtail with { Values = [.. wagtail.Values.Where(value => value.Key != mass.Key)] };
        Assert.Equal((true, false), (Assert.Single(BuildDifference.Between(without, wagtail)).A is null, BuildDifference.Between(without, wagtail)[0].B is null));
        Assert.Equal((false, true), (Assert.Single(BuildDifference.Between(wagtail, without)).A is null, BuildDifference.Between(wagtail, without)[0].B is null));
        string[] keys = [.. BuildDifference.Between(wagtail, curlew).Select(difference => difference.Key)];
        Assert.Equal(keys.Length, keys.Distinct().Count());
        string[] order = [.. BuildDifference.ByName(wagtail).Keys.Union(BuildDifference.ByName(curlew).Keys)];
        Assert.Equal(keys.OrderBy(key => Array.IndexOf(order, key)), keys);
    }

    /// <summary>Wagtail's antenna is its second extra part, Curlew's its third: they are one line, and the receiver, which only Curlew has, another.</summary>
    [Fact]
    public void Extra_parts_are_held_against_each_other_by_name()
    {
        Build wagtail = Read("wagtail"), curlew = Read("curlew");
        BuildDifference receiver = Assert.Single(BuildDifference.Between(wagtail, curlew), difference => difference.Key == "extra[satellite receiver].mass_g");
        Assert.Equal(("extra[satellite receiver]", true, 12), (receiver.Group, receiver.A is null, receiver.B!.Typical));
        BuildValue one = BuildDifference.ByName(wagtail)["extra[video antenna].mass_g"], other = BuildDifference.ByName(curlew)["extra[video antenna].mass_g"];
        Assert.Equal((6, 6, "extra[2].mass_g", "extra[3].mass_g"), (one.Typical, other.Typical, one.Key, other.Key));
        // equal names are told apart, none is its number
        Build twins = curlew with { Extras = [curlew.Extras[0], curlew.Extras[0], curlew.Extras[2] with { Name = "" }] };
        Assert.Contains("extra[video transmitter].mass_g", BuildDifference.ByName(twins).Keys);
        Assert.Contains("extra[video transmitter 2].mass_g", BuildDifference.ByName(twins).Keys);
        Assert.Contains("extra[3].mass_g", BuildDifference.ByName(twins).Keys);
    }

    private static Build Read(string name) => BuildReader.Read(Path.Combine(AppContext.BaseDirectory, "builds", name + ".toml")).Build!;
}
