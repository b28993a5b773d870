using Simfeel.Cockpit.Drawing;

namespace Simfeel.Cockpit.Overlay;

/// <summary>
/// What lies over the picture in flight: a quiet strip below with both builds' plates and the sticks, lines of words at the
/// top, and on demand the graphs at the right edge. What does not fit is left out in a fixed order, the flown build last.
/// </summary>
public sealed class FlightOverlay
{
    private readonly FlightBanners _banners = new();

    /// <summary>The side panel; <see cref="Graphs.Record"/> it every frame.</summary>
    public Graphs Graphs { get; } = new();

    /// <summary>Redraws a second that this readout wants: few while time is held, fewer with graphs, which cost most, many where names go with the picture.</summary>
    public static double WantedRate_Hz(FlightReadout readout) => readout.Axes.Shown ? 30 : readout.Paused ? 5 : readout.ShowGraphs ? 12 : 20;

    /// <summary>Draws the overlay.</summary>
    /// <param name="pen">Pen on an empty layer.</param>
    /// <param name="readout">What to show.</param>
    /// <param name="width">Width of the window, pixels.</param>
    /// <param name="height">Height of the window, pixels.</param>
    /// <param name="time">Now, s; the clock of <see cref="FlightReadout.Notify"/>.</param>
    public void Draw(Pen pen, FlightReadout readout, int width, int height, double time)
    {
        float margin = 10 * pen.Scale;
        pen.Part = "flight";
        float strip = DrawStrip(pen, readout, width, height, margin);
        if (readout.Timeline.Shown) strip = Timeline.DrawBar(pen, readout.Timeline, margin, width - margin, strip - (margin / 2));
        float side = 0;
        if (readout.ShowGraphs)
        {
            float wide = Math.Min(330 * pen.Scale, 0.3f * width);
            if (Graphs.Draw(pen, new(width - margin / 2 - wide, margin, width - margin / 2, strip - margin))) side = wide;
        }
        readout.Axes.Draw(pen, width, height, strip, side > 0 ? width - side - margin : width);
        float right = width - margin - (side > 0 ? side + margin / 2 : 0), bottom = strip - (margin / 2);
        // a note leaves the upper half to the banners, which may be urgent
        if (readout.Timeline is { Shown: true, Caption.Length: > 0 } timeline)
            bottom = Timeline.DrawCaption(pen, timeline.Caption, new(margin, bottom / 2, right, bottom)) - (margin / 2);
        _banners.Draw(pen, new(margin, margin, right, bottom), readout, time);
    }

    private static float DrawStrip(Pen pen, FlightReadout readout, int width, int height, float margin)
    {
        float plate = BuildPlate.Height(pen), top = height - margin - plate, gap = 8 * pen.Scale;
        float size = plate - 12 * pen.Scale, sticks = SticksWidth();
        float room = width - 2 * margin;
        int flown = readout.Flown;
        PlateParts mine = PlateParts.All, theirs = PlateParts.All;
        bool both = !readout.Blind, withSticks = true;
        if (readout.Blind) mine = PlateParts.Figures;
        for (int step = 0; step < 6 && Needed() > room; step++)
        {
            if (step == 0) theirs = PlateParts.Bars;
            else if (step == 1) theirs = PlateParts.None;
            else if (step == 2) (sticks, size) = (SticksWidth(0.6f), 0.6f * size);
            else if (step == 3) both = false;
            else if (step == 4) withSticks = false;
            else mine = PlateParts.Figures;
        }

        float middle = margin + (room - (withSticks ? sticks : 0)) / 2;
        if (withSticks)
        {
            // where the plates are unlike in width the sticks give way
            float first = both ? PlateWidth(0) : PlateWidth(flown), last = both ? PlateWidth(1) + gap : 0;
            middle = both
                ? Math.Clamp(middle, margin + first + gap, Math.Max(margin + first + gap, width - margin - last - sticks))
                : width - margin - sticks;
            pen.Fill(new(middle, top, middle + sticks, top + plate), Palette.Plate, 6 * pen.Scale);
            StickBoxes.Draw(pen, middle + 6 * pen.Scale, top + (plate - size) / 2, size, readout.Sticks);
        }
        for (int k = 0; k < 2; k++)
        {
            if (k != flown && !both) continue;
            float wide = PlateWidth(k);
            float left = k == 0 || !both ? margin : width - margin - wide;
            BuildPlate.Draw(pen, new(left, top, left + wide, top + plate), readout, k, k == flown ? mine : theirs);
        }
        return top;

        float SticksWidth(float share = 1) => StickBoxes.Width(share * size, pen.Scale) + 12 * pen.Scale;

        float PlateWidth(int build) =>
            BuildPlate.Width(pen, readout.Builds[build], build == flown ? mine : theirs, readout.ShowNumbers);

        float Needed() =>
            PlateWidth(flown) + (both ? PlateWidth(1 - flown) + gap : 0) + (withSticks ? sticks + gap : 0);
    }
}
