using Simfeel.Cockpit.Drawing;
using Simfeel.Physics;
using SkiaSharp;

namespace Simfeel.Cockpit.Overlay;

/// <summary>What of a plate is drawn, from the least to all of it.</summary>
[Flags]
internal enum PlateParts
{
    None = 0,
    Figures = 1,
    Bars = 2,
    All = Figures | Bars,
}

/// <summary>One build's plate: name, which one is flown, speed, height, pack, torque reserve of each rotor.</summary>
internal static class BuildPlate
{
    private const string FlownWords = "you fly this one", ShadowWords = "flies along", WaitingWords = "waits";

    /// <summary>Height of every plate.</summary>
    public static float Height(Pen pen) =>
        pen.LineHeight(TextStyle.Heading) + pen.LineHeight(TextStyle.Figures) + pen.LineHeight(TextStyle.Small) + 24 * pen.Scale;

    /// <summary>Width that a plate needs.</summary>
    public static float Width(Pen pen, BuildReadout build, PlateParts parts, bool numbers)
    {
        float unit = pen.Scale;
        float name = Math.Min(pen.Width(build.Name, TextStyle.Heading), 170 * unit) + 44 * unit;
        float text = Math.Max(name, pen.Width(FlownWords, TextStyle.Small) + 8 * unit);
        if (Has(parts, PlateParts.Figures)) text = Math.Max(text, FiguresWidth(pen));
        if (Has(parts, PlateParts.Bars)) text += 14 * unit + BarsWidth(pen, build, numbers);
        return text + 22 * unit;
    }

    /// <summary>Draws a plate.</summary>
    public static void Draw(Pen pen, SKRect area, FlightReadout readout, int index, PlateParts parts)
    {
        BuildReadout build = readout.Builds[index];
        bool flown = readout.Flown == index;
        float unit = pen.Scale;
        SKColor colour = Palette.Build(index);
        pen.Box = area;
        pen.Fill(area, Palette.Plate, 6 * unit);
        if (flown) pen.Frame(area, colour, 2.5f * unit, 6 * unit);

        float x = area.Left + 12 * unit, y = area.Top + 12 * unit;
        float heading = pen.LineHeight(TextStyle.Heading);
        if (!Has(parts, PlateParts.Figures)) y += pen.LineHeight(TextStyle.Figures) / 2;
        float nameLeft = x;
        if (!readout.Blind)
        {
            pen.BuildMark(index, x + 6 * unit, y + heading / 2, 6.5f * unit, colour);
            pen.Text(index == 0 ? "A" : "B", x + 20 * unit, y, TextStyle.Heading, Palette.Ink);
            nameLeft = x + 38 * unit;
        }
        pen.Text(pen.Fit(build.Name, TextStyle.Heading, 170 * unit), nameLeft, y, TextStyle.Heading, Palette.Ink);
        y += heading;
        if (Has(parts, PlateParts.Figures))
        {
            DrawFigures(pen, build, x, y, readout.SpeedInKilometresPerHour, !readout.Blind);
            y += pen.LineHeight(TextStyle.Figures);
        }
        string words = flown ? FlownWords : build.Flying ? ShadowWords : WaitingWords;
        pen.Text(words, x, y, TextStyle.Small, flown ? Palette.Ink : Palette.Quiet);

        if (!Has(parts, PlateParts.Bars)) return;
        float width = BarsWidth(pen, build, readout.ShowNumbers);
        SKRect bars = new(area.Right - 10 * unit - width, area.Top + 6 * unit, area.Right - 10 * unit, area.Bottom - 5 * unit);
        DrawBars(pen, bars, readout, build, colour);
    }

    // not HasFlag, which allocates until its caller is optimised
    private static bool Has(PlateParts parts, PlateParts one) => (parts & one) != 0;

    private static float FiguresWidth(Pen pen) =>
        pen.FigureWidth(3 + 5 + 4, TextStyle.Figures) + pen.Width("km/h", TextStyle.Small) + pen.Width("m", TextStyle.Small)
            + pen.Width("V", TextStyle.Small) + (3 * 4 + 2 * 8) * pen.Scale;

    private static void DrawFigures(Pen pen, BuildReadout build, float x, float y, bool kilometres, bool voltage)
    {
        float gap = 8 * pen.Scale;
        double speed = kilometres ? 3.6 * build.Speed : build.Speed;
        x = Figure(pen, speed, "F0", 3, kilometres ? "km/h" : "m/s", x, y) + gap;
        x = Figure(pen, build.Height, "F1", 5, "m", x, y) + gap;
        if (voltage) Figure(pen, build.PackVoltage, "F1", 4, "V", x, y);
    }

