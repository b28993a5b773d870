using System.Reflection;
using System.Runtime.InteropServices;

namespace Simfeel.Cockpit.Platform;

/// <summary>
/// The functions of SDL 2 that Simfeel uses, named as in SDL's own reference. The one file that knows how the library is
/// called on each system; everything else goes through <see cref="AppWindow"/> and its neighbours.
/// </summary>
internal static unsafe partial class Sdl
{
    private const string Library = "SDL2";

    public const uint InitAudio = 0x10, InitVideo = 0x20, InitJoystick = 0x200;

    // types of events (SDL_EventType), kinds of window events (SDL_WindowEventID)
    public const uint Quit = 0x100, WindowChanged = 0x200, KeyDown = 0x300, KeyUp = 0x301, TextInput = 0x303;

    public const uint MouseMotion = 0x400, MouseButtonDown = 0x401, MouseButtonUp = 0x402, MouseWheel = 0x403;

    public const uint JoyAxisMotion = 0x600, JoyHatMotion = 0x602, JoyButtonDown = 0x603, JoyButtonUp = 0x604, JoyDeviceAdded = 0x605, JoyDeviceRemoved = 0x606;

    public const byte SizeChanged = 6, FocusGained = 12, FocusLost = 13, DisplayChanged = 18;

    public const uint FullScreenDesktop = 0x1001;

    public const uint WindowOpenGl = 0x2, WindowHidden = 0x8, WindowResizable = 0x20, WindowHighDpi = 0x2000;

    public const int PositionCentered = 0x2FFF0000;

    public const int GlDoubleBuffer = 5, GlDepthSize = 6, GlStencilSize = 7, GlMajor = 17, GlMinor = 18, GlProfile = 21, GlProfileCore = 1;

    static Sdl() => NativeLibrary.SetDllImportResolver(typeof(Sdl).Assembly, Resolve);

    /// <summary>Whether the library is on this machine.</summary>
    public static bool IsThere => Resolve(Library, typeof(Sdl).Assembly, null) != 0;

    /// <summary>The text of the last error.</summary>
    public static string Error => Text(SDL_GetError());

    /// <summary>A text of the library; empty for a null pointer.</summary>
    public static string Text(byte* text) => Marshal.PtrToStringUTF8((nint)text) ?? "";

    [LibraryImport(Library)] public static partial void SDL_GetVersion(out SdlVersion version);
    [LibraryImport(Library)] public static partial int SDL_InitSubSystem(uint flags);
    [LibraryImport(Library)] public static partial void SDL_QuitSubSystem(uint flags);
    [LibraryImport(Library)] public static partial byte* SDL_GetError();
    [LibraryImport(Library)] public static partial byte* SDL_GetCurrentVideoDriver();
    [LibraryImport(Library, StringMarshalling = StringMarshalling.Utf8)] public static partial int SDL_SetHint(string name, string value);

    [LibraryImport(Library, StringMarshalling = StringMarshalling.Utf8)]
    public static partial nint SDL_CreateWindow(string title, int x, int y, int width, int height, uint flags);
    [LibraryImport(Library)] public static partial void SDL_DestroyWindow(nint window);
    [LibraryImport(Library, StringMarshalling = StringMarshalling.Utf8)] public static partial void SDL_SetWindowTitle(nint window, string title);
    [LibraryImport(Library)] public static partial int SDL_SetWindowFullscreen(nint window, uint flags);
    [LibraryImport(Library)] public static partial void SDL_GetWindowSize(nint window, out int width, out int height);
    [LibraryImport(Library)] public static partial int SDL_GL_SetAttribute(int attribute, int value);
    [LibraryImport(Library)] public static partial nint SDL_GL_CreateContext(nint window);
    [LibraryImport(Library)] public static partial void SDL_GL_DeleteContext(nint context);
    [LibraryImport(Library)] public static partial int SDL_GL_SetSwapInterval(int interval);
    [LibraryImport(Library)] public static partial void SDL_GL_SwapWindow(nint window);
    [LibraryImport(Library)] public static partial void SDL_GL_GetDrawableSize(nint window, out int width, out int height);
    [LibraryImport(Library, StringMarshalling = StringMarshalling.Utf8)] public static partial nint SDL_GL_GetProcAddress(string name);
    [LibraryImport(Library)] public static partial int SDL_PollEvent(SdlEvent* happened);
    [LibraryImport(Library)] public static partial int SDL_PushEvent(SdlEvent* happened);
    [LibraryImport(Library)] public static partial byte* SDL_GetScancodeName(int scancode);

    [LibraryImport(Library, StringMarshalling = StringMarshalling.Utf8)] public static partial int SDL_GetScancodeFromName(string name);
    [LibraryImport(Library)] public static partial void SDL_free(void* memory);
    [LibraryImport(Library, StringMarshalling = StringMarshalling.Utf8)] public static partial int SDL_setenv(string name, string value, int overwrite);

    [LibraryImport(Library)] public static partial void SDL_StartTextInput();
    [LibraryImport(Library)] public static partial void SDL_StopTextInput();
    [LibraryImport(Library)] public static partial int SDL_ShowCursor(int toggle);

