using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Tests.Pages;
using SkiaSharp;

namespace Simfeel.Cockpit.Tests.Overlay;

public class PaletteTests
{
    [Fact]
    public void White_on_black_has_the_contrast_that_WCAG_gives()
    {
        // WCAG 2.2, definition of contrast ratio: 21 for white on black; #767676 is the known grey of 4.54 on white
        double[] usual = ColourVision.All[0].Matrix;
        double[] white = ColourVision.Seen(SKColors.White, usual);
        Assert.Equal(21, ColourVision.Contrast(white, ColourVision.Seen(SKColors.Black, usual)), 6);
        Assert.Equal(4.54, ColourVision.Contrast(white, ColourVision.Seen(new(0x76, 0x76, 0x76), usual)), 2);
    }

    public static TheoryData<PaletteKind> Kinds => [.. Enum.GetValues<PaletteKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Everything_is_legible_to_every_eye_over_any_picture(PaletteKind kind)
    {
        foreach (PalettePair pair in PaletteColours.Of(kind).Pairs)
        {
            // for a projector, marks have the contrast of text
            Assert.True(pair.LeastContrast >= (kind == PaletteKind.Projector ? 4.5 : 3), pair.Use);
            foreach (SKColor picture in (SKColor[])[SKColors.Black, SKColors.White])
            {
                SKColor back = ColourVision.Over(pair.Back, picture);
                foreach ((string eye, double[] matrix) in ColourVision.All)
                {
                    double contrast = ColourVision.Contrast(ColourVision.Seen(pair.Front, matrix), ColourVision.Seen(back, matrix));
                    Assert.True(contrast >= pair.LeastContrast, $"{pair.Use}, {eye}: {contrast:0.0}, needed {pair.LeastContrast}");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void What_differs_in_meaning_differs_in_lightness_or_by_more_than_colour(PaletteKind kind)
    {
        foreach (PaletteContrast two in PaletteColours.Of(kind).Contrasts)
        {
            foreach ((string eye, double[] matrix) in ColourVision.All)
            {
                double[] one = ColourVision.Seen(two.One, matrix), other = ColourVision.Seen(two.Other, matrix);
                bool lightness = ColourVision.Contrast(one, other) >= 1.5;
                Assert.True(lightness || two.AlsoBy.Length > 0, $"{two.Use}, {eye}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_two_builds_and_the_commands_are_far_apart_to_every_eye(PaletteKind kind)
    {
        foreach (PaletteContrast two in PaletteColours.Of(kind).Contrasts.Take(2))
        {
            foreach ((string eye, double[] matrix) in ColourVision.All)
            {
                // ten times what can just be seen
                double apart = ColourVision.Difference(ColourVision.Seen(two.One, matrix), ColourVision.Seen(two.Other, matrix));
                Assert.True(apart > 23, $"{two.Use}, {eye}: {apart:0}");
            }
        }
    }

    [Fact]
    public void A_projectors_palette_is_dark_on_light_with_thicker_lines_and_pages_follow_a_change()
    {
        try
        {
            using Canvases canvas = new(640, 360, 1, pixels: true);
            Page page = new Samples().Page("pause");
            PageStack stack = new();
            stack.Open(page);
            foreach (PaletteKind kind in Enum.GetValues<PaletteKind>())
            {
                Palette.Use(PaletteColours.Of(kind));
                canvas.Pen.Canvas.Clear();
                stack.Draw(canvas.Pen, 640, 360);
                canvas.Pen.Line(0, 20, 100, 20, SKColors.Magenta, 4);
                bool projector = kind == PaletteKind.Projector;
                // the page's corner, and a pixel 2.5 from the middle of a line that is 4 or 6.4 wide
                Assert.Equal(projector, canvas.PixelAt(3, 300).Red > 200);
                Assert.Equal(projector, canvas.PixelAt(50, 22).Green < 100 && canvas.PixelAt(50, 22).Red > 150);
                // the heading was made before the change
                int ink = 0;
                for (int y = 0; y < 120; y++)
                {
                    for (int x = 0; x < 640; x++)
                    {
                        SKColor pixel = canvas.PixelAt(x, y);
                        if (pixel == Palette.Ink) ink++;
                    }
                }
                Assert.True(ink > 50, $"{kind}: {ink} pixels of ink");
            }
        }
        finally
        {
            Palette.Use(PaletteColours.Usual);
        }
    }

    [Fact]
    public void Build_marks_differ_in_shape()
    {
        using Canvases canvas = new(64, 32, 1, pixels: true);
        canvas.Pen.BuildMark(0, 16, 16, 12, SKColors.White);
        canvas.Pen.BuildMark(1, 48, 16, 12, SKColors.White);
        // the disc is filled up there, the triangle is not
        Assert.Equal(255, canvas.PixelAt(8, 10).Alpha);
        Assert.Equal(0, canvas.PixelAt(40, 10).Alpha);
        Assert.Equal(255, canvas.PixelAt(48, 16).Alpha);
    }

    [Theory]
    [InlineData(0.1f, 0.75f)]
    [InlineData(1.25f, 1.25f)]
    [InlineData(9f, 6f)]
    [InlineData(float.NaN, 1f)]
    public void A_pens_scale_stays_within_its_limits(float wanted, float got)
    {
        using FontSet fonts = new();
        using Pen pen = new(fonts) { Scale = wanted };
        Assert.Equal(got, pen.Scale);
    }

    [Fact]
    public void A_missing_font_is_said_and_replaced()
    {
        using FontSet fonts = new("Nosuchfamily Sans", "Nosuchfamily Mono");
        Assert.Equal(2, fonts.Missing.Count);
        Assert.StartsWith("The font Nosuchfamily Sans is not on this machine; ", fonts.Missing[0]);
        using Pen pen = new(fonts);
        Assert.True(pen.Width("seen", TextStyle.Body) > 10);
    }
}
