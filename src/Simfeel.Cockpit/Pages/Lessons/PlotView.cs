using System.Globalization;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>What a plot of two craft over time shows.</summary>
/// <param name="Title">What is drawn, with its unit.</param>
/// <param name="Names">Names of both craft.</param>
/// <param name="Lines">Time (s) and value of both.</param>
/// <param name="End">End of the time axis, s.</param>
/// <param name="Decimals">Decimals of its numbers.</param>
internal sealed record PlotData(string Title, IReadOnlyList<string> Names, IReadOnlyList<IReadOnlyList<(double X, double Y)>> Lines, double End, int Decimals);

/// <summary>Two lines over time, and the moment that is shown: A solid with a disc, B dashed with a triangle.</summary>
/// <param name="data">What is drawn; null while there is nothing.</param>
/// <param name="time">The moment, s.</param>
/// <param name="whole">Whether the lines go on behind the moment, as they may once they were seen.</param>
internal sealed class PlotView(Func<PlotData?> data, Func<double> time, Func<bool> whole) : Widget
{
    private const int DashPoints = 3;

    /// <summary>Share of the values' span beyond nought that is trembling.</summary>
    private const double Trembling = 0.02;

    /// <summary>Largest height, pixels.</summary>
    public float Tallest { get; set; } = 360;

    private protected override float Measure(Pen pen, float x, float y, float width) =>
        Math.Max(4 * pen.LineHeight(TextStyle.Small) + (90 * pen.Scale), Math.Min(Tallest, width * 0.6f));

    internal override void Draw(Pen pen, bool focused)
    {
        pen.Fill(Bounds, Palette.Panel, 6 * pen.Scale);
        if (data() is not PlotData plot || plot.Lines.Any(line => line.Count < 2)) return;
        float unit = pen.Scale, pad = 10 * unit, small = pen.LineHeight(TextStyle.Small), inner = Bounds.Width - (2 * pad);
        float y = Bounds.Top + (6 * unit);
        pen.Text(pen.Fit(plot.Title, TextStyle.Small, inner), Bounds.Left + pad, y, TextStyle.Small, Palette.Ink);
        for (int k = 0; k < 2; k++)
        {
            y += small;
            pen.BuildMark(k, Bounds.Left + pad + (5 * unit), y + (small / 2), 5 * unit, Palette.Build(k));
            pen.Text(pen.Fit(plot.Names[k], TextStyle.Small, inner - (16 * unit)), Bounds.Left + pad + (16 * unit), y, TextStyle.Small, Palette.Ink);
        }
        (double low, double high, int decimals) = Ends([.. plot.Lines.SelectMany(line => line).Select(point => point.Y)]);
        decimals = Math.Max(decimals, plot.Decimals);
        string top = Number(high, decimals), bottom = Number(low, decimals);
        float left = Math.Max(pen.Width(top, TextStyle.Small), pen.Width(bottom, TextStyle.Small)) + (6 * unit);
        SKRect area = new(Bounds.Left + pad + left, y + small + (6 * unit), Bounds.Right - pad, Bounds.Bottom - small - (6 * unit));
        if (area.Width < 20 || area.Height < 20) return;
        double from = plot.Lines.Min(line => line[0].X), to = plot.End;
        pen.Frame(area, Palette.Line, 1);
        if (low < 0 && high > 0) pen.Line(area.Left, Y(0), area.Right, Y(0), Palette.Line, 1);
        pen.TextRight(top, area.Left - (4 * unit), area.Top - (small / 3), TextStyle.Small, Palette.Quiet);
        pen.TextRight(bottom, area.Left - (4 * unit), area.Bottom - (0.7f * small), TextStyle.Small, Palette.Quiet);
        string begin = Number(from, 2), end = Number(to, 2) + " s";
        pen.Text(begin, area.Left, area.Bottom + (2 * unit), TextStyle.Small, Palette.Quiet);
        pen.TextRight(end, area.Right, area.Bottom + (2 * unit), TextStyle.Small, Palette.Quiet);
        double now = time(), until = whole() ? to : now;
        for (int k = 0; k < 2; k++) Curve(pen, k, [.. plot.Lines[k].Where(point => point.X <= until).Select(point => new SKPoint(X(point.X), Y(point.Y)))]);
        // a plot may begin later than the moment
        if (now < from || now > to) return;
        pen.Line(X(now), area.Top, X(now), area.Bottom, Palette.Focus, 1.5f * unit);
        for (int k = 0; k < 2; k++) pen.BuildMark(k, X(now), Y(At(plot.Lines[k], now)), 5 * unit, Palette.Build(k));

        float X(double at) => area.Left + (float)((at - from) / (to - from)) * area.Width;

        float Y(double at) => Math.Clamp(area.Bottom - (float)((at - low) / (high - low)) * area.Height, area.Top, area.Bottom);
    }

    /// <summary>Value of a line at a time, by its nearest earlier point.</summary>
    private static double At(IReadOnlyList<(double X, double Y)> line, double time)
    {
        int n = 0;
        while (n + 1 < line.Count && line[n + 1].X <= time) n++;
        return line[n].Y;
    }

    /// <summary>
    /// Ends of the upright axis: the next multiples of a tenth of the values' span, rounded to 1, 2 or 5 of a power of ten. Nought is an end
    /// where it is near, or where the values only tremble beyond it.
    /// </summary>
    /// <param name="values">The values.</param>
    /// <returns>Both ends, and the decimals that tell them exactly.</returns>
    internal static (double Low, double High, int Decimals) Ends(IReadOnlyList<double> values)
    {
        double low = values.Min(), high = values.Max(), span = Math.Max(high - low, 1e-3 + (1e-3 * Math.Abs(high)));
        if (low > -Trembling * span && low < 0.5 * span) low = 0;
        if (high < Trembling * span && -high < 0.5 * span) high = 0;
        double ten = Math.Pow(10, Math.Floor(Math.Log10(span / 10))), share = span / 10 / ten;
        double step = ten * (share <= 1.001 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10);
        int decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        (low, high) = (step * Math.Floor((low / step) + 1e-6), step * Math.Ceiling((high / step) - 1e-6));
        return (low, high > low ? high : low + step, decimals);
    }

    private static string Number(double value, int decimals) => value.ToString("F" + decimals, CultureInfo.InvariantCulture);

    private static void Curve(Pen pen, int build, SKPoint[] points)
    {
        if (points.Length < 2) return;
        float width = 2 * MathF.Sqrt(pen.Scale);
        if (build == 0)
        {
            pen.Points(SKPointMode.Polygon, points, Palette.BuildA, width);
            return;
        }
        SKPoint[] strokes = [.. Enumerable.Range(0, points.Length - 1).Where(n => n / DashPoints % 2 == 0).SelectMany(n => (SKPoint[])[points[n], points[n + 1]])];
        pen.Points(SKPointMode.Lines, strokes, Palette.BuildB, width);
    }
}
