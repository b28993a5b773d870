using Silk.NET.OpenGL;

namespace Simfeel.Cockpit.Platform;

/// <summary>
/// A window with an OpenGL 3.3 core context and the queue of its events. With the environment variable
/// <c>SDL_VIDEODRIVER=offscreen</c> there is a context but no screen, which tests use. One per process, one thread.
/// </summary>
public sealed unsafe class AppWindow : IDisposable
{
    private const string TooOld = "The window needs OpenGL 3.3, and this machine's driver does not give it";

    // picture pixels for each unit of the pointer: more than 1 where the screen has more pixels than the desktop counts
    private static double _pixelsX = 1, _pixelsY = 1;
    private static readonly TypedText Typed = new();
    private static nint _open;
    private static bool _textInput;
    private static bool _pointerShows = true;

    private nint _window;
    private nint _context;

    /// <summary>Opens a window.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="width">Width, pixels.</param>
    /// <param name="height">Height, pixels.</param>
    /// <param name="visible">False for pictures, videos and tests: then no display is needed.</param>
    /// <exception cref="MissingOnMachineException">SDL, a display or OpenGL 3.3 is missing.</exception>
    public AppWindow(string title, int width, int height, bool visible = true)
    {
        if (!Sdl.IsThere)
            throw new MissingOnMachineException("SDL 2 is missing. On Debian and Ubuntu: sudo apt-get install libsdl2-2.0-0");
        // a transmitter goes on flying while another window has the keyboard
        Sdl.SDL_SetHint("SDL_JOYSTICK_ALLOW_BACKGROUND_EVENTS", "1");
        // pictures that nobody watches need no display
        if (!visible) Sdl.SDL_SetHint("SDL_VIDEODRIVER", "offscreen");
        if (Sdl.SDL_InitSubSystem(Sdl.InitVideo) != 0)
        {
            throw new MissingOnMachineException(NoDisplay(Reason));
        }
        if (visible && Driver is "offscreen" or "dummy" && Environment.GetEnvironmentVariable("SDL_VIDEODRIVER") != Driver)
        {
            // SDL takes a driver that shows nothing where it finds no display
            Sdl.SDL_QuitSubSystem(Sdl.InitVideo);
            throw new MissingOnMachineException(NoDisplay("none was found"));
        }
        // without stick devices the keyboard still flies
        Sdl.SDL_InitSubSystem(Sdl.InitJoystick);
        Sdl.SDL_GL_SetAttribute(Sdl.GlMajor, 3);
        Sdl.SDL_GL_SetAttribute(Sdl.GlMinor, 3);
        Sdl.SDL_GL_SetAttribute(Sdl.GlProfile, Sdl.GlProfileCore);
        Sdl.SDL_GL_SetAttribute(Sdl.GlDepthSize, 24);
        Sdl.SDL_GL_SetAttribute(Sdl.GlStencilSize, 8);
        Sdl.SDL_GL_SetAttribute(Sdl.GlDoubleBuffer, 1);
        _window = Sdl.SDL_CreateWindow(
            title, Sdl.PositionCentered, Sdl.PositionCentered, width, height,
            Sdl.WindowOpenGl | Sdl.WindowResizable | Sdl.WindowHighDpi | (visible ? 0 : Sdl.WindowHidden));
        if (_window == 0) throw Failed("No window can be opened", Reason);
        _context = Sdl.SDL_GL_CreateContext(_window);
        if (_context == 0) throw Failed(TooOld, Reason);
        _open = _window;
        MeasurePixels();
        // on from the start on most systems
        Sdl.SDL_StopTextInput();
        _textInput = false;
        // pictures are paced by our own clock; not every driver waits where it is told to
        Sdl.SDL_GL_SetSwapInterval(0);
        Gl = GL.GetApi(name => Sdl.SDL_GL_GetProcAddress(name));
        CheckVersion();
    }

    /// <summary>OpenGL on this window's context.</summary>
    public GL Gl { get; }

    /// <summary>Address of an OpenGL function, 0 if there is none; for libraries that draw on the same context.</summary>
    public static nint AddressOf(string function) => Sdl.SDL_GL_GetProcAddress(function);

    /// <summary>Version of SDL on this machine; null where the library is missing. Needs no window.</summary>
    public static Version? LibraryVersion
    {
        get
        {
            if (!Sdl.IsThere) return null;
            Sdl.SDL_GetVersion(out SdlVersion version);
            return new(version.Major, version.Minor, version.Patch);
        }
    }

    /// <summary>Video driver that SDL chose, such as x11, wayland or offscreen.</summary>
    public static string Driver => Sdl.Text(Sdl.SDL_GetCurrentVideoDriver());

    /// <summary>Size of the picture, pixels.</summary>
    public (int Width, int Height) Size
    {
        get
        {
            Sdl.SDL_GL_GetDrawableSize(_window, out int width, out int height);
            return (width, height);
        }
    }

    /// <summary>
    /// Picture pixels for each unit in which the desktop counts: 2 where it is scaled to 200 %, 1 where it leaves that to
    /// the programs (X11). In steps of a twentieth, since a window's size is rounded.
    /// </summary>
    public static double Density => Math.Max(1, Math.Round(20 * Math.Sqrt(_pixelsX * _pixelsY)) / 20);

    /// <summary>Sets the window's title.</summary>
    public void SetTitle(string title)
    {
        Title = title;
        Sdl.SDL_SetWindowTitle(_window, title);
    }

    /// <summary>The window's title; empty where none was set since it opened.</summary>
    public string Title { get; private set; } = "";

