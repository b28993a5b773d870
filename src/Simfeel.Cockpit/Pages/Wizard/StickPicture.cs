using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Cockpit.Pages.Widgets;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Wizard;

/// <summary>Both sticks as they would be flown with what is known so far, and how far the wizard is.</summary>
internal sealed class StickPicture(Func<WizardView> view) : Widget
{
    private const string Left = "yaw, throttle", Right = "roll, pitch";

    private protected override float Measure(Pen pen, float x, float y, float width) =>
        2 * pen.LineHeight(TextStyle.Small) + Size(pen, width) + 44 * pen.Scale;

    internal override void Draw(Pen pen, bool focused)
    {
        WizardView now = view();
        float unit = pen.Scale, small = pen.LineHeight(TextStyle.Small), y = Bounds.Top + 6 * unit;
        float size = Size(pen, Bounds.Width), left = Bounds.MidX - size - 4 * unit;
        pen.Fill(Bounds, Palette.Panel, 6 * unit);
        pen.Text("what would be flown", Bounds.Left + 12 * unit, y, TextStyle.Small, Palette.Quiet);
        y += small + 6 * unit;
        StickBoxes.Draw(pen, left, y, size, now.Live);
        y += size + 4 * unit;
        pen.Text(pen.Fit(Left, TextStyle.Small, size), left, y, TextStyle.Small, Palette.Quiet);
        pen.Text(pen.Fit(Right, TextStyle.Small, size), left + size + 8 * unit, y, TextStyle.Small, Palette.Quiet);
        y += small + 10 * unit;
        SKRect track = new(Bounds.Left + 12 * unit, y, Bounds.Right - 12 * unit, y + 6 * unit);
        pen.Frame(track, Palette.Line, Math.Max(1, unit), 3 * unit);
        float done = (float)Math.Clamp(now.Progress, 0, 1) * track.Width;
        pen.Fill(new(track.Left, track.Top, track.Left + done, track.Bottom), Palette.BuildA, 3 * unit);
    }

    private static float Size(Pen pen, float width) =>
        Math.Min((width - 32 * pen.Scale) / 2, 130 * pen.Scale);
}
