using System.Xml.Linq;
using Simfeel.Builds.Writing;
using Simfeel.Studies.Plots;
using static Simfeel.Studies.Sheet.Writing.SvgParts;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>One bar of several parts.</summary>
/// <param name="Label">The words above it.</param>
/// <param name="Parts">Sizes, one for each kind; not negative.</param>
/// <param name="Full">Size that fills the width.</param>
/// <param name="Number">Its total in words.</param>
/// <param name="Tight">True where it belongs to the bar above it.</param>
internal sealed record StackedBar(string Label, IReadOnlyList<double> Parts, double Full, string Number, bool Tight = false);

/// <summary>Bars of parts told apart by patterns as well as by colours.</summary>
internal static class StackedBars
{
    private const int Row = 36, Gap = 8, Left = 8, Right = Width - 8, BarTop = 18, BarHeight = 14, LegendRow = 20, LegendColumns = 3, LabelLetters = 46;

    // neither of the two colours that mean a build
    private static readonly string[] Colours =
        [ChartPalette.Hex(3), ChartPalette.Hex(4), ChartPalette.Hex(5), ChartPalette.Hex(0), ChartPalette.Hex(6), "#3a6b5c", "#8a5f7c", "#ffffff"];

    /// <summary>Draws them.</summary>
    /// <param name="label">What it shows, in words.</param>
    /// <param name="axis">What the widths mean.</param>
    /// <param name="kinds">Names of the kinds, up to eight.</param>
    /// <param name="bars">The bars, from the top down.</param>
    /// <param name="idPrefix">Start of all ids.</param>
    public static XElement Draw(string label, string axis, IReadOnlyList<string> kinds, IReadOnlyList<StackedBar> bars, string idPrefix)
    {
        List<object?> drawn = [new XElement("defs", kinds.Select((_, n) => Pattern(Id(n), Colours[n], n)))];
        double y = 2;
        for (int n = 0; n < kinds.Count; n++)
        {
            double x = Left + (n % LegendColumns * (Right - Left) / LegendColumns), top = y + (n / LegendColumns * LegendRow);
            drawn.Add(Box(x, x + 18, top + 2, 13, $"url(#{Id(n)})"));
            drawn.Add(Text(x + 24, top + 13, kinds[n]));
        }
        y += ((kinds.Count + LegendColumns - 1) / LegendColumns * LegendRow) + 4;
        foreach (StackedBar bar in bars)
        {
            if (!bar.Tight) y += Gap;
            drawn.Add(Text(Left, y + 13, TextCut.Short(bar.Label, LabelLetters)));
            drawn.Add(Text(Right, y + 13, bar.Number, "end"));
            double x = Left;
            for (int n = 0; n < bar.Parts.Count; n++)
            {
                double end = bar.Full > 0 ? x + ((Right - Left) * bar.Parts[n] / bar.Full) : x;
                if (end - x > 0.05) drawn.Add(Box(x, end, y + BarTop, BarHeight, $"url(#{Id(n)})"));
                x = end;
            }
            y += Row;
        }
        drawn.Add(Text((Left + Right) / 2, y + 16, axis, "middle"));
        return Root(label, (int)y + 24, [.. drawn]);

        string Id(int kind) => $"{idPrefix}k{kind}";
    }
}
