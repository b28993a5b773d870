using Simfeel.Builds;
using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Application.Blind;
using Simfeel.Cockpit.Application.Offscreen;
using Simfeel.Cockpit.Platform;
using Simfeel.Flight.Fields;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>The window's program over the offscreen window, with time in the test's hands. On the window's thread only.</summary>
internal sealed class AppRun : IDisposable
{
    public const double Period = 1.0 / 60;

    private readonly TempFolder _folder = new();
    private readonly PictureTarget _target;
    private readonly AppWindow _window;

    public AppRun(AppWindow window, Func<string, CockpitOptions, CockpitOptions>? change = null, string? settings = null, bool configIsAFile = false)
    {
        _window = window;
        UserFolder user = new(System.IO.Path.Combine(_folder.Path, "config"));
        if (configIsAFile) File.WriteAllText(user.Path, "not a folder");
        if (settings is not null) Assert.True(user.TryWrite("settings.toml", settings, out string problem), problem);
        string field = System.IO.Path.Combine(AppContext.BaseDirectory, "fields", "gull-point.toml");
        CockpitOptions options = new()
        {
            Shelf = Shelf(),
            A = "wagtail",
            B = "curlew",
            FieldFile = field,
            PictureFolder = _folder.Path,
            Silent = true,
        };
        FieldMap? map = FieldReader.Read(field).Map;
        Assert.NotNull(map);
        // events of earlier tests are not this one's
        while (AppWindow.TryNext(out _))
        {
        }
        App = new(window, change?.Invoke(_folder.Path, options) ?? options, map, File.ReadAllText(field), user);
        _target = new(window.Gl, 640, 360);
        App.DrawInto(_target);
    }

    public CockpitApp App { get; }

    public string Folder => _folder.Path;

    /// <summary>Title of the window.</summary>
    public string Title => _window.Title;

    /// <summary>Two builds are enough, and quicker to load than all.</summary>
    private BuildShelf Shelf()
    {
        string shelf = Directory.CreateDirectory(System.IO.Path.Combine(_folder.Path, "builds")).FullName;
        foreach (string build in (string[])["wagtail.toml", "curlew.toml"])
            File.Copy(System.IO.Path.Combine(AppContext.BaseDirectory, "builds", build), System.IO.Path.Combine(shelf, build));
        return new(shelf);
    }

    /// <summary>Lets frames pass.</summary>
    public void Frames(double seconds)
    {
        for (int n = 0; n < seconds / Period; n++) App.Frame(Period);
    }

    /// <summary>Lets frames pass that nobody sees, which is much quicker.</summary>
    public void Unseen(double seconds)
    {
        for (int n = 0; n < seconds / Period; n++) App.Frame(Period, draw: false);
    }

    /// <summary>Lets frames pass until something holds.</summary>
    public void Until(Func<bool> holds, double most, string what)
    {
        for (int n = 0; n < most / Period && !holds(); n++)
        {
            App.Frame(Period);
            // builds are loaded by another thread, in the machine's own time
            if (App.Outing is null) Thread.Sleep(5);
        }
        Assert.True(holds(), what);
    }

    /// <summary>Goes to the field from wherever.</summary>
    public void ToTheField() => Until(() => App.Outing is not null, 60, "the builds were not loaded");

    /// <summary>A key of the real event queue goes down and up within a frame's time.</summary>
    public void Press(int scancode)
    {
        Key(scancode, down: true);
        App.Frame(Period);
        Key(scancode, down: false);
        App.Frame(Period);
    }

    /// <summary>A key goes down or up.</summary>
    public static unsafe void Key(int scancode, bool down)
    {
        SdlEvent happened = new() { Type = down ? Sdl.KeyDown : Sdl.KeyUp, Scancode = scancode };
        Assert.True(Sdl.SDL_PushEvent(&happened) >= 0);
    }

    /// <summary>The mouse pointer moves.</summary>
    public static unsafe void Point()
    {
        SdlEvent happened = new() { Type = Sdl.MouseMotion, X = 100, Y = 100 };
        Assert.True(Sdl.SDL_PushEvent(&happened) >= 0);
    }

    /// <summary>Holds the key of more throttle; off the ground once armed.</summary>
    public void Climb(double seconds)
    {
        Key(Scancode.W, down: true);
        Unseen(seconds);
        Key(Scancode.W, down: false);
    }

    /// <summary>Takes off by the keyboard and stays in the air until a blind flight may be voted on.</summary>
    public void Hover()
    {
        Press(Scancode.Space);
        Climb(0.5);
        Unseen(BlindAirtime.Least + 0.5);
    }

    public void Dispose()
    {
        App.Dispose();
        _target.Dispose();
        _folder.Dispose();
    }
}
