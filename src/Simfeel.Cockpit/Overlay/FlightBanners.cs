using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Overlay;

/// <summary>Plain words at the top: what the flight waits for, how time runs, what was just said, which helps are on.</summary>
internal sealed class FlightBanners
{
    /// <summary>A notice stands for this long, s, and then fades.</summary>
    public const double NoticeStands = 5;

    /// <summary>Time in which a notice fades, s.</summary>
    public const double NoticeFades = 1.5;

    private static readonly string[] Slow =
        [.. Enumerable.Range(0, 20).Select(k => FormattableString.Invariant($"slow motion: {k / 20.0:0.##} of real time"))];

    private string _armKey = "", _restartKey = "", _pauseKey = "";
    private string _arm = Keyed("Not armed.", "", ""), _crash = Keyed("Crashed.", "", ""), _pause = Keyed("Paused.", "", "");

    /// <summary>Whether a notice is still to be seen.</summary>
    public static bool NoticeShows(FlightReadout readout, double time) =>
        readout.Notice.Length > 0 && time - readout.NoticeTime < NoticeStands + NoticeFades;

    /// <summary>Draws what fits into an area, from its top, the urgent first.</summary>
    public void Draw(Pen pen, SKRect area, FlightReadout readout, double time)
    {
        Follow(readout);
        float y = Chips(pen, area, area.Top, readout);
        if (readout.NoStick) y = Banner(pen, area, y, "The sticks are gone. Plug them in; the flight waits.", 1, true);
        if (readout.Crashed) y = Banner(pen, area, y, _crash, 1, true);
        if (readout.Paused && !readout.NoStick) y = Banner(pen, area, y, _pause, 1, false);
        else if (!readout.Armed && !readout.Crashed && !readout.NoStick && !readout.Replaying)
            y = Banner(pen, area, y, _arm, 1, false);
        if (NoticeShows(readout, time))
        {
            double left = (NoticeStands + NoticeFades - (time - readout.NoticeTime)) / NoticeFades;
            Banner(pen, area, y, readout.Notice, (float)Math.Clamp(left, 0, 1), false);
        }
    }

    private static string Keyed(string what, string key, string does) => key.Length == 0 ? what : $"{what} {key} {does}";

    private static float Chips(Pen pen, SKRect area, float y, FlightReadout readout)
    {
        float unit = pen.Scale, x = area.Left;
        if (readout.Keyboard) Chip(pen, area, ref x, ref y, "keyboard: not fit for feel", false);
        if (readout.Recording) Chip(pen, area, ref x, ref y, "recording", true);
        if (readout.Replaying) Chip(pen, area, ref x, ref y, "replay", false);
        if (readout.TimeFactor < 0.99)
            Chip(pen, area, ref x, ref y, Slow[Math.Clamp((int)Math.Round(20 * readout.TimeFactor), 0, 19)], false);
        if (readout.Level) Chip(pen, area, ref x, ref y, "levels itself", false);
        if (readout.Shadow) Chip(pen, area, ref x, ref y, "the other build flies along", false);
        if (!double.IsNaN(readout.GridHeight))
        {
            Figure(pen, area, ref x, ref y, "level grid at", readout.GridHeight, "F1", "m");
            Figure(pen, area, ref x, ref y, readout.OverGrid < 0 ? "below it" : "above it", Math.Abs(readout.OverGrid), "F1", "m");
        }
        if (readout.ShowNumbers)
        {
            Delay(pen, area, ref x, ref y, "radio", readout.RadioDelay);
            Delay(pen, area, ref x, ref y, "video", readout.VideoDelay);
            if (!double.IsNaN(readout.PictureDelay)) Delay(pen, area, ref x, ref y, "stick to picture", readout.PictureDelay);
        }
        return x == area.Left && y == area.Top ? y : y + pen.LineHeight(TextStyle.Small) + 12 * unit;
    }

    private static SKRect Place(Pen pen, SKRect area, ref float x, ref float y, float width)
    {
        float height = pen.LineHeight(TextStyle.Small) + 6 * pen.Scale;
        if (x > area.Left && x + width > area.Right)
        {
            float below = y + height + 4 * pen.Scale;
            // banners matter more than chips: a small window shows the first chips only
            if (below + height > area.Top + 0.4f * area.Height) return SKRect.Empty;
            (x, y) = (area.Left, below);
        }
        SKRect place = new(x, y, x + width, y + height);
        pen.Fill(place, Palette.Plate, 5 * pen.Scale);
        pen.Box = place;
        x += width + 6 * pen.Scale;
        return place;
    }

