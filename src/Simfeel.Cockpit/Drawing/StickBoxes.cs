using Simfeel.Flight;
using SkiaSharp;

namespace Simfeel.Cockpit.Drawing;

/// <summary>Where both sticks stand, in two boxes: yaw and throttle to the left, roll and pitch to the right.</summary>
internal static class StickBoxes
{
    /// <summary>Width of both boxes of a size with the gap between.</summary>
    public static float Width(float size, float unit) => 2 * size + 8 * unit;

    /// <summary>Draws both boxes.</summary>
    public static void Draw(Pen pen, float x, float y, float size, Sticks sticks)
    {
        Box(pen, x, y, size, sticks.Yaw, 2 * sticks.Throttle - 1, 1);
        // stick forward is nose down and stands high in the box
        Box(pen, x + size + 8 * pen.Scale, y, size, sticks.Roll, -sticks.Pitch, 0);
    }

    private static void Box(Pen pen, float x, float y, float size, double across, double up, float rest)
    {
        SKRect box = new(x, y, x + size, y + size);
        pen.Frame(box, Palette.Line, Math.Max(1, pen.Scale), 3 * pen.Scale);
        float half = size / 2, travel = half - 5 * pen.Scale;
        pen.Line(x + half, y + 4 * pen.Scale, x + half, y + size - 4 * pen.Scale, Palette.Line, 1);
        float level = y + half + rest * travel;
        pen.Line(x + 4 * pen.Scale, level, x + size - 4 * pen.Scale, level, Palette.Line, 1);
        pen.Disc(x + half + travel * Unit(across), y + half - travel * Unit(up), 4 * pen.Scale, Palette.Ink);
    }

    private static float Unit(double value) => double.IsNaN(value) ? 0 : (float)Math.Clamp(value, -1, 1);
}