    private static float Figure(Pen pen, double value, string format, int figures, string unit, float x, float y)
    {
        float right = x + pen.FigureWidth(figures, TextStyle.Figures);
        // an absurd value stays inside its place
        double most = Math.Pow(10, figures - (format == "F0" ? 0 : 2)) - 1;
        pen.Number(Math.Clamp(value, -most / 10, most), format, right, y, TextStyle.Figures, Palette.Ink);
        right += 4 * pen.Scale;
        float lower = pen.LineHeight(TextStyle.Figures) - pen.LineHeight(TextStyle.Small) - 1.5f * pen.Scale;
        pen.Text(unit, right, y + lower, TextStyle.Small, Palette.Quiet);
        return right + pen.Width(unit, TextStyle.Small);
    }

    private static float ColumnWidth(Pen pen, bool numbers) =>
        numbers ? pen.FigureWidth(4, TextStyle.SmallFigures) + 6 * pen.Scale : 15 * pen.Scale;

    private static float BarsWidth(Pen pen, BuildReadout build, bool numbers)
    {
        float columns = Math.Clamp(build.RotorCount, 1, Craft.MaxRotors) * ColumnWidth(pen, numbers);
        float captions = pen.Width("down", TextStyle.Small) + 8 * pen.Scale;
        return Math.Max(captions + columns, pen.Width(Caption(numbers), TextStyle.Small));
    }

    private static string Caption(bool numbers) => numbers ? "torque reserve, mN m" : "torque reserve";

    private static void DrawBars(Pen pen, SKRect area, FlightReadout readout, BuildReadout build, SKColor colour)
    {
        bool numbers = readout.ShowNumbers;
        float unit = pen.Scale, small = pen.LineHeight(TextStyle.Small), column = ColumnWidth(pen, numbers);
        pen.Text(Caption(numbers), area.Left, area.Top - 2 * unit, TextStyle.Small, Palette.Quiet);
        float top = area.Top + small, middle = (top + area.Bottom) / 2;
        pen.Text("up", area.Left, (top + middle - small) / 2, TextStyle.Small, Palette.Quiet);
        pen.Text("down", area.Left, (middle + area.Bottom - small) / 2, TextStyle.Small, Palette.Quiet);
        float x = area.Left + pen.Width("down", TextStyle.Small) + 8 * unit;
        int rotors = Math.Clamp(build.RotorCount, 1, Craft.MaxRotors);
        pen.Line(x - 2 * unit, middle, x + rotors * column, middle, Palette.Line, Math.Max(1, unit));
        float half = middle - top - unit;
        for (int k = 0; k < rotors; k++, x += column)
        {
            float bar = Math.Min(column - 4 * unit, 12 * unit), left = x + (numbers ? 0 : 1 * unit);
            if ((build.StruckRotors >> k & 1) != 0)
            {
                // a cross instead of bars: this propeller struck something
                pen.Line(left, top, left + bar, area.Bottom, Palette.Warning, 2 * unit);
                pen.Line(left + bar, top, left, area.Bottom, Palette.Warning, 2 * unit);
                continue;
            }
            float up = half * Share(build.ReserveUp[k], readout.ReserveScale);
            float down = half * Share(build.ReserveDown[k], readout.ReserveScale);
            if (numbers)
            {
                float right = x + column - 4 * unit, figures = pen.LineHeight(TextStyle.SmallFigures);
                pen.Fill(new(left, middle - up, left + 3 * unit, middle), colour);
                pen.Fill(new(left, middle, left + 3 * unit, middle + down), colour);
                Reserve(pen, build.ReserveUp[k], right, (top + middle - figures) / 2);
                Reserve(pen, build.ReserveDown[k], right, (middle + area.Bottom - figures) / 2);
                continue;
            }
            pen.Fill(new(left, middle - up, left + bar, middle), colour);
            if (down >= 1) pen.Frame(new(left, middle, left + bar, middle + down), colour, 1.5f * unit);
        }
    }

    private static void Reserve(Pen pen, double torque, float right, float y) =>
        pen.Number(Math.Clamp(1000 * torque, -99, 999), "F0", right, y, TextStyle.SmallFigures, Palette.Ink);

    private static float Share(double torque, double full) =>
        double.IsFinite(torque) && full > 0 ? (float)Math.Clamp(torque / full, 0, 1) : 0;
}
