using System.Collections.Immutable;
using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Platform;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Tests.Input;

/// <summary>Sticks through SDL's own event queue: coming, going, and what is flown meanwhile.</summary>
[Collection(WindowFixture.Collection)]
public class StickHubTests(WindowFixture fixture)
{
    private static StickProfile Plain(StickDevice device) => StickShelf.Plain(device)! with
    {
        Switches = ImmutableDictionary<PilotAction, StickSwitch>.Empty
            .Add(PilotAction.Arm, new(StickSwitchKind.Button, 0))
            .Add(PilotAction.Swap, new(StickSwitchKind.Button, 1)),
        ArmFollowsSwitch = true,
    };

    private static StickHub NewHub()
    {
        VirtualStick.Pump(null);
        return new(Plain, new ActionMap());
    }

    [Fact]
    public void Axes_are_not_believed_before_the_first_report() => fixture.Run(() =>
    {
        using StickHub hub = NewHub();
        Assert.Equal(StickState.None, hub.State);
        using VirtualStick stick = new(VirtualStick.Joystick, 6, 8, 0);
        VirtualStick.Pump(hub);
        Assert.Equal(StickState.Waiting, hub.State);
        Assert.False(hub.TryRead(out Sticks sticks));
        Assert.Equal(0, sticks.Throttle);
        stick.Axis(2, -32768);
        VirtualStick.Pump(hub);
        Assert.Equal(StickState.Ready, hub.State);
        Assert.True(hub.TryRead(out sticks));
        Assert.Equal(0, sticks.Throttle);
        stick.Axis(0, 32767);
        stick.Axis(2, 32767);
        VirtualStick.Pump(hub);
        hub.TryRead(out sticks);
        Assert.Equal(new Sticks(1, 0, 0, 1), sticks);
    });

    [Fact]
    public void Unplugged_in_flight_the_sticks_stay_where_they_were_and_come_back_without_a_jump() => fixture.Run(() =>
    {
        using StickHub hub = NewHub();
        Sticks flown;
        using (VirtualStick stick = new(VirtualStick.Joystick, 6, 8, 0))
        {
            VirtualStick.Pump(hub);
            stick.Axis(0, 12_000);
            stick.Axis(2, -20_000);
            VirtualStick.Pump(hub);
            Assert.True(hub.TryRead(out flown));
            Assert.NotEqual(0.5, flown.Throttle, 0.1);
        }
        VirtualStick.Pump(hub);
        Assert.Equal(StickState.Lost, hub.State);
        Assert.False(hub.TryRead(out Sticks frozen));
        Assert.Equal(flown, frozen);

        // another kind of device does not take over by itself
        using VirtualStick other = new(4, 5, 8, 0);
        VirtualStick.Pump(hub);
        other.Axis(2, 30_000);
        VirtualStick.Pump(hub);
        Assert.Equal(StickState.Lost, hub.State);

        using VirtualStick again = new(VirtualStick.Joystick, 6, 8, 0);
        VirtualStick.Pump(hub);
        Assert.NotEqual(StickState.Ready, hub.State);
        Assert.False(hub.TryRead(out frozen));
        Assert.Equal(flown, frozen);
        Assert.False(hub.ThrottleMatches(flown));
        again.Axis(2, 25_000);
        VirtualStick.Pump(hub);
        Assert.Equal(StickState.Ready, hub.State);
        Assert.False(hub.ThrottleMatches(flown));
        again.Axis(2, -19_500);
        VirtualStick.Pump(hub);
        Assert.True(hub.ThrottleMatches(flown));
    });

