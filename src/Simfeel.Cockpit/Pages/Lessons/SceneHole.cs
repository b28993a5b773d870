using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Lessons;

/// <summary>A part of a page through which the scene is seen, with the names of the two craft in it, A left and B right.</summary>
/// <param name="names">Names of both craft.</param>
internal sealed class SceneHole(Func<IReadOnlyList<string>> names) : Widget
{
    /// <summary>Largest height, pixels; the page's, so that the scene leaves room for words.</summary>
    public float Tallest { get; set; } = 360;

    private protected override float Measure(Pen pen, float x, float y, float width) => Math.Max(80, Math.Min(Tallest, width * 0.6f));

    internal override void Draw(Pen pen, bool focused)
    {
        pen.Canvas.Save();
        pen.Canvas.ClipRect(Bounds);
        pen.Canvas.Clear(SKColors.Transparent);
        pen.Canvas.Restore();
        float unit = pen.Scale, line = pen.LineHeight(TextStyle.Small), mark = 18 * unit, room = (Bounds.Width / 2) - mark - (12 * unit);
        for (int k = 0; k < 2; k++)
        {
            string name = pen.Fit(names()[k], TextStyle.Small, room);
            float width = mark + pen.Width(name, TextStyle.Small) + (6 * unit);
            float left = k == 0 ? Bounds.Left : Bounds.Right - width;
            pen.Fill(new(left, Bounds.Bottom - line - (4 * unit), left + width, Bounds.Bottom), Palette.Plate);
            pen.BuildMark(k, left + (9 * unit), Bounds.Bottom - (2 * unit) - (line / 2), 5 * unit, Palette.Build(k));
            pen.Text(name, left + mark, Bounds.Bottom - line - (2 * unit), TextStyle.Small, Palette.Ink);
        }
    }
}
