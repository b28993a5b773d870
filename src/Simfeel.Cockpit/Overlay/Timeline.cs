using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Overlay;

/// <summary>The thin time bar of a replay with a tick for each mark, and over it the note of the mark just passed.</summary>
internal static class Timeline
{
    private const string Seconds = "s";

    /// <summary>Draws the bar so that it ends at <paramref name="bottom"/>; gives where it begins.</summary>
    public static float DrawBar(Pen pen, TimelineReadout timeline, float left, float right, float bottom)
    {
        float unit = pen.Scale, figures = pen.FigureWidth(6, TextStyle.SmallFigures), s = pen.Width(Seconds, TextStyle.Small);
        SKRect plate = new(left, bottom - pen.LineHeight(TextStyle.Small) - (6 * unit), right, bottom);
        pen.Box = plate;
        pen.Fill(plate, Palette.Plate, 5 * unit);
        float from = Time(pen, timeline.Position, plate.Left + (8 * unit), plate, figures) + (10 * unit);
        float last = plate.Right - (12 * unit) - figures - s;
        Time(pen, timeline.Length, last, plate, figures);
        float wide = last - (10 * unit) - from;
        if (wide < 20 * unit) return plate.Top;
        pen.Fill(new(from, plate.MidY - (2 * unit), from + wide, plate.MidY + (2 * unit)), Palette.Line, 2 * unit);
        float at = from + (wide * Share(timeline.Position, timeline.Length));
        pen.Fill(new(from, plate.MidY - (2 * unit), at, plate.MidY + (2 * unit)), Palette.BuildA, 2 * unit);
        for (int k = 0; k < timeline.Marks?.Count; k++)
        {
            float x = from + (wide * Share(timeline.Marks[k].Time, timeline.Length));
            pen.Line(x, plate.Top + (3 * unit), x, plate.Bottom - (3 * unit), Palette.Ink, 2 * unit);
        }
        pen.Disc(at, plate.MidY, 5 * unit, Palette.BuildA);
        return plate.Top;
    }

    /// <summary>Draws the note large, above <paramref name="area"/>'s lower edge, as far as it fits; gives where it begins.</summary>
    public static float DrawCaption(Pen pen, string note, SKRect area)
    {
        float unit = pen.Scale, inset = 18 * unit, room = area.Width - (2 * inset);
        TextStyle style = pen.Wrap(note, TextStyle.Title, room).Length <= 2 ? TextStyle.Title : TextStyle.Heading;
        string[] lines = pen.Wrap(note, style, room);
        float line = pen.LineHeight(style);
        int shown = Math.Min(lines.Length, (int)((area.Height - (14 * unit)) / line));
        if (shown <= 0) return area.Bottom;
        float widest = 0;
        for (int k = 0; k < shown; k++) widest = Math.Max(widest, pen.Width(lines[k], style));
        float top = area.Bottom - (shown * line) - (14 * unit), left = area.MidX - (widest / 2);
        SKRect plate = new(left - inset, top, left + widest + inset, area.Bottom);
        pen.Box = plate;
        pen.Fill(plate, Palette.Plate, 8 * unit);
        pen.Frame(plate, Palette.Focus, 2 * unit, 8 * unit);
        for (int k = 0; k < shown; k++)
            pen.Text(lines[k], area.MidX - (pen.Width(lines[k], style) / 2), top + (7 * unit) + (k * line), style, Palette.Ink);
        return top;
    }

    private static float Time(Pen pen, double seconds, float x, SKRect plate, float figures)
    {
        float top = plate.Top + (3 * pen.Scale), lower = pen.LineHeight(TextStyle.Small) - pen.LineHeight(TextStyle.SmallFigures);
        pen.Number(Math.Clamp(seconds, 0, 9999.9), "F1", x + figures, top + lower, TextStyle.SmallFigures, Palette.Ink);
        pen.Text(Seconds, x + figures + (3 * pen.Scale), top, TextStyle.Small, Palette.Quiet);
        return x + figures + (3 * pen.Scale) + pen.Width(Seconds, TextStyle.Small);
    }

    private static float Share(double time, double length) => length > 0 ? (float)Math.Clamp(time / length, 0, 1) : 0;
}
