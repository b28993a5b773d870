using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Platform;

namespace Simfeel.Cockpit.Tests.Input;

/// <summary>A joystick that SDL takes for a real one, and the events that it makes. On the window's thread only.</summary>
internal sealed class VirtualStick : IDisposable
{
    public const int Joystick = 0, Gamepad = 1;

    private readonly int _instance;
    private readonly nint _handle;

    public VirtualStick(int kind, int axes, int buttons, int hats)
    {
        int index = Sdl.SDL_JoystickAttachVirtual(kind, axes, buttons, hats);
        Assert.True(index >= 0, Sdl.Error);
        _instance = Sdl.SDL_JoystickGetDeviceInstanceID(index);
        _handle = Sdl.SDL_JoystickOpen(index);
        Assert.NotEqual(0, _handle);
    }

    public void Axis(int axis, double position) =>
        Check(Sdl.SDL_JoystickSetVirtualAxis(_handle, axis, (short)Math.Clamp(Math.Round(position), short.MinValue, short.MaxValue)));

    public void Button(int button, bool down) => Check(Sdl.SDL_JoystickSetVirtualButton(_handle, button, down ? (byte)1 : (byte)0));

    public void Hat(int hat, byte bits) => Check(Sdl.SDL_JoystickSetVirtualHat(_handle, hat, bits));

    /// <summary>Hands all waiting events to a hub.</summary>
    public static void Pump(StickHub? hub)
    {
        while (AppWindow.TryNext(out WindowEvent happened)) hub?.Handle(happened);
    }

    // no Assert.Equal: it allocates, and tests count bytes
    private static void Check(int result)
    {
        if (result != 0) Assert.Fail(Sdl.Error);
    }

    public void Dispose()
    {
        for (int index = 0; index < Sdl.SDL_NumJoysticks(); index++)
        {
            if (Sdl.SDL_JoystickGetDeviceInstanceID(index) != _instance) continue;
            Assert.Equal(0, Sdl.SDL_JoystickDetachVirtual(index));
            break;
        }
        Sdl.SDL_JoystickClose(_handle);
    }
}
