using Simfeel.Cockpit.Drawing;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>On or off.</summary>
/// <param name="label">What is on or off.</param>
/// <param name="get">Whether it is on.</param>
/// <param name="set">Switches.</param>
/// <param name="help">A quiet line; empty for none.</param>
internal sealed class Toggle(string label, Func<bool> get, Action<bool> set, string help = "") : FieldWidget(label, help)
{
    private protected override float ControlWidth(Pen pen) => pen.Width("off", TextStyle.Body) + 48 * pen.Scale;

    private protected override void DrawControl(Pen pen, bool focused)
    {
        bool on = get();
        float unit = pen.Scale, y = Control.MidY;
        SKRect track = new(Control.Right - 38 * unit, y - 9 * unit, Control.Right, y + 9 * unit);
        if (on) pen.Fill(track, Palette.BuildA, 9 * unit);
        else pen.Frame(track, Palette.Line, 2 * unit, 9 * unit);
        pen.Disc(on ? track.Right - 9 * unit : track.Left + 9 * unit, y, 5.5f * unit, on ? Palette.Night : Palette.Quiet);
        pen.TextRight(on ? "on" : "off", track.Left - 8 * unit, Control.Top, TextStyle.Body, Palette.Ink);
    }

    internal override bool Handle(in UiInput input)
    {
        bool wanted = input.Kind switch
        {
            UiInputKind.Left => false,
            UiInputKind.Right => true,
            UiInputKind.Accept or UiInputKind.PointerDown => !get(),
            _ => get(),
        };
        if (input.Kind is not (UiInputKind.Left or UiInputKind.Right or UiInputKind.Accept or UiInputKind.PointerDown))
            return false;
        if (wanted != get()) set(wanted);
        return true;
    }
}