    [Fact]
    public void Fifty_rounds_of_unplugging_leak_nothing() => fixture.Run(() =>
    {
        using StickHub hub = NewHub();
        int before = Sdl.SDL_NumJoysticks();
        Round(hub);
        long memory = GC.GetTotalMemory(forceFullCollection: true);
        for (int n = 0; n < 50; n++) Round(hub);
        Assert.Equal(before, Sdl.SDL_NumJoysticks());
        Assert.Empty(hub.Devices);
        // other tests run beside this one, so a little is let pass; a kept device would be 50 times 500 bytes and more
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - memory, long.MinValue, 4_000_000);

        static void Round(StickHub hub)
        {
            WeakReference device = Use(hub);
            VirtualStick.Pump(hub);
            Assert.Equal(StickState.Lost, hub.State);
            GC.Collect();
            Assert.False(device.IsAlive);
        }

        [System.Runtime.CompilerServices.MethodImpl(System.Runtime.CompilerServices.MethodImplOptions.NoInlining)]
        static WeakReference Use(StickHub hub)
        {
            using VirtualStick stick = new(VirtualStick.Joystick, 6, 8, 0);
            VirtualStick.Pump(hub);
            stick.Axis(2, -20_000);
            VirtualStick.Pump(hub);
            Assert.Equal(StickState.Ready, hub.State);
            Assert.Single(hub.Devices);
            return new(hub.Active);
        }
    });

    [Fact]
    public void Handling_and_reading_allocate_nothing() => fixture.Run(() =>
    {
        using StickHub hub = NewHub();
        using VirtualStick stick = new(VirtualStick.Gamepad, 6, 15, 0);
        StickDelayMeter meter = new();
        KeyboardSticks keys = new();
        ActionMap map = new();
        Frames(100);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Frames(2000);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(StickState.Ready, hub.State);
        Assert.True(meter.Delays.Count > 2000);

        void Frames(int count)
        {
            for (int n = 0; n < count; n++)
            {
                stick.Axis(n % 4, (n % 60 * 1000) - 30_000);
                stick.Button(n % 6, n % 2 == 0);
                while (AppWindow.TryNext(out WindowEvent happened))
                {
                    hub.Handle(happened);
                    meter.Arrived();
                    keys.Handle(happened);
                    map.TryKey(happened, out _);
                }
                hub.Advance(1 / 60.0);
                keys.Advance(1 / 60.0);
                hub.TryRead(out _);
                while (hub.TryTakeAction(out _)) { }
                meter.Shown();
            }
        }
    });

    [Fact]
    public void A_switch_arms_only_after_it_was_seen_off() => fixture.Run(() =>
    {
        using StickHub hub = NewHub();
        using VirtualStick stick = new(VirtualStick.Joystick, 6, 8, 0);
        VirtualStick.Pump(hub);
        stick.Button(0, down: true);
        VirtualStick.Pump(hub);
        Assert.Equal(StickState.Ready, hub.State);
        Assert.False(hub.ArmSwitch);
        stick.Button(0, down: false);
        VirtualStick.Pump(hub);
        Assert.False(hub.ArmSwitch);
        stick.Button(0, down: true);
        VirtualStick.Pump(hub);
        Assert.True(hub.ArmSwitch);
        Assert.False(hub.TryTakeAction(out _));
        stick.Button(1, down: true);
        VirtualStick.Pump(hub);
        Assert.True(hub.TryTakeAction(out PilotAction action));
        Assert.Equal(PilotAction.Swap, action);
        Assert.False(hub.TryTakeAction(out _));
    });

    [Fact]
    public void A_gamepad_flies_by_its_own_layout() => fixture.Run(() =>
    {
        VirtualStick.Pump(null);
        using TempFolder folder = new();
        List<string> wrong = [];
        using StickHub hub = new(new StickShelf(new(folder.Path), wrong).Find, new ActionMap()) { HoverStick = 0.3 };
        using VirtualStick pad = new(VirtualStick.Gamepad, 6, 15, 0);
        VirtualStick.Pump(hub);
        pad.Axis(0, 32767);
        VirtualStick.Pump(hub);
        Assert.Empty(wrong);
        Assert.NotNull(hub.Profile);
        Assert.Equal(ThrottleMode.CentreHover, hub.Profile.ThrottleMode);
        hub.TryRead(out Sticks sticks);
        Assert.Equal(new Sticks(0, 0, 1, 0.3), sticks);
        // SDL counts down as positive; up is more throttle, towards the pilot is nose up
        pad.Axis(1, -32768);
        pad.Axis(3, 32767);
        VirtualStick.Pump(hub);
        hub.TryRead(out sticks);
        Assert.Equal(new Sticks(0, 1, 1, 1), sticks);
        pad.Button((int)PadButton.X, down: true);
        VirtualStick.Pump(hub);
        Assert.True(hub.TryTakeAction(out PilotAction action));
        Assert.Equal(PilotAction.Swap, action);
        pad.Button((int)PadButton.X, down: false);
        pad.Button((int)PadButton.LeftShoulder, down: true);
        VirtualStick.Pump(hub);
        pad.Button((int)PadButton.X, down: true);
        VirtualStick.Pump(hub);
        Assert.True(hub.TryTakeAction(out action));
        Assert.Equal(PilotAction.Bench, action);
    });

    [Fact]
    public void A_held_throttle_moves_with_time() => fixture.Run(() =>
    {
        VirtualStick.Pump(null);
        using StickHub hub = new(device => Plain(device) with { ThrottleMode = ThrottleMode.Incremental }, new ActionMap());
        using VirtualStick stick = new(VirtualStick.Joystick, 6, 8, 0);
        VirtualStick.Pump(hub);
        stick.Axis(2, 32767);
        VirtualStick.Pump(hub);
        for (int n = 0; n < 30; n++) hub.Advance(0.01);
        hub.TryRead(out Sticks sticks);
        Assert.Equal(0.3, sticks.Throttle, 1e-9);
        stick.Axis(2, 0);
        VirtualStick.Pump(hub);
        hub.Advance(1);
        hub.TryRead(out sticks);
        Assert.Equal(0.3, sticks.Throttle, 1e-9);
    });
}
