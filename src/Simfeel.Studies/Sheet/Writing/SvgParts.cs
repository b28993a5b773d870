using System.Xml.Linq;
using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>Pieces of hand-drawn SVG, laid out in pixels of the view box.</summary>
internal static class SvgParts
{
    public const int Width = 480;
    public const string Ink = "#202020", Soft = "#8a929c", Bar = "#4a5560";

    public static XElement Root(string label, int height, params object?[] content) =>
        new("svg",
            new XAttribute("viewBox", $"0 0 {Width} {height}"),
            new XAttribute("role", "img"),
            new XAttribute("aria-label", label),
            new XElement("title", label),
            content);

    /// <param name="x">From the left.</param>
    /// <param name="y">Base line.</param>
    /// <param name="text">The words.</param>
    /// <param name="anchor">start, middle or end.</param>
    /// <param name="size">Height of the letters.</param>
    public static XElement Text(double x, double y, string text, string anchor = "start", double size = 12.5) =>
        new("text",
            new XAttribute("x", Place(x)), new XAttribute("y", Place(y)), new XAttribute("text-anchor", anchor),
            new XAttribute("font-family", ChartSvg.FontFamily), new XAttribute("font-size", size), new XAttribute("fill", Ink),
            // a white rim keeps the words clear of the lines behind them
            new XAttribute("stroke", "#fff"), new XAttribute("stroke-width", 3), new XAttribute("stroke-linejoin", "round"), new XAttribute("paint-order", "stroke"),
            text);

    public static XElement Line(double x1, double y1, double x2, double y2, string colour, string? dashes = null, double width = 1) =>
        new("line",
            new XAttribute("x1", Place(x1)), new XAttribute("y1", Place(y1)), new XAttribute("x2", Place(x2)), new XAttribute("y2", Place(y2)),
            new XAttribute("stroke", colour), new XAttribute("stroke-width", width),
            dashes is null ? null : new XAttribute("stroke-dasharray", dashes));

    public static XElement Box(double left, double right, double top, double height, string fill, string stroke = Ink) =>
        new("rect",
            new XAttribute("x", Place(Math.Min(left, right))), new XAttribute("y", Place(top)),
            new XAttribute("width", Place(Math.Abs(right - left))), new XAttribute("height", Place(height)),
            new XAttribute("fill", fill), new XAttribute("stroke", stroke), new XAttribute("stroke-width", 0.8));

    public static XElement Disc(double x, double y, double radius) =>
        new("circle",
            new XAttribute("cx", Place(x)), new XAttribute("cy", Place(y)), new XAttribute("r", radius),
            new XAttribute("fill", "#fff"), new XAttribute("stroke", Ink), new XAttribute("stroke-width", 1.6));

    /// <summary>A fill of a colour with white lines; 0 plain, then rising, falling, upright, level, crossed, dotted, and white itself.</summary>
    public static XElement Pattern(string id, string colour, int kind)
    {
        string path = kind switch
        {
            1 => "M-2,2 L2,-2 M0,8 L8,0 M6,10 L10,6",
            2 => "M-2,6 L2,10 M0,0 L8,8 M6,-2 L10,2",
            3 => "M4,0 V8",
            4 => "M0,4 H8",
            5 => "M0,4 H8 M4,0 V8",
            6 => "M3,4 H5",
            _ => "",
        };
        return new("pattern",
            new XAttribute("id", id), new XAttribute("width", 8), new XAttribute("height", 8), new XAttribute("patternUnits", "userSpaceOnUse"),
            new XElement("rect", new XAttribute("width", 8), new XAttribute("height", 8), new XAttribute("fill", colour)),
            path.Length == 0 ? null : new XElement("path",
                new XAttribute("d", path), new XAttribute("stroke", "#fff"), new XAttribute("stroke-width", kind == 6 ? 3 : 2), new XAttribute("fill", "none")));
    }

    public static string Place(double pixels) => Math.Round(pixels, 1).ToString("0.#");
}
