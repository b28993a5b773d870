using System.Xml.Linq;
using Simfeel.Builds;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Bench.Pages;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Drawings of the bench are to scale: places are read back and held against the numbers.</summary>
public class BenchDrawingTests
{
    [Fact]
    public void Dots_stand_where_the_model_lies_in_the_band()
    {
        double[] places = [0, 1, -1, 2.5, -3.9, 4.6, -9];
        XElement svg = Bands(places);
        (double Value, double X)[] ticks = [.. svg.Elements("text").Where(text => text.Attribute("font-size")!.Value == "11.5").Select(text => (double.Parse(text.Value), Number(text, "x")))];
        Assert.Equal([-4.0, -3, -2, -1, 0, 1, 2, 3, 4], ticks.Select(tick => tick.Value));
        double slope = (ticks[8].X - ticks[0].X) / 8;
        double Place(double value) => ticks[4].X + (slope * value);
        Assert.All(ticks, tick => Assert.Equal(Place(tick.Value), tick.X, 0.11));
        // across most of the picture, clear of the titles
        Assert.InRange(ticks[8].X - ticks[0].X, 220, 300);

        XElement band = svg.Elements("rect").Single();
        Assert.Equal(Place(-1), Number(band, "x"), 0.21);
        Assert.Equal(2 * slope, Number(band, "width"), 0.21);
        XElement[] dots = [.. svg.Elements("circle")];
        for (int n = 0; n < 5; n++) Assert.Equal(Place(places[n]), Number(dots[n], "cx"), 0.21);
        Assert.Equal(5, dots.Length);
        // what is farther out has a tip beyond the scale, on its side
        string[] paths = [.. svg.Elements("path").Select(path => path.Attribute("d")!.Value)];
        Assert.Equal(2, paths.Length);
        Assert.True(Tip(paths[0]) > Place(4) + 4 && paths[0].Contains(" l-10,", StringComparison.Ordinal));
        Assert.True(Tip(paths[1]) < Place(-4) - 4 && paths[1].Contains(" l10,", StringComparison.Ordinal));
        // the middle alone is drawn through
        XElement zero = svg.Elements("line").Single(line => line.Attribute("stroke-dasharray") is null);
        Assert.Equal(Place(0), Number(zero, "x1"), 0.11);

        static double Tip(string path) => double.Parse(path[1..path.IndexOf(',', StringComparison.Ordinal)]);
    }

    [Fact]
    public void Every_row_has_its_title_beside_it_and_the_scale_stands_below()
    {
        XElement svg = Bands([0, 1, 2]);
        double[] y = [.. svg.Elements("circle").Select(dot => Number(dot, "cy"))];
        Assert.Equal(y[1] - y[0], y[2] - y[1], 1e-9);
        Assert.True(y[1] - y[0] >= 16);
        XElement band = svg.Elements("rect").Single();
        double bottom = Number(band, "y") + Number(band, "height");
        Assert.True(y[0] > Number(band, "y") && y[2] < bottom);
        for (int n = 0; n < 3; n++) Assert.InRange(Number(svg.Elements("text").Single(text => text.Value == $"q{n}"), "y"), y[n], y[n] + 6);
        double height = double.Parse(svg.Attribute("viewBox")!.Value.Split(' ')[3]);
        XElement[] below = [.. svg.Elements("text").Where(text => text.Attribute("text-anchor")!.Value == "middle")];
        Assert.All(below, text => Assert.InRange(Number(text, "y"), bottom + 10, height - 4));
        Assert.True(Number(below[^1], "y") > Number(below[0], "y") + 12);
    }

