using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Overlay;

/// <summary>Where the tips of the mass view's body axes are on the screen. The application fills it every frame.</summary>
public sealed class AxisLabels
{
    private static readonly string[] Words = ["ahead", "right", "down"];

    private static readonly int[] Colours = [0xD55E00, 0xF0E442, 0x0072B2];

    private readonly (float X, float Y, bool InSight)[] _tips = new (float, float, bool)[3];

    /// <summary>Whether the mass view is on.</summary>
    public bool Shown { get; set; }

    /// <summary>Colour of an axis (0 to 2) and of the bar beside its name, 0xRRGGBB; apart for the colour-blind, too (Okabe and Ito 2008).</summary>
    public static int Colour(int axis) => Colours[axis];

    /// <summary>Puts the tip of an axis (0 to 2) to a place, in shares of the window's width and height from the upper left.</summary>
    public void Put(int axis, float x, float y, bool inSight) => _tips[axis] = (x, y, inSight);

    /// <summary>Draws the names in the part of the window above <paramref name="bottom"/> and left of <paramref name="right"/>.</summary>
    internal void Draw(Pen pen, int width, int height, float bottom, float right)
    {
        if (!Shown) return;
        float unit = pen.Scale, line = pen.LineHeight(TextStyle.Small);
        string part = pen.Part;
        pen.Part = "axes";
        for (int axis = 0; axis < 3; axis++)
        {
            (float x, float y, bool inSight) = _tips[axis];
            float wide = pen.Width(Words[axis], TextStyle.Small) + (14 * unit);
            float left = (x * width) + (8 * unit), top = (y * height) - (line / 2);
            if (!inSight || left < 0 || top < 0 || left + wide > width || top + line > bottom) continue;
            // the tip may lie under a panel; its name stands beside that
            left = Math.Min(left, right - wide);
            pen.Box = new(left, top, left + wide, top + line);
            pen.Fill(pen.Box, Palette.Plate, 4 * unit);
            // another axis may lie under the name
            pen.Fill(new(left, top, left + (5 * unit), top + line), new SKColor(0xFF000000 | (uint)Colours[axis]));
            pen.Text(Words[axis], left + (9 * unit), top, TextStyle.Small, Palette.Ink);
        }
        pen.Part = part;
    }
}
