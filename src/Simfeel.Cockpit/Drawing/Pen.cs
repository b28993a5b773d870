using System.Globalization;
using Simfeel.Builds.Writing;
using SkiaSharp;

namespace Simfeel.Cockpit.Drawing;

/// <summary>A text that was drawn, for tests of the layout.</summary>
/// <param name="Text">The text.</param>
/// <param name="Area">Where it stands, pixels of the part it belongs to.</param>
/// <param name="Box">The box it must stay in.</param>
/// <param name="Part">Part of the picture that scrolls as one.</param>
internal readonly record struct TextPlaced(string Text, SKRect Area, SKRect Box, string Part);

/// <summary>
/// Draws texts, numbers and simple shapes on a canvas. After a text was drawn once, drawing it again allocates nothing;
/// numbers never allocate. Positions are pixels, x from the left, y from the top; a text is placed by its top left corner.
/// </summary>
public sealed class Pen : IDisposable
{
    private const int CacheRoom = 1500;

    private readonly FontSet _fonts;
    private readonly SKFont[] _font = new SKFont[FontSet.Styles];
    private readonly SKTextBlob?[][] _glyphs = new SKTextBlob?[FontSet.Styles][];
    private readonly float[] _advance = new float[FontSet.Styles];
    private readonly float[] _ascent = new float[FontSet.Styles];
    private readonly float[] _lineHeight = new float[FontSet.Styles];
    private readonly Dictionary<(string Text, TextStyle Style), (SKTextBlob? Blob, float Width)> _texts = [];
    private readonly Dictionary<(string Text, TextStyle Style, float Width), string[]> _wrapped = [];
    private readonly Dictionary<(string Text, TextStyle Style, float Width), string> _fitted = [];
    private readonly SKPaint _fill = new() { IsAntialias = true };
    private readonly SKPaint _stroke = new() { IsAntialias = true, Style = SKPaintStyle.Stroke };
    private readonly SKPath _triangle = Triangle();
    private SKCanvas? _canvas;
    private float _scale;

    /// <summary>A pen that writes in these fonts.</summary>
    public Pen(FontSet fonts)
    {
        _fonts = fonts;
        Scale = 1;
    }

    /// <summary>Canvas that is drawn on.</summary>
    public SKCanvas Canvas
    {
        get => _canvas ?? throw new InvalidOperationException("There is no canvas to draw on.");
        set => _canvas = value;
    }

    /// <summary>Largest <see cref="Scale"/>: the largest texts on a desktop scaled to 300 %.</summary>
    public const float MostPixels = 3 * (float)TextScale.High;

    /// <summary>
    /// Text scale times the pixels of one unit of the desktop, <see cref="TextScale.Low"/> to <see cref="MostPixels"/>; so
    /// the pixels of one unit of layout.
    /// </summary>
    public float Scale
    {
        get => _scale;
        set
        {
            float within = float.IsNaN(value) ? 1 : Math.Clamp(value, (float)TextScale.Low, MostPixels);
            if (within == _scale) return;
            _scale = within;
            Forget();
            for (int k = 0; k < FontSet.Styles; k++)
            {
                _font[k] = _fonts.Font((TextStyle)k, within);
                _glyphs[k] = new SKTextBlob?[128];
                foreach (char figure in "0123456789-.") _glyphs[k][figure] = SKTextBlob.Create([figure], _font[k]);
                _advance[k] = _font[k].MeasureText("0");
                _font[k].GetFontMetrics(out SKFontMetrics metrics);
                _ascent[k] = -metrics.Ascent;
                _lineHeight[k] = (metrics.Descent - metrics.Ascent) * 1.12f;
            }
        }
    }

    /// <summary>Hears of every text that is drawn; null except in tests.</summary>
    internal Action<TextPlaced>? Log { get; set; }

    /// <summary>The box that texts now belong to; only tests look at it.</summary>
    internal SKRect Box { get; set; }

    /// <summary>The part of the picture that texts now belong to; only tests look at it.</summary>
    internal string Part { get; set; } = "";

    /// <summary>Height of a line, pixels.</summary>
    public float LineHeight(TextStyle style) => _lineHeight[(int)style];

    /// <summary>Width of a text, pixels.</summary>
    public float Width(string text, TextStyle style) => Lookup(text, style).Width;

    /// <summary>Width of that many figures of a style for numbers, pixels.</summary>
    public float FigureWidth(int figures, TextStyle style) => figures * _advance[(int)style];

    /// <summary>Breaks a text into lines no wider than this; breaks words only where a single one is wider.</summary>
    public string[] Wrap(string text, TextStyle style, float width)
    {
        if (_wrapped.TryGetValue((text, style, width), out string[]? known)) return known;
        if (_wrapped.Count >= CacheRoom) _wrapped.Clear();
        return _wrapped[(text, style, width)] = TextWrap.Lines(text, _font[(int)style], width);
    }

    /// <summary>A text, or its beginning with an ellipsis where it is wider than this.</summary>
    public string Fit(string text, TextStyle style, float width)
    {
        if (Width(text, style) <= width) return text;
        if (_fitted.TryGetValue((text, style, width), out string? known)) return known;
        if (_fitted.Count >= CacheRoom) _fitted.Clear();
        // half a character has no width that could be measured
        int length = TextCut.Before(text, text.Length - 1);
        while (length > 0 && _font[(int)style].MeasureText(text[..length] + "…") > width) length = TextCut.Before(text, length - 1);
        return _fitted[(text, style, width)] = text[..length] + "…";
    }

