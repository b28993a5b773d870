using System.Xml.Linq;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Tests.Sheet;

/// <summary>
/// Bars are as long as their numbers: places are read back from the drawing by its own ticks, and nothing lies over anything else.
/// </summary>
public class DrawnBarsTests
{
    private static readonly SignedBar[] Bars =
    [
        new("first", 0, 3.2, "+3.2") { Circle = 2.5, Stroke = -0.5, Middle = 1 },
        new("second", 3.2, -1.4, "-4.6"),
        new("sum", 0, -1.4, "-1.4") { Sum = true },
    ];

    [Fact]
    public void Signed_bars_reach_from_their_one_end_to_the_other()
    {
        XElement svg = SignedBars.Draw("label", "axis, N", Bars, "p-", mark: 2);
        Func<double, double> place = Scale(svg);
        XElement[] boxes = [.. svg.Elements("rect")];
        // a bar of two fills is two boxes
        Check(boxes[0], place(0), place(1));
        Check(boxes[1], place(1), place(3.2));
        Check(boxes[2], place(-1.4), place(3.2));
        Check(boxes[3], place(-1.4), place(0));
        Assert.Equal(["url(#p-hatch)", SvgParts.Bar, SvgParts.Bar, "#fff"], boxes.Select(box => box.Attribute("fill")!.Value));
        Assert.Equal("p-hatch", svg.Element("defs")!.Element("pattern")!.Attribute("id")!.Value);
        XElement circle = svg.Elements("circle").Single();
        Near(place(2.5), Number(circle, "cx"));
        Near(Number(boxes[1], "y") + (Number(boxes[1], "height") / 2), Number(circle, "cy"));

        XElement[] upright = [.. svg.Elements("line").Where(line => line.Attribute("x1")!.Value == line.Attribute("x2")!.Value)];
        XElement stroke = upright.Single(line => line.Attribute("stroke-width")!.Value == "3");
        Near(place(-0.5), Number(stroke, "x1"));
        Assert.True(Number(stroke, "y1") < Number(boxes[1], "y") && Number(stroke, "y2") > Number(boxes[1], "y") + Number(boxes[1], "height"));
        Near(place(2), Number(upright.Single(line => line.Attribute("stroke-dasharray") is not null), "x1"));
        Near(place(0), Number(upright.Single(line => line.Attribute("stroke-width")!.Value == "1.4"), "x1"));
        Assert.DoesNotContain(SignedBars.Draw("label", "axis", Bars, "p").Elements("line"), line => line.Attribute("stroke-dasharray") is not null);

        void Check(XElement box, double left, double right)
        {
            Near(left, Number(box, "x"));
            Near(right, Number(box, "x") + Number(box, "width"));
        }
    }

    /// <summary>Words stand above their bar and below the one before; axis and ticks stand below all, within the picture.</summary>
    [Fact]
    public void Signed_bars_and_their_words_keep_clear_of_each_other()
    {
        XElement svg = SignedBars.Draw("label", "axis, N", [.. Bars, new(new string('w', 90), 0, 1, "1")], "p-");
        double[] size = [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(double.Parse)];
        (double Left, double Right, double Top, double Bottom)[] boxes = [.. svg.Elements("rect").Select(box =>
            (Number(box, "x"), Number(box, "x") + Number(box, "width"), Number(box, "y"), Number(box, "y") + Number(box, "height")))];
        XElement[] words = [.. svg.Elements("text").Where(text => text.Attribute("text-anchor")!.Value == "start")];
        Assert.Equal(["first", "second", "sum"], words.Take(3).Select(text => text.Value));
        Assert.InRange(words[3].Value.Length, 40, 60);
        double[] tops = [.. boxes.Select(box => box.Top).Distinct()];
        Assert.Equal(words.Length, tops.Length);
        for (int n = 0; n < words.Length; n++)
        {
            double line = Number(words[n], "y");
            Assert.True(line < tops[n] && line - 12.5 > (n == 0 ? -1 : tops[n - 1] + 12), $"words {n}: {line}");
        }
        XElement[] numbers = [.. svg.Elements("text").Where(text => text.Attribute("text-anchor")!.Value == "end")];
        Assert.Equal(["+3.2", "-4.6", "-1.4", "1"], numbers.Select(text => text.Value));
        for (int n = 0; n < numbers.Length; n++) Assert.InRange(Number(numbers[n], "y"), tops[n] + 6, tops[n] + 13);
        // room for a number of ten letters
        Assert.All(boxes, box => Assert.InRange(box.Right, 0, Number(numbers[0], "x") - 70));
        // the longest fills what is left
        Assert.InRange(boxes.Max(box => box.Right) - boxes.Min(box => box.Left), 380, 480);
        double lowest = boxes.Max(box => box.Bottom);
        XElement[] below = [.. svg.Elements("text").Where(text => text.Attribute("text-anchor")!.Value == "middle")];
        Assert.Equal("axis, N", below[^1].Value);
        Assert.All(below, text => Assert.InRange(Number(text, "y"), lowest + 12, size[3] - 4));
        Assert.True(Number(below[^1], "y") > Number(below[0], "y") + 12);
    }

