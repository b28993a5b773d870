using Simfeel.Cockpit.Application.Blind;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Loading;
using Simfeel.Cockpit.Pages;
using Simfeel.Cockpit.Parts;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight;
using Simfeel.Flight.Traces;

namespace Simfeel.Cockpit.Application;

/// <content>The flight: what keys and sticks do, builds that change meanwhile, sticks that go.</content>
public sealed partial class CockpitApp
{
    private readonly PartBench?[] _benches = new PartBench?[2];
    private readonly BuildWatch?[] _watches = new BuildWatch?[2];
    private readonly FlyableBuild?[] _next = new FlyableBuild?[2];
    private TraceReader? _trace;
    private ReplayTape? _tape;
    private Replay? _replay;
    private bool _pendingStart;
    private BlindOptions? _pendingBlind;
    private bool _lost;
    private bool _level;
    private Sticks _before;
    private int _recordings;

    internal Outing? Outing { get; private set; }

    /// <summary>The part bench with a build (0 or 1) of this outing.</summary>
    internal PartBench BenchOf(int craft) =>
        _benches[craft] ??= new(Outing!.Build(craft), Outing.Profile) { WorkBegins = BenchWorkBegins };

    /// <inheritdoc cref="PartBench.WorkBegins"/>
    internal Action? BenchWorkBegins { get; set; }

    /// <summary>Does what a key or button asks for.</summary>
    internal void Do(PilotAction action)
    {
        if (Outing is not Outing outing || Blind.Takes(action)) return;
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
                if (outing.Build(outing.Flown).Assembled.Build.Source is null) Notify("The craft of a lesson stay as the lesson made them.");
                else _menus.OpenBench();
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
            default:
                Coach(action);
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
        if (WindOn(outing)) seconds = 0;
        HoldAtMark(outing);
        int readings = outing.Stage.Advance(seconds, sticks);
        if (Blind.IsOn) Blind.Flew(outing.Stage.Session.Condition(outing.Flown), readings * outing.Profile.StickPeriod);
        PassMarks(outing);
        if (_tape is { Ended: true } && !_told) EndOfReplay();
        WatchBuilds();
        WatchRecorder();
        Fill(outing);
        Sound(outing);
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

    internal string KeyOf(PilotAction action) => ActionMap.KeyName(Actions.KeyOf(action));
}