    /// <summary>Draws a line of text.</summary>
    public void Text(string text, float x, float y, TextStyle style, SKColor colour)
    {
        (SKTextBlob? blob, float width) = Lookup(text, style);
        if (blob is null) return;
        _fill.Color = colour;
        Canvas.DrawText(blob, x, y + _ascent[(int)style], _fill);
        Log?.Invoke(new(text, new(x, y, x + width, y + _lineHeight[(int)style]), Box, Part));
    }

    /// <summary>Draws a line of text that ends at x.</summary>
    public void TextRight(string text, float x, float y, TextStyle style, SKColor colour) =>
        Text(text, x - Width(text, style), y, style, colour);

    /// <summary>Draws a text in as many lines as it needs; gives the height.</summary>
    public float Lines(string text, float x, float y, float width, TextStyle style, SKColor colour)
    {
        string[] lines = Wrap(text, style, width);
        for (int k = 0; k < lines.Length; k++) Text(lines[k], x, y + k * LineHeight(style), style, colour);
        return lines.Length * LineHeight(style);
    }

    /// <summary>Draws a number that ends at <paramref name="right"/>; a dash for what is not a number. Never allocates.</summary>
    public void Number(double value, string format, float right, float y, TextStyle style, SKColor colour)
    {
        Span<char> text = stackalloc char[32];
        int length = 1;
        text[0] = '-';
        if (double.IsFinite(value))
        {
            // no minus sign before a nought
            if (value < 0 && value > -0.5 && format == "F0") value = 0;
            if (!value.TryFormat(text, out length, format, CultureInfo.InvariantCulture)) return;
        }
        int row = (int)style;
        float x = right - length * _advance[row];
        if (Log is not null)
            Log(new(text[..length].ToString(), new(x, y, right, y + _lineHeight[row]), Box, Part));
        _fill.Color = colour;
        for (int k = 0; k < length; k++, x += _advance[row])
        {
            SKTextBlob? glyph = _glyphs[row][text[k] & 127] ??= SKTextBlob.Create(text.Slice(k, 1), _font[row]);
            if (glyph is not null) Canvas.DrawText(glyph, x, y + _ascent[row], _fill);
        }
    }

    /// <summary>Fills a box.</summary>
    public void Fill(SKRect area, SKColor colour, float radius = 0)
    {
        _fill.Color = colour;
        if (radius > 0) Canvas.DrawRoundRect(area, radius, radius, _fill);
        else Canvas.DrawRect(area, _fill);
    }

    /// <summary>Draws a frame inside a box.</summary>
    public void Frame(SKRect area, SKColor colour, float width, float radius = 0)
    {
        Stroke(colour, width);
        width = _stroke.StrokeWidth;
        area.Inflate(-width / 2, -width / 2);
        Canvas.DrawRoundRect(area, radius, radius, _stroke);
    }

    /// <summary>Draws a straight line.</summary>
    public void Line(float x0, float y0, float x1, float y1, SKColor colour, float width)
    {
        Stroke(colour, width);
        Canvas.DrawLine(x0, y0, x1, y1, _stroke);
    }

    /// <summary>Fills a disc.</summary>
    public void Disc(float x, float y, float radius, SKColor colour)
    {
        _fill.Color = colour;
        Canvas.DrawCircle(x, y, radius, _fill);
    }

    /// <summary>Draws the mark of a build around a point: a disc for A (0), a triangle for B (1).</summary>
    public void BuildMark(int build, float x, float y, float radius, SKColor colour)
    {
        if (build == 0)
        {
            Disc(x, y, radius, colour);
            return;
        }
        _fill.Color = colour;
        Canvas.Save();
        Canvas.Translate(x, y);
        Canvas.Scale(radius * 1.15f);
        Canvas.DrawPath(_triangle, _fill);
        Canvas.Restore();
    }

    /// <summary>Draws a polygon line, or pairs of points as separate strokes.</summary>
    internal void Points(SKPointMode mode, SKPoint[] points, SKColor colour, float width)
    {
        Stroke(colour, width);
        Canvas.DrawPoints(mode, points, _stroke);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Forget();
        _fill.Dispose();
        _stroke.Dispose();
        _triangle.Dispose();
    }

    private static SKPath Triangle()
    {
        using SKPathBuilder builder = new();
        builder.MoveTo(0, -1);
        builder.LineTo(0.95f, 0.75f);
        builder.LineTo(-0.95f, 0.75f);
        builder.Close();
        return builder.Detach();
    }

    private void Stroke(SKColor colour, float width)
    {
        _stroke.Color = colour;
        _stroke.StrokeWidth = width * Palette.LineWeight;
    }

    private (SKTextBlob? Blob, float Width) Lookup(string text, TextStyle style)
    {
        if (_texts.TryGetValue((text, style), out (SKTextBlob? Blob, float Width) known)) return known;
        if (_texts.Count >= CacheRoom) ForgetTexts();
        SKFont font = _font[(int)style];
        known = (text.Length > 0 ? SKTextBlob.Create(text, font) : null, font.MeasureText(text));
        _texts[(text, style)] = known;
        return known;
    }

    private void Forget()
    {
        ForgetTexts();
        _wrapped.Clear();
        _fitted.Clear();
        for (int k = 0; k < FontSet.Styles; k++)
        {
            _font[k]?.Dispose();
            foreach (SKTextBlob? glyph in _glyphs[k] ?? []) glyph?.Dispose();
        }
    }

    private void ForgetTexts()
    {
        foreach ((SKTextBlob? blob, _) in _texts.Values) blob?.Dispose();
        _texts.Clear();
    }
}
