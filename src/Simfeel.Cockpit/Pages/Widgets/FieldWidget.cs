using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>A name and beside it, or below where it is narrow, something to set.</summary>
/// <param name="label">The name.</param>
/// <param name="help">A quiet line; empty for none.</param>
internal abstract class FieldWidget(string label, string help) : Widget
{
    private float _helpTop;

    public override bool CanFocus => true;

    /// <summary>Where the thing to set stands.</summary>
    private protected SKRect Control { get; private set; }

    /// <summary>Width that the thing to set wants; it gets no more than the widget has.</summary>
    private protected abstract float ControlWidth(Pen pen);

    /// <summary>Height of the thing to set at a width.</summary>
    private protected virtual float ControlHeight(Pen pen, float width) => pen.LineHeight(TextStyle.Body);

    /// <summary>Draws the thing to set.</summary>
    private protected abstract void DrawControl(Pen pen, bool focused);

    private protected override float Measure(Pen pen, float x, float y, float width)
    {
        float unit = pen.Scale, pad = 12 * unit, gap = 16 * unit, inner = width - 2 * pad;
        float wanted = Math.Min(ControlWidth(pen), inner);
        float top = y + 8 * unit, line = pen.LineHeight(TextStyle.Body);
        float bottom;
        if (pen.Width(label, TextStyle.Body) + gap + wanted <= inner)
        {
            float height = ControlHeight(pen, wanted);
            Control = new(x + width - pad - wanted, top, x + width - pad, top + height);
            bottom = top + Math.Max(line, height);
        }
        else
        {
            float below = top + pen.Wrap(label, TextStyle.Body, inner).Length * line + 2 * unit;
            Control = new(x + pad, below, x + pad + wanted, below + ControlHeight(pen, wanted));
            bottom = Control.Bottom;
        }
        _helpTop = bottom + 2 * unit;
        if (help.Length > 0)
            bottom = _helpTop + pen.Wrap(help, TextStyle.Small, inner).Length * pen.LineHeight(TextStyle.Small);
        return bottom + 8 * unit - y;
    }

    internal override void Draw(Pen pen, bool focused)
    {
        DrawGround(pen, focused);
        float pad = 12 * pen.Scale, inner = Bounds.Width - 2 * pad;
        pen.Lines(label, Bounds.Left + pad, Bounds.Top + 8 * pen.Scale, inner, TextStyle.Body, Palette.Ink);
        DrawControl(pen, focused);
        if (help.Length > 0) pen.Lines(help, Bounds.Left + pad, _helpTop, inner, TextStyle.Small, Palette.Quiet);
    }
}