    private static void Chip(Pen pen, SKRect area, ref float x, ref float y, string text, bool dot)
    {
        float unit = pen.Scale, mark = dot ? 14 * unit : 0;
        SKRect place = Place(pen, area, ref x, ref y, pen.Width(text, TextStyle.Small) + mark + 16 * unit);
        if (place.IsEmpty) return;
        if (dot) pen.Disc(place.Left + 13 * unit, place.MidY, 4.5f * unit, Palette.Warning);
        pen.Text(text, place.Left + 8 * unit + mark, place.Top + 3 * unit, TextStyle.Small, Palette.Ink);
    }

    private static void Delay(Pen pen, SKRect area, ref float x, ref float y, string name, double delay) =>
        Figure(pen, area, ref x, ref y, name, Math.Clamp(1000 * delay, 0, 999), "F0", "ms");

    private static void Figure(Pen pen, SKRect area, ref float x, ref float y, string name, double value, string format, string unitName)
    {
        // an absurd value stays inside its place
        int room = format == "F0" ? 4 : 6;
        value = Math.Clamp(value, -999, 9999);
        float unit = pen.Scale, words = pen.Width(name, TextStyle.Small), figures = pen.FigureWidth(room, TextStyle.SmallFigures);
        SKRect place = Place(pen, area, ref x, ref y, words + figures + pen.Width(unitName, TextStyle.Small) + 24 * unit);
        if (place.IsEmpty) return;
        float left = place.Left + 8 * unit, top = place.Top + 3 * unit;
        pen.Text(name, left, top, TextStyle.Small, Palette.Quiet);
        float right = left + words + 4 * unit + figures;
        float lower = pen.LineHeight(TextStyle.Small) - pen.LineHeight(TextStyle.SmallFigures);
        pen.Number(value, format, right, top + lower, TextStyle.SmallFigures, Palette.Ink);
        pen.Text(unitName, right + 4 * unit, top, TextStyle.Small, Palette.Quiet);
    }

    private static float Banner(Pen pen, SKRect area, float y, string text, float opacity, bool urgent)
    {
        float unit = pen.Scale, inset = 14 * unit, mark = urgent ? 22 * unit : 0;
        float room = area.Width - 2 * inset - mark;
        string[] lines = pen.Wrap(text, TextStyle.Body, room);
        float widest = 0;
        foreach (string line in lines) widest = Math.Max(widest, pen.Width(line, TextStyle.Body));
        float height = lines.Length * pen.LineHeight(TextStyle.Body) + 10 * unit;
        if (y + height > area.Bottom) return y;
        float left = area.MidX - (widest + mark) / 2 - inset;
        SKRect place = new(left, y, left + widest + mark + 2 * inset, y + height);
        pen.Box = place;
        pen.Fill(place, Faded(Palette.Plate, opacity), 6 * unit);
        if (urgent)
        {
            pen.Frame(place, Palette.Warning, 2 * unit, 6 * unit);
            pen.Text("!", place.Left + inset, y + 5 * unit, TextStyle.Heading, Palette.Warning);
        }
        for (int k = 0; k < lines.Length; k++)
        {
            pen.Text(
                lines[k], place.Left + inset + mark, y + 5 * unit + k * pen.LineHeight(TextStyle.Body), TextStyle.Body,
                Faded(Palette.Ink, opacity));
        }
        return place.Bottom + 6 * unit;
    }

    private static SKColor Faded(SKColor colour, float opacity) => colour.WithAlpha((byte)(colour.Alpha * opacity));

    private void Follow(FlightReadout readout)
    {
        if (_armKey != readout.ArmKey) _arm = Keyed("Not armed.", _armKey = readout.ArmKey, "arms, with the throttle low.");
        if (_restartKey != readout.RestartKey) _crash = Keyed("Crashed.", _restartKey = readout.RestartKey, "starts again.");
        if (_pauseKey != readout.PauseKey) _pause = Keyed("Paused.", _pauseKey = readout.PauseKey, "flies on.");
    }
}
