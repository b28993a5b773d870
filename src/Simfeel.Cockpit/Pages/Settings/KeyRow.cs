using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;
using Simfeel.Cockpit.Platform;
using SkiaSharp;

namespace Simfeel.Cockpit.Pages.Settings;

/// <summary>An action with its key and its pad button; accept waits for another one, left and right go between the two.</summary>
internal sealed class KeyRow(KeyLine line) : Widget
{
    private const string WaitKey = "press a key", WaitPad = "press a button";

    private int _cell;
    private SKRect _key, _pad;
    private float _clashTop;
    private bool _capturing;

    public override bool CanFocus => true;

    public override bool IsCapturing => _capturing;

    private protected override float Measure(Pen pen, float x, float y, float width)
    {
        float unit = pen.Scale, pad = 12 * unit, gap = 10 * unit, inner = width - 2 * pad;
        float cell = Math.Max(pen.Width(WaitKey, TextStyle.Body), pen.Width(WaitPad, TextStyle.Body)) + 20 * unit;
        float body = pen.LineHeight(TextStyle.Body), top = y + 6 * unit;
        bool beside = pen.Width(line.Name, TextStyle.Body) + 2 * (cell + gap) <= inner;
        if (!beside)
        {
            top += pen.Wrap(line.Name, TextStyle.Body, inner).Length * body + 2 * unit;
            cell = (inner - gap) / 2;
        }
        float room = cell - 16 * unit;
        int lines = Math.Max(Math.Max(pen.Wrap(Key(), TextStyle.Body, room).Length, pen.Wrap(Pad(), TextStyle.Body, room).Length), 1);
        float height = lines * body + 6 * unit, right = x + width - pad;
        _pad = new(right - cell, top, right, top + height);
        _key = new(right - 2 * cell - gap, top, right - cell - gap, top + height);
        _clashTop = top + height + 3 * unit;
        string clash = line.Clash();
        float bottom = clash.Length == 0
            ? top + height
            : _clashTop + pen.Wrap("! " + clash, TextStyle.Small, inner).Length * pen.LineHeight(TextStyle.Small);
        return bottom + 6 * unit - y;
    }

    internal override void Draw(Pen pen, bool focused)
    {
        DrawGround(pen, focused);
        float unit = pen.Scale, left = Bounds.Left + 12 * unit, inner = Bounds.Width - 24 * unit;
        bool beside = _key.Top < Bounds.Top + 10 * unit;
        float nameTop = Bounds.Top + (beside ? 9 : 6) * unit;
        pen.Lines(line.Name, left, nameTop, inner, TextStyle.Body, Palette.Ink);
        DrawCell(pen, _key, Key(), focused && _cell == 0);
        DrawCell(pen, _pad, Pad(), focused && _cell == 1);
        string clash = line.Clash();
        if (clash.Length > 0) pen.Lines("! " + clash, left, _clashTop, inner, TextStyle.Small, Palette.Warning);
    }

    internal override bool Handle(in UiInput input)
    {
        if (_capturing) return Capture(input);
        switch (input.Kind)
        {
            case UiInputKind.Left when _cell == 1:
                _cell = 0;
                return true;
            case UiInputKind.Right when _cell == 0:
                _cell = 1;
                return true;
            case UiInputKind.PointerDown when _key.Contains(input.X, input.Y) || _pad.Contains(input.X, input.Y):
                _cell = _pad.Contains(input.X, input.Y) ? 1 : 0;
                _capturing = true;
                return true;
            case UiInputKind.Accept:
                _capturing = true;
                return true;
            default:
                return false;
        }
    }

    private bool Capture(in UiInput input)
    {
        bool escape = input.Kind == UiInputKind.Back || (input.Kind == UiInputKind.Key && input.Code == Scancode.Escape);
        if (input.Kind == UiInputKind.Key && _cell == 0 && !escape) line.SetKey(input.Code);
        else if (input.Kind == UiInputKind.PadButton && _cell == 1) line.SetPad(input.Code);
        else if (!escape && input.Kind != UiInputKind.PointerDown) return true;
        _capturing = false;
        return true;
    }

    private string Key() => _capturing && _cell == 0 ? WaitKey : line.Key() is { Length: > 0 } key ? key : "none";

    private string Pad() => _capturing && _cell == 1 ? WaitPad : line.Pad() is { Length: > 0 } pad ? pad : "none";

    private static void DrawCell(Pen pen, SKRect cell, string text, bool chosen)
    {
        float unit = pen.Scale;
        pen.Frame(cell, chosen ? Palette.Focus : Palette.Line, chosen ? 2.5f * unit : Math.Max(1, unit), 4 * unit);
        pen.Lines(text, cell.Left + 8 * unit, cell.Top + 3 * unit, cell.Width - 16 * unit, TextStyle.Body, Palette.Ink);
    }
}
