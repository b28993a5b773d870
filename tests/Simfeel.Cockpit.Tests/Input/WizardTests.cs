using Simfeel.Cockpit.Input;
using Simfeel.Cockpit.Input.Wizard;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Tests.Input;

/// <summary>A scripted pilot with four kinds of devices goes through the sticks wizard in less than a minute.</summary>
[Collection(WindowFixture.Collection)]
public class WizardTests(WindowFixture fixture)
{
    [Fact]
    public void A_transmitter_with_noise_reversed_axes_and_a_dead_one() => fixture.Run(() =>
    {
        // axis 0 roll, 1 throttle reversed, 2 dead, 3 pitch reversed and off centre, 4 yaw, 5 a switch
        using WizardPilot pilot = new(VirtualStick.Joystick, 6, 4, [(0, 0), (1, 27_500), (3, 900), (4, -300), (5, -32_768)], noise: 90);
        pilot.Start(arrangement: 0);
        pilot.Throttle(1, up: -26_000, down: 27_500, rest: 27_500);
        pilot.Answer(0);
        pilot.Move(4, 30_000, -30_000, -300);
        pilot.Move(3, -25_000, 27_000, 900);
        pilot.Move(0, 28_000, -29_000, 0);
        pilot.Hold(5, 32_767);
        pilot.WaitFor("does the picture follow");
        StickProfile found = pilot.Finish();

        Assert.Equal(ThrottleMode.Normal, found.ThrottleMode);
        Check(found.Throttle, 1, -26_000, 27_500, null, inverted: true);
        Check(found.Yaw, 4, -30_000, 30_000, -300, inverted: false);
        Check(found.Pitch, 3, -25_000, 27_000, 900, inverted: true);
        Check(found.Roll, 0, -29_000, 28_000, 0, inverted: false);
        Assert.All([found.Roll, found.Pitch, found.Yaw], axis => Assert.InRange(axis.Deadband, 90, 400));
        Assert.True(found.ArmFollowsSwitch);
        Assert.Equal(new StickSwitch(StickSwitchKind.AxisAbove, 5), found.Switches[PilotAction.Arm]);
        Assert.InRange(pilot.Seconds, 10, 60);

        // sticks let go read as nothing, in spite of the noise; ends are reached
        short[] axes = [60, 27_450, 0, 950, -250, 0];
        Assert.Equal(new Sticks(0, 0, 0, 0), found.Read(axes, 0.4, 0));
        axes = [27_950, -25_950, 0, -24_950, 29_950, 0];
        Assert.Equal(new Sticks(1, 1, 1, 1), found.Read(axes, 0.4, 0));
    });

    [Fact]
    public void A_gamepad_whose_stick_springs_back() => fixture.Run(() =>
    {
        using WizardPilot pilot = new(VirtualStick.Joystick, 6, 12, [(0, 500), (1, -700), (3, 0), (4, 200), (2, -32_768), (5, -32_768)], noise: 130);
        pilot.Start(arrangement: 0);
        pilot.Throttle(1, up: -32_768, down: 32_767, rest: -200);
        Assert.Equal(WizardTexts.Centring, pilot.View.Choices);
        pilot.Answer(0);
        pilot.Move(0, 32_767, -32_768, 100);
        pilot.Move(4, 32_767, -32_768, 0);
        pilot.Move(3, 32_767, -32_768, 0);
        pilot.Press(0);
        pilot.WaitFor("does the picture follow");
        StickProfile found = pilot.Finish();

        Assert.Equal(ThrottleMode.CentreHover, found.ThrottleMode);
        Check(found.Throttle, 1, -32_768, 32_767, -450, inverted: true);
        Check(found.Pitch, 4, -32_768, 32_767, 100, inverted: false);
        // both rests lie in the deadband
        Assert.Equal(0, found.Throttle.FromCentre(-700));
        Assert.Equal(0, found.Throttle.FromCentre(-200));
        Assert.False(found.ArmFollowsSwitch);
        Assert.Equal(new StickSwitch(StickSwitchKind.Button, 0), found.Switches[PilotAction.Arm]);
        Assert.InRange(pilot.Seconds, 10, 60);
    });