    /// <summary>Three to eight ticks at multiples of 1, 2 or 5 times a power of ten, none beyond the numbers.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0, 1.4)]
    [InlineData(-0.003, 0.0021)]
    [InlineData(-2, 1.4)]
    [InlineData(0, 3.6)]
    [InlineData(-690, 0)]
    [InlineData(0, 71)]
    [InlineData(-48, 50)]
    public void Ticks_are_round(double least, double most)
    {
        (double Value, double X)[] ticks = Ticks(SignedBars.Draw("label", "axis", [new("bar", least, most, "")], "p"));
        Assert.InRange(ticks.Length, 3, 9);
        double step = ticks[1].Value - ticks[0].Value, mantissa = step / Math.Pow(10, Math.Floor(Math.Log10(step) + 1e-9));
        Assert.Contains(new[] { 1.0, 2, 5 }, round => Math.Abs(mantissa - round) < 1e-9);
        Assert.All(ticks, tick => Assert.InRange(tick.Value, least - 1e-9, most + 1e-9));
        Assert.All(ticks, tick => Assert.Equal(Math.Round(tick.Value / step), tick.Value / step, 1e-6));
        // none is left out at either end
        Assert.True(ticks[0].Value - step < least && ticks[^1].Value + step > most);
    }

    [Fact]
    public void Nothing_to_draw_is_drawn_as_nothing()
    {
        XElement svg = SignedBars.Draw("label", "axis", [new("none", 0, 0, "0"), new("unknown", 0, double.NaN, "-") { Sum = true }], "p");
        Assert.Equal(0, Number(svg.Elements("rect").First(), "width"));
    }

    [Fact]
    public void Stacked_parts_follow_each_other_and_share_the_width()
    {
        XElement svg = StackedBars.Draw("label", "share", ["a", "b", "c", "d"], [new("one", [1, 0, 2, 1], 8, "4"), new("two", [4, 2, 1, 1], 8, "8", Tight: true), new("three", [1, 1, 0, 0], 0, "-")], "p-");
        XElement[] parts = [.. svg.Elements("rect").Where(box => Number(box, "height") == 14)];
        Assert.Equal(["p-k0", "p-k2", "p-k3", "p-k0", "p-k1", "p-k2", "p-k3"], parts.Select(box => box.Attribute("fill")!.Value[5..^1]));
        const double left = 8, full = SvgParts.Width - 16;
        double[] ends = [0, 1, 1, 3, 3, 4, 0, 4, 4, 6, 6, 7, 7, 8];
        for (int n = 0; n < parts.Length; n++)
        {
            Near(left + (full * ends[2 * n] / 8), Number(parts[n], "x"));
            Near(left + (full * ends[(2 * n) + 1] / 8), Number(parts[n], "x") + Number(parts[n], "width"));
        }
        Assert.Equal(["p-k0", "p-k1", "p-k2", "p-k3"], svg.Element("defs")!.Elements("pattern").Select(pattern => pattern.Attribute("id")!.Value));
        double[] words = [.. ((string[])["one", "two", "three", "share"]).Select(word => Number(svg.Elements("text").Single(text => text.Value == word), "y"))];
        // what belongs together stands closer
        Assert.True(words[1] - words[0] < words[2] - words[1] && words[3] > words[2] + 12.5 && words[3] < Height(svg) - 3);
        double[] tops = [.. parts.Select(box => Number(box, "y")).Distinct()];
        Assert.True(words[0] < tops[0] && tops[0] + 14 < words[1] - 12 && words[1] < tops[1]);
        Assert.Equal(["4", "8", "-"], svg.Elements("text").Where(text => text.Attribute("text-anchor")!.Value == "end").Select(text => text.Value));
    }

