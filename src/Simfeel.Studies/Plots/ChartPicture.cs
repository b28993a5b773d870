using ScottPlot;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace Simfeel.Studies.Plots;

/// <summary>Draws sheets of charts. The same sheet gives the same bytes.</summary>
public static class ChartPicture
{
    /// <summary>Width of every picture, pixels before <see cref="Density"/>.</summary>
    public const int Width = 960;

    /// <summary>Pixels drawn for one of layout, so that a picture stays sharp where it is shown larger.</summary>
    public const float Density = 1.5f;

    private const int HeadingHeight = 44, Gap = 8;
    private const float HeadingSize = 18, TitleSize = 14, TextSize = 13, SmallSize = 12;

    /// <summary>A sheet as the bytes of a PNG file.</summary>
    /// <exception cref="PlotFontException">The font is missing.</exception>
    public static byte[] Png(ChartSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        PlotFonts.Register();
        int rows = (sheet.Charts.Count + sheet.Columns - 1) / sheet.Columns;
        int height = HeadingHeight + (rows * sheet.RowHeight);
        using SKSurface surface = SKSurface.Create(Info(Width, height));
        SKCanvas canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        // Soft edges in sixteen steps of each colour look the same and halve the file.
        byte[] steps = [.. Enumerable.Range(0, 256).Select(i => (byte)(Math.Round(i / 17.0) * 17))];
        using SKPaint fewShades = new() { ColorFilter = SKColorFilter.CreateTable(steps) };
        DrawHeading(canvas, sheet.Title);
        for (int i = 0; i < sheet.Charts.Count; i++)
        {
            float width = (float)Width / sheet.Columns, left = (i % sheet.Columns * width) + Gap;
            float top = HeadingHeight + (i / sheet.Columns * sheet.RowHeight);
            using SKImage chart = Draw(sheet.Charts[i], (int)width - Gap, sheet.RowHeight);
            canvas.DrawImage(chart, left * Density, top * Density, SKSamplingOptions.Default, fewShades);
        }
        using SKImage image = surface.Snapshot();
        using SKPixmap pixels = image.PeekPixels()!;
        using SKData data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.NoFilters, 9))!;
        return data.ToArray();
    }

    /// <summary>A chart on a surface of its own, since the library clears what it draws on.</summary>
    private static SKImage Draw(Chart chart, int width, int height)
    {
        using SKSurface surface = SKSurface.Create(Info(width, height));
        surface.Canvas.Scale(Density);
        using Plot plot = Compose(chart);
        plot.Render(surface.Canvas, width, height);
        return surface.Snapshot();
    }

    private static SKImageInfo Info(int width, int height) =>
        new((int)(width * Density), (int)(height * Density), SKColorType.Rgba8888, SKAlphaType.Opaque);

    private static void DrawHeading(SKCanvas canvas, string text)
    {
        using SKFont font = new(Fonts.GetTypeface(PlotFonts.Family, true, false), HeadingSize * Density);
        using SKPaint paint = new() { Color = ChartPalette.Ink.ToSKColor(), IsAntialias = true };
        canvas.DrawText(text, 16 * Density, 29 * Density, SKTextAlign.Left, font, paint);
    }

    internal static Plot Compose(Chart chart)
    {
        Plot plot = new();
        plot.FigureBackground.Color = plot.DataBackground.Color = Colors.White;
        plot.Axes.Color(ChartPalette.Ink);
        plot.Grid.MajorLineColor = ChartPalette.Grid;
        plot.Grid.MajorLineWidth = 1 / Density;
        plot.Font.Set(PlotFonts.Family);
        plot.Title(chart.Title, TitleSize);
        plot.Axes.Title.Label.Bold = false;
        foreach (ChartSeries series in chart.Series) Add(plot, chart, series);
        foreach (ChartNote note in chart.Notes) Add(plot, chart, note);
        // Room for the last number of the axis across.
        plot.Axes.Right.MinimumSize = 22;
        plot.Axes.Margins(0.05, 0.08);
        plot.Axes.AutoScale();
        Dress(plot.Axes.Bottom, chart.X);
        Dress(plot.Axes.Left, chart.Y);
        plot.Axes.SetLimits(
            Limit(chart.X, chart.X.From), Limit(chart.X, chart.X.To), Limit(chart.Y, chart.Y.From), Limit(chart.Y, chart.Y.To));
        if (chart.Legend == LegendPlace.None) plot.HideLegend();
        else ShowLegend(plot, chart.Legend);
        return plot;
    }

    private static void Add(Plot plot, Chart chart, ChartSeries series)
    {
        (Color colour, MarkerShape marker, LinePattern dashes) = ChartPalette.Look(series.Style);
        double[] x = [.. series.X.Select(value => Place(chart.X, value))], y = [.. series.Y.Select(value => Place(chart.Y, value))];
        ScottPlot.Plottables.Scatter drawn = plot.Add.Scatter(x, y, colour);
        drawn.LegendText = series.Name;
        if (series.Mark == ChartMark.Line)
        {
            drawn.LineWidth = 2;
            drawn.LinePattern = dashes;
            drawn.MarkerStyle = MarkerStyle.None;
            return;
        }
        drawn.LineWidth = 0;
        drawn.MarkerShape = marker;
        drawn.MarkerSize = 8;
        drawn.MarkerLineWidth = 1.6f;
    }

    private static void Add(Plot plot, Chart chart, ChartNote note)
    {
        ScottPlot.Plottables.Text drawn = plot.Add.Text(note.Text, Place(chart.X, note.X), Place(chart.Y, note.Y));
        drawn.LabelFontSize = SmallSize;
        drawn.LabelFontName = PlotFonts.Family;
        drawn.LabelFontColor = ChartPalette.Ink;
        drawn.LabelBackgroundColor = Colors.White.WithAlpha(0.8);
        drawn.LabelAlignment = note.Side < 0 ? Alignment.MiddleRight : note.Side > 0 ? Alignment.MiddleLeft : Alignment.LowerCenter;
        (drawn.OffsetX, drawn.OffsetY) = note.Side == 0 ? (0, -6) : (note.Side * 8, 0);
    }

    private static void Dress(IAxis axis, ChartAxis wanted)
    {
        axis.Label.Text = wanted.Label;
        axis.Label.FontSize = TextSize;
        axis.Label.Bold = false;
        axis.TickLabelStyle.FontSize = SmallSize;
        if (wanted.Names.Count > 0)
        {
            NumericManual names = new();
            for (int i = 0; i < wanted.Names.Count; i++) names.AddMajor(i, wanted.Names[i]);
            axis.TickGenerator = names;
        }
        else if (wanted.Logarithmic)
        {
            axis.TickGenerator = new NumericAutomatic
            {
                IntegerTicksOnly = true,
                LabelFormatter = power => power is >= 0 and <= 4 ? Math.Pow(10, power).ToString("F0") : $"1e{power:F0}",
            };
        }
        else
        {
            axis.TickGenerator = new NumericAutomatic { LabelFormatter = value => Math.Round(value, 10).ToString("G10") };
        }
    }

    private static void ShowLegend(Plot plot, LegendPlace place)
    {
        plot.ShowLegend(place switch
        {
            LegendPlace.UpperLeft => Alignment.UpperLeft,
            LegendPlace.UpperRight => Alignment.UpperRight,
            LegendPlace.LowerLeft => Alignment.LowerLeft,
            _ => Alignment.LowerRight,
        });
        plot.Legend.FontSize = SmallSize;
        plot.Legend.FontName = PlotFonts.Family;
        plot.Legend.FontColor = ChartPalette.Ink;
        plot.Legend.BackgroundColor = Colors.White.WithAlpha(0.85);
        plot.Legend.OutlineColor = ChartPalette.Grid;
        plot.Legend.ShadowColor = Colors.Transparent;
        plot.Legend.SymbolWidth = 34;
    }

    private static double Place(ChartAxis axis, double value) => axis.Logarithmic ? Math.Log10(value) : value;

    private static double? Limit(ChartAxis axis, double? value) => value is double number ? Place(axis, number) : null;
}
