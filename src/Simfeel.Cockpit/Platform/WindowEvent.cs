namespace Simfeel.Cockpit.Platform;

/// <summary>What happened at the window or a device.</summary>
public enum WindowEventKind
{
    /// <summary>Nothing of interest.</summary>
    None,

    /// <summary>The window shall close.</summary>
    Quit,

    /// <summary>A key went down; <see cref="WindowEvent.Code"/> is its SDL scancode (USB HID usage).</summary>
    KeyDown,

    /// <summary>A key came up.</summary>
    KeyUp,

    /// <summary>The pointer moved to X, Y in pixels.</summary>
    PointerMove,

    /// <summary>A mouse button went down at X, Y.</summary>
    PointerDown,

    /// <summary>A mouse button came up at X, Y.</summary>
    PointerUp,

    /// <summary>The wheel turned by Y.</summary>
    Wheel,

    /// <summary>The window has another size, X by Y pixels.</summary>
    Resized,

    /// <summary>The keyboard went to another window.</summary>
    FocusLost,

    /// <summary>The keyboard came back.</summary>
    FocusGained,

    /// <summary>A stick device was plugged in; <see cref="WindowEvent.Device"/> is its index, not its instance.</summary>
    DeviceAdded,

    /// <summary>A stick device is gone; <see cref="WindowEvent.Device"/> is its instance.</summary>
    DeviceRemoved,

    /// <summary>Axis Code of instance Device stands at Value, -32768 to 32767.</summary>
    Axis,

    /// <summary>Button Code of instance Device went down.</summary>
    ButtonDown,

    /// <summary>Button Code of instance Device came up.</summary>
    ButtonUp,

    /// <summary>Hat Code of instance Device stands at Value (bits up 1, right 2, down 4, left 8).</summary>
    Hat,

    /// <summary>A character was typed; <see cref="WindowEvent.Code"/> is its Unicode scalar value.</summary>
    Text,
}

/// <summary>One event, whatever library it came from.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Code">Key, mouse button (1 left), axis, button, hat or character.</param>
/// <param name="Device">Instance of a stick device.</param>
/// <param name="Value">Position of an axis or hat; 1 for a key that repeats.</param>
/// <param name="X">Pixels from the left, or width.</param>
/// <param name="Y">Pixels from the top, height, or turns of the wheel.</param>
public readonly record struct WindowEvent(WindowEventKind Kind, int Code = 0, int Device = 0, int Value = 0, int X = 0, int Y = 0);