    /// <summary>Fills the screen without changing its mode, or goes back.</summary>
    public void SetFullScreen(bool full) => Sdl.SDL_SetWindowFullscreen(_window, full ? Sdl.FullScreenDesktop : 0);

    /// <summary>Has typed characters come as events, or not; a system may show a keyboard for it.</summary>
    public static bool TextInput
    {
        get => _textInput;
        set
        {
            if (value == _textInput) return;
            _textInput = value;
            if (value) Sdl.SDL_StartTextInput();
            else Sdl.SDL_StopTextInput();
        }
    }

    /// <summary>Whether the mouse pointer is drawn over the window.</summary>
    public static bool PointerShows
    {
        get => _pointerShows;
        set
        {
            if (value == _pointerShows) return;
            _pointerShows = value;
            Sdl.SDL_ShowCursor(value ? 1 : 0);
        }
    }

    /// <summary>Shows what was drawn.</summary>
    public void Swap() => Sdl.SDL_GL_SwapWindow(_window);

    /// <summary>Takes the next event; false when there is none. Never allocates.</summary>
    public static bool TryNext(out WindowEvent happened)
    {
        if (Typed.TryNext(out happened)) return true;
        SdlEvent raw;
        while (Sdl.SDL_PollEvent(&raw) != 0)
        {
            if (raw.Type == Sdl.TextInput)
            {
                Typed.Take(new(raw.Text, SdlEvent.TextRoom));
                if (Typed.TryNext(out happened)) return true;
                continue;
            }
            happened = Translate(raw);
            if (happened.Kind != WindowEventKind.None) return true;
        }
        happened = default;
        return false;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_context != 0) Sdl.SDL_GL_DeleteContext(_context);
        if (_window != 0) Sdl.SDL_DestroyWindow(_window);
        if (_window != 0 || _context != 0) Sdl.SDL_QuitSubSystem(Sdl.InitVideo | Sdl.InitJoystick);
        _context = 0;
        _window = 0;
        _open = 0;
    }

    private static string NoDisplay(string why) =>
        $"No window can be opened: there is no display ({why}). Over a remote line set DISPLAY, or fly at the machine itself.";

    private static string Reason => Sdl.Error is { Length: > 0 } why ? why.TrimEnd('.') : "SDL gives no reason";

    private MissingOnMachineException Failed(string what, string why)
    {
        MissingOnMachineException failed = new($"{what} ({why}). A newer graphics driver may help; so may drawing by software: LIBGL_ALWAYS_SOFTWARE=1.");
        Dispose();
        return failed;
    }

    /// <summary>Some drivers hand out an older context than they were asked for.</summary>
    private void CheckVersion()
    {
        int major = Gl.GetInteger(GetPName.MajorVersion), minor = Gl.GetInteger(GetPName.MinorVersion);
        if ((major, minor).CompareTo((3, 3)) >= 0) return;
        throw Failed(TooOld, $"it gives {major}.{minor}");
    }

    private static void MeasurePixels()
    {
        Sdl.SDL_GetWindowSize(_open, out int width, out int height);
        Sdl.SDL_GL_GetDrawableSize(_open, out int pixelsX, out int pixelsY);
        (_pixelsX, _pixelsY) = width > 0 && height > 0 ? (pixelsX / (double)width, pixelsY / (double)height) : (1, 1);
    }

    private static WindowEvent Resized()
    {
        if (_open == 0) return default;
        MeasurePixels();
        Sdl.SDL_GL_GetDrawableSize(_open, out int width, out int height);
        return new(WindowEventKind.Resized, X: width, Y: height);
    }

    private static WindowEvent Pointer(WindowEventKind kind, in SdlEvent raw) =>
        new(kind, kind == WindowEventKind.PointerMove ? 0 : raw.MouseButton, X: (int)(raw.X * _pixelsX), Y: (int)(raw.Y * _pixelsY));

    private static WindowEvent Translate(in SdlEvent raw) => raw.Type switch
    {
        Sdl.Quit => new(WindowEventKind.Quit),
        Sdl.WindowChanged => raw.Part switch
        {
            // another size, or a screen with other pixels
            Sdl.SizeChanged or Sdl.DisplayChanged => Resized(),
            Sdl.FocusGained => new(WindowEventKind.FocusGained),
            Sdl.FocusLost => new(WindowEventKind.FocusLost),
            _ => default,
        },
        Sdl.KeyDown => new(WindowEventKind.KeyDown, raw.Scancode, Value: raw.State),
        Sdl.KeyUp => new(WindowEventKind.KeyUp, raw.Scancode),
        Sdl.MouseMotion => Pointer(WindowEventKind.PointerMove, raw),
        Sdl.MouseButtonDown => Pointer(WindowEventKind.PointerDown, raw),
        Sdl.MouseButtonUp => Pointer(WindowEventKind.PointerUp, raw),
        Sdl.MouseWheel => new(WindowEventKind.Wheel, Y: raw.X),
        Sdl.JoyAxisMotion => new(WindowEventKind.Axis, raw.Part, raw.Which, raw.AxisValue),
        Sdl.JoyHatMotion => new(WindowEventKind.Hat, raw.Part, raw.Which, raw.State),
        Sdl.JoyButtonDown => new(WindowEventKind.ButtonDown, raw.Part, raw.Which),
        Sdl.JoyButtonUp => new(WindowEventKind.ButtonUp, raw.Part, raw.Which),
        Sdl.JoyDeviceAdded => new(WindowEventKind.DeviceAdded, Device: raw.Which),
        Sdl.JoyDeviceRemoved => new(WindowEventKind.DeviceRemoved, Device: raw.Which),
        _ => default,
    };
}
