using System.Globalization;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Cockpit.Loading;
using Simfeel.Cockpit.Pages.Flights;
using Simfeel.Cockpit.Pages.Parts;
using Simfeel.Cockpit.Pages.Settings;
using Simfeel.Cockpit.Pages.Start;
using Simfeel.Cockpit.Pages.Wizard;
using Simfeel.Cockpit.Parts;
using Simfeel.Cockpit.Settings;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Application;

/// <summary>Makes the pages and joins them to the application.</summary>
internal sealed class Menus(CockpitApp app)
{
    private static readonly string[] ViewNames = ["Onboard", "Chase", "From the ground", "Split: both builds"];

    private SettingsModel? _settings;
    private int _loaded = -1;

    /// <summary>The start page's model, renewed while builds are loaded.</summary>
    public StartModel? Start { get; private set; }

    /// <summary>Opens the start page.</summary>
    public void OpenStart()
    {
        BuildRack rack = app.Rack;
        rack.Resting = false;
        Start = new()
        {
            Builds = Choices(rack),
            Fields = [app.Map.Name],
            Fly = app.FlyPicked,
            Lessons = app.Lessons.Open,
            Blind = app.Blind.OpenSetup,
            Sticks = OpenWizard,
            Settings = () => OpenSettings(overFlight: false),
            Help = () => OpenKeys(overFlight: false),
            Quit = app.Quit,
            Changed = app.Pick,
        };
        Start.Picked[0] = Math.Max(0, rack.IndexOf(app.Settings.BuildA));
        Start.Picked[1] = Math.Max(0, rack.IndexOf(app.Settings.BuildB));
        app.Pick();
        app.Pages.Clear();
        app.Pages.Open(new StartPage(Start));
    }

    /// <summary>Brings the start page up to date; each frame while it is open.</summary>
    public void RefreshStart(int loaded)
    {
        if (Start is null) return;
        if (loaded != _loaded)
        {
            _loaded = loaded;
            Start.Builds = Choices(app.Rack);
            app.Pages.Invalidate();
        }
        StickHub hub = app.Pilot.Hub;
        (string name, string state, bool care) = hub.State switch
        {
            StickState.None => ("Keyboard", "No stick device is plugged in. The keyboard flies, but is not fit for feel.", false),
            StickState.Waiting => (hub.Devices[0].Name, "Move a stick or press a button.", true),
            StickState.Lost => ("Keyboard", "The device was unplugged.", true),
            _ => hub.Profile is null
                ? (hub.Active!.Name, "Not set up yet: choose here. Until then the keyboard flies.", true)
                : (hub.Active!.Name, "Ready.", false),
        };
        if (name == Start.SticksName && state == Start.SticksState) return;
        (Start.SticksName, Start.SticksState, Start.SticksNeedCare) = (name, state, care);
        app.Pages.Invalidate();
    }

    private static BuildChoice[] Choices(BuildRack rack) =>
    [
        .. rack.Names.Select((name, index) => rack.Peek(index) switch
        {
            null => new BuildChoice(name, "", double.NaN, double.NaN, double.NaN),
            { Build: FlyableBuild build } => BuildChoice.Of(build),
            { Message: string fault } => new BuildChoice(name, "", double.NaN, double.NaN, double.NaN, fault),
        }),
    ];

    /// <summary>Opens the menu of a flight.</summary>
    public void OpenPause()
    {
        Outing outing = app.Outing!;
        bool live = app.IsLive, blind = app.Blind.IsOn;
        app.Pages.Open(new PausePage(new()
        {
            State = blind ? $"{app.Blind.State} {app.Delays}" : $"{outing.Build(outing.Flown).Name} ({(outing.Flown == 0 ? "A" : "B")}) is flown over {outing.Map.Name}. {app.Delays}",
            Resume = app.Pages.Close,
            Restart = live ? () => Done(PilotAction.Restart) : null,
            Swap = live && !blind ? () => Done(PilotAction.Swap) : null,
            NextFlight = blind ? () => Done(PilotAction.Swap) : null,
            Vote = blind ? () => Done(PilotAction.Results) : null,
            Bench = live && !blind && outing.Build(outing.Flown).Assembled.Build.Source is not null ? OpenBench : null,
            Results = blind ? null : OpenResults,
            Marks = app.Marks is null || blind ? null : app.OpenMarks,
            Sticks = live ? OpenWizard : null,
            Settings = () => OpenSettings(overFlight: true),
            Keys = () => OpenKeys(overFlight: true),
            EndFlight = app.EndFlight,
            AfterFlight = app.IsForOneFlight && !app.Blind.IsOn ? "closes the window" : "back to the start page",
        }));

        void Done(PilotAction action)
        {
            app.Pages.Close();
            app.Do(action);
        }
    }

    /// <summary>Opens the part bench with the build that is flown.</summary>
    public void OpenBench()
    {
        int craft = app.Outing!.Flown;
        app.Pages.Open(new PartBenchPage(new()
        {
            Build = () => Bench().File.Name,
            Items = () => Bench().Items,
            Differences = () => Bench().Differences,
            State = () => Bench().State switch
            {
                PartBenchState.Working => "Working it out ...",
                PartBenchState.Refused => Bench().Message,
                _ => Changes(Bench().Differences) + "The next restart flies what stands here.",
            },
            Working = () => Bench().State == PartBenchState.Working,
            Refused = () => Bench().State == PartBenchState.Refused,
            Changed = item => Bench().Changed(item),
            Reset = () => Bench().Reset(),
            Fly = () =>
            {
                app.Pages.Clear();
                app.Do(PilotAction.Restart);
            },
            OtherBuild = () =>
            {
                craft = 1 - craft;
                app.Pages.Invalidate();
            },
        }));

        PartBench Bench() => app.BenchOf(craft);
    }

