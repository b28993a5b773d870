using Simfeel.Cockpit.Drawing;
using Simfeel.Physics;
using SkiaSharp;

namespace Simfeel.Cockpit.Overlay;

/// <summary>
/// The side panel: the last four seconds of the flown build. Rates against commands, rotor speeds, pack, load factor.
/// Stands at the right edge, at most three tenths of the picture wide, so that the middle stays free.
/// </summary>
public sealed class Graphs
{
    /// <summary>Samples that are kept.</summary>
    internal const int Room = 201;

    /// <summary>Time that is shown, s.</summary>
    public const double Span = 4;

    /// <summary>Place of the pack's voltage among the graphs.</summary>
    private const int Volts = 4;

    private const double Period = Span / (Room - 1);

    private static readonly int[] Dashes = [0, 6, 3, 1];

    private readonly GraphTrace[] _rates = Traces(3), _commands = Traces(3), _rotors = Traces(Craft.MaxRotors);
    private readonly GraphTrace _volts = new(), _amperes = new(), _load = new();
    private readonly GraphScale[] _scales;
    private readonly string[] _titles = ["roll rate", "pitch rate", "yaw rate", "rotor speed", "pack", "pack", "load"];
    private readonly string[] _units = ["deg/s", "deg/s", "deg/s", "1000 rpm", "V", "A", "g"];
    private readonly string[] _fits = [.. Enumerable.Range(0, 8).Select(k => $"{k} of 7 fit")];
    private double _time = double.NaN, _empty, _full;
    private int _flown, _rotorCount;
    private long _serial;

    /// <summary>An empty panel.</summary>
    public Graphs() => _scales =
        [new(50, true), new(50, true), new(50, true), new(5, false), new(5, false), new(20, false), new(2, true)];

    /// <summary>Number of samples that are shown, at most <see cref="Room"/>.</summary>
    internal int Count => _volts.Count;

    /// <summary>
    /// Takes what is due of a readout; to be called every frame. Starts anew when time went back or the other build is flown.
    /// </summary>
    public void Record(FlightReadout readout)
    {
        if (readout.Flown != _flown || readout.Time < _time || double.IsNaN(_time)) Clear(readout);
        if (readout.Time < _time + Period) return;
        // a frame that took longer than a sample fills the gap, so that the width stays four seconds
        int due = (int)Math.Min(Room, (readout.Time - _time) / Period);
        _time = due == Room ? readout.Time : _time + due * Period;
        for (int k = 0; k < due; k++) Take(readout.Builds[readout.Flown]);
    }

    /// <summary>Draws the panel.</summary>
    /// <param name="pen">Pen.</param>
    /// <param name="area">Room for it, pixels.</param>
    /// <returns>Whether there was room for at least one graph.</returns>
    internal bool Draw(Pen pen, SKRect area)
    {
        float unit = pen.Scale;
        float line = pen.LineHeight(TextStyle.Small);
        float least = line + 2.2f * pen.LineHeight(TextStyle.SmallFigures);
        float foot = line + 6 * unit;
        int shown = Math.Clamp((int)((area.Height - foot - 8 * unit) / least), 0, _titles.Length);
        if (shown == 0) return false;
        if (shown < _titles.Length)
        {
            foot += line;
            shown = Math.Clamp((int)((area.Height - foot - 8 * unit) / least), 1, _titles.Length);
        }
        pen.Fill(area, Palette.Plate, 6 * unit);
        pen.Box = area;
        float height = (area.Height - foot - 8 * unit) / shown;
        float left = area.Left + 8 * unit, right = area.Right - 8 * unit;
        for (int k = 0; k < shown; k++)
            DrawOne(pen, k, new(left, area.Top + 6 * unit + k * height, right, area.Top + 6 * unit + (k + 1) * height));
        float y = area.Bottom - foot;
        float plotLeft = left + Axis(pen);
        const string From = "4 s ago", Until = "now";
        if (pen.Width(From, TextStyle.Small) + pen.Width(Until, TextStyle.Small) + 8 * unit <= right - plotLeft)
            pen.Text(From, plotLeft, y, TextStyle.Small, Palette.Quiet);
        pen.TextRight(Until, right, y, TextStyle.Small, Palette.Quiet);
        if (shown < _titles.Length)
            pen.Text(pen.Fit(_fits[shown], TextStyle.Small, right - left), left, y + line, TextStyle.Small, Palette.Quiet);
        return true;
    }

    private static GraphTrace[] Traces(int count) => [.. Enumerable.Range(0, count).Select(_ => new GraphTrace())];

    private static float Axis(Pen pen) => pen.FigureWidth(5, TextStyle.SmallFigures) + 5 * pen.Scale;

    private void Clear(FlightReadout readout)
    {
        _flown = readout.Flown;
        // one axis for both packs, so that a swap moves the line and not the scale
        _empty = Math.Min(readout.Builds[0].EmptyVoltage, readout.Builds[1].EmptyVoltage);
        _full = Math.Max(readout.Builds[0].FullVoltage, readout.Builds[1].FullVoltage);
        _time = readout.Time - Period;
        foreach (GraphTrace trace in _rates) trace.Clear();
        foreach (GraphTrace trace in _commands) trace.Clear();
        foreach (GraphTrace trace in _rotors) trace.Clear();
        _volts.Clear();
        _amperes.Clear();
        _load.Clear();
    }

