using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Cockpit.Pages.Widgets;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Wizard;

/// <summary>Every raw axis of a device as a bar from its middle; the one that is looked at has an arrow.</summary>
internal sealed class AxisBars(Func<WizardView> view) : Widget
{
    private protected override float Measure(Pen pen, float x, float y, float width) =>
        pen.LineHeight(TextStyle.Small) + 8 * pen.Scale
            + Math.Max(1, view().Axes.Length) * (pen.LineHeight(TextStyle.Body) + 4 * pen.Scale) + 14 * pen.Scale;

    internal override void Draw(Pen pen, bool focused)
    {
        WizardView now = view();
        float unit = pen.Scale, left = Bounds.Left + 12 * unit, y = Bounds.Top + 6 * unit, line = pen.LineHeight(TextStyle.Body);
        pen.Fill(Bounds, Palette.Panel, 6 * unit);
        pen.Text("what the device sends", left, y, TextStyle.Small, Palette.Quiet);
        y += pen.LineHeight(TextStyle.Small) + 8 * unit;
        if (now.Axes.Length == 0) pen.Text("nothing yet", left, y, TextStyle.Body, Palette.Ink);
        float name = pen.FigureWidth(2, TextStyle.Figures), mark = 18 * unit;
        float right = Bounds.Right - 14 * unit, start = left + mark + name + 12 * unit;
        for (int k = 0; k < now.Axes.Length; k++, y += line + 4 * unit)
        {
            bool looked = k == now.Axis;
            if (looked) pen.Text("▶", left, y, TextStyle.Body, Palette.Focus);
            pen.Number(k + 1, "F0", left + mark + name, y, TextStyle.Figures, Palette.Ink);
            SKRect track = new(start, y + line / 2 - 5 * unit, right, y + line / 2 + 5 * unit);
            pen.Frame(track, looked ? Palette.Focus : Palette.Line, looked ? 2 * unit : Math.Max(1, unit), 3 * unit);
            float at = track.MidX + (float)Math.Clamp(now.Axes[k], -1, 1) * (track.Width / 2 - 3 * unit);
            (float from, float to) = (Math.Min(track.MidX, at), Math.Max(track.MidX, at));
            pen.Fill(new(from, track.Top + 2 * unit, to, track.Bottom - 2 * unit), Palette.BuildA);
            pen.Line(at, track.Top - 2 * unit, at, track.Bottom + 2 * unit, Palette.Ink, 3 * unit);
        }
    }
}
