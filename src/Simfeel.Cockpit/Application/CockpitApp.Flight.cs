using Simfeel.Cockpit.Bench;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Sound;
using Simfeel.Flight;
using Simfeel.Flight.Traces;
using Simfeel.Physics;

namespace Simfeel.Cockpit.Application;

/// <summary>The flight: from the start pad to its end, what keys and sticks do meanwhile.</summary>
public sealed partial class CockpitApp
{
    private readonly PartBench?[] _benches = new PartBench?[2];
    private readonly BuildWatch?[] _watches = new BuildWatch?[2];
    private readonly FlyableBuild?[] _next = new FlyableBuild?[2];
    private TraceReader? _trace;
    private ReplayTape? _tape;
    private Replay? _replay;
    private bool _pendingStart;
    private bool _lost;
    private bool _level;
    private Sticks _before;
    private int _recordings;

    internal Outing? Outing { get; private set; }

    /// <summary>Flies the builds that the start page shows.</summary>
    internal void FlyPicked()
    {
        Pick();
        StoreSettings();
        Pages.Clear();
        _pendingStart = true;
    }

    /// <summary>The start page shows other builds: they are loaded next.</summary>
    internal void Pick()
    {
        if (_menus.Start is not StartModel start) return;
        Settings.BuildA = NameOf(start.Picked[0]);
        Settings.BuildB = NameOf(start.Picked[1]);
        Rack.Get(start.Picked[1]);
        Rack.Get(start.Picked[0]);
    }

    /// <summary>The part bench with a build (0 or 1) of this outing.</summary>
    internal PartBench BenchOf(int craft) =>
        _benches[craft] ??= new(Outing!.Build(craft) with { }, Outing.Profile);

    /// <summary>Ends the flight and goes back to the start page.</summary>
    internal void EndFlight()
    {
        if (_options.StraightToTheField || _options.Replay is not null)
        {
            Quit();
            return;
        }
        Page results = _menus.Results();
        EndOuting();
        _menus.OpenStart();
        Pages.Open(results);
    }

    /// <summary>Does what a key or button asks for.</summary>
    internal void Do(PilotAction action)
    {
        if (Outing is not Outing outing) return;
        bool live = _tape is null;
        switch (action)
        {
            case PilotAction.Arm when live:
                outing.Stage.Hold(PilotSwitches.Armed, !outing.Stage.IsOn(PilotSwitches.Armed));
                break;
            case PilotAction.Restart when live:
                Restart(PilotSwitches.Restart);
                break;
            case PilotAction.Swap when live:
                Restart(PilotSwitches.SwapFromStart);
                break;
            case PilotAction.SwapInPlace when live:
                outing.Stage.Press(PilotSwitches.SwapInPlace);
                break;
            case PilotAction.Shadow when live:
                outing.Stage.Hold(PilotSwitches.Shadow, !outing.Stage.IsOn(PilotSwitches.Shadow));
                break;
            case PilotAction.Level when live:
                if (Pilot.OnKeyboard) Notify("The keyboard always flies with self-levelling.");
                else _level = !_level;
                break;
            case PilotAction.Pause:
                outing.Stage.Paused = !outing.Stage.Paused;
                break;
            case PilotAction.SingleStep:
                outing.Stage.Paused = true;
                outing.Stage.SingleStep(Pilot.Sticks);
                break;
            case PilotAction.Slower:
                outing.Stage.Slower();
                break;
            case PilotAction.Faster:
                outing.Stage.Faster();
                break;
            case PilotAction.View:
                _painter.View = (View)(((int)_painter.View + 1) % 4);
                _painter.Reset();
                if (_painter.View == View.Split && live) outing.Stage.Hold(PilotSwitches.Shadow, true);
                break;
            case PilotAction.MassView:
                _painter.MassView = !_painter.MassView;
                break;
            case PilotAction.Graphs:
                _readout.ShowGraphs = !_readout.ShowGraphs;
                break;
            case PilotAction.Bench when live:
                _menus.OpenBench();
                break;
            case PilotAction.Results:
                _menus.OpenResults();
                break;
            case PilotAction.Picture:
                TakePicture();
                break;
            case PilotAction.Help:
                _menus.OpenKeys(overFlight: true);
                break;
            case PilotAction.Menu:
                _menus.OpenPause();
                break;
        }
    }

    /// <summary>A frame of flight.</summary>
    private void FlyOn(double seconds)
    {
        Outing outing = Outing!;
        Pilot.Advance(seconds, outing.HoverStick);
        bool live = _tape is null;
        if (live && Pilot.IsLost) AskForSticks();
        while (Pilot.TryTake(out PilotAction action)) Do(action);
        if (Pages.Top is not null || Outing != outing) return;
        if (live && Pilot.Hub.ArmSwitch is bool armed && !Pilot.OnKeyboard) outing.Stage.Hold(PilotSwitches.Armed, armed);
        outing.Stage.Hold(PilotSwitches.Level, Pilot.OnKeyboard || _level);
        outing.Stage.Hold(PilotSwitches.Climb, Pilot.OnKeyboard);
        Sticks sticks = Pilot.Sticks;
        _before = sticks;
        outing.Stage.Advance(seconds, sticks);
        if (_tape is { Ended: true } && !_told) EndOfReplay();
        WatchBuilds();
        WatchRecorder();
        Fill(outing);
        Sound(outing);
    }

