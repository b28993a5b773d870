using System.Text.RegularExpressions;
using System.Xml.Linq;
using ScottPlot;
using Simfeel.Builds.Writing;

namespace Simfeel.Studies.Plots;

/// <summary>Draws a chart as an SVG element to stand in a page. The same chart gives the same element.</summary>
public static partial class ChartSvg
{
    /// <summary>Fonts of all texts: the family that the layout was made for, and what may stand in for it.</summary>
    public const string FontFamily = "DejaVu Sans, Verdana, sans-serif";

    private const int LegendRow = 20, LegendLeft = 8, Sample = 34;
    private const double LegendSize = 12.5, LetterWidth = 7.6;

    /// <summary>
    /// The chart without namespaces, as HTML wants it; it scales with its view box. Ids start with a prefix, so that several charts
    /// can stand in one page. The legend stands above the axes, whatever corner a picture would have it in, so that it hides no line.
    /// </summary>
    /// <param name="chart">The chart.</param>
    /// <param name="label">What it shows, for people who do not see it.</param>
    /// <param name="idPrefix">Start of every id; no two charts of a page may share it.</param>
    /// <param name="width">Width of the layout, pixels.</param>
    /// <param name="height">Height of the axes with their labels, pixels.</param>
    /// <exception cref="PlotFontException">The font is missing.</exception>
    public static XElement Of(Chart chart, string label, string idPrefix, int width = 480, int height = 300)
    {
        ArgumentNullException.ThrowIfNull(chart);
        PlotFonts.Register();
        using Plot plot = ChartPicture.Compose(chart with { Legend = LegendPlace.None });
        XElement drawn = XDocument.Parse(plot.GetSvgXml(width, height)).Root!;
        (List<XElement> legend, int top) = Legend(chart, width);
        Dictionary<string, string> ids = [];
        return new("svg",
            new XAttribute("viewBox", $"0 0 {width} {height + top}"),
            new XAttribute("role", "img"),
            new XAttribute("aria-label", label),
            new XElement("title", label),
            legend,
            new XElement("g", new XAttribute("transform", $"translate(0,{top})"), drawn.Elements().Select(element => Plain(element, idPrefix, ids))));
    }

    /// <summary>The named series with a piece of their line, in rows as wide as the chart; and the height that they take.</summary>
    private static (List<XElement> Drawn, int Height) Legend(Chart chart, int width)
    {
        List<XElement> drawn = [];
        double x = LegendLeft;
        int row = 0, most = (int)((width - LegendLeft - Sample - 6) / LetterWidth);
        foreach (ChartSeries series in chart.Series.Where(series => series.Name.Length > 0))
        {
            string name = TextCut.Short(series.Name, most);
            double wide = Sample + 8 + (LetterWidth * name.Length) + 14;
            if (x > LegendLeft && x + wide > width) (x, row) = (LegendLeft, row + 1);
            double y = (row * LegendRow) + 14;
            (Color colour, _, LinePattern dashes) = ChartPalette.Look(series.Style);
            drawn.Add(new("line",
                new XAttribute("x1", x), new XAttribute("x2", x + Sample), new XAttribute("y1", y - 4), new XAttribute("y2", y - 4),
                new XAttribute("stroke", colour.ToHex()), new XAttribute("stroke-width", 2),
                dashes.Intervals.Length == 0 ? null : new XAttribute("stroke-dasharray", string.Join(' ', dashes.Intervals))));
            drawn.Add(new("text",
                new XAttribute("x", x + Sample + 6), new XAttribute("y", y), new XAttribute("font-family", FontFamily),
                new XAttribute("font-size", LegendSize), new XAttribute("fill", ChartPalette.Ink.ToHex()), name));
            x += wide;
        }
        return (drawn, drawn.Count == 0 ? 0 : ((row + 1) * LegendRow) + 4);
    }

    /// <summary>
    /// An element without namespaces, ids numbered anew (the library counts through the life of a program) and text placed by its start
    /// alone, so that another font can stand in.
    /// </summary>
    private static XElement Plain(XElement element, string idPrefix, Dictionary<string, string> ids)
    {
        XElement plain = new(element.Name.LocalName);
        foreach (XAttribute attribute in element.Attributes().Where(attribute => !attribute.IsNamespaceDeclaration))
        {
            string name = attribute.Name.LocalName, value = attribute.Value;
            if (name == "space") continue;
            if (name == "id") value = Id(value);
            else if (name == "font-family") value = FontFamily;
            else if (name is "x" or "y" && plain.Name == "text") value = value.Split(',')[0].Trim();
            else if (name is "d") value = LongNumber().Replace(value, number => Math.Round(double.Parse(number.Value), 2).ToString());
            if (value.StartsWith("url(#", StringComparison.Ordinal)) value = $"url(#{Id(value[5..^1])})";
            else if (name == "href" && value.StartsWith('#')) value = "#" + Id(value[1..]);
            plain.SetAttributeValue(name, value);
        }
        plain.Add(element.Nodes().Select(node =>
            node is XElement child ? Plain(child, idPrefix, ids) : node is XText text ? (object)text.Value.Trim() : null));
        return plain;

        string Id(string id)
        {
            if (!ids.TryGetValue(id, out string? known)) ids[id] = known = $"{idPrefix}{ids.Count + 1}";
            return known;
        }
    }

    [GeneratedRegex(@"\d+\.\d{3,}")]
    private static partial Regex LongNumber();
}