    /// <summary>Three names to a row, above the bars, each behind its own sample.</summary>
    [Fact]
    public void The_legend_of_stacked_bars_stands_in_rows_of_three()
    {
        string[] kinds = ["k0", "k1", "k2", "k3", "k4", "k5", "k6"];
        XElement svg = StackedBars.Draw("label", "share", kinds, [new("bar", [1, 1, 1, 1, 1, 1, 1], 7, "7")], "p-");
        XElement[] samples = [.. svg.Elements("rect").Where(box => Number(box, "height") == 13)], names = [.. svg.Elements("text").Where(text => kinds.Contains(text.Value))];
        Assert.Equal(kinds, names.Select(name => name.Value));
        Assert.Equal(7, samples.Length);
        for (int n = 0; n < 7; n++)
        {
            Assert.Equal($"url(#p-k{n})", samples[n].Attribute("fill")!.Value);
            double x = Number(samples[n], "x"), y = Number(samples[n], "y"), line = Number(names[n], "y");
            Near(8 + (n % 3 * (SvgParts.Width - 16) / 3.0), x, 1);
            Assert.True(Number(names[n], "x") > x + 18 && line > y + 8 && line < y + 14);
            Assert.Equal(Number(samples[n / 3 * 3], "y"), y);
            if (n >= 3) Assert.True(y >= Number(samples[n - 3], "y") + 13);
        }
        double bar = Number(svg.Elements("text").Single(text => text.Value == "bar"), "y");
        Assert.True(bar - 12 > Number(samples[6], "y") + 13);
        // seven fills are told apart without colour
        Assert.Equal(7, svg.Element("defs")!.Elements("pattern").Select(pattern => pattern.Element("path")?.Attribute("d")?.Value).Distinct().Count());
    }

    private static double Height(XElement svg) => double.Parse(svg.Attribute("viewBox")!.Value.Split(' ')[3]);

    private static double Number(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value);

    private static void Near(double expected, double actual, double tolerance = 0.21) => Assert.Equal(expected, actual, tolerance);

    private static (double Value, double X)[] Ticks(XElement svg) =>
        [.. svg.Elements("text").Where(text => text.Attribute("font-size")!.Value == "11.5").Select(text => (double.Parse(text.Value), Number(text, "x")))];

    /// <summary>From a number to pixels, by the outermost ticks; the others lie on that line, each under its own stroke.</summary>
    private static Func<double, double> Scale(XElement svg)
    {
        (double Value, double X)[] ticks = Ticks(svg);
        double slope = (ticks[^1].X - ticks[0].X) / (ticks[^1].Value - ticks[0].Value);
        double Place(double value) => ticks[0].X + (slope * (value - ticks[0].Value));
        Assert.All(ticks, tick => Near(Place(tick.Value), tick.X));
        Assert.All(ticks, tick => Assert.Contains(svg.Elements("line"), line => line.Attribute("stroke")!.Value == "#E4E4E4" && Number(line, "x1") == tick.X && Number(line, "x2") == tick.X));
        return Place;
    }
}