    /// <summary>Takes the picked builds to the field as soon as both are loaded.</summary>
    private void TryStart()
    {
        if (_options.Replay is not null)
        {
            _pendingStart = false;
            StartReplay(_options.Replay);
            return;
        }
        int a = Rack.IndexOf(_options.Shelf.PathOf(Settings.BuildA) ?? Settings.BuildA), b = Rack.IndexOf(_options.Shelf.PathOf(Settings.BuildB) ?? Settings.BuildB);
        FlyableResult? first = Rack.Get(a), second = Rack.Get(b);
        if (first is null || second is null) return;
        _pendingStart = false;
        if (first.Build is null || second.Build is null)
        {
            string fault = first.Build is null ? first.Message : second.Message;
            if (_options.StraightToTheField) throw new UnusableFileException(fault);
            _menus.OpenStart();
            Say("This build cannot be flown", fault);
            return;
        }
        Begin(first.Build, second.Build, flown: 0);
    }

    private void Begin(FlyableBuild a, FlyableBuild b, int flown)
    {
        EndOuting();
        Rack.Resting = true;
        PilotProfile profile = Profile;
        Outing = new(a, b, profile, _options.Conditions, Map);
        if (flown == 1) Outing.Stage.Press(PilotSwitches.SwapFromStart);
        Pilot.Choose();
        Pilot.Keyboard.Release();
        if (_options.Record is not null) Outing.Stage.Recorder = Record(a, b, profile, _options.Record);
        for (int craft = 0; craft < 2; craft++)
        {
            if (Outing.Build(craft).Path is not null) _watches[craft] = new(Outing.Build(craft), profile);
        }
        Join();
        Notify(Pilot.OnKeyboard
            ? $"W climbs, S sinks, arrows tilt. {KeyOf(PilotAction.Help)} lists all keys."
            : $"Throttle down, then arm. {KeyOf(PilotAction.Swap)} swaps the builds, {KeyOf(PilotAction.Help)} lists all keys.");
    }

    /// <summary>Lets picture, overlay and window know of a new outing.</summary>
    private void Join()
    {
        _painter.Show(Outing!);
        _readout.ReserveScale = Outing!.ReserveScale;
        _readout.ArmKey = KeyOf(PilotAction.Arm);
        _readout.RestartKey = KeyOf(PilotAction.Restart);
        _readout.PauseKey = KeyOf(PilotAction.Pause);
        _window.SetTitle($"Simfeel: {Outing.Build(0).Name} and {Outing.Build(1).Name}");
        Pacer.Restart();
        Fill(Outing);
    }

    private void EndOuting()
    {
        for (int craft = 0; craft < 2; craft++)
        {
            _watches[craft]?.Dispose();
            (_watches[craft], _benches[craft], _next[craft]) = (null, null, null);
        }
        Outing?.Stage.Recorder?.Dispose();
        Outing?.Dispose();
        Outing = null;
        _trace?.Dispose();
        (_trace, _tape, _replay) = (null, null, null);
        _painter.MassView = false;
    }

    /// <summary>Back to the start, with what the part bench or an editor changed.</summary>
    private void Restart(PilotSwitches pulse)
    {
        Outing outing = Outing!;
        Pilot.Keyboard.Release();
        Pilot.Choose();
        _painter.Reset();
        FlyableBuild[] builds = [outing.Build(0), outing.Build(1)];
        bool changed = false;
        for (int craft = 0; craft < 2; craft++)
        {
            FlyableBuild? next = _benches[craft]?.Result ?? _next[craft];
            if (next is null || ReferenceEquals(next, builds[craft])) continue;
            builds[craft] = next;
            changed = true;
        }
        if (!changed)
        {
            outing.Stage.Press(pulse);
            return;
        }
        int flown = pulse == PilotSwitches.SwapFromStart ? 1 - outing.Flown : outing.Flown;
        PartBench?[] benches = [_benches[0], _benches[1]];
        Begin(builds[0], builds[1], flown);
        // a changed build stays on its bench, so that it can be changed further
        for (int craft = 0; craft < 2; craft++) _benches[craft] = benches[craft];
    }

    /// <summary>Takes over what was saved in an editor; the next restart flies it.</summary>
    private void WatchBuilds()
    {
        for (int craft = 0; craft < 2; craft++)
        {
            if (_watches[craft]?.TryTake(out FlyableBuild? build, out string? error) != true) continue;
            if (build is null)
            {
                Notify($"The last good {Outing!.Build(craft).Name} flies on. {error}");
                continue;
            }
            _next[craft] = build;
            IReadOnlyList<KeyValuePair<string, double>> edits = _benches[craft]?.Edits ?? [];
            // what was changed on the bench is changed in the new file, too
            _benches[craft] = edits.Count == 0 ? null : new(build, Outing!.Profile, edits);
            Notify($"{Path.GetFileName(build.Path)} was changed. {KeyOf(PilotAction.Restart)} flies it.");
        }
    }

