using Simfeel.Cockpit.Application;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Platform;
using Simfeel.Flight;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>The whole program by keyboard, from the start page on.</summary>
[Collection(WindowFixture.Collection)]
public class KeyboardFlightTests(WindowFixture fixture)
{
    [Fact]
    public void From_the_start_page_to_a_landed_flight_and_back() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window);
        run.Frames(0.1);
        Assert.Equal("StartPage", run.App.PageName);
        for (int n = 0; n < 4; n++) run.Press(Tab);
        run.Press(Enter);
        run.ToTheField();
        FlightSession session = run.App.Outing!.Stage.Session;
        Assert.False(session.Condition(0).Armed);

        run.Press(Space);
        run.Frames(0.2);
        Assert.True(session.Condition(0).Armed);
        run.Climb(1.2);
        run.Frames(0.5);
        Assert.True(-session.State(0).p_WB.Z > 1.5, $"height {-session.State(0).p_WB.Z} m");
        AppRun.Key(S, down: true);
        run.Until(() => session.Condition(0).Touching, 10, "it did not come down");
        run.Frames(0.5);
        run.Press(Space);
        AppRun.Key(S, down: false);
        run.Frames(0.5);

        CraftCondition landed = session.Condition(0);
        Assert.False(landed.Crashed);
        Assert.False(landed.Armed);
        Assert.Equal(0, landed.StruckRotors);
        Assert.True(session.State(0).v_WB.Length < 0.05);

        run.Press(Escape);
        Assert.Equal("PausePage", run.App.PageName);
        run.Press(Escape);
        Assert.Equal("", run.App.PageName);
    });

    [Fact]
    public void Every_key_does_what_it_says() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        run.Press(Space);
        run.Climb(0.8);
        run.Frames(0.3);
        var outing = run.App.Outing!;
        FlightSession session = outing.Stage.Session;

        run.Press(F);
        run.Frames(0.1);
        Assert.True(session.Shadow);
        run.Press(P);
        long readings = session.Readings;
        run.Frames(0.2);
        Assert.Equal(readings, session.Readings);
        run.Press(N);
        Assert.Equal(readings + 1, session.Readings);
        run.Press(P);
        run.Press(Minus);
        Assert.Equal(0.5, outing.Stage.Speed);
        readings = session.Readings;
        run.Frames(1);
        Assert.InRange(session.Readings - readings, 480, 520);

        run.Press(Tab);
        run.Frames(0.1);
        Assert.Equal(1, session.Flown);
        Assert.True(session.Time < 0.3);
        run.Press(V);
        run.Press(M);
        run.Frames(0.1);
        run.Press(M);
        foreach ((int key, string page) in new[] { (B, "PartBenchPage"), (T, "ResultsPage"), (F1, "KeysPage"), (Escape, "PausePage") })
        {
            run.Press(key);
            Assert.Equal(page, run.App.PageName);
            run.Press(Escape);
            Assert.Equal("", run.App.PageName);
        }
        // what a key opens it closes again
        foreach ((int open, int close) in new[] { (B, B), (T, T), (T, B), (F1, F1) })
        {
            run.Press(open);
            Assert.NotEqual("", run.App.PageName);
            run.Press(close);
            Assert.Equal("", run.App.PageName);
        }
        run.Press(T);
        run.Press(F1);
        Assert.Equal("KeysPage", run.App.PageName);
        run.Press(F1);
        Assert.Equal("ResultsPage", run.App.PageName);
        run.Press(T);
        run.Press(F12);
        Assert.Single(Directory.GetFiles(run.Folder, "picture-*.png"));
        run.Press(R);
        run.Frames(0.05);
        Assert.True(run.App.Outing!.Stage.Session.Time < 0.3);
        // every action has a key that no other has
        Assert.Equal(Enum.GetValues<PilotAction>().Length, Enum.GetValues<PilotAction>().Select(run.App.Actions.KeyOf).Distinct().Count());
    });

    /// <summary>A slow machine shows few pictures a second; whatever was pressed between two of them counts, in its order.</summary>
    [Fact]
    public void Keys_pressed_within_one_frame_all_count() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        FlightSession session = run.App.Outing!.Stage.Session;
        run.Press(P);
        long readings = session.Readings;
        for (int n = 0; n < 3; n++)
        {
            AppRun.Key(N, down: true);
            AppRun.Key(N, down: false);
        }
        run.Frames(0.1);
        Assert.Equal(readings + 3, session.Readings);
    });

    [Fact]
    public void A_pointer_at_rest_leaves_the_picture_of_a_flight() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        AppRun.Point();
        run.Unseen(CockpitApp.PointerRest - 0.2);
        Assert.True(AppWindow.PointerShows);
        run.Unseen(0.4);
        Assert.False(AppWindow.PointerShows);
        AppRun.Point();
        run.Unseen(0.1);
        Assert.True(AppWindow.PointerShows);
        run.Unseen(CockpitApp.PointerRest + 0.2);
        run.Press(Escape);
        run.Unseen(0.1);
        Assert.True(AppWindow.PointerShows);
    });

    [Fact]
    public void A_crash_ends_the_run_and_R_mends_it() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        FlightSession session = run.App.Outing!.Stage.Session;
        run.Press(Space);
        run.Climb(4);
        AppRun.Key(Up, down: true);
        run.Frames(0.5);
        AppRun.Key(Up, down: false);
        // motors off at 10 m
        run.Press(Space);
        run.Until(() => session.Condition(0).Crashed, 6, "it did not crash");
        run.Press(Space);
        run.Frames(0.3);
        Assert.False(session.Condition(0).Armed);

        run.Press(R);
        run.Frames(0.2);

        Assert.False(session.Condition(0).Crashed);
        Assert.True(session.State(0).p_WB.Length < 0.2);
        Assert.Equal(0, session.Condition(0).StruckRotors);
    });

    [Fact]
    public void A_build_saved_in_an_editor_flies_at_the_next_restart_and_a_bad_edit_does_not() => fixture.Run(() =>
    {
        using AppRun run = WithOwnBuild(out string file);
        run.Frames(0.1);
        double before = run.App.Outing!.Build(0).Unit.Unit.Craft.I_BBcm_B.M00;
        string text = File.ReadAllText(file);

        File.WriteAllText(file, text.Replace("wheelbase_mm = 225", "wheelbase_mm = 9999", StringComparison.Ordinal));
        Wait(run, "wheelbase_mm");
        Assert.Contains("The last good", run.App.Readout.Notice, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace("wheelbase_mm = 225", "wheelbase_mm = 260", StringComparison.Ordinal));
        Wait(run, "was changed");
        Assert.Equal(before, run.App.Outing!.Build(0).Unit.Unit.Craft.I_BBcm_B.M00);
        run.Press(R);
        run.Frames(0.1);

        Assert.True(run.App.Outing!.Build(0).Unit.Unit.Craft.I_BBcm_B.M00 > 1.1 * before);
    });

    [Fact]
    public void What_was_changed_on_the_bench_stays_changed_when_the_file_is_saved() => fixture.Run(() =>
    {
        using AppRun run = WithOwnBuild(out string file);
        double before = run.App.Outing!.Build(0).Unit.Unit.Craft.I_BBcm_B.M00;
        run.App.BenchOf(0).Change("frame.wheelbase_mm", 260);
        File.WriteAllText(file, File.ReadAllText(file) + "\n# a remark\n");
        Wait(run, "was changed");
        run.App.BenchOf(0).Settled.Wait();
        run.Press(R);
        run.Frames(0.1);

        Assert.Equal(260, Assert.Single(run.App.Outing!.Build(0).Edits, edit => edit.Key == "frame.wheelbase_mm").Value);
        Assert.Contains("a remark", run.App.Outing!.Build(0).Source.Text, StringComparison.Ordinal);
        Assert.True(run.App.Outing!.Build(0).Unit.Unit.Craft.I_BBcm_B.M00 > 1.1 * before);
    });

    [Fact]
    public void A_bench_that_was_only_looked_at_begins_no_new_outing() => fixture.Run(() =>
    {
        using AppRun run = WithOwnBuild(out _);
        Outing outing = run.App.Outing!;
        run.App.BenchOf(0).Settled.Wait();
        run.Press(R);
        run.Frames(0.1);
        Assert.Same(outing, run.App.Outing);

        run.App.BenchOf(0).Change("frame.wheelbase_mm", 260);
        run.App.BenchOf(0).Settled.Wait();
        run.Press(R);
        run.Frames(0.1);
        Assert.NotSame(outing, run.App.Outing);
    });

    [Fact]
    public void A_recording_flown_again_ends_with_its_verdict() => fixture.Run(() =>
    {
        using TempFolder folder = new();
        string trace = folder.File("flight.arrow");
        using (AppRun live = new(fixture.Window, (_, options) => options with { StraightToTheField = true, Record = trace }))
        {
            live.ToTheField();
            live.Press(Space);
            live.Climb(1);
            live.Frames(0.5);
        }
        using AppRun replay = new(fixture.Window, (_, options) => options with { Replay = trace });
        replay.Until(() => replay.App.ReplayEnded, 10, "the replay did not end");
        replay.Frames(0.1);

        Assert.Equal("MessagePage", replay.App.PageName);
        Assert.Contains("bit for bit", replay.App.ReplayVerdict, StringComparison.Ordinal);
        Assert.True(-replay.App.Outing!.Stage.Session.State(0).p_WB.Z > 1);
    });

    [Fact]
    public void Nothing_is_allocated_in_flight() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        run.Press(Space);
        run.Press(F);
        run.App.Do(PilotAction.Graphs);
        run.Climb(1);
        run.Frames(3);
        long least = long.MaxValue;
        // the just-in-time compiler may still be at work in the first rounds
        for (int round = 0; round < 4 && least > 0; round++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            run.Frames(5);
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        Assert.Equal(0, least);
        Assert.False(run.App.Outing!.Stage.Session.Condition(0).Crashed);
    });

    /// <summary>On the field with a copy of Wagtail's file that the test may edit.</summary>
    private AppRun WithOwnBuild(out string file)
    {
        string copy = "";
        AppRun run = new(fixture.Window, (folder, options) =>
        {
            copy = Path.Combine(folder, "mine.toml");
            File.Copy(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml"), copy);
            return options with { A = copy, StraightToTheField = true };
        });
        file = copy;
        run.ToTheField();
        return run;
    }

    /// <summary>Lets frames pass until the pilot is told something; files are watched in the machine's own time.</summary>
    private static void Wait(AppRun run, string words)
    {
        for (int n = 0; n < 400 && !run.App.Readout.Notice.Contains(words, StringComparison.Ordinal); n++)
        {
            run.App.Frame(AppRun.Period);
            Thread.Sleep(25);
        }
        Assert.Contains(words, run.App.Readout.Notice, StringComparison.Ordinal);
    }
}