    /// <summary>From above with the nose up x is to the right and y down the page; with the right side up the nose is on the left.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Seen_from_above_everything_is_to_scale(bool sideUp)
    {
        Build build = BenchCases.Wagtail.Build;
        const double scale = 500, x = 300, y = 200;
        XElement[] parts = [.. new CraftDrawing(build, scale).Planform(x, y, sideUp)];
        XElement[] propellers = [.. parts.Where(part => part.Name == "circle" && part.Attribute("stroke-dasharray") is not null)];
        Assert.Equal(build.Frame.Mounts.Count, propellers.Length);
        for (int n = 0; n < propellers.Length; n++)
        {
            (double px, double py) = At(build.Frame.Mounts[n].p_OM.X, build.Frame.Mounts[n].p_OM.Y);
            Assert.Equal(px, Number(propellers[n], "cx"), 0.06);
            Assert.Equal(py, Number(propellers[n], "cy"), 0.06);
            Assert.Equal(scale * build.Propeller.Blades.Diameter / 2, Number(propellers[n], "r"), 0.06);
        }
        XElement[] boxes = [.. parts.Where(part => part.Name == "rect")];
        Check(boxes[0], 0, 0, build.Frame.PlateLength, build.Frame.PlateWidth);
        Check(boxes[1], build.Battery.p_OC.X, build.Battery.p_OC.Y, build.Battery.Size.X, build.Battery.Size.Y);
        // the arrow's tip is ahead of the plate
        string[] tip = parts.Single(part => part.Name == "path").Attribute("d")!.Value[1..].Split(' ')[0].Split(',');
        (double nx, double ny) = At(build.Frame.PlateLength / 2, 0);
        double ahead = sideUp ? nx - double.Parse(tip[0]) : ny - double.Parse(tip[1]);
        Assert.InRange(ahead, 5, 14);
        // the widest extent is that of two propellers that stand opposite
        double half = scale * CraftDrawing.Extent(build) / 2;
        Assert.Equal(half, propellers.Max(circle => Math.Max(Math.Abs(Number(circle, "cx") - x), Math.Abs(Number(circle, "cy") - y)) + Number(circle, "r")), 0.2);

        (double X, double Y) At(double forward, double right) =>
            sideUp ? (x - (scale * forward), y - (scale * right)) : (x + (scale * right), y - (scale * forward));

        void Check(XElement box, double forward, double right, double length, double width)
        {
            (double cx, double cy) = At(forward, right);
            Assert.Equal(cx, Number(box, "x") + (Number(box, "width") / 2), 0.11);
            Assert.Equal(cy, Number(box, "y") + (Number(box, "height") / 2), 0.11);
            Assert.Equal(scale * (sideUp ? length : width), Number(box, "width"), 0.06);
            Assert.Equal(scale * (sideUp ? width : length), Number(box, "height"), 0.06);
        }
    }

    /// <summary>From the side the nose is on the left, from ahead the right side is; down is down.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Seen_level_everything_is_to_scale(int axis)
    {
        Build build = BenchCases.Wagtail.Build;
        const double scale = 500, x = 300, y = 200;
        CraftDrawing drawing = new(build, scale);
        XElement[] parts = [.. drawing.Elevation(x, y, axis)], boxes = [.. parts.Where(part => part.Name == "rect")];
        double[] places = [.. build.Frame.Mounts.Select(mount => Math.Round(mount.p_OM[axis], 3)).Distinct()];
        Assert.Equal(places.Length + 2, boxes.Length);
        XElement[] discs = [.. parts.Where(part => part.Name == "line" && part.Attribute("stroke-dasharray") is not null)];
        for (int n = 0; n < places.Length; n++)
        {
            double at = x - (scale * places[n]);
            Assert.Equal(at, Number(boxes[n], "x") + (Number(boxes[n], "width") / 2), 0.11);
            // motors stand on the arms, propellers a little above them
            Assert.Equal(y, Number(boxes[n], "y") + Number(boxes[n], "height"), 0.11);
            Assert.Equal(Math.Max(5, scale * build.Motor.Body.Height), Number(boxes[n], "height"), 0.06);
            Assert.Equal(Math.Max(6, scale * build.Motor.Body.OuterDiameter), Number(boxes[n], "width"), 0.06);
            Assert.Equal(at, (Number(discs[n], "x1") + Number(discs[n], "x2")) / 2, 0.11);
            Assert.Equal(scale * build.Propeller.Blades.Diameter, Number(discs[n], "x2") - Number(discs[n], "x1"), 0.11);
            Assert.InRange(Number(boxes[n], "y") - Number(discs[n], "y1"), 1, 6);
        }
        XElement deck = boxes[^2], pack = boxes[^1];
        Assert.Equal(scale * (axis == 0 ? build.Frame.PlateLength : build.Frame.PlateWidth), Number(deck, "width"), 0.06);
        Assert.Equal(x, Number(deck, "x") + (Number(deck, "width") / 2), 0.11);
        Assert.Equal(y, Number(deck, "y") + Number(deck, "height"), 0.11);
        Assert.Equal(scale * build.Frame.DeckHeight, Number(deck, "height"), 0.06);
        Assert.Equal(scale * build.Battery.Size[axis], Number(pack, "width"), 0.06);
        Assert.Equal(x - (scale * build.Battery.p_OC[axis]), Number(pack, "x") + (Number(pack, "width") / 2), 0.11);
        Assert.Equal(y + (scale * build.Battery.p_OC.Z), Number(pack, "y") + (Number(pack, "height") / 2), 0.11);
        Assert.Equal(scale * build.Battery.Size.Z, Number(pack, "height"), 0.06);
        double highest = Math.Min(Number(deck, "y"), Number(pack, "y"));
        Assert.Equal(y - highest, drawing.Top, 0.11);
        Assert.Equal(scale * build.Frame.Mounts.Max(mount => Math.Abs(mount.p_OM[axis])), drawing.Reach(axis), 1e-9);
        // the nose is marked where it can be seen from the side
        Assert.Equal(axis == 0 ? 1 : 0, parts.Count(part => part.Name == "path"));
    }

