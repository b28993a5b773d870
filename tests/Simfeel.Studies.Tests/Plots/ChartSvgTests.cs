using System.Xml.Linq;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Tests.Plots;

public class ChartSvgTests
{
    private static readonly Chart Sample = new(
        "", new("time, s"), new("height, m"),
        [ChartSeries.Line("first", ChartPalette.BuildA, [(0, 0), (1, 2)]), ChartSeries.Line("second", ChartPalette.BuildB, [(0, 1), (1, 1)])])
    {
        Notes = [new("top", 1, 2)],
    };

    /// <summary>Also after other charts: the library counts its ids through the life of the program.</summary>
    [Fact]
    public void The_same_chart_gives_the_same_element()
    {
        string first = ChartSvg.Of(Sample, "label", "a-").ToString();
        _ = ChartSvg.Of(Sample with { Series = [] }, "label", "b-");
        Assert.Equal(first, ChartSvg.Of(Sample, "label", "a-").ToString());
    }

    [Fact]
    public void Words_are_text_and_nothing_points_outside()
    {
        XElement svg = ChartSvg.Of(Sample, "label", "a-");
        string[] words = [.. svg.Descendants("text").Select(text => text.Value)];
        Assert.All(["time, s", "height, m", "first", "second", "top"], word => Assert.Contains(word, words));
        Assert.DoesNotContain("http", svg.ToString(), StringComparison.Ordinal);
        Assert.All(svg.Descendants().Attributes("id"), id => Assert.StartsWith("a-", id.Value));
        Assert.All(svg.Descendants().Attributes("clip-path"), clip =>
            Assert.Contains(svg.Descendants("clipPath"), path => clip.Value == $"url(#{path.Attribute("id")!.Value})"));
    }

    [Fact]
    public void The_two_builds_differ_in_dashes_as_well()
    {
        XElement[] samples = [.. ChartSvg.Of(Sample, "label", "a-").Elements("line")];
        Assert.Equal(2, samples.Length);
        Assert.Null(samples[0].Attribute("stroke-dasharray"));
        Assert.NotNull(samples[1].Attribute("stroke-dasharray"));
        Assert.NotEqual(samples[0].Attribute("stroke")!.Value, samples[1].Attribute("stroke")!.Value);
    }
}
