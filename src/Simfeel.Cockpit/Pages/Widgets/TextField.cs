using System.Text;
using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Pages.Widgets;

/// <summary>One line of text that is typed. Accept begins, Enter or the first pad button keeps it, Escape or the second gives up.</summary>
/// <param name="label">What is typed.</param>
/// <param name="longest">Longest text, characters.</param>
/// <param name="get">The text.</param>
/// <param name="set">Keeps another text.</param>
/// <param name="help">A quiet line; empty for none.</param>
internal sealed class TextField(string label, int longest, Func<string> get, Action<string> set, string help = "") : FieldWidget(label, help)
{
    private string _text = "";
    private int _caret;
    private bool _typing;

    public override bool IsCapturing => _typing;

    public override bool IsTyping => _typing;

    private protected override float ControlWidth(Pen pen) => 420 * pen.Scale;

    private protected override float ControlHeight(Pen pen, float width) => pen.LineHeight(TextStyle.Body) + (6 * pen.Scale);

    private protected override void DrawControl(Pen pen, bool focused)
    {
        float unit = pen.Scale, left = Control.Left + (8 * unit), room = Control.Width - (16 * unit), top = Control.Top + (3 * unit);
        pen.Frame(Control, _typing ? Palette.Focus : Palette.Line, _typing ? 2.5f * unit : Math.Max(1, unit), 4 * unit);
        if (!_typing)
        {
            string shown = get();
            pen.Text(pen.Fit(shown.Length > 0 ? shown : "none", TextStyle.Body, room), left, top, TextStyle.Body, shown.Length > 0 ? Palette.Ink : Palette.Quiet);
            return;
        }
        // as much before the caret as there is room for, then what still fits after it
        int from = 0, to = _text.Length;
        while (from < _caret && pen.Width(_text[from.._caret], TextStyle.Body) > room - (2 * unit)) from = After(from);
        while (to > _caret && pen.Width(_text[from..to], TextStyle.Body) > room) to = Before(to);
        if (to > from) pen.Text(_text[from..to], left, top, TextStyle.Body, Palette.Ink);
        float x = left + pen.Width(_text[from.._caret], TextStyle.Body);
        pen.Line(x, top, x, top + pen.LineHeight(TextStyle.Body), Palette.Focus, 2 * unit);
    }

    internal override bool Handle(in UiInput input)
    {
        if (_typing) return Type(input);
        if (input.Kind is not (UiInputKind.Accept or UiInputKind.PointerDown)) return false;
        _text = get();
        _caret = _text.Length;
        return _typing = true;
    }

    private bool Type(in UiInput input)
    {
        switch (input.Kind)
        {
            case UiInputKind.Text when Rune.IsValid(input.Code):
                string typed = new Rune(input.Code).ToString();
                if (_text.Length + typed.Length > longest || Rune.IsControl(new Rune(input.Code))) return true;
                _text = _text.Insert(_caret, typed);
                _caret += typed.Length;
                return true;
            case UiInputKind.Key:
                Key(input.Code);
                return true;
            case UiInputKind.PadButton when input.Code is 0 or 1:
                Finish(keep: input.Code == 0);
                return true;
            case UiInputKind.PointerDown when !Bounds.Contains(input.X, input.Y):
                Finish(keep: true);
                return true;
            case UiInputKind.Up or UiInputKind.Down:
                Finish(keep: true);
                return false;
            default:
                return true;
        }
    }

    private void Key(int code)
    {
        switch (code)
        {
            case Scancode.Enter or Scancode.KeypadEnter:
                Finish(keep: true);
                break;
            case Scancode.Escape:
                Finish(keep: false);
                break;
            case Scancode.Left:
                _caret = Before(_caret);
                break;
            case Scancode.Right:
                _caret = After(_caret);
                break;
            case Scancode.Home:
                _caret = 0;
                break;
            case Scancode.End:
                _caret = _text.Length;
                break;
            case Scancode.Backspace when _caret > 0:
                int before = Before(_caret);
                _text = _text.Remove(before, _caret - before);
                _caret = before;
                break;
            case Scancode.Delete when _caret < _text.Length:
                _text = _text.Remove(_caret, After(_caret) - _caret);
                break;
        }
    }

    private void Finish(bool keep)
    {
        _typing = false;
        string text = _text.Trim();
        if (keep && text != get()) set(text);
    }

    // a character outside the first plane is two chars, which stay together
    private int Before(int at) => Math.Max(0, at - (at > 1 && char.IsLowSurrogate(_text[at - 1]) ? 2 : 1));

    private int After(int at) => Math.Min(_text.Length, at + (at < _text.Length && char.IsHighSurrogate(_text[at]) ? 2 : 1));
}