    /// <summary>The changes in a line, since their table may lie below the edge.</summary>
    private static string Changes(IReadOnlyList<PartBenchDifference> differences)
    {
        string[] changed = [.. differences
            .Where(d => Math.Abs(d.After - d.Before) > 5e-4 * Math.Abs(d.Before))
            .Take(5)
            .Select(d => string.Create(CultureInfo.InvariantCulture, $"{d.Name.ToLowerInvariant()} {100 * ((d.After / d.Before) - 1):+0.0;-0.0} %"))];
        return changed.Length == 0 ? "" : string.Join(", ", changed) + ". ";
    }

    /// <summary>Opens what was found in the flights so far.</summary>
    public void OpenResults() => app.Pages.Open(Results());

    /// <summary>The page of what was found in the flights so far.</summary>
    public ResultsPage Results()
    {
        Outing outing = app.Outing!;
        return new(new()
        {
            Builds = [outing.Build(0).Name, outing.Build(1).Name],
            Rows = outing.Stage.Finds.Rows(),
            Footnote = $"The best of each build since the builds were last changed; percent of their mean, as in compare. {app.Delays}",
        });
    }

    /// <summary>Opens the settings.</summary>
    public void OpenSettings(bool overFlight)
    {
        CockpitSettings s = app.Settings;
        _settings = new() { Changed = Store, Reset = Reset };
        Show(s);
        app.Pages.Open(new SettingsPage(_settings, overFlight));

        void Reset()
        {
            Show(new() { BuildA = s.BuildA, BuildB = s.BuildB });
            Store();
        }
    }

    /// <summary>Opens the list of keys.</summary>
    public void OpenKeys(bool overFlight)
    {
        PilotAction[] all = Enum.GetValues<PilotAction>();
        app.Pages.Open(new KeysPage(
            new()
            {
                Lines = [.. all.Select(Line)],
                FlyingKeys = "The keyboard flies with W and S (climb), A and D (yaw) and the arrows (pitch and roll), self-levelling on. It is not fit for feel.",
                Reset = app.ResetKeys,
            },
            overFlight));

        KeyLine Line(PilotAction action)
        {
            string said = "";
            return new()
            {
                Name = PilotActionWords.Of(action),
                Key = () => ActionMap.KeyName(app.Actions.KeyOf(action)),
                Pad = () => app.Actions.PadOf(action).Words,
                Clash = () => said,
                SetKey = scancode =>
                {
                    app.Actions.TrySetKey(action, scancode, out said);
                    app.StoreKeys();
                },
                SetPad = button =>
                {
                    if (app.PadButtonOf(button) is PadButton pad) app.Actions.TrySetPad(action, new(pad), out said);
                    else said = "This button has no name on a gamepad; give it an action with the sticks wizard.";
                    app.StoreKeys();
                },
            };
        }
    }

    /// <summary>Opens the sticks wizard, or says that there is nothing to set up.</summary>
    public void OpenWizard()
    {
        StickHub hub = app.Pilot.Hub;
        if (hub.Devices.Count == 0)
        {
            app.Say("No stick device", "Plug in a gamepad, a joystick or a transmitter by USB, then come back here. Until then the keyboard flies.");
            return;
        }
        SticksWizard wizard = new();
        app.Wizard = wizard;
        app.Pages.Open(new WizardPage(new()
        {
            Device = () => hub.Active?.Name ?? "",
            View = () => app.Wizard!.View,
            Choose = answer => app.Wizard!.Choose(answer),
            Store = () =>
            {
                app.StoreSticks(app.Wizard!.Result!);
                app.Wizard = null;
            },
            Again = () => app.Wizard = new(),
            Cancel = () => app.Wizard = null,
        }));
    }

    private void Show(CockpitSettings s)
    {
        SettingsModel m = _settings!;
        m.Quality = s.Quality;
        m.Palette = s.Palette;
        m.TextScale = s.TextScale;
        m.Views = ViewNames;
        m.View = (int)s.View;
        m.CameraTilt_deg = s.CameraTilt_deg;
        m.FieldOfView_deg = s.FieldOfView_deg;
        m.TrueScale = s.TrueScale;
        m.ScreenHeight_cm = s.ScreenHeight_mm / 10;
        m.EyeDistance_cm = s.EyeDistance_mm / 10;
        m.WideLens_percent = 100 * s.WideLens;
        m.SoundGain_percent = 100 * s.SoundGain;
        m.RadioDelay_ms = s.RadioDelay_ms;
        m.VideoDelay_ms = s.VideoDelay_ms;
        m.SpeedInKilometresPerHour = s.KilometresPerHour;
        m.ShowNumbers = s.ShowNumbers;
    }

    private void Store()
    {
        SettingsModel m = _settings!;
        CockpitSettings s = app.Settings;
        s.CameraTilt_deg = m.CameraTilt_deg;
        s.Quality = m.Quality;
        s.Palette = m.Palette;
        s.TextScale = m.TextScale;
        s.View = (View)m.View;
        s.FieldOfView_deg = m.FieldOfView_deg;
        s.TrueScale = m.TrueScale;
        s.ScreenHeight_mm = 10 * m.ScreenHeight_cm;
        s.EyeDistance_mm = 10 * m.EyeDistance_cm;
        s.WideLens = m.WideLens_percent / 100;
        s.SoundGain = m.SoundGain_percent / 100;
        s.RadioDelay_ms = m.RadioDelay_ms;
        s.VideoDelay_ms = m.VideoDelay_ms;
        s.KilometresPerHour = m.SpeedInKilometresPerHour;
        s.ShowNumbers = m.ShowNumbers;
        app.StoreSettings();
    }
}
