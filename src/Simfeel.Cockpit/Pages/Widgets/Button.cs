using Simfeel.Cockpit.Drawing;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>Something that can be done.</summary>
/// <param name="text">What it says.</param>
/// <param name="action">What it does.</param>
/// <param name="detail">A quiet line below; empty for none.</param>
/// <param name="main">Whether it is what one usually does on this page.</param>
/// <param name="warn">Whether the quiet line asks for attention; an exclamation mark stands before it then.</param>
internal sealed class Button(string text, Action action, string detail = "", bool main = false, bool warn = false) : Widget
{
    private readonly string _detail = warn ? "! " + detail : detail;
    private float _natural;

    /// <summary>What it says.</summary>
    public string Text => text;

    public override bool CanFocus => true;

    private TextStyle Style => main ? TextStyle.Heading : TextStyle.Body;

    private protected override float Measure(Pen pen, float x, float y, float width)
    {
        float inner = width - 28 * pen.Scale;
        float height = pen.Wrap(Text, Style, inner).Length * pen.LineHeight(Style);
        if (_detail.Length > 0) height += pen.Wrap(_detail, TextStyle.Small, inner).Length * pen.LineHeight(TextStyle.Small);
        return _natural = height + (main ? 32 : 18) * pen.Scale;
    }

    internal override void Draw(Pen pen, bool focused)
    {
        DrawGround(pen, focused);
        float unit = pen.Scale, left = Bounds.Left + 14 * unit, inner = Bounds.Width - 28 * unit;
        // beside a taller neighbour the text stays in the middle
        float y = Bounds.Top + (Bounds.Height - _natural) / 2 + (main ? 16 : 9) * unit;
        if (main) pen.Fill(new(Bounds.Left, Bounds.Top + 6 * unit, Bounds.Left + 5 * unit, Bounds.Bottom - 6 * unit), Palette.BuildA);
        y += pen.Lines(Text, left, y, inner, Style, Palette.Ink);
        if (_detail.Length > 0) pen.Lines(_detail, left, y, inner, TextStyle.Small, warn ? Palette.Warning : Palette.Quiet);
    }

    internal override bool Handle(in UiInput input)
    {
        if (input.Kind is not (UiInputKind.Accept or UiInputKind.PointerDown)) return false;
        action();
        return true;
    }
}
