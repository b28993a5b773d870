using System.Text;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Tests.Pages;
using SkiaSharp;

namespace Simfeel.Cockpit.Tests.Overlay;

/// <summary>
/// Whatever a build is called, its name is cut and broken to the room there is, between whole characters, at every text scale. Letters
/// that the font lacks are drawn as boxes.
/// </summary>
public class StrangeNameTests
{
    public static TheoryData<string> Names =>
    [
        "Größe und Übermut über alle Maßen",
        "\u7FFC\u5C55\u5F88\u957F\u7684\u98DE\u884C\u5668\u7FFC\u5C55\u5F88\u957F",
        "\u0637\u064F\u0648\u0644\u064C \u0630\u0650\u0631\u064E\u0627\u0639\u0650 \u0627\u0644\u0637\u0627\u0626\u0631\u0629",
        "\U0001F681\U0001F681\U0001F681\U0001F681\U0001F681\U0001F681\U0001F681\U0001F681\U0001F681\U0001F681",
        "e\u0301\u0302\u0303e\u0301\u0302\u0303e\u0301\u0302\u0303e\u0301\u0302\u0303 \u0301\u0301\u0301",
        "\u202Eback\u202C \u200Fwards\uFEFF \uFFFD\u0001\t",
        "two\nlines",
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void Names_fit_at_every_scale(string name)
    {
        foreach (double scale in (double[])[0.75, 1, 2])
        {
            using Canvases canvas = new(200, 100, scale, pixels: true);
            foreach (float width in (float[])[4, 20, 60, 180])
            {
                string fitted = canvas.Pen.Fit(name, TextStyle.Heading, width);
                Whole(fitted);
                Assert.True(fitted == "\u2026" || canvas.Pen.Width(fitted, TextStyle.Heading) <= width, $"{fitted} in {width}");
                foreach (string line in canvas.Pen.Wrap(name, TextStyle.Body, width)) Whole(line);
                Assert.Equal(
                    string.Concat(name.Where(c => c is not (' ' or '\n'))),
                    string.Concat(canvas.Pen.Wrap(name, TextStyle.Body, width)).Replace(" ", "", StringComparison.Ordinal));
                canvas.Pen.Text(fitted, 0, 0, TextStyle.Heading, SKColors.White);
                canvas.Pen.Lines(name, 0, 20, width, TextStyle.Body, SKColors.White);
            }
        }
    }

    /// <summary>No half of a character, which UTF-8 could not hold.</summary>
    private static void Whole(string text) => Assert.Equal(text, Encoding.UTF8.GetString(new UTF8Encoding(false, true).GetBytes(text)));
}
