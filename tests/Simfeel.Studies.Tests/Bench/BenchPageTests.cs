using System.Text.RegularExpressions;
using System.Xml.Linq;
using Simfeel.Builds;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Pages;

namespace Simfeel.Studies.Tests.Bench;

public partial class BenchPageTests
{
    private const string Readings = "[mass]\nmass_g = 603\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [31.0, 30.8, 31.1]\n[balance_x]\nedge_mm = [-6, -5.5, -6.5]\n";

    private static readonly Lazy<string> Sheet = new(() => BenchWorksheet.Html(BenchPlan.Of(BenchCases.Wagtail)));
    private static readonly Lazy<string> Result = new(() => BenchResultPage.Html(BenchCases.Report(Readings)));

    public static TheoryData<string> Pages => [Sheet.Value, Result.Value];

    [Theory]
    [MemberData(nameof(Pages))]
    public void It_asks_for_no_other_file(string page)
    {
        XElement root = XDocument.Parse(page).Root!;
        Assert.DoesNotContain("http", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", page, StringComparison.Ordinal);
        Assert.DoesNotContain("url(", page, StringComparison.Ordinal);
        Assert.DoesNotContain(root.DescendantsAndSelf(), element => element.Name.LocalName is "script" or "link" or "img" or "iframe" or "object" or "image" or "use");
        Assert.DoesNotContain(root.Descendants().Attributes(), attribute => attribute.Name.LocalName is "href" or "src" || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Drawings_can_be_read_aloud_and_tables_have_captions(string page)
    {
        XElement root = XDocument.Parse(page).Root!;
        Assert.NotEmpty(root.Descendants("svg"));
        Assert.All(root.Descendants("svg"), svg => Assert.True(svg.Attribute("aria-label")!.Value.Length > 20 && svg.Attribute("aria-label")!.Value == svg.Element("title")!.Value));
        Assert.All(root.Descendants("table"), table => Assert.NotEqual("", table.Element("caption")!.Value));
        string[] ids = [.. root.Descendants().Attributes("id").Select(id => id.Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    /// <summary>Black on white paper: nothing that a page draws or writes needs a colour.</summary>
    [Theory]
    [MemberData(nameof(Pages))]
    public void Drawings_are_grey(string page)
    {
        string[] colours =
        [
            .. XDocument.Parse(page).Root!.Descendants("svg").DescendantsAndSelf().Attributes()
                .Where(attribute => attribute.Name.LocalName is "fill" or "stroke").Select(attribute => attribute.Value).Distinct(),
        ];
        Assert.All(colours, colour => Assert.Contains(colour, (string[])["none", "#fff", "#e4e4e4", "#202020", "#8a929c"]));
    }

    public static TheoryData<string> Cautions =>
    [
        "UNPLUG the pack", "Propellers stay on", "must not turn", "never measure, hang or balance a craft with spinning propellers", "something soft",
        "Nothing may hang or swing above people", "hands and face away", "Never drop, squeeze, bend or pierce a lithium pack", "outside to a fire-safe place",
        "its maker's advice", "local rules go before",
    ];

    [Theory]
    [MemberData(nameof(Cautions))]
    public void The_worksheet_warns_before_anything_is_touched(string words)
    {
        string text = XDocument.Parse(Sheet.Value).Root!.Element("body")!.Value;
        Assert.InRange(text.IndexOf(words, StringComparison.Ordinal), 0, text.IndexOf("1. Weigh it", StringComparison.Ordinal));
        Assert.Contains(words, Unescaped(BenchWorksheet.Markdown(BenchPlan.Of(BenchCases.Wagtail))), StringComparison.Ordinal);
    }

    /// <summary>At the place of risk: each test opens with its own warning.</summary>
    [Theory]
    [InlineData("swing", "Pack unplugged?")]
    [InlineData("balance", "Never balance a craft whose propellers spin")]
    public void Each_test_opens_with_its_warning(string id, string words)
    {
        XElement section = XDocument.Parse(Sheet.Value).Root!.Descendants("section").Single(section => section.Attribute("id")?.Value == id);
        XElement first = section.Elements().ElementAt(1);
        Assert.Equal("warning", first.Attribute("class")?.Value);
        Assert.Contains(words, first.Value, StringComparison.Ordinal);
    }

    /// <summary>Nobody should read towards an answer: of the model's numbers only the periods stand there, and boxes are empty.</summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    [InlineData("sanderling")]
    public void The_worksheet_tells_the_period_and_no_answer(string name)
    {
        AssembledBuild build = BenchCases.Starter(name);
        BenchPlan plan = BenchPlan.Of(build);
        XElement body = XDocument.Parse(BenchWorksheet.Html(plan)).Root!.Element("body")!;
        string[] numbers = [.. Number().Matches(string.Join(' ', body.DescendantNodes().OfType<XText>().Select(text => text.Value))).Select(match => match.Value)];
        Assert.All(plan.Tests, test => Assert.Contains($"{test.Period:F2}", numbers));
        double[] answers =
        [
            1e3 * build.Craft.Mass, 1e3 * build.p_OBcm.X, 1e3 * build.p_OBcm.Z,
            .. plan.Tests.Select(test => 1e3 * test.Axis.Moment(build.Craft.I_BBcm_B)),
        ];
        foreach (double answer in answers.Where(answer => Math.Abs(answer) > 1e-6))
        {
            Assert.DoesNotContain(answer.ToString("G4"), numbers);
            Assert.DoesNotContain(answer.ToString("F1"), numbers.Where(number => number.Length > 4));
        }
        Assert.DoesNotContain(answers[0].ToString("F0"), numbers);
        XElement[] blanks = [.. body.Descendants("td").Where(cell => cell.Attribute("class")?.Value == "blank")];
        Assert.True(blanks.Length > 40);
        Assert.All(blanks, blank => Assert.Equal("", blank.Value));
    }

    [Fact]
    public void Whatever_a_build_is_called_stays_text()
    {
        BenchPlan plan = BenchPlan.Of(BenchCases.Wagtail);
        const string name = "</style><script>alert('x')</script> & | *b*";
        plan = plan with { Build = plan.Build with { Build = plan.Build.Build with { Name = name } } };
        XElement root = XDocument.Parse(BenchWorksheet.Html(plan)).Root!;
        Assert.Empty(root.Descendants("script"));
        Assert.Equal(name + " on the bench", root.Descendants("h1").Single().Value);
        Assert.Contains("\\*b\\*", BenchWorksheet.Markdown(plan), StringComparison.Ordinal);
    }

    /// <summary>
    /// The band by hand, in percent: spacing 2 x 0.5 / 130, length 0.1, mass 1 / 603, angle 0.23, habit 2 x 0.05 / 31 and scatter 2 x
    /// 0.153 / sqrt(3) / 31 make 1.05 with 23 degrees of freedom, times t = 2.07.
    /// </summary>
    [Fact]
    public void The_result_says_numbers_bands_and_verdicts()
    {
        XElement root = XDocument.Parse(Result.Value).Root!;
        string[] roll = [.. root.Descendants("tr").First(row => row.Element("th")?.Value == "inertia, roll").Elements().Select(cell => cell.Value)];
        Assert.Equal(["inertia, roll", "g m2", "1.447", "1.511", "2.2 %", "-4.2 %", "the model is low"], roll);
        Assert.Contains("look at the motors", root.Value, StringComparison.Ordinal);
        string[] yaw = [.. root.Descendants("tr").First(row => row.Element("th")?.Value == "inertia, yaw").Elements().Select(cell => cell.Value)];
        Assert.Equal(["inertia, yaw", "g m2", "2.484", "-", "-", "-", "not measured"], yaw);
        Assert.DoesNotContain("NaN", root.Value, StringComparison.Ordinal);
        // a dot for each of the three measured numbers, or a triangle
        Assert.Equal(3, root.Descendants("circle").Count(circle => circle.Attribute("fill")?.Value == "#202020") + root.Descendants("figure").Single().Descendants("path").Count());
        Assert.Contains("| inertia, roll | g m2 | 1.447 | 1.511 |", BenchResultPage.Markdown(BenchCases.Report(Readings)), StringComparison.Ordinal);
    }

    private static string Unescaped(string markdown) => markdown.Replace("\\", "", StringComparison.Ordinal);

    [GeneratedRegex(@"-?\d+(\.\d+)?")]
    private static partial Regex Number();
}
