using Simfeel.Cockpit.Application.Blind;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Loading;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Pages.Start;
using Simfeel.Cockpit.Parts;
using Simfeel.Flight;
using Simfeel.Flight.Traces;

namespace Simfeel.Cockpit.Application;

/// <content>From the pages to the field and back: what is flown, its recording, restarts.</content>
public sealed partial class CockpitApp
{
    /// <summary>Flies the builds that the start page shows.</summary>
    internal void FlyPicked()
    {
        Pick();
        StoreSettings();
        Pages.Clear();
        _pendingStart = true;
    }

    /// <summary>Takes two craft to the field that no file describes.</summary>
    internal void FlyCraft(FlyableBuild a, FlyableBuild b)
    {
        Pages.Clear();
        Begin(a, b, flown: 0);
    }

    /// <summary>Flies the builds that the start page shows, blind.</summary>
    internal void FlyBlind(BlindOptions how)
    {
        _pendingBlind = how;
        FlyPicked();
    }

    /// <summary>Takes a craft to the field that nobody shall know.</summary>
    /// <param name="craft">The craft, under the name that all have.</param>
    /// <param name="inputs">Receives every input; null for none.</param>
    internal void FlyUnknown(FlyableBuild craft, List<PilotInput>? inputs)
    {
        Pages.Clear();
        Begin(craft, craft, flown: 0);
        Outing!.Stage.Inputs = inputs;
        _readout.ShowGraphs = false;
        _painter.MassView = false;
    }

    /// <summary>From the field to the start page.</summary>
    internal void LeaveField()
    {
        EndOuting();
        _menus.OpenStart();
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

    /// <summary>The command line named both builds or a recording.</summary>
    internal bool IsForOneFlight => _options.StraightToTheField || _options.Replay is not null;

    /// <summary>Ends the flight and goes back to the start page, or closes the window that was opened for this flight alone.</summary>
    internal void EndFlight()
    {
        if (Blind.IsOn)
        {
            Blind.End();
            return;
        }
        if (IsForOneFlight)
        {
            Quit();
            return;
        }
        Page results = _menus.Results();
        EndOuting();
        _menus.OpenStart();
        Pages.Open(results);
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
        if ((first.Fault ?? second.Fault) is { } broken) throw broken;
        if (first.Build is null || second.Build is null)
        {
            string fault = first.Build is null ? first.Message : second.Message;
            if (_options.StraightToTheField) throw new UnusableFileException(fault);
            _menus.OpenStart();
            Say("This build cannot be flown", fault);
            return;
        }
        if (_pendingBlind is BlindOptions how)
        {
            _pendingBlind = null;
            if (BlindDesk.WhyAlike(first.Build, second.Build, how) is { Length: > 0 } alike)
            {
                if (_options.StraightToTheField) throw new UnusableFileException(alike);
                _menus.OpenStart();
                Say("Nothing to tell apart", alike);
                return;
            }
            Blind.Begin(first.Build, second.Build, how);
            return;
        }
        Begin(first.Build, second.Build, flown: 0);
    }

    private void Begin(FlyableBuild a, FlyableBuild b, int flown, bool again = false)
    {
        PilotProfile profile = Profile;
        // whoever watches a file goes on: to begin anew means to read it again, beside the first frame
        BuildWatch?[] watches = [Keep(0, a), Keep(1, b)];
        EndOuting();
        Rack.Resting = true;
        Outing = new(a, b, profile, _options.Conditions, Map, look: Blind.IsOn ? Blind.Look : null);
        if (flown == 1) Outing.Stage.Press(PilotSwitches.SwapFromStart);
        Pilot.Choose();
        Pilot.Keyboard.Release();
        if (_options.Record is not null && !Blind.IsOn && a.Assembled.Build.Source is not null && b.Assembled.Build.Source is not null)
            Outing.Stage.Recorder = Record(a, b, profile, _options.Record);
        for (int craft = 0; craft < 2; craft++)
        {
            if (Outing.Build(craft).Path is not null) _watches[craft] = watches[craft] ?? new(Outing.Build(craft), profile);
        }
        Join();
        if (Blind.IsOn) return;
        Notify(Pilot.OnKeyboard
            ? $"W climbs, S sinks, arrows tilt. {KeyOf(PilotAction.Help)} lists all keys."
            : $"Throttle down, then arm. {KeyOf(PilotAction.Swap)} swaps the builds, {KeyOf(PilotAction.Help)} lists all keys.");

        BuildWatch? Keep(int craft, FlyableBuild build)
        {
            if (!again || _watches[craft]?.Watches(build, profile) != true) return null;
            BuildWatch? kept = _watches[craft];
            _watches[craft] = null;
            return kept;
        }
    }

    /// <summary>Lets picture, overlay and window know of a new outing.</summary>
    private void Join()
    {
        _painter.Show(Outing!);
        _readout.ReserveScale = Outing!.ReserveScale;
        _readout.ArmKey = KeyOf(PilotAction.Arm);
        _readout.RestartKey = KeyOf(PilotAction.Restart);
        _readout.PauseKey = KeyOf(PilotAction.Pause);
        _window.SetTitle(Blind.IsOn ? "Simfeel: blind flights" : $"Simfeel: {Outing.Build(0).Name} and {Outing.Build(1).Name}");
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
        EndRecording();
        Outing?.Dispose();
        Outing = null;
        _trace?.Dispose();
        (_trace, _tape, _replay) = (null, null, null);
        _painter.MassView = false;
        ForgetLevelGrid();
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
        Begin(builds[0], builds[1], flown, again: true);
        // a changed build stays on its bench, so that it can be changed further
        for (int craft = 0; craft < 2; craft++) _benches[craft] = benches[craft];
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
        TraceRecorder recorder = TraceRecorder.Start(path, header);
        if (recorder.Recording) BeginMarks(recorder.Path);
        return recorder;
    }

    private string NameOf(int index)
    {
        string path = Rack.PathOf(index);
        return _options.Shelf.PathOf(Rack.Names[index]) == path ? Rack.Names[index] : path;
    }
}
