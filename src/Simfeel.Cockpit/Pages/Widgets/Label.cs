using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>Text that takes as many lines as it needs; none at all while it is empty.</summary>
/// <param name="text">The text; asked for at every redraw.</param>
/// <param name="style">Style.</param>
/// <param name="tone">Colour.</param>
internal sealed class Label(Func<string> text, TextStyle style, SKColor tone) : Widget
{
    public Label(string text, TextStyle style = TextStyle.Body) : this(() => text, style, Palette.Ink)
    {
    }

    /// <summary>What it says now.</summary>
    public string Text => text();

    public static Label Quiet(string text) => new(() => text, TextStyle.Small, Palette.Quiet);

    private protected override float Measure(Pen pen, float x, float y, float width)
    {
        string now = text();
        return now.Length == 0 ? 0 : pen.Wrap(now, style, width).Length * pen.LineHeight(style);
    }

    internal override void Draw(Pen pen, bool focused)
    {
        string now = text();
        if (now.Length > 0) pen.Lines(now, Bounds.Left, Bounds.Top, Bounds.Width, style, tone);
    }
}
