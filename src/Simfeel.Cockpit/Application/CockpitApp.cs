using System.Numerics;
using Simfeel.Cockpit.Application.Blind;
using Simfeel.Cockpit.Application.Offscreen;
using Simfeel.Cockpit.Graphics.Landscape;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Cockpit.Loading;
using Simfeel.Cockpit.Overlay;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Settings;
using Simfeel.Cockpit.Sound;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight;
using Simfeel.Flight.Fields;
using Simfeel.Physics.Guards;
using SkiaSharp;

namespace Simfeel.Cockpit.Application;

/// <summary>
/// The window's program: events in, flight on, picture out, once a frame. <see cref="Run"/> does so by the machine's clock;
/// tests and tours call <see cref="Frame"/> with a time of their own. One thread.
/// </summary>
public sealed partial class CockpitApp : IDisposable
{
    /// <summary>Time without a movement after which the pointer leaves the picture of a flight, s.</summary>
    internal const double PointerRest = 2;

    private readonly AppWindow _window;
    private readonly CockpitOptions _options;
    private readonly UserFolder _folder;
    private readonly StickShelf _sticks;
    private readonly Painter _painter;
    private readonly Menus _menus;
    private readonly UiTranslator _translator = new();
    private readonly FlightReadout _readout = new();
    private readonly SoundDevice? _speaker;
    private readonly RotorSound _sound = new();
    private readonly StickDelayMeter[] _delays = [new(), new()];
    private readonly List<string> _wrong = [];
    private double _time;
    private bool _quit;
    private bool _disposed;
    private bool _shift;

    /// <summary>When the pointer was last moved, s.</summary>
    private double _pointed;

    /// <summary>Size of the picture and pixels to a unit where it does not go to the window.</summary>
    private (int Width, int Height)? _size;
    private double _givenDensity;

    /// <summary>Pixels to a unit that the settings were last applied for.</summary>
    private double _density;

    /// <summary>The settings when they were last read or stored here; another window may store its own.</summary>
    private string _knownSettings;

    /// <summary>Sets everything up; the first frame can be drawn at once, builds are loaded meanwhile.</summary>
    /// <param name="window">The window.</param>
    /// <param name="options">What it is opened with.</param>
    /// <param name="map">The field.</param>
    /// <param name="fieldText">Text of the field's file, for recordings.</param>
    /// <param name="folder">The user's folder.</param>
    /// <param name="pictures">Textures of the field that were begun before; begun now if null.</param>
    public CockpitApp(AppWindow window, CockpitOptions options, FieldMap map, string fieldText, UserFolder folder, FieldPictures? pictures = null)
    {
        _window = window;
        _options = options;
        _folder = folder;
        Map = map;
        FieldText = fieldText;
        Settings = LoadSettings();
        _knownSettings = SettingsFile.Write(Settings);
        if (options.A is not null) Settings.BuildA = options.A;
        if (options.B is not null) Settings.BuildB = options.B;
        Actions = LoadKeys();
        _sticks = new(folder, _wrong);
        Pilot = new(new StickHub(_sticks.Find, Actions), Actions);
        Rack = new(options.Shelf, [Settings.BuildA, Settings.BuildB], options.Air, Profile);
        _painter = new(window.Gl, map, Settings.Quality, _readout.Axes, pictures) { View = Settings.View };
        Lessons = new(this, Path.Combine(folder.Path, "lessons"), options.PictureFolder);
        Blind = new(this, options);
        _menus = new(this);
        Pacer = new(Settings.FrameRate_Hz);
        Apply();
        _window.SetFullScreen(Settings.FullScreen);
        _pendingBlind = options.Blind;
        if (options.StraightToTheField || options.Replay is not null) _pendingStart = true;
        else _menus.OpenStart();
        _wrong.AddRange(_painter.Layer.MissingFonts);
        if (!options.Silent) _speaker = new();
        if (_speaker is { Problem.Length: > 0 }) _wrong.Add(_speaker.Problem);
        Complain();
    }

    /// <summary>Version of the program.</summary>
    internal static string Version { get; } = typeof(CockpitApp).Assembly.GetName().Version!.ToString(3);

    /// <summary>The field.</summary>
    public FieldMap Map { get; }

    /// <summary>What the pilot set.</summary>
    public CockpitSettings Settings { get; private set; }

    /// <summary>Holds the frame rate of <see cref="Run"/>.</summary>
    public FramePacer Pacer { get; }

    /// <summary>Name of the page on top; empty in flight. For tests.</summary>
    public string PageName => Pages.Top?.GetType().Name ?? "";