    [Theory]
    [InlineData(-32_768)]
    // both triggers on one axis: at rest in the middle
    [InlineData(0)]
    public void A_trigger_as_throttle(int rest) => fixture.Run(() =>
    {
        using WizardPilot pilot = new(VirtualStick.Joystick, 5, 10, [(0, 0), (1, 0), (2, rest), (3, 0)], noise: 60);
        pilot.Start(arrangement: 0);
        pilot.Throttle(2, up: 32_767, down: rest, rest: rest);
        Assert.Equal(WizardTexts.OneSided, pilot.View.Choices);
        pilot.Answer(1);
        pilot.Move(0, 32_767, -32_768, 0);
        pilot.Move(1, 32_767, -32_768, 0);
        pilot.Move(3, 32_767, -32_768, 0);
        pilot.Answer(0);
        StickProfile found = pilot.Finish();

        Assert.Equal(ThrottleMode.Trigger, found.ThrottleMode);
        Check(found.Throttle, 2, rest, 32_767, null, inverted: false);
        Assert.Equal(0, found.Throttle.FromEnd(rest));
        Assert.Equal(1, found.Throttle.FromEnd(32_700));
        Assert.Empty(found.Switches);
        Assert.InRange(pilot.Seconds, 10, 60);
    });

    [Fact]
    public void A_joystick_with_a_slider_left_in_the_middle() => fixture.Run(() =>
    {
        using WizardPilot pilot = new(4, 4, 10, [(0, 0), (1, 0), (2, 0), (3, 6000)], noise: 40);
        pilot.Start(arrangement: 4);
        pilot.Throttle(3, up: -32_768, down: 32_767, rest: 32_767);
        Assert.Equal(WizardTexts.OneSided, pilot.View.Choices);
        pilot.Answer(0);
        pilot.Move(2, 32_767, -32_768, 0);
        pilot.Move(1, 32_767, -32_768, 0);
        pilot.Move(0, 32_767, -32_768, 0);
        pilot.Answer(0);
        StickProfile found = pilot.Finish();

        Assert.Equal(ThrottleMode.Normal, found.ThrottleMode);
        Check(found.Throttle, 3, -32_768, 32_767, null, inverted: true);
        Assert.InRange(pilot.Seconds, 10, 60);
    });

    [Fact]
    public void Wrong_moves_are_answered_with_help() => fixture.Run(() =>
    {
        using WizardPilot pilot = new(VirtualStick.Joystick, 5, 4, [(0, 0), (1, 0), (2, 0), (3, 0)], noise: 50);
        pilot.Start(arrangement: 0, touch: 3);
        pilot.Wait(6);
        Assert.StartsWith("Nothing moved yet", pilot.View.Help, StringComparison.Ordinal);
        pilot.Together(0, 2, 30_000);
        Assert.StartsWith("Axes 0 and 2 moved together", pilot.View.Help, StringComparison.Ordinal);
        pilot.Throttle(2, 32_767, -32_768, 0);
        pilot.Answer(1);
        pilot.Push(2, 30_000);
        Assert.StartsWith("That is axis 2, which is throttle already", pilot.View.Help, StringComparison.Ordinal);
        pilot.Push(0, 30_000);
        Assert.StartsWith("It moved to one side only", pilot.View.Help, StringComparison.Ordinal);
        pilot.Move(0, 9000, -9000, 0);
        Assert.StartsWith("That was a small part", pilot.View.Help, StringComparison.Ordinal);
        pilot.Move(0, 32_767, -32_768, 0);
        Assert.StartsWith("Pitch", pilot.View.Title, StringComparison.Ordinal);
        pilot.Move(1, -32_768, 32_767, 0);
        pilot.Move(3, 32_767, -32_768, 0);
        pilot.Answer(0);
        pilot.Answer(2);
        StickProfile found = pilot.Finish();
        Assert.Equal(ThrottleMode.Incremental, found.ThrottleMode);
        // moved the wrong way and turned round on the last page
        Assert.False(found.Pitch.Inverted);
    });

