using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Input;

/// <summary>One stick device and where its axes, buttons and hats stood at the last report.</summary>
public sealed unsafe class StickDevice
{
    private readonly short[] _axes;
    private readonly bool[] _buttons;
    private readonly byte[] _hats;
    private nint _handle;

    private StickDevice(nint handle, PadLayout? pad)
    {
        _handle = handle;
        Pad = pad;
        Instance = Sdl.SDL_JoystickInstanceID(handle);
        Name = Sdl.Text(Sdl.SDL_JoystickName(handle)) is { Length: > 0 } name ? name : "a device without a name";
        byte* guid = stackalloc byte[33];
        Sdl.SDL_JoystickGetGUIDString(Sdl.SDL_JoystickGetGUID(handle), guid, 33);
        Guid = Sdl.Text(guid);
        _axes = new short[Math.Max(Sdl.SDL_JoystickNumAxes(handle), 0)];
        _buttons = new bool[Math.Max(Sdl.SDL_JoystickNumButtons(handle), 0)];
        _hats = new byte[Math.Max(Sdl.SDL_JoystickNumHats(handle), 0)];
    }

    /// <summary>Number that SDL gives this plugging-in; never used twice.</summary>
    public int Instance { get; }

    /// <summary>Identity of the device's kind, 32 hexadecimal digits.</summary>
    public string Guid { get; }

    /// <summary>Name that the device gives itself.</summary>
    public string Name { get; }

    /// <summary>Where a known gamepad has its sticks; null for others.</summary>
    public PadLayout? Pad { get; }

    /// <summary>
    /// The device has sent something since it was plugged in. Before that its axes read as their middle, which for a
    /// throttle is half thrust, so they are not to be believed.
    /// </summary>
    public bool HasReported { get; private set; }

    /// <summary>Raw positions, -32768 to 32767.</summary>
    public ReadOnlySpan<short> Axes => _axes;

    /// <summary>Buttons that are down.</summary>
    public ReadOnlySpan<bool> Buttons => _buttons;

    /// <summary>Hats: bits up 1, right 2, down 4, left 8.</summary>
    public ReadOnlySpan<byte> Hats => _hats;

    /// <summary>Opens the device at an index of SDL's list; null where it is gone again.</summary>
    internal static StickDevice? Open(int index)
    {
        PadLayout? pad = null;
        if (Sdl.SDL_IsGameController(index) != 0)
        {
            byte* mapping = Sdl.SDL_GameControllerMappingForDeviceIndex(index);
            pad = PadLayout.Parse(Sdl.Text(mapping));
            Sdl.SDL_free(mapping);
        }
        nint handle = Sdl.SDL_JoystickOpen(index);
        return handle == 0 ? null : new(handle, pad);
    }

    /// <summary>Takes an event of this device.</summary>
    internal void Take(in WindowEvent happened)
    {
        if (!HasReported)
        {
            // what says that an axis is in its middle, or nothing is pressed, is what SDL begins with, not a report
            if (happened.Value == 0 && happened.Kind != WindowEventKind.ButtonDown) return;

            // the first report brings all positions, but events only for those that moved
            HasReported = true;
            for (int n = 0; n < _axes.Length; n++) _axes[n] = Sdl.SDL_JoystickGetAxis(_handle, n);
            for (int n = 0; n < _buttons.Length; n++) _buttons[n] = Sdl.SDL_JoystickGetButton(_handle, n) != 0;
            for (int n = 0; n < _hats.Length; n++) _hats[n] = Sdl.SDL_JoystickGetHat(_handle, n);
        }
        int code = happened.Code;
        switch (happened.Kind)
        {
            case WindowEventKind.Axis when code < _axes.Length:
                _axes[code] = (short)happened.Value;
                break;
            case WindowEventKind.ButtonDown or WindowEventKind.ButtonUp when code < _buttons.Length:
                _buttons[code] = happened.Kind == WindowEventKind.ButtonDown;
                break;
            case WindowEventKind.Hat when code < _hats.Length:
                _hats[code] = (byte)happened.Value;
                break;
        }
    }

    internal void Close()
    {
        if (_handle != 0) Sdl.SDL_JoystickClose(_handle);
        _handle = 0;
    }
}