    private void Take(BuildReadout build)
    {
        const double Degrees = 180 / Math.PI, Thousands = 60 / (2 * Math.PI) / 1000;
        _serial++;
        _rotorCount = Math.Clamp(build.RotorCount, 1, Craft.MaxRotors);
        for (int k = 0; k < 3; k++)
        {
            _rates[k].Add(build.Rates[k] * Degrees);
            _commands[k].Add(build.RateCommands[k] * Degrees);
        }
        for (int k = 0; k < _rotorCount; k++) _rotors[k].Add(Math.Abs(build.RotorSpeed[k]) * Thousands);
        _volts.Add(build.PackVoltage);
        _amperes.Add(build.PackCurrent);
        _load.Add(build.LoadFactor);
    }

    private void DrawOne(Pen pen, int which, SKRect area)
    {
        float line = pen.LineHeight(TextStyle.Small), unit = pen.Scale;
        string title = _titles[which];
        pen.Text(title, area.Left, area.Top, TextStyle.Small, Palette.Ink);
        float x = area.Left + pen.Width(title, TextStyle.Small) + 6 * unit;
        pen.Text(_units[which], x, area.Top, TextStyle.Small, Palette.Quiet);
        if (which < 3)
        {
            string sticks = "dashed: sticks";
            x += pen.Width(_units[which], TextStyle.Small) + 10 * unit;
            if (x + pen.Width(sticks, TextStyle.Small) <= area.Right)
                pen.Text(sticks, x, area.Top, TextStyle.Small, Palette.Command);
        }
        if (which == 3) DrawLegend(pen, area, x + pen.Width(_units[which], TextStyle.Small) + 10 * unit);
        SKRect plot = new(area.Left + Axis(pen), area.Top + line + 2 * unit, area.Right, area.Bottom - 5 * unit);
        GraphScale scale = _scales[which];
        if (which == Volts && _full > _empty) scale.Hold(_empty, _full, _volts.Smallest(), _volts.Peak());
        else scale.Hold(Peak(which));
        float figures = pen.LineHeight(TextStyle.SmallFigures);
        pen.Number(scale.High, "G4", plot.Left - 4 * unit, plot.Top - 2 * unit, TextStyle.SmallFigures, Palette.Quiet);
        pen.Number(scale.Low, "G4", plot.Left - 4 * unit, plot.Bottom - figures + 2 * unit, TextStyle.SmallFigures, Palette.Quiet);
        pen.Line(plot.Left, plot.Top, plot.Left, plot.Bottom, Palette.Line, 1);
        // the line at nought; the lower edge where nought lies below it
        float nought = plot.Bottom + (float)(Math.Min(scale.Low, 0) / (scale.High - scale.Low)) * plot.Height;
        pen.Line(plot.Left, nought, plot.Right, nought, Palette.Line, 1);
        DrawTraces(pen, which, plot, scale);
    }

    /// <summary>Numbers of the rotors with a piece of their lines, where there is room.</summary>
    private void DrawLegend(Pen pen, SKRect area, float x)
    {
        float unit = pen.Scale, figure = pen.FigureWidth(1, TextStyle.SmallFigures), each = figure + 26 * unit;
        if (x + _rotorCount * each > area.Right) return;
        float middle = area.Top + pen.LineHeight(TextStyle.Small) / 2;
        for (int k = 0; k < _rotorCount; k++, x += each)
        {
            pen.Number(k + 1, "F0", x + figure, area.Top + unit, TextStyle.SmallFigures, Palette.Quiet);
            float dash = Dashes[k % 4] == 0 ? 18 : 1.7f * Dashes[k % 4];
            for (float at = 0; at < 18; at += 2 * dash)
            {
                float left = x + figure + (3 + at) * unit;
                pen.Line(left, middle, left + Math.Min(dash, 18 - at) * unit, middle, Palette.Rotors[k % 4], 1.6f * unit);
            }
        }
    }

    private double Peak(int which)
    {
        if (which < 3) return Math.Max(_rates[which].Peak(), _commands[which].Peak());
        if (which > 3) return (which == 4 ? _volts : which == 5 ? _amperes : _load).Peak();
        double peak = 0;
        for (int k = 0; k < _rotorCount; k++) peak = Math.Max(peak, _rotors[k].Peak());
        return peak;
    }

    private void DrawTraces(Pen pen, int which, SKRect plot, GraphScale scale)
    {
        SKColor own = Palette.Build(_flown);
        switch (which)
        {
            case < 3:
                _commands[which].Draw(pen, plot, scale.Low, scale.High, Palette.Command, 4, _serial);
                _rates[which].Draw(pen, plot, scale.Low, scale.High, own, 0, _serial);
                break;
            case 3:
                for (int k = 0; k < _rotorCount; k++)
                    _rotors[k].Draw(pen, plot, scale.Low, scale.High, Palette.Rotors[k % 4], Dashes[k % 4], _serial);
                break;
            default:
                (which == 4 ? _volts : which == 5 ? _amperes : _load).Draw(pen, plot, scale.Low, scale.High, own, 0, _serial);
                break;
        }
    }
}