    /// <summary>The wires are a spacing apart, to the scale of the craft, and reach from the beam to the stick.</summary>
    [Fact]
    public void Wires_of_the_rigs_are_their_spacing_apart()
    {
        BenchPlan plan = BenchPlan.Of(BenchCases.Wagtail);
        XElement svg = RigSketches.Swing(plan).Draw("p-");
        double propeller = svg.Descendants("circle").Where(circle => circle.Attribute("stroke-dasharray") is not null).Max(circle => Number(circle, "r"));
        double scale = propeller / (plan.Build.Build.Propeller.Blades.Diameter / 2);
        (double X, double Top, double Bottom)[] wires = [.. svg.Elements("line").Where(line => line.Attribute("stroke-width")!.Value == "1.4" && line.Attribute("stroke-dasharray") is null && Number(line, "x1") == Number(line, "x2"))
            .Select(line => (Number(line, "x1"), Number(line, "y1"), Number(line, "y2")))];
        Assert.Equal(6, wires.Length);
        for (int n = 0; n < 3; n++)
        {
            Assert.Equal(scale * plan.Tests[n].Spacing, wires[(2 * n) + 1].X - wires[2 * n].X, 0.02 * scale * plan.Tests[n].Spacing);
            Assert.Equal((160 * n) + 80, (wires[2 * n].X + wires[(2 * n) + 1].X) / 2, 0.11);
            Assert.True(wires[2 * n].Bottom > wires[2 * n].Top + 30 && wires[2 * n].Bottom == wires[(2 * n) + 1].Bottom);
        }
        double[] size = [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(double.Parse)];
        Assert.All(svg.Elements("line"), line => Assert.True(Number(line, "y2") <= size[3] && Number(line, "x1") >= 0 && Number(line, "x2") <= size[2]));
    }

    /// <summary>A report of quantities whose model lies a number of half bands from what was measured.</summary>
    private static XElement Bands(double[] places)
    {
        BenchQuantity[] rows = [.. places.Select((place, n) =>
        {
            Measurement measured = new(1e-3, [new("scale", 2e-5)]);
            return new BenchQuantity(BenchKind.Inertia, BenchAxis.X, "key", $"q{n}", 1e-3 + (place * measured.HalfBand), false, measured);
        })];
        BenchReport report = BenchCases.Report("[mass]\nmass_g = 598") with { Quantities = [.. rows, rows[0] with { Measured = null }] };
        return BandFigure.Of(report).Draw("p-");
    }

    private static double Number(XElement element, string attribute) => double.Parse(element.Attribute(attribute)!.Value);
}