    private TraceRecorder Record(FlyableBuild a, FlyableBuild b, PilotProfile profile, string file)
    {
        // changed builds make another recording: a trace tells of two builds only
        string path = _recordings++ == 0
            ? file
            : Path.Combine(Path.GetDirectoryName(file) ?? "", $"{Path.GetFileNameWithoutExtension(file)}-{_recordings}{Path.GetExtension(file)}");
        TraceHeader header = TraceHeader.Of(a, b, profile, _options.Conditions) with
        {
            FieldName = Map.Name,
            FieldText = FieldText,
            VideoDelay = Settings.VideoDelay_ms / 1000,
        };
        return TraceRecorder.Start(path, header);
    }

    private void WatchRecorder()
    {
        if (Outing!.Stage.Recorder is not { Trouble: string trouble } recorder) return;
        Outing.Stage.Recorder = null;
        recorder.Dispose();
        Console.Error.WriteLine("simfeel: " + trouble);
        Notify(trouble);
    }

    /// <summary>Time is held until there are sticks again.</summary>
    private void AskForSticks()
    {
        _lost = true;
        Say(
            "The sticks are gone",
            "Time is held. Plug the device in again, move a stick, and bring the throttle to where it stood.",
            new MessageChoice("Fly on", FlyOnWithSticks),
            new MessageChoice("Fly on with the keyboard", () =>
            {
                _lost = false;
                Pilot.TakeKeyboard();
            }),
            new MessageChoice("End the flight", EndFlight));
    }

    private void FlyOnWithSticks()
    {
        StickHub hub = Pilot.Hub;
        if (hub.State == StickState.Ready && hub.Profile is not null && hub.ThrottleMatches(_before))
        {
            _lost = false;
            Pilot.Choose();
            Pacer.Restart();
            return;
        }
        AskForSticks();
        Notify(hub.State == StickState.Ready ? "Bring the throttle to where it stood." : "The device does not report yet: plug it in and move a stick.");
    }

    private void TakePicture()
    {
        if (!UserFolder.TryNewFile(_options.PictureFolder, "picture", ".png", DateTime.Now, out string file, out string problem))
        {
            Notify(problem);
            return;
        }
        try
        {
            WritePng(file);
            Notify($"Stored as {file}");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Notify($"The picture cannot be stored: {error.Message}");
        }
    }

    private void Fill(Outing outing)
    {
        FlightSession session = outing.Stage.Session;
        int flown = outing.Flown;
        for (int craft = 0; craft < 2; craft++)
        {
            Sample sample = session.Sample(craft);
            outing.SetThrust(craft, sample);
            outing.Fill(_readout.Builds[craft], craft, sample);
        }
        CraftCondition condition = session.Condition(flown);
        _readout.Flown = flown;
        _readout.Time = session.Time;
        _readout.Sticks = outing.Stage.Last.Sticks;
        _readout.Armed = condition.Armed;
        // what a key would mend in a live flight is not said of a recording
        _readout.Crashed = condition.Crashed && _tape is null;
        _readout.Shadow = session.Shadow;
        _readout.Paused = outing.Stage.Paused;
        _readout.TimeFactor = outing.Stage.Speed;
        _readout.Recording = outing.Stage.Recorder is not null;
        _readout.Replaying = _tape is not null;
        _readout.Keyboard = Pilot.OnKeyboard && !_readout.Replaying;
        _readout.NoStick = _lost;
        _readout.Level = outing.Stage.Last.Has(PilotSwitches.Level);
        _readout.PictureDelay = _delays[flown].Delays.Last_s;
        _painter.Overlay.Graphs.Record(_readout);
    }

    private void Sound(Outing outing)
    {
        Sample sample = outing.Stage.Present;
        Craft craft = outing.Build(outing.Flown).Unit.Unit.Craft;
        SoundMoment moment = new()
        {
            RotorCount = craft.Rotors.Count,
            Blades = outing.Assembled(outing.Flown).Build.Propeller.Blades.Count,
            Radius = craft.Rotors[0].Radius,
            Speeds = sample.State.RotorSpeeds,
            Thrusts = sample.Thrust,
            AirSpeed = sample.AirVelocity_B.Length,
            Impact = outing.Stage.Impact,
        };
        outing.Stage.Impact = 0;
        _sound.IsMuted = outing.Stage.Paused;
        _speaker?.Feed(_sound, moment);
    }

    private string KeyOf(PilotAction action) => ActionMap.KeyName(Actions.KeyOf(action));

    private string NameOf(int index)
    {
        string path = Rack.PathOf(index);
        return _options.Shelf.PathOf(Rack.Names[index]) == path ? Rack.Names[index] : path;
    }
}
