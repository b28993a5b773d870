using Simfeel.Cockpit.Pages;
using Simfeel.Flight.Traces;

namespace Simfeel.Cockpit.Application;

/// <content>Flights that were recorded, flown again.</content>
public sealed partial class CockpitApp
{
    private bool _told;

    /// <summary>A pilot flies, not a recording.</summary>
    internal bool IsLive => _tape is null;

    /// <summary>The recording was flown to its end.</summary>
    public bool ReplayEnded => _tape is { Ended: true };

    /// <summary>What came of the replay so far, in one sentence; empty in a live flight.</summary>
    public string ReplayVerdict => _tape?.Verdict ?? "";

    /// <summary>Share of the recording's file that was read so far, 0 to 1; 0 in a live flight.</summary>
    internal double ReplayShare => _trace?.ShareRead ?? 0;

    private void StartReplay(string file)
    {
        EndOuting();
        _told = false;
        try
        {
            _trace = TraceReader.Open(file);
            _replay = new(_trace);
            _tape = new(_replay);
            Outing = new(_replay.A, _replay.B, _trace.Header.Profile, _trace.Header.Conditions, _replay.Map ?? Map, _replay.Session);
            Outing.Stage.Tape = _tape;
            Settings.VideoDelay_ms = 1000 * _trace.Header.VideoDelay;
            Settings.RadioDelay_ms = 1000 * _trace.Header.Profile.RadioDelay;
            Apply();
            Join();
            Notify("Replay of " + Path.GetFileName(file));
            LoadMarks(file);
        }
        catch (TraceException error)
        {
            throw new UnusableFileException(error.Message);
        }
    }

    private void EndOfReplay()
    {
        _told = true;
        string verdict = ReplayVerdict + (_trace!.CutShort ? $" The recording was cut short after {_trace.Seconds:F1} s." : "");
        Console.WriteLine(verdict);
        Say(
            "The recording has ended",
            verdict,
            new MessageChoice("Look again", () => _pendingStart = true),
            new MessageChoice("Time marks", OpenMarks),
            new MessageChoice("What was found", _menus.OpenResults),
            new MessageChoice("Close", Quit));
    }
}