    /// <summary>Pilot profile of the next outing.</summary>
    public PilotProfile Profile => new() { RadioDelay = Settings.RadioDelay_ms / 1000 };

    /// <summary>One sentence about the delays, which are the same for both builds.</summary>
    public string Delays =>
        $"Delays, the same for both: radio {Settings.RadioDelay_ms:F0} ms, video {Settings.VideoDelay_ms:F0} ms added.";

    internal BuildRack Rack { get; private set; }

    internal PageStack Pages { get; } = new();

    internal LessonDesk Lessons { get; }

    internal BlindDesk Blind { get; }

    internal FieldConditions Conditions => _options.Conditions;

    internal Pilot Pilot { get; }

    internal ActionMap Actions { get; private set; }

    internal Painter Painter => _painter;

    internal FlightReadout Readout => _readout;

    internal SticksWizard? Wizard { get; set; }

    internal string FieldText { get; }

    /// <summary>Flies until the pilot leaves.</summary>
    public void Run()
    {
        while (!_quit)
        {
            double seconds = Pacer.Wait();
            Frame(seconds);
            _window.Swap();
            if (Outing is not null) _delays[Outing.Flown].Shown();
        }
    }

    /// <summary>One frame, not yet swapped; false when the program shall end.</summary>
    /// <param name="seconds">Time since the last frame, s.</param>
    /// <param name="draw">False for a frame that nobody will see.</param>
    public bool Frame(double seconds, bool draw = true)
    {
        _time += seconds;
        AppWindow.TextInput = Pages.IsTyping;
        while (AppWindow.TryNext(out WindowEvent happened)) Handle(happened);
        AppWindow.PointerShows = Pages.Top is not null || Outing is null || _time - _pointed < PointerRest;
        try
        {
            if (_pendingStart) TryStart();
            if (Pages.Top is null && Outing is not null) FlyOn(seconds);
            else Idle(seconds);
        }
        catch (Exception error) when (FaultFile.In(error) is FlightFaultException fault)
        {
            StopFor(fault);
        }
        if (draw) Draw(seconds);
        Rack.Start();
        return !_quit;
    }

