using System.Xml.Linq;
using Simfeel.Studies.Sheet.Writing;
using static Simfeel.Studies.Sheet.Writing.SvgParts;

namespace Simfeel.Studies.Bench.Pages;

/// <summary>Where the model lies in the band of each measurement, all on one scale.</summary>
internal static class BandFigure
{
    private const int Row = 26, Top = 10, Left = 168, Right = Width - 16;
    private const double Most = 4;

    public static Figure Of(BenchReport report)
    {
        const string axis = "model less measured over half the 95 % band, ratio";
        string label = $"How far the model of {report.Build.Build.Name} lies from each measured number, in half bands";
        BenchQuantity[] rows = [.. report.Measured];
        return new(label, "Grey: the 95 % band of the measurement. Dot: the model. A triangle: farther out than the scale.", [axis], _ =>
        {
            int bottom = Top + (rows.Length * Row) + 4;
            return Root(label, bottom + 44,
                Box(X(-1), X(1), Top, bottom - Top, "#e4e4e4", "none"),
                Enumerable.Range(-(int)Most, (2 * (int)Most) + 1).SelectMany(n => new[]
                {
                    Line(X(n), Top, X(n), bottom, Soft, n == 0 ? null : "2 3", n == 0 ? 1.4 : 0.8),
                    Text(X(n), bottom + 16, $"{n}", "middle", 11.5),
                }),
                rows.SelectMany((quantity, n) => Mark(quantity, Top + (n * Row) + (Row / 2))),
                Text((Left + Right) / 2, bottom + 36, axis, "middle"));
        });
    }

    private static IEnumerable<XElement> Mark(BenchQuantity quantity, double y)
    {
        yield return Text(4, y + 4, quantity.Title);
        double place = quantity.Difference / quantity.Measured!.HalfBand;
        if (Math.Abs(place) <= Most)
        {
            yield return new("circle",
                new XAttribute("cx", Place(X(place))), new XAttribute("cy", Place(y)), new XAttribute("r", 5), new XAttribute("fill", Ink));
            yield break;
        }
        int way = Math.Sign(place);
        yield return CraftDrawing.Shape($"M{Place(X(way * Most) + (way * 8))},{Place(y)} l{-10 * way},-6 v12 Z", Ink);
    }

    private static double X(double ratio) => ((Left + Right) / 2.0) + ((Right - Left) / 2.0 * ratio / (Most + 0.3));
}
