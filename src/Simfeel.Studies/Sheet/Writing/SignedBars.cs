using System.Xml.Linq;
using Simfeel.Builds.Writing;
using static Simfeel.Studies.Sheet.Writing.SvgParts;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>One bar of a chart of signed bars; numbers in the unit of the axis.</summary>
/// <param name="Label">The words above it.</param>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
/// <param name="Number">The words at its end.</param>
internal sealed record SignedBar(string Label, double From, double To, string Number)
{
    /// <summary>Where an open circle stands; null for none.</summary>
    public double? Circle { get; init; }

    /// <summary>Where an upright stroke stands; null for none.</summary>
    public double? Stroke { get; init; }

    /// <summary>Where the fill changes from hatched (towards <see cref="From"/>) to plain; null for a plain bar.</summary>
    public double? Middle { get; init; }

    /// <summary>Drawn as an outline: the sum of the others.</summary>
    public bool Sum { get; init; }
}

/// <summary>Horizontal bars about a zero line, each with its words above it, so that long words fit on a phone.</summary>
internal static class SignedBars
{
    private const int Row = 37, Top = 6, Left = 8, Right = Width - 78, BarTop = 19, BarHeight = 12, LabelLetters = 56;

    /// <summary>Draws them.</summary>
    /// <param name="label">What it shows, in words.</param>
    /// <param name="axis">Label of the axis, with its unit.</param>
    /// <param name="bars">The bars, from the top down.</param>
    /// <param name="idPrefix">Start of all ids.</param>
    /// <param name="mark">Where a dashed line stands; null for none.</param>
    public static XElement Draw(string label, string axis, IReadOnlyList<SignedBar> bars, string idPrefix, double? mark = null)
    {
        double[] all =
        [
            .. bars.SelectMany(bar => new[] { bar.From, bar.To, bar.Circle ?? 0, bar.Stroke ?? 0 }).Append(mark ?? 0).Append(0).Where(double.IsFinite),
        ];
        double least = all.Min(), most = all.Max(), step = Step(most - least);
        int bottom = Top + (bars.Count * Row) + 4;
        string hatch = idPrefix + "hatch";
        return Root(label, bottom + 44,
            new XElement("defs", Pattern(hatch, Bar, 1)),
            Ticks().SelectMany(value => new[]
            {
                Line(X(value), Top, X(value), bottom, "#E4E4E4"),
                Text(X(value), bottom + 16, Numbers.Plain(value), "middle", 11.5),
            }),
            Line(X(0), Top, X(0), bottom, Ink, width: 1.4),
            mark is double at ? Line(X(at), Top, X(at), bottom, Ink, "5 3") : null,
            bars.Select((bar, n) => Draw(bar, Top + (n * Row))),
            Text((Left + Right) / 2, bottom + 36, axis, "middle"));

        double X(double value) => most > least ? Left + ((Right - Left) * (value - least) / (most - least)) : Left;

        IEnumerable<double> Ticks()
        {
            for (long n = (long)Math.Ceiling((least / step) - 1e-9); n <= (long)Math.Floor((most / step) + 1e-9); n++) yield return n * step;
        }

        object?[] Draw(SignedBar bar, double y)
        {
            double middle = bar.Middle ?? bar.From, height = y + BarTop + (BarHeight / 2.0);
            return
            [
                Text(Left, y + 14, TextCut.Short(bar.Label, LabelLetters)),
                bar.Middle is null ? null : Box(X(bar.From), X(middle), y + BarTop, BarHeight, $"url(#{hatch})"),
                Box(X(middle), X(bar.To), y + BarTop, BarHeight, bar.Sum ? "#fff" : Bar),
                bar.Stroke is double stroke ? Line(X(stroke), y + BarTop - 3, X(stroke), y + BarTop + BarHeight + 3, Ink, width: 3) : null,
                bar.Circle is double circle ? Disc(X(circle), height, 4) : null,
                Text(Width - 4, y + BarTop + 11, bar.Number, "end"),
            ];
        }
    }

    /// <summary>Distance of ticks: 1, 2 or 5 times a power of ten, three to seven of them.</summary>
    private static double Step(double range)
    {
        if (range <= 0) return 1;
        double power = Math.Pow(10, Math.Floor(Math.Log10(range)));
        double share = range / power;
        return power * (share < 1.5 ? 0.2 : share < 3.5 ? 0.5 : share < 7 ? 1 : 2);
    }
}
