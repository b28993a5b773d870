using Simfeel.Cockpit.Input;
using Simfeel.Flight;
using Simfeel.Flight.Traces;
using Simfeel.Physics.Guards;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>What is missing or broken is said once, and the flight goes on.</summary>
[Collection(WindowFixture.Collection)]
public class TroubleTests(WindowFixture fixture)
{
    [Fact]
    public void A_full_disk_ends_the_recording_and_not_the_flight() => fixture.Run(() =>
    {
        Assert.True(File.Exists("/dev/full"), "this test needs the device /dev/full of Linux");
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true, Record = "/dev/full" });
        run.ToTheField();
        FlightSession session = run.App.Outing!.Stage.Session;
        run.Press(Space);
        AppRun.Key(W, down: true);
        string said = "";
        for (int n = 0; n < 600 && said.Length == 0; n++)
        {
            run.App.Frame(AppRun.Period);
            // the disk is another thread's, in the machine's own time
            Thread.Sleep(5);
            if (run.App.Readout.Notice.Contains("/dev/full", StringComparison.Ordinal)) said = run.App.Readout.Notice;
        }
        AppRun.Key(W, down: false);

        Assert.NotEqual("", said);
        long readings = session.Readings;
        run.Frames(0.5);
        Assert.True(session.Readings > readings);
        Assert.False(run.App.Readout.Recording);
        Assert.Null(run.App.Outing!.Stage.Recorder);
    });

    [Fact]
    public void A_flight_whose_numbers_break_is_stopped_and_said_and_its_recording_and_step_are_kept() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (folder, options) => options with { StraightToTheField = true, Record = Path.Combine(folder, "flight.arrow") });
        run.ToTheField();
        FlyableBuild good = run.App.Outing!.Build(0);
        FlightUnit unit = good.Unit.Unit;
        // a drag area that no build file can have, and that the kernel does not ask about
        FlyableBuild bad = good with { Unit = good.Unit with { Unit = unit with { Craft = unit.Craft with { DragArea = new(0.01, 0.01, double.NaN) } } } };
        run.App.FlyCraft(good, bad);
        run.Frames(0.5);
        run.App.Do(PilotAction.Swap);
        run.Frames(0.1);

        Assert.Null(run.App.Outing);
        Assert.Equal("MessagePage", run.App.PageName);
        string step = Assert.Single(Directory.GetFiles(run.Folder, "simfeel-fault-*.txt"));
        Assert.Equal(KernelStage.BodyAir, FaultFile.Read(step).Fly().Stage);
        using TraceReader trace = TraceReader.Open(Path.Combine(run.Folder, "flight-2.arrow"));
        TraceRow row = trace.NewRow();
        while (trace.Read(row))
        {
        }
        Assert.False(trace.CutShort);
        Assert.InRange(trace.Seconds, 0.4, 0.6);
        run.Frames(0.2);
    });

    [Fact]
    public void A_folder_for_settings_that_cannot_be_written_is_said_and_the_setting_acts() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true }, configIsAFile: true);
        run.ToTheField();
        run.App.Settings.TextScale = 1.5;
        run.App.StoreSettings();

        Assert.Contains("config", run.App.Readout.Notice, StringComparison.Ordinal);
        Assert.Equal(1.5f, run.App.Painter.Layer.Pen.Scale);
        run.Frames(0.2);
        Assert.NotNull(run.App.Outing);
    });

    [Fact]
    public void A_mistake_in_the_settings_file_is_said_and_its_default_used() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, settings: "text_scale = 9\nsound_gain = 0.25\n");

        Assert.Contains("text_scale is 9", run.App.Readout.Notice, StringComparison.Ordinal);
        Assert.Equal(1, run.App.Settings.TextScale);
        Assert.Equal(0.25, run.App.Settings.SoundGain);
    });

    [Fact]
    public void A_video_delay_shows_the_craft_where_it_was() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        run.Press(Space);
        AppRun.Key(W, down: true);
        run.Frames(1.5);
        var outing = run.App.Outing!;

        double now = outing.Poses(0)[0].p_WB.Z, before = outing.Poses(0.1)[0].p_WB.Z;
        AppRun.Key(W, down: false);

        // climbing at some 3 m/s, a tenth of a second ago was some 0.3 m lower
        double speed = -outing.Stage.Session.State(0).v_WB.Z;
        Assert.True(speed > 1);
        Assert.InRange(before - now, 0.08 * speed, 0.12 * speed);
    });

    [Fact]
    public void A_split_view_shows_each_build_on_its_own_side() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        run.ToTheField();
        run.Press(Space);
        run.Climb(0.7);
        while (run.App.Painter.View != Cockpit.Graphics.Views.View.Split) run.App.Do(Cockpit.Input.PilotAction.View);
        run.Frames(0.5);
        byte[] picture = new byte[4 * 640 * 360];
        run.App.Painter.ReadInto(640, 360, picture);

        Assert.True(run.App.Outing!.Stage.Session.Shadow);
        // A is blue, B orange: which of the two there is more of, in the middle of each half
        Assert.True(Blue(picture, 100, 220) > Blue(picture, 420, 540), "A is not on the left");
    });

    /// <summary>How far blue goes beyond red in the strongest pixel of a part of the picture's middle.</summary>
    private static int Blue(byte[] picture, int from, int to)
    {
        int most = int.MinValue;
        for (int y = 190; y < 300; y++)
        {
            for (int x = from; x < to; x++)
            {
                int at = 4 * ((y * 640) + x);
                most = Math.Max(most, picture[at + 2] - picture[at]);
            }
        }
        return most;
    }
}