    [LibraryImport(Library)] public static partial int SDL_NumJoysticks();
    [LibraryImport(Library)] public static partial int SDL_JoystickGetDeviceInstanceID(int index);
    [LibraryImport(Library)] public static partial nint SDL_JoystickOpen(int index);
    [LibraryImport(Library)] public static partial void SDL_JoystickClose(nint joystick);
    [LibraryImport(Library)] public static partial int SDL_JoystickInstanceID(nint joystick);
    [LibraryImport(Library)] public static partial byte* SDL_JoystickName(nint joystick);
    [LibraryImport(Library)] public static partial SdlGuid SDL_JoystickGetGUID(nint joystick);
    [LibraryImport(Library)] public static partial void SDL_JoystickGetGUIDString(SdlGuid guid, byte* text, int room);
    [LibraryImport(Library)] public static partial int SDL_JoystickNumAxes(nint joystick);
    [LibraryImport(Library)] public static partial int SDL_JoystickNumButtons(nint joystick);
    [LibraryImport(Library)] public static partial int SDL_JoystickNumHats(nint joystick);
    [LibraryImport(Library)] public static partial short SDL_JoystickGetAxis(nint joystick, int axis);
    [LibraryImport(Library)] public static partial byte SDL_JoystickGetButton(nint joystick, int button);
    [LibraryImport(Library)] public static partial byte SDL_JoystickGetHat(nint joystick, int hat);
    [LibraryImport(Library)] public static partial int SDL_IsGameController(int index);
    [LibraryImport(Library)] public static partial byte* SDL_GameControllerMappingForDeviceIndex(int index);
    [LibraryImport(Library)] public static partial int SDL_JoystickAttachVirtual(int type, int axes, int buttons, int hats);
    [LibraryImport(Library)] public static partial int SDL_JoystickDetachVirtual(int index);
    [LibraryImport(Library)] public static partial int SDL_JoystickSetVirtualAxis(nint joystick, int axis, short value);
    [LibraryImport(Library)] public static partial int SDL_JoystickSetVirtualButton(nint joystick, int button, byte value);
    [LibraryImport(Library)] public static partial int SDL_JoystickSetVirtualHat(nint joystick, int hat, byte value);

    [LibraryImport(Library)] public static partial uint SDL_OpenAudioDevice(byte* device, int capture, SdlAudioSpec* want, SdlAudioSpec* have, int allow);
    [LibraryImport(Library)] public static partial void SDL_PauseAudioDevice(uint device, int paused);
    [LibraryImport(Library)] public static partial void SDL_CloseAudioDevice(uint device);
    [LibraryImport(Library)] public static partial int SDL_QueueAudio(uint device, void* data, uint bytes);
    [LibraryImport(Library)] public static partial uint SDL_GetQueuedAudioSize(uint device);
    [LibraryImport(Library)] public static partial byte* SDL_GetCurrentAudioDriver();

    private static nint Resolve(string name, Assembly assembly, DllImportSearchPath? path)
    {
        if (name != Library) return 0;
        ReadOnlySpan<string> files = OperatingSystem.IsWindows() ? ["SDL2.dll"]
            : OperatingSystem.IsMacOS() ? ["libSDL2-2.0.0.dylib", "/opt/homebrew/lib/libSDL2-2.0.0.dylib", "/usr/local/lib/libSDL2-2.0.0.dylib"]
            : ["libSDL2-2.0.so.0", "libSDL2.so"];
        foreach (string file in files)
        {
            if (NativeLibrary.TryLoad(file, assembly, path, out nint handle)) return handle;
        }
        return 0;
    }
}

/// <summary>SDL_version.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct SdlVersion
{
    public byte Major, Minor, Patch;
}

/// <summary>SDL_Event, as far as it is read here.</summary>
[StructLayout(LayoutKind.Explicit, Size = 56)]
internal unsafe struct SdlEvent
{
    /// <summary>Room of the text of a text event, bytes, its final nought included.</summary>
    public const int TextRoom = 32;

    [FieldOffset(0)] public uint Type;
    [FieldOffset(4)] public uint Timestamp;

    /// <summary>Window, or instance of a joystick (its index in "added" events).</summary>
    [FieldOffset(8)] public int Which;

    /// <summary>Axis, button or hat; state of a key; kind of a window event.</summary>
    [FieldOffset(12)] public byte Part;
    [FieldOffset(12)] public fixed byte Text[TextRoom];
    [FieldOffset(13)] public byte State;
    [FieldOffset(16)] public short AxisValue;
    [FieldOffset(16)] public int Scancode;
    [FieldOffset(16)] public byte MouseButton;
    [FieldOffset(16)] public int Data1;
    [FieldOffset(20)] public int Data2;
    [FieldOffset(20)] public int X;
    [FieldOffset(24)] public int Y;
}

/// <summary>SDL_JoystickGUID.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct SdlGuid
{
    public fixed byte Data[16];
}

/// <summary>SDL_AudioSpec.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct SdlAudioSpec
{
    public int Frequency;
    public ushort Format;
    public byte Channels, Silence;
    public ushort Samples, Padding;
    public uint Size;
    public void* Callback, UserData;
}
