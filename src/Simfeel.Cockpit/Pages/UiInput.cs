namespace Simfeel.Cockpit.Pages;

/// <summary>What a page hears.</summary>
public enum UiInputKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>To what lies above.</summary>
    Up,

    /// <summary>To what lies below.</summary>
    Down,

    /// <summary>To the left, or less.</summary>
    Left,

    /// <summary>To the right, or more.</summary>
    Right,

    /// <summary>To the next widget in order.</summary>
    Next,

    /// <summary>To the widget before.</summary>
    Previous,

    /// <summary>Does what has the focus.</summary>
    Accept,

    /// <summary>Leaves the page.</summary>
    Back,

    /// <summary>The pointer moved to X, Y.</summary>
    PointerMove,

    /// <summary>The pointer was pressed at X, Y.</summary>
    PointerDown,

    /// <summary>The pointer was released at X, Y.</summary>
    PointerUp,

    /// <summary>The wheel turned by Y, upwards positive.</summary>
    Wheel,

    /// <summary>Key Code (SDL scancode) went down; heard only while a widget waits for a key.</summary>
    Key,

    /// <summary>Button Code of a stick device went down; heard only while a widget waits for a button.</summary>
    PadButton,

    /// <summary>Character Code (Unicode) was typed; heard only while a widget takes text.</summary>
    Text,
}

/// <summary>One thing that a page hears, whatever device it came from.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="X">Pixels from the left.</param>
/// <param name="Y">Pixels from the top, or turns of the wheel.</param>
/// <param name="Code">Key, button or character.</param>
public readonly record struct UiInput(UiInputKind Kind, float X = 0, float Y = 0, int Code = 0);