    /// <summary>Ends the program after this frame.</summary>
    public void Quit() => _quit = true;

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_disposed) return;
        _disposed = true;
        EndOuting();
        Lessons.Dispose();
        _speaker?.Dispose();
        Pilot.Dispose();
        _painter.Dispose();
        Rack.Dispose();
    }

    /// <summary>Opens a message that has to be read.</summary>
    internal void Say(string title, string text, params MessageChoice[] choices) =>
        Pages.Open(new MessagePage(
            new() { Title = title, Text = text, Choices = choices.Length > 0 ? choices : [new("Good", null)] },
            overFlight: Outing is not null));

    /// <summary>Stores the settings and lets them act.</summary>
    internal void StoreSettings()
    {
        Apply();
        _folder.TryRead(SettingsFile.Name, out string there, out _);
        if (!_folder.TryWrite(SettingsFile.Name, SettingsFile.Write(Settings, _knownSettings, there), out string problem)) Notify(problem);
        _knownSettings = SettingsFile.Write(Settings);
    }

    internal void StoreKeys()
    {
        if (!_folder.TryWrite(ActionMapFile.Name, ActionMapFile.Write(Actions), out string problem)) Notify(problem);
    }

    internal void ResetKeys()
    {
        ActionMap fresh = new();
        foreach (PilotAction action in Enum.GetValues<PilotAction>())
        {
            Actions.TrySetKey(action, fresh.KeyOf(action), out _);
            Actions.TrySetPad(action, fresh.PadOf(action), out _);
        }
        StoreKeys();
    }

    internal void StoreSticks(StickProfile profile)
    {
        Pilot.Hub.UseProfile(profile);
        if (!_sticks.TrySave(profile, out string problem)) Notify(problem);
    }

    /// <summary>The gamepad button that is pressed now, where the device's layout is known.</summary>
    internal PadButton? PadButtonOf(int raw)
    {
        if (Pilot.Hub.Active is not { Pad: PadLayout layout } device) return null;
        uint pressed = layout.Pressed(device);
        return pressed == 0 || raw < 0 ? null : (PadButton)BitOperations.TrailingZeroCount(pressed);
    }

    internal void Notify(string text) => _readout.Notify(text, _time);

    private void Handle(in WindowEvent happened)
    {
        switch (happened.Kind)
        {
            case WindowEventKind.Quit:
                _quit = true;
                return;
            case WindowEventKind.PointerMove or WindowEventKind.PointerDown:
                _pointed = _time;
                break;
            case WindowEventKind.KeyDown or WindowEventKind.KeyUp when happened.Code is Scancode.LeftShift or Scancode.RightShift:
                _shift = happened.Kind == WindowEventKind.KeyDown;
                break;
            case WindowEventKind.Axis or WindowEventKind.ButtonDown or WindowEventKind.ButtonUp or WindowEventKind.Hat when Outing is not null:
                _delays[Outing.Flown].Arrived();
                break;
        }
        Pilot.Hub.Handle(happened);
        if (Pages.Top is null)
        {
            Pilot.Handle(happened);
            return;
        }
        // in a page the sticks' buttons are the page's, but for what the wizard asks about
        while (Pilot.TryTake(out _))
        {
        }
        bool asked = Wizard is not null
            && (happened.Kind == WindowEventKind.Axis
                || (Wizard.HearsButtons && happened.Kind is WindowEventKind.ButtonDown or WindowEventKind.Hat));
        if (asked) return;
        UiInput heard = _translator.Translate(happened, Pages.IsCapturing, _shift, Pages.IsTyping);
        if (heard.Kind == UiInputKind.None && Actions.TryKey(happened, out PilotAction action)) OnPage(action);
        Pages.Handle(heard);
    }

    /// <summary>The key that opened a page closes it, and the key of help helps there, too.</summary>
    private void OnPage(PilotAction action)
    {
        if (Pages.Top!.Closing.Contains(action)) Pages.Top.Leave();
        else if (action == PilotAction.Help && Wizard is null) _menus.OpenKeys(overFlight: Outing is not null);
    }

    /// <summary>A frame without flight: pages only.</summary>
    private void Idle(double seconds)
    {
        Pilot.Hub.Advance(seconds);
        if (Wizard is not null)
        {
            Wizard.Update(Pilot.Hub, seconds);
            Pages.Invalidate();
        }
        if (Outing is null) _menus.RefreshStart(Rack.Done);
        Lessons.Advance(seconds);
        WatchBuilds();
    }

    private void Draw(double seconds)
    {
        (int width, int height) = _size ?? _window.Size;
        // the window may have come to another screen
        if (Density != _density) Apply();
        if (Outing is not null)
            _painter.DrawFlight(Outing, width, height, (Settings.VideoDelay_ms / 1000) + (Blind.IsOn ? Blind.Late : 0), seconds);
        else if (Lessons is { Stage: LessonStage stage, Page.SceneArea: { IsEmpty: false } area })
            _painter.DrawLesson(stage, SKRectI.Round(area), height);
        else
            _painter.DrawField(width, height, _time);
        _painter.DrawLayer(Pages, Outing is null ? null : _readout, width, height, _time);
    }

    private double Density => _size is null ? AppWindow.Density : _givenDensity;

    /// <summary>Draws into a framebuffer of a size instead of the window, so many pixels to a unit; for pictures, videos and tests.</summary>
    internal void DrawInto(PictureTarget target, double density = 1)
    {
        _givenDensity = density;
        _painter.Framebuffer = target.Framebuffer;
        _size = (target.Width, target.Height);
    }

    /// <summary>Stores the last frame's picture.</summary>
    internal void WritePng(string file, bool overwrite = true)
    {
        (int width, int height) = _size ?? _window.Size;
        _painter.WritePng(width, height, file, overwrite);
    }

    private void Apply()
    {
        _density = Density;
        _painter.Apply(Settings, Outing, _density);
        _sound.Gain = Settings.SoundGain;
        _readout.SpeedInKilometresPerHour = Settings.KilometresPerHour;
        _readout.ShowNumbers = Settings.ShowNumbers;
        _readout.VideoDelay = Settings.VideoDelay_ms / 1000;
        _readout.RadioDelay = Settings.RadioDelay_ms / 1000;
        Pages.Invalidate();
    }

    private CockpitSettings LoadSettings()
    {
        if (_folder.TryRead(SettingsFile.Name, out string text, out string problem))
            return SettingsFile.Read(text, SettingsFile.Name, _wrong);
        if (problem.Length > 0) _wrong.Add(problem);
        return new();
    }

    private ActionMap LoadKeys()
    {
        if (_folder.TryRead(ActionMapFile.Name, out string text, out string problem))
            return ActionMapFile.Read(text, ActionMapFile.Name, _wrong);
        if (problem.Length > 0) _wrong.Add(problem);
        return new();
    }

    /// <summary>Says once what was wrong at the start.</summary>
    private void Complain()
    {
        foreach (string text in _wrong.Distinct()) Console.Error.WriteLine("simfeel: " + text);
        if (_wrong.Count > 0) Notify(_wrong[0]);
        _wrong.Clear();
    }
}
