using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Tests.Input;
using Simfeel.Flight;
using Simfeel.Flight.Traces;
using Simfeel.Physics;
using static Simfeel.Cockpit.Platform.Scancode;

namespace Simfeel.Cockpit.Tests.Application;

/// <summary>The whole program with a virtual transmitter, through SDL's own event queue.</summary>
[Collection(WindowFixture.Collection)]
public class StickFlightTests(WindowFixture fixture)
{
    [Fact]
    public void The_frame_after_a_stick_event_shows_it() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        using Transmitter stick = new(run);
        run.ToTheField();
        run.Press(R);
        run.Frames(0.1);
        stick.Device.Axis(0, 20000);
        run.App.Frame(AppRun.Period);

        Assert.Equal(20000 / 32767.0, run.App.Readout.Sticks.Roll, 3);
        Assert.False(run.App.Readout.Keyboard);
        Assert.Equal(20000 / 32767.0, run.App.Outing!.Stage.Last.Sticks.Roll, 3);
    });

    [Fact]
    public void A_flight_with_crash_restart_swap_shadow_and_pause_replays_bit_for_bit() => fixture.Run(() =>
    {
        string trace = "";
        using AppRun run = new(fixture.Window, (folder, options) =>
        {
            trace = Path.Combine(folder, "flight.arrow");
            return options with { StraightToTheField = true, Record = trace };
        });
        using Transmitter stick = new(run);
        run.ToTheField();
        run.Press(R);
        FlightSession session = run.App.Outing!.Stage.Session;
        stick.Throttle(0);
        run.Frames(0.2);
        run.Press(Space);
        Assert.True(session.Condition(0).Armed);
        stick.Throttle(0.75);
        run.Frames(1);
        run.Press(F);
        stick.Device.Axis(1, 15000);
        run.Frames(0.3);
        run.Press(P);
        run.Frames(0.3);
        run.Press(P);
        stick.Device.Axis(1, 0);
        stick.Throttle(0);
        run.Until(() => session.Condition(0).Crashed, 8, "it did not crash");
        run.Press(Tab);
        run.Frames(0.5);
        stick.Throttle(0.6);
        run.Frames(1);
        ulong live = session.Hash();
        long readings = session.Readings;
        run.App.EndFlight();
        run.App.Dispose();

        using TraceReader reader = TraceReader.Open(trace);
        using Replay replay = new(reader);
        while (replay.TryNext(out PilotInput input))
        {
            replay.Session.Fly(input);
            replay.Compare();
        }
        Assert.Null(replay.FirstDifference);
        Assert.Equal(readings, replay.Session.Readings);
        Assert.Equal(live, replay.Session.Hash());
        Assert.False(reader.CutShort);
    });

    [Fact]
    public void Unplugged_in_flight_time_is_held_and_plugged_in_again_it_goes_on_without_a_jump() => fixture.Run(() =>
    {
        using AppRun run = new(fixture.Window, (_, options) => options with { StraightToTheField = true });
        Transmitter stick = new(run);
        run.ToTheField();
        run.Press(R);
        FlightSession session = run.App.Outing!.Stage.Session;
        stick.Throttle(0);
        run.Frames(0.2);
        run.Press(Space);
        double hover = session.Unit(0).Throttle.HoverStick;
        stick.Throttle(hover + 0.1);
        run.Frames(1);

        stick.Dispose();
        run.Frames(0.1);
        Assert.Equal("MessagePage", run.App.PageName);
        long readings = session.Readings;
        CraftState held = session.State(0);
        run.Frames(1);
        Assert.Equal(readings, session.Readings);

        // not before the device is back and its throttle where it stood
        run.Press(Enter);
        Assert.Equal("MessagePage", run.App.PageName);
        stick = new(run);
        stick.Throttle(0.95);
        run.Frames(0.1);
        run.Press(Enter);
        Assert.Equal("MessagePage", run.App.PageName);
        stick.Throttle(hover + 0.1);
        run.Frames(0.1);
        run.Press(Enter);
        run.App.Frame(AppRun.Period);

        Assert.Equal("", run.App.PageName);
        run.App.Frame(AppRun.Period);
        Assert.True(session.Readings > readings);
        Assert.True((session.State(0).p_WB - held.p_WB).Length < 1, "it jumped");
        Assert.True((session.State(0).v_WB - held.v_WB).Length < 2, "it jumped");
        Assert.True(session.Condition(0).Armed);
        stick.Dispose();
    });

    /// <summary>A transmitter of four axes in the order roll, pitch, throttle, yaw, flown by a profile of its own.</summary>
    private sealed class Transmitter : IDisposable
    {
        private readonly AppRun _run;

        public Transmitter(AppRun run)
        {
            _run = run;
            Device = new(VirtualStick.Joystick, 4, 4, 0);
            run.App.Frame(AppRun.Period);
            // devices are believed after their first report that is not 0
            Device.Axis(0, 500);
            Throttle(0.02);
            run.App.Frame(AppRun.Period);
            Device.Axis(0, 0);
            run.App.Frame(AppRun.Period);
            StickHub hub = run.App.Pilot.Hub;
            Assert.NotNull(hub.Active);
            hub.UseProfile(new()
            {
                Guid = hub.Active.Guid,
                Name = hub.Active.Name,
                AxisCount = 4,
                Roll = Axis(0),
                Pitch = Axis(1),
                Throttle = Axis(2),
                Yaw = Axis(3),
            });
            run.App.Frame(AppRun.Period);
        }

        public VirtualStick Device { get; }

        public void Throttle(double share) => Device.Axis(2, (share * 65534) - 32767);

        public void Dispose()
        {
            Device.Dispose();
            _run.App.Frame(AppRun.Period);
        }

        private static StickAxis Axis(int number) => new() { Axis = number, Low = -32767 };
    }
}
