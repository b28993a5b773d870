using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>What a slider goes over.</summary>
/// <param name="Low">Least value.</param>
/// <param name="High">Largest value.</param>
/// <param name="Step">One press of a key; above 0.</param>
internal readonly record struct SliderRange(double Low, double High, double Step);

/// <summary>A number between two ends.</summary>
/// <param name="label">What it is.</param>
/// <param name="range">Its ends and its step.</param>
/// <param name="get">The number.</param>
/// <param name="set">Sets it; always within the ends and on a step, or at an end.</param>
/// <param name="words">The number with its unit.</param>
/// <param name="help">A quiet line; empty for none.</param>
internal sealed class Slider(
    string label, SliderRange range, Func<double> get, Action<double> set, Func<double, string> words, string help = "")
    : FieldWidget(label, help)
{
    private bool _dragged;
    private SKRect _track;

    private float Figures(Pen pen)
    {
        float widest = 66 * pen.Scale;
        foreach (double value in (ReadOnlySpan<double>)[range.Low, range.High, range.High - range.Step, get()])
            widest = Math.Max(widest, pen.Width(words(value), TextStyle.Body));
        return widest;
    }

    private protected override float ControlWidth(Pen pen) => Figures(pen) + (14 + 170) * pen.Scale;

    private protected override float ControlHeight(Pen pen, float width) =>
        pen.Wrap(words(get()), TextStyle.Body, Math.Min(Figures(pen), width - 60 * pen.Scale) + 1).Length * pen.LineHeight(TextStyle.Body);

    private protected override void DrawControl(Pen pen, bool focused)
    {
        float unit = pen.Scale, figures = Math.Min(Figures(pen), Control.Width - 60 * unit);
        float y = Control.Top + pen.LineHeight(TextStyle.Body) / 2;
        _track = new(Control.Left + 7 * unit, y - 2 * unit, Control.Right - figures - 21 * unit, y + 2 * unit);
        double value = get();
        float at = _track.Left + (float)Math.Clamp((value - range.Low) / (range.High - range.Low), 0, 1) * _track.Width;
        pen.Fill(_track, Palette.Line, 2 * unit);
        pen.Fill(new(_track.Left, _track.Top, at, _track.Bottom), Palette.BuildA, 2 * unit);
        pen.Disc(at, y, 7 * unit, Palette.BuildA);
        string[] lines = pen.Wrap(words(value), TextStyle.Body, figures + 1);
        for (int k = 0; k < lines.Length; k++)
            pen.TextRight(lines[k], Control.Right, Control.Top + k * pen.LineHeight(TextStyle.Body), TextStyle.Body, Palette.Ink);
    }

    internal override bool Handle(in UiInput input)
    {
        switch (input.Kind)
        {
            case UiInputKind.Left:
                Set(get() - range.Step);
                return true;
            case UiInputKind.Right:
                Set(get() + range.Step);
                return true;
            case UiInputKind.PointerDown:
                _dragged = true;
                SetAt(input.X);
                return true;
            case UiInputKind.PointerMove when _dragged:
                SetAt(input.X);
                return true;
            case UiInputKind.PointerUp:
                _dragged = false;
                return true;
            default:
                return false;
        }
    }

    private void SetAt(float x)
    {
        if (_track.Width > 0) Set(range.Low + (x - _track.Left) / _track.Width * (range.High - range.Low));
    }

    private void Set(double wanted)
    {
        double steps = Math.Round((wanted - range.Low) / range.Step);
        double value = Math.Clamp(range.Low + steps * range.Step, range.Low, range.High);
        // the end can be reached though it lies between two steps
        if (wanted >= range.High) value = range.High;
        if (value != get()) set(value);
    }
}
