using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Overlay;

/// <summary>The last values of one quantity, and the line through them.</summary>
internal sealed class GraphTrace
{
    private readonly float[] _values = new float[Graphs.Room];
    private readonly SKPoint[] _points = new SKPoint[Graphs.Room];
    private readonly SKPoint[] _strokes = new SKPoint[2 * (Graphs.Room - 1)];
    private int _next;

    /// <summary>Number of values, at most <see cref="Graphs.Room"/>.</summary>
    public int Count { get; private set; }

    /// <summary>Value of that many samples ago, 0 the newest.</summary>
    public double this[int ago] => _values[(_next - 1 - ago + 2 * Graphs.Room) % Graphs.Room];

    public void Add(double value)
    {
        _values[_next] = (float)(double.IsFinite(value) ? value : 0);
        _next = (_next + 1) % Graphs.Room;
        Count = Math.Min(Count + 1, Graphs.Room);
    }

    public void Clear() => (Count, _next) = (0, 0);

    /// <summary>Largest size of a value.</summary>
    public double Peak()
    {
        double peak = 0;
        for (int k = 0; k < Count; k++) peak = Math.Max(peak, Math.Abs(this[k]));
        return peak;
    }

    /// <summary>Smallest value; infinity without any.</summary>
    public double Smallest()
    {
        double smallest = double.PositiveInfinity;
        for (int k = 0; k < Count; k++) smallest = Math.Min(smallest, this[k]);
        return smallest;
    }

    /// <summary>Draws the line, newest value at the right edge.</summary>
    /// <param name="pen">Pen.</param>
    /// <param name="plot">Where.</param>
    /// <param name="low">Value at the lower edge.</param>
    /// <param name="high">Value at the upper edge.</param>
    /// <param name="colour">Colour.</param>
    /// <param name="dash">0 for a solid line; else samples of a dash and of the gap behind it.</param>
    /// <param name="serial">Number of the newest sample, so that dashes move with the line.</param>
    public void Draw(Pen pen, SKRect plot, double low, double high, SKColor colour, int dash, long serial)
    {
        if (Count < 2) return;
        float perSample = plot.Width / (Graphs.Room - 1);
        float perUnit = plot.Height / (float)(high - low);
        for (int k = 0; k < Graphs.Room; k++)
        {
            int ago = Math.Min(k, Count - 1);
            float y = plot.Bottom - ((float)this[ago] - (float)low) * perUnit;
            _points[k] = new(plot.Right - ago * perSample, Math.Clamp(y, plot.Top, plot.Bottom));
        }
        float width = 1.6f * MathF.Sqrt(pen.Scale);
        if (dash == 0)
        {
            pen.Points(SKPointMode.Polygon, _points, colour, width);
            return;
        }
        for (int k = 0; k < Graphs.Room - 1; k++)
        {
            bool on = (serial - k) / dash % 2 == 0;
            _strokes[2 * k] = _points[k];
            _strokes[2 * k + 1] = on ? _points[k + 1] : _points[k];
        }
        pen.Points(SKPointMode.Lines, _strokes, colour, width);
    }
}
