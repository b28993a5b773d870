using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Marks;
using Simfeel.Cockpit.Pages.Flights;
using Simfeel.Flight.Traces;

namespace Simfeel.Cockpit.Application;

/// <content>Time marks of a recording: setting them, their list, their file.</content>
public sealed partial class CockpitApp
{
    /// <summary>Just behind a mark, "the mark before" means the one before that, s.</summary>
    private const double Grace = 1;

    private TimeMarksStore? _marks;
    private double _length;

    /// <summary>The marks of what is recorded or replayed; null in a flight that nobody records.</summary>
    internal TimeMarks? Marks => !IsLive || Outing?.Stage.Recorder is not null ? _marks?.Marks : null;

    private double StickPeriod => Outing!.Profile.StickPeriod;

    private double Now => Outing!.Stage.Session.Readings * StickPeriod;

    /// <summary>Does what a key or button for marks and aids to teaching asks for.</summary>
    private void Coach(PilotAction action)
    {
        switch (action)
        {
            case PilotAction.LevelGrid:
                ToggleLevelGrid();
                break;
            case PilotAction.Shadow when !IsLive:
                Notify("In a replay the other build flies along where it did in the flight.");
                break;
            case PilotAction.Mark or PilotAction.Marks when Marks is null:
                Notify("Time marks belong to a recording: fly with --record FILE, or replay one.");
                break;
            case PilotAction.Mark:
                SetMark();
                break;
            case PilotAction.Marks:
                OpenMarks();
                break;
            case PilotAction.PreviousMark when _tape is not null:
                // while time is held the present mark is where one is, and nobody overshoots
                Jump(Marks!.Before(Now - (Outing!.Stage.Paused && !_tape.Ended ? StickPeriod / 2 : Grace)), "There is no mark before this moment.");
                break;
            case PilotAction.NextMark when _tape is not null:
                Jump(Marks!.After(Now + (StickPeriod / 2)), "There is no mark after this moment.");
                break;
        }
    }

    /// <summary>Opens the list of marks.</summary>
    internal void OpenMarks() => Pages.Open(new MarksPage(new()
    {
        Marks = () => _marks!.Marks,
        Where = $"Kept in {_marks!.Path}.",
        HoldsAtMarks = () => Settings.HoldAtMarks,
        SetHoldsAtMarks = on =>
        {
            Settings.HoldAtMarks = on;
            StoreSettings();
        },
        Set = SetMark,
        SetNote = (index, note) =>
        {
            _marks.Marks.SetNote(index, note);
            SaveMarks();
        },
        Delete = index =>
        {
            _marks.Marks.RemoveAt(index);
            SaveMarks();
        },
        Jump = IsLive ? null : index =>
        {
            Pages.Clear();
            Jump(index, "");
        },
    }));

    private void SetMark()
    {
        double now = Now;
        bool isNew = _marks!.Marks.TryAdd(new(now, TimeMark.Words[0]), out _);
        _seen = Outing!.Stage.Session.Readings;
        if (isNew && !SaveMarks()) return;
        Notify(FormattableString.Invariant($"{(isNew ? "Mark set" : "There is a mark already")} at {now:F2} s. {KeyOf(PilotAction.Marks)} lists the marks."));
    }

    private bool SaveMarks()
    {
        Pages.Invalidate();
        if (_marks!.TrySave(out string problem)) return true;
        Console.Error.WriteLine("simfeel: " + problem);
        Notify(problem);
        return false;
    }

    /// <summary>A replay's marks and length; marks that are known already stay, as they may not have been stored.</summary>
    private void LoadMarks(string trace)
    {
        _length = LengthOf(trace);
        _seen = 0;
        (_windTo, _captionReading) = (null, -1);
        if (_marks?.Trace == trace) return;
        _marks = new(trace);
        _marks.Load(_wrong);
        Complain();
    }

    /// <summary>Ends the recording; its marks go where it goes.</summary>
    private void EndRecording()
    {
        if (Outing?.Stage.Recorder is not TraceRecorder recorder) return;
        recorder.Dispose();
        Outing.Stage.Recorder = null;
        if (recorder.Trouble is string trouble) _wrong.Add(trouble);
        else _marks?.MoveTo(recorder.Path, _wrong);
        Complain();
    }

    /// <summary>A new recording starts without marks.</summary>
    private void BeginMarks(string trace)
    {
        _marks = new(trace);
        _marks.Begin(_wrong);
        Complain();
    }

    /// <summary>Length of a trace up to where it can be read, s.</summary>
    private static double LengthOf(string trace)
    {
        using TraceReader reader = TraceReader.Open(trace);
        TraceRow row = reader.NewRow();
        try
        {
            while (reader.Read(row))
            {
            }
        }
        catch (TraceException)
        {
            // said when the replay comes there
        }
        return reader.Seconds;
    }

    /// <summary>Writes what the overlay shows of marks and the level grid.</summary>
    private void FillCoach(Outing outing)
    {
        bool held = outing.Stage.Paused && outing.Stage.Session.Readings == _captionReading;
        if (!held && _time > _captionUntil) _readout.Timeline.Caption = "";
        _readout.Timeline.Shown = !IsLive;
        _readout.Timeline.Marks = Marks;
        _readout.Timeline.Position = Now;
        _readout.Timeline.Length = _length;
        FillLevelGrid(outing);
    }
}
