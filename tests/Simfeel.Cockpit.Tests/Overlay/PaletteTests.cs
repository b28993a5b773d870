using Simfeel.Cockpit.Overlay;
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

    [Fact]
    public void Everything_is_legible_to_every_eye_over_any_picture()
    {
        foreach (PalettePair pair in Palette.Pairs)
        {
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

    [Fact]
    public void What_differs_in_meaning_differs_in_lightness_or_by_more_than_colour()
    {
        foreach (PaletteContrast two in Palette.Contrasts)
        {
            foreach ((string eye, double[] matrix) in ColourVision.All)
            {
                double[] one = ColourVision.Seen(two.One, matrix), other = ColourVision.Seen(two.Other, matrix);
                bool lightness = ColourVision.Contrast(one, other) >= 1.5;
                Assert.True(lightness || two.AlsoBy.Length > 0, $"{two.Use}, {eye}");
            }
        }
    }

    [Fact]
    public void The_two_builds_and_the_commands_are_far_apart_to_every_eye()
    {
        foreach (PaletteContrast two in Palette.Contrasts.Take(2))
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
    [InlineData(0.1, 0.75)]
    [InlineData(1.3, 1.3)]
    [InlineData(9, 2)]
    [InlineData(double.NaN, 1)]
    public void Text_scales_stay_within_their_limits(double wanted, double got) => Assert.Equal(got, TextScale.Within(wanted));

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
