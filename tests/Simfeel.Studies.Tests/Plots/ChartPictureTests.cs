using ScottPlot;
using Simfeel.Studies.Plots;
using SkiaSharp;

namespace Simfeel.Studies.Tests.Plots;

public class ChartPictureTests
{
    private static ChartSheet Sheet(string heading, string title, string label) => new(heading, 2, 300,
    [
        new(
            title, new(label), new(label) { Logarithmic = true },
            [ChartSeries.Points("measured", 0, [(1, 1), (2, 10), (3, 100)]), ChartSeries.Curve("model", 1, 1, 3, 10, x => Math.Pow(10, x - 1))],
            LegendPlace.UpperLeft),
        new("", new("x"), new("") { Names = ["first", "second"] }, [ChartSeries.Points("measured", 2, [(1, 0), (2, 1)])]),
    ]);

    [Fact]
    public void The_same_sheet_gives_the_same_bytes() =>
        Assert.Equal(ChartPicture.Png(Sheet("Heading", "Title", "label")), ChartPicture.Png(Sheet("Heading", "Title", "label")));

    [Fact]
    public void A_picture_has_the_promised_size()
    {
        using SKBitmap picture = SKBitmap.Decode(ChartPicture.Png(Sheet("Heading", "Title", "label")));
        Assert.Equal(ChartPicture.Width * ChartPicture.Density, picture.Width);
        Assert.InRange(picture.Height, 300 * ChartPicture.Density, 360 * ChartPicture.Density);
    }

    /// <summary>Text whose font is not found vanishes without an error, so its ink is counted.</summary>
    [Theory]
    [InlineData("A long heading", ".", ".")]
    [InlineData(".", "A long title", ".")]
    [InlineData(".", ".", "a long label")]
    public void Heading_title_and_labels_leave_ink(string heading, string title, string label) =>
        Assert.True(Ink(Sheet(heading, title, label)) > Ink(Sheet(".", ".", ".")) + 100);

    [Fact]
    public void Bold_is_bolder()
    {
        PlotFonts.Register();
        SKTypeface regular = Fonts.GetTypeface(PlotFonts.Family, false, false), bold = Fonts.GetTypeface(PlotFonts.Family, true, false);
        Assert.Equal(PlotFonts.Family, regular.FamilyName);
        Assert.Equal(PlotFonts.Family, bold.FamilyName);
        Assert.True(bold.FontWeight > regular.FontWeight);
    }

    /// <summary>Colour never tells two series apart alone: marker shapes and dashes differ as well.</summary>
    [Fact]
    public void Looks_differ_without_colour()
    {
        var looks = Enumerable.Range(0, ChartPalette.Count).Select(ChartPalette.Look).ToList();
        Assert.Equal(ChartPalette.Count, looks.Select(look => look.Marker).Distinct().Count());
        // The first two lines share a solid stroke: black is kept for limits and references, which are labelled.
        Assert.Equal(ChartPalette.Count - 1, looks.Select(look => look.Dashes.Name).Distinct().Count());
        Assert.Equal(ChartPalette.Count, looks.Select(look => Luminance(look.Colour)).Select(l => Math.Round(l, 2)).Distinct().Count());
    }

    private static double Luminance(Color colour) => ((0.2126 * colour.R) + (0.7152 * colour.G) + (0.0722 * colour.B)) / 255;

    private static int Ink(ChartSheet sheet)
    {
        using SKBitmap picture = SKBitmap.Decode(ChartPicture.Png(sheet));
        return picture.Pixels.Count(pixel => pixel.Red + pixel.Green + pixel.Blue < 3 * 128);
    }
}