    [Fact]
    public void A_device_that_is_unplugged_and_one_with_too_few_axes_are_asked_for_again() => fixture.Run(() =>
    {
        VirtualStick.Pump(null);
        using StickHub hub = new(_ => null, new ActionMap());
        SticksWizard wizard = new();
        wizard.Update(hub, 0.02);
        Assert.Equal("Plug in your sticks", wizard.View.Title);
        using (VirtualStick small = new(VirtualStick.Joystick, 3, 2, 0))
        {
            Send(small);
            Assert.Equal("This device has too few axes", wizard.View.Title);
        }
        using (VirtualStick good = new(VirtualStick.Joystick, 4, 2, 0))
        {
            Send(good);
            Assert.StartsWith("How are your sticks", wizard.View.Title, StringComparison.Ordinal);
            wizard.Choose(0);
            wizard.Update(hub, 0.02);
            Assert.Equal("Hands off", wizard.View.Title);
        }
        VirtualStick.Pump(hub);
        wizard.Update(hub, 0.02);
        Assert.Equal("Plug in your sticks", wizard.View.Title);

        void Send(VirtualStick stick)
        {
            VirtualStick.Pump(hub);
            wizard.Update(hub, 0.02);
            Assert.Equal("Move a stick", wizard.View.Title);
            stick.Axis(0, 20_000);
            VirtualStick.Pump(hub);
            wizard.Update(hub, 0.02);
            wizard.Update(hub, 0.02);
        }
    });

    [Fact]
    public void An_axis_that_never_rests_is_left_out() => fixture.Run(() =>
    {
        using WizardPilot pilot = new(VirtualStick.Joystick, 5, 4, [(0, 0), (1, 0), (2, 0), (3, 0), (4, 0)], noise: 50);
        pilot.Loosen(4, 9000);
        pilot.Start(arrangement: 0);
        pilot.Throttle(2, 32_767, -32_768, -32_768);
        pilot.Answer(0);
        pilot.Move(3, 32_767, -32_768, 0);
        pilot.Move(1, 32_767, -32_768, 0);
        pilot.Move(0, 32_767, -32_768, 0);
        pilot.Answer(0);
        StickProfile found = pilot.Finish();
        Assert.Equal((0, 1, 3, 2), (found.Roll.Axis, found.Pitch.Axis, found.Yaw.Axis, found.Throttle.Axis));
        Assert.InRange(pilot.Seconds, 10, 60);
    });

    [Fact]
    public void One_stick_sent_on_two_axes_is_taken_at_the_third_try() => fixture.Run(() =>
    {
        using WizardPilot pilot = new(VirtualStick.Joystick, 5, 4, [(0, 0), (1, 0), (2, 0), (3, 0), (4, 0)], noise: 50);
        pilot.Start(arrangement: 0);
        for (int n = 0; n < 2; n++) pilot.Together(2, 4, 30_000);
        Assert.StartsWith("Throttle: move", pilot.View.Title, StringComparison.Ordinal);
        Assert.EndsWith("Should they always move together, move it once more.", pilot.View.Help, StringComparison.Ordinal);
        pilot.Together(2, 4, 30_000);
        Assert.StartsWith("Does the throttle stay", pilot.View.Title, StringComparison.Ordinal);
    });

    private static void Check(StickAxis found, int axis, int low, int high, int? centre, bool inverted)
    {
        Assert.Equal(axis, found.Axis);
        Assert.Equal(inverted, found.Inverted);
        Assert.InRange(found.Low, low, low + 1200);
        Assert.InRange(found.High, high - 1200, high);
        if (centre is int middle) Assert.InRange(found.Centre, middle - 150, middle + 150);
    }
}
