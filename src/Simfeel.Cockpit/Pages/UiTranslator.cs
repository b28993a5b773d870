using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Pages;

/// <summary>
/// Turns window events into what pages hear: arrows, Enter or Space, Escape, Tab; the hat, the buttons and the first stick
/// of a pad; the mouse. A stick counts only after it was seen near its middle, so that a resting throttle presses nothing.
/// </summary>
public sealed class UiTranslator
{
    private const int Near = 9000, Far = 20000;

    private readonly int[] _stick = [-1, -1];
    private int _hat;

    /// <summary>What a page hears of an event; <see cref="UiInputKind.None"/> for nothing.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="capturing">Whether a widget waits for a key or button: <see cref="PageStack.IsCapturing"/>.</param>
    /// <param name="shift">Whether a shift key is held, for going back with Tab.</param>
    /// <param name="typing">Whether a widget takes text: then a held key repeats.</param>
    public UiInput Translate(in WindowEvent happened, bool capturing, bool shift = false, bool typing = false)
    {
        switch (happened.Kind)
        {
            case WindowEventKind.KeyDown when typing:
                return new(UiInputKind.Key, Code: happened.Code);
            case WindowEventKind.Text when typing:
                return new(UiInputKind.Text, Code: happened.Code);
            case WindowEventKind.KeyDown when capturing:
                return happened.Value == 0 ? new(UiInputKind.Key, Code: happened.Code) : default;
            case WindowEventKind.ButtonDown when capturing:
                return new(UiInputKind.PadButton, Code: happened.Code);
            case WindowEventKind.KeyDown:
                return new(OfKey(happened.Code, happened.Value != 0, shift));
            // common practice: the first button does, the second goes back
            case WindowEventKind.ButtonDown:
                return new(happened.Code switch { 0 => UiInputKind.Accept, 1 => UiInputKind.Back, _ => UiInputKind.None });
            case WindowEventKind.Hat:
                return new(OfHat(happened.Value));
            case WindowEventKind.Axis:
                return new(OfAxis(happened.Code, happened.Value));
            case WindowEventKind.PointerMove:
                return new(UiInputKind.PointerMove, happened.X, happened.Y);
            case WindowEventKind.PointerDown when happened.Code == 1:
                return new(UiInputKind.PointerDown, happened.X, happened.Y);
            case WindowEventKind.PointerUp when happened.Code == 1:
                return new(UiInputKind.PointerUp, happened.X, happened.Y);
            case WindowEventKind.Wheel:
                return new(UiInputKind.Wheel, Y: happened.Y);
            default:
                return default;
        }
    }

    private static UiInputKind OfKey(int scancode, bool repeats, bool shift) => scancode switch
    {
        Scancode.Right => UiInputKind.Right,
        Scancode.Left => UiInputKind.Left,
        Scancode.Down => UiInputKind.Down,
        Scancode.Up => UiInputKind.Up,
        Scancode.Tab => shift ? UiInputKind.Previous : UiInputKind.Next,
        Scancode.Enter or Scancode.Space or Scancode.KeypadEnter when !repeats => UiInputKind.Accept,
        Scancode.Escape when !repeats => UiInputKind.Back,
        _ => UiInputKind.None,
    };

    private UiInputKind OfHat(int value)
    {
        int pressed = value & ~_hat;
        _hat = value;
        return (pressed & 1) != 0 ? UiInputKind.Up
            : (pressed & 4) != 0 ? UiInputKind.Down
            : (pressed & 8) != 0 ? UiInputKind.Left
            : (pressed & 2) != 0 ? UiInputKind.Right
            : UiInputKind.None;
    }

    private UiInputKind OfAxis(int axis, int value)
    {
        if (axis is not (0 or 1)) return UiInputKind.None;
        // -1 not yet seen near the middle, 0 there, 1 far out
        int size = Math.Abs(value);
        if (size < Near) _stick[axis] = 0;
        if (size < Far || _stick[axis] != 0) return UiInputKind.None;
        _stick[axis] = 1;
        return axis == 0
            ? value < 0 ? UiInputKind.Left : UiInputKind.Right
            : value < 0 ? UiInputKind.Up : UiInputKind.Down;
    }
}
