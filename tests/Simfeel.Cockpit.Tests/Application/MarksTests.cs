using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Marks;
using Simfeel.Cockpit.Platform;
using Simfeel.Flight;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>Time marks from the keys to the file and back, in flights that are recorded and flown again.</summary>
[Collection(WindowFixture.Collection)]
public sealed class MarksTests(WindowFixture fixture) : IDisposable
{
    private readonly TempFolder _folder = new();

    private string Trace => Path.Combine(_folder.Path, "flight.arrow");

    private string File => Path.Combine(_folder.Path, "flight.marks.toml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_recorded_flight_takes_marks_and_its_replay_goes_to_them_with_the_same_bits() => fixture.Run(() =>
    {
        List<(long Reading, ulong Hash)> seen = Record();
        using AppRun run = Replay();
        FlightSession First() => run.App.Outing!.Stage.Session;
        Assert.Equal(2, run.App.Marks!.Count);
        Assert.InRange(run.App.Readout.Timeline.Length, 1.8, 2.3);

        run.Press(P);
        run.Press(Period);
        Arrive(run);
        Assert.Equal(seen[0], (First().Readings, First().Hash()));
        run.Press(Period);
        Arrive(run);
        Assert.Equal(seen[1], (First().Readings, First().Hash()));
        run.Press(Comma);
        Arrive(run);
        Assert.Equal(seen[0], (First().Readings, First().Hash()));
        run.Press(Comma);
        Assert.Equal("There is no mark before this moment.", run.App.Readout.Notice);

        run.App.Outing!.Stage.Paused = false;
        run.Until(() => run.App.ReplayEnded, 10, "the replay did not end");
        run.Frames(0.1);
        Assert.Contains("bit for bit", run.App.ReplayVerdict, StringComparison.Ordinal);
        // from the end back into the flight
        run.Press(Escape);
        Assert.Equal("", run.App.PageName);
    });

    [Fact]
    public void After_its_end_a_replay_flies_on_from_a_mark() => fixture.Run(() =>
    {
        List<(long Reading, ulong Hash)> seen = Record();
        using AppRun run = Replay();
        run.Until(() => run.App.ReplayEnded, 10, "the replay did not end");
        run.Frames(0.1);
        Assert.Equal("MessagePage", run.App.PageName);
        run.Press(Down);
        run.Press(Enter);
        Assert.Equal("MarksPage", run.App.PageName);
        run.Press(Enter);
        Assert.Equal("MarkPage", run.App.PageName);
        run.Press(Down);
        for (int n = 0; n < TimeMark.Words.Count; n++) run.Press(Down);
        run.Press(Enter);
        Arrive(run);

        FlightSession session = run.App.Outing!.Stage.Session;
        Assert.Equal("", run.App.PageName);
        Assert.False(run.App.ReplayEnded);
        Assert.InRange(session.Readings, seen[0].Reading, seen[0].Reading + 100);
        long before = session.Readings;
        run.Frames(0.2);
        Assert.True(session.Readings > before);
    });

    [Fact]
    public void A_passed_mark_shows_its_note_for_two_seconds_and_holds_time_where_that_is_asked_for() => fixture.Run(() =>
    {
        List<(long Reading, ulong Hash)> seen = Record();
        using (AppRun run = Replay())
        {
            run.Until(() => run.App.Readout.Timeline.Caption.Length > 0, 10, "no note was shown");
            Assert.Equal("look here", run.App.Readout.Timeline.Caption);
            Assert.InRange(run.App.Outing!.Stage.Session.Readings, seen[0].Reading, seen[0].Reading + 20);
            run.App.Do(PilotAction.Slower);
            run.App.Do(PilotAction.Slower);
            run.App.Do(PilotAction.Slower);
            // at a tenth of real time the next mark is not reached meanwhile
            run.Frames(1.8);
            Assert.Equal("look here", run.App.Readout.Timeline.Caption);
            run.Frames(0.4);
            Assert.Equal("", run.App.Readout.Timeline.Caption);
        }
        using AppRun held = Replay();
        held.App.Settings.HoldAtMarks = true;
        held.Until(() => held.App.Outing!.Stage.Paused, 10, "time was not held");
        Assert.Equal(seen[0], (held.App.Outing!.Stage.Session.Readings, held.App.Outing!.Stage.Session.Hash()));
        held.Frames(3);
        Assert.Equal(seen[0].Reading, held.App.Outing!.Stage.Session.Readings);
        Assert.Equal("look here", held.App.Readout.Timeline.Caption);
        held.Press(P);
        held.Until(() => held.App.Outing!.Stage.Paused, 10, "time was not held again");
        Assert.Equal(seen[1], (held.App.Outing!.Stage.Session.Readings, held.App.Outing!.Stage.Session.Hash()));
    });

