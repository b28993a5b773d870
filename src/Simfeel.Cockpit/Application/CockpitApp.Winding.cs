using Simfeel.Cockpit.Marks;
using Simfeel.Cockpit.Stage;
using Simfeel.Flight.Traces;

namespace Simfeel.Cockpit.Application;

/// <content>
/// The way to a mark. A replay is deterministic, so going back is flying again from the start, without drawing and as fast as the
/// machine can.
/// </content>
public sealed partial class CockpitApp
{
    /// <summary>A passed mark's note stands for this long, s.</summary>
    private const double CaptionStands = 2;

    /// <summary>Readings wound in one frame: few enough that the window still answers.</summary>
    private const int WoundInAFrame = 5000;

    private long _seen;
    private long? _windTo;
    private long _captionReading = -1;
    private double _captionUntil;

    /// <summary>A replay is on its way to a mark.</summary>
    internal bool Winding => _windTo is not null;

    private void Jump(int mark, string none)
    {
        if (mark < 0)
        {
            Notify(none);
            return;
        }
        long reading = ReadingOf(mark);
        if (reading < Outing!.Stage.Session.Readings || _tape!.Ended)
        {
            if (!TryRewind()) return;
        }
        _windTo = reading;
    }

    private long ReadingOf(int mark) => (long)Math.Round(_marks!.Marks[mark].Time / StickPeriod);

    /// <summary>Puts the replay back to its start; the builds need not be made again.</summary>
    private bool TryRewind()
    {
        Outing before = Outing!;
        TraceReader? trace = null;
        try
        {
            trace = TraceReader.Open(_options.Replay!);
            Replay replay = _replay!.Again(trace);
            ReplayTape tape = new(replay);
            Outing next = new(replay.A, replay.B, before.Profile, before.Conditions, before.Map, replay.Session);
            next.Stage.Tape = tape;
            // a tape that ended held time by itself
            next.Stage.Paused = before.Stage.Paused && !_tape!.Ended;
            while (next.Stage.Speed > before.Stage.Speed) next.Stage.Slower();
            before.Dispose();
            _trace!.Dispose();
            (Outing, _trace, _replay, _tape, _told) = (next, trace, replay, tape, false);
            return true;
        }
        catch (TraceException error)
        {
            trace?.Dispose();
            Notify(error.Message);
            return false;
        }
    }

    /// <summary>Flies a replay on towards a mark; true where that was all of this frame's time.</summary>
    private bool WindOn(Outing outing)
    {
        if (_windTo is not long to) return false;
        bool paused = outing.Stage.Paused;
        if (!outing.Stage.Wind(to, WoundInAFrame))
        {
            // marks on the way are not meant
            _seen = outing.Stage.Session.Readings;
            return true;
        }
        _windTo = null;
        if (!_tape!.Ended) outing.Stage.Paused = paused;
        _seen = to - 1;
        PassMarks(outing);
        if (Settings.HoldAtMarks) outing.Stage.Paused = true;
        _painter.Reset();
        return true;
    }

    /// <summary>Where time is to be held next.</summary>
    private void HoldAtMark(Outing outing)
    {
        int next = !IsLive && Settings.HoldAtMarks && Marks is TimeMarks marks ? marks.After(Now + (StickPeriod / 2)) : -1;
        outing.Stage.HoldAt = next < 0 ? long.MaxValue : ReadingOf(next);
    }

    /// <summary>Notes which mark was passed last.</summary>
    private void PassMarks(Outing outing)
    {
        long readings = outing.Stage.Session.Readings;
        if (!IsLive && Marks is TimeMarks marks)
        {
            for (int k = 0; k < marks.Count; k++)
            {
                long reading = ReadingOf(k);
                if (reading <= _seen || reading > readings) continue;
                (_captionReading, _captionUntil) = (readings, _time + CaptionStands);
                _readout.Timeline.Caption = marks[k].Note;
            }
        }
        _seen = readings;
    }
}