    [Fact]
    public void A_note_is_chosen_or_typed_and_a_mark_deleted() => fixture.Run(() =>
    {
        Record();
        using AppRun run = Replay();
        run.Press(J);
        Assert.Equal("MarksPage", run.App.PageName);
        run.Press(Enter);
        // the note's field is first
        run.Press(Enter);
        for (int n = 0; n < "here".Length; n++) run.Press(Backspace);
        // a space is both a key and a text; keys that do something in flight or on pages do not here
        run.Press(J);
        Text("für ");
        run.Press(Space);
        Text("dich");
        run.Press(Enter);
        Assert.Equal("look für dich", run.App.Marks![0].Note);
        Assert.Equal("MarkPage", run.App.PageName);
        run.Press(Enter);
        Text("never kept");
        run.Press(Escape);
        Assert.Equal("look für dich", run.App.Marks![0].Note);
        run.Press(Escape);
        run.Press(Down);
        run.Press(Enter);
        for (int n = 0; n < 5; n++) run.Press(Down);
        run.Press(Enter);
        Assert.Equal("MarksPage", run.App.PageName);
        Assert.Equal("bounce-back", run.App.Marks![1].Note);
        Assert.Contains("note = \"look für dich\"", System.IO.File.ReadAllText(File), StringComparison.Ordinal);

        run.Press(Enter);
        for (int n = 0; n < TimeMark.Words.Count + 2; n++) run.Press(Down);
        run.Press(Enter);
        Assert.Equal("MarksPage", run.App.PageName);
        Assert.Equal(1, run.App.Marks!.Count);
        Assert.DoesNotContain("bounce-back", System.IO.File.ReadAllText(File), StringComparison.Ordinal);
    });

    [Fact]
    public void Marks_that_cannot_be_read_are_said_and_the_replay_flies() => fixture.Run(() =>
    {
        Record();
        System.IO.File.WriteAllText(File, "[[mark]]\ntime_s = \"soon\"\n");
        using AppRun run = Replay();

        Assert.Equal("flight.marks.toml:2: time_s is \"soon\"; it must be a number from 0 to 86400 s. The mark is left out.", run.App.Readout.Notice);
        run.Frames(0.3);
        Assert.True(run.App.Outing!.Stage.Session.Readings > 100);
    });

    [Fact]
    public void Slow_motion_and_the_mass_view_work_in_a_replay_and_the_shadow_flies_where_it_did() => fixture.Run(() =>
    {
        Record(shadow: true);
        using AppRun run = Replay();
        run.Frames(0.6);
        FlightSession session = run.App.Outing!.Stage.Session;
        Assert.True(session.Shadow);
        Assert.Equal(0.45f, run.App.Outing!.Poses(0)[1].Opacity);
        run.Press(F);
        Assert.True(session.Shadow);
        for (int n = 0; n < 2; n++) run.Press(Minus);
        long before = session.Readings;
        run.Frames(0.5);
        Assert.InRange(session.Readings - before, 115, 135);
        Assert.Equal(0.25, run.App.Readout.TimeFactor);
        run.Press(M);
        run.Frames(0.1);
        Assert.True(run.App.Painter.MassView);
        Assert.True(run.App.Readout.Axes.Shown);
        run.Press(M);
        run.Frames(0.1);
        Assert.False(run.App.Readout.Axes.Shown);
    });

    [Fact]
    public void Without_a_recording_there_are_no_marks_and_that_is_said() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        run.Press(K);
        Assert.StartsWith("Time marks belong to a recording", run.App.Readout.Notice, StringComparison.Ordinal);
        run.Press(J);
        Assert.Equal("", run.App.PageName);
    });

    /// <summary>A flight of some two seconds with two marks; where they are and what the session's hash was there.</summary>
    private List<(long Reading, ulong Hash)> Record(bool shadow = false)
    {
        List<(long, ulong)> seen = [];
        using AppRun live = new(fixture.Window, (_, options) => options with { StraightToTheField = true, Record = Trace });
        live.ToTheField();
        live.Press(Space);
        if (shadow) live.Press(F);
        AppRun.Key(W, down: true);
        live.Frames(0.8);
        Mark();
        live.Frames(0.7);
        AppRun.Key(W, down: false);
        Mark();
        live.Frames(0.4);
        Assert.True(System.IO.File.Exists(File));
        return seen;

        void Mark()
        {
            // the key's frame flies on after the mark was set
            FlightSession session = live.App.Outing!.Stage.Session;
            seen.Add((session.Readings, session.Hash()));
            live.Press(K);
        }
    }

    private AppRun Replay()
    {
        AppRun run = new(fixture.Window, (_, options) => options with { Replay = Trace });
        run.ToTheField();
        return run;
    }

    private static void Arrive(AppRun run)
    {
        for (int n = 0; n < 50 && run.App.Winding; n++) run.App.Frame(0);
        Assert.False(run.App.Winding);
    }

    /// <summary>Characters of the real event queue, some in one event.</summary>
    private static unsafe void Text(string text)
    {
        SdlEvent happened = new() { Type = Sdl.TextInput };
        byte[] bytes = System.Text.Encoding.UTF8.GetBytes(text);
        bytes.CopyTo(new Span<byte>(happened.Text, SdlEvent.TextRoom));
        Assert.True(Sdl.SDL_PushEvent(&happened) >= 0);
    }
}
