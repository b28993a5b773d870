using System.Collections.Immutable;
using Simfeel.Cockpit.Input;
using Simfeel.Flight;

namespace Simfeel.Cockpit.Tests.Input;

public class FileTests
{
    private static readonly StickProfile Profile = new()
    {
        Guid = "03000000deadbeef0000000000000000",
        Name = "Field \"Kite\" 8\\2",
        AxisCount = 6,
        Roll = new() { Axis = 3, Low = -30_000, Centre = 100, High = 31_000, Deadband = 120 },
        Pitch = new() { Axis = 4, Inverted = true },
        Yaw = new() { Axis = 0 },
        Throttle = new() { Axis = 1, Centre = -32_768 },
        ThrottleMode = ThrottleMode.Trigger,
        ArmFollowsSwitch = true,
        Switches = ImmutableDictionary<PilotAction, StickSwitch>.Empty
            .Add(PilotAction.Arm, new(StickSwitchKind.AxisBelow, 5))
            .Add(PilotAction.SwapInPlace, new(StickSwitchKind.Hat, 0, 8))
            .Add(PilotAction.View, new(StickSwitchKind.Button, 11)),
    };

    [Fact]
    public void A_profile_comes_back_as_it_was_stored()
    {
        List<string> wrong = [];
        StickProfile other = Profile with { Name = "x", ThrottleMode = ThrottleMode.Normal, Roll = new() { Axis = 2 }, ArmFollowsSwitch = false };
        StickProfile read = StickProfileFile.Read(StickProfileFile.Write(Profile), "a.toml", other, wrong);
        Assert.Empty(wrong);
        Assert.Equal(StickProfileFile.Write(Profile), StickProfileFile.Write(read));
        Assert.Equal(Profile with { Switches = read.Switches }, read);
    }

    [Theory]
    [InlineData("axis = 3", "axis = 6", "a.toml:10: roll.axis is 6; it must be a whole number from 0 to 5. The default, 3, is used.")]
    [InlineData("axis = 3", "axis = 4", "a.toml:18: roll and pitch are both on axis 4; each needs its own. The default axes are used.")]
    [InlineData("\"trigger\"", "\"triger\"", "a.toml:6: throttle_mode is \"triger\"; it must be one of normal, centre_hover, trigger, incremental. The default, trigger, is used.")]
    [InlineData("high_raw = 31000", "high_raw = -31000", "a.toml:11: roll goes from -30000 over 100 to -31000 with a deadband of 120; low_raw, centre_raw and high_raw must rise, four deadbands apart. The default range is used.")]
    [InlineData("high_raw = 31000", "high_raw = 31000,5", "a.toml:13: this line is not valid TOML: ")]
    [InlineData("inverted = true", "inverted = 1", "a.toml:22: pitch.inverted is 1; it must be true or false. The default, true, is used.")]
    [InlineData("\"axis 5 below\"", "\"axis five below\"", "a.toml:42: switches.arm is \"axis five below\"; it must be like \"button 4\", \"hat 0 up\" or \"axis 5 above\". It is left out.")]
    [InlineData("deadband_raw = 120", "dead_band = 120", "a.toml:15: there is no key roll.dead_band; it is left out.")]
    [InlineData("format = 1", "format = 2", "a.toml:2: format is 2; this version writes 1 and reads what it knows.")]
    public void Every_mistake_is_one_sentence(string right, string mistaken, string said)
    {
        List<string> wrong = [];
        string text = StickProfileFile.Write(Profile);
        int at = text.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, text);
        StickProfile read = StickProfileFile.Read(text[..at] + mistaken + text[(at + right.Length)..], "a.toml", Profile, wrong);
        Assert.StartsWith(said, Assert.Single(wrong), StringComparison.Ordinal);
        Assert.Equal(Profile.Roll with { Deadband = read.Roll.Deadband }, read.Roll);
        Assert.Equal(Profile.Pitch, read.Pitch);
    }

    [Fact]
    public void Axes_read_as_the_formula_says()
    {
        // by hand: (16 000 - 100 - 120) / (31 000 - 100 - 120) and its mirror on the shorter side
        Assert.Equal(15_780 / 30_780.0, Profile.Roll.FromCentre(16_000), 1e-12);
        Assert.Equal(-15_780 / 29_980.0, Profile.Roll.FromCentre(-15_800), 1e-12);
        Assert.Equal(0, Profile.Roll.FromCentre(220));
        Assert.Equal(1, Profile.Roll.FromCentre(32_767));
        Assert.Equal(-1, Profile.Pitch.FromCentre(32_767));
        Assert.Equal(0, Profile.Throttle.FromEnd(-32_768));
        Assert.Equal(1, Profile.Throttle.FromEnd(32_767));
        short[] axes = [0, 0, 0, 0, 0, 0];
        StickProfile centred = Profile with { ThrottleMode = ThrottleMode.CentreHover, Throttle = new() { Axis = 1 } };
        Assert.Equal(0.3, centred.Read(axes, 0.3, 0).Throttle);
        axes[1] = short.MinValue;
        Assert.Equal(0, centred.Read(axes, 0.3, 0).Throttle);
        axes[1] = short.MaxValue;
        Assert.Equal(1, centred.Read(axes, 0.3, 0).Throttle);
    }

    [Fact]
    public void Keys_start_complete_and_free_of_the_flying_keys()
    {
        ActionMap map = new();
        PilotAction[] all = Enum.GetValues<PilotAction>();
        Assert.Equal(all.Length, all.Select(map.KeyOf).Distinct().Count());
        Assert.Equal(all.Length, all.Select(map.PadOf).Distinct().Count());
        Assert.Empty(all.Select(map.KeyOf).Intersect(ActionMap.FlyingKeys));
        Assert.DoesNotContain(all, action => map.PadOf(action).Button is PadButton.LeftShoulder or PadButton.Guide);
        Assert.Equal(["W", "S", "A", "D", "Up", "Down", "Left", "Right"], ActionMap.FlyingKeys.Select(ActionMap.KeyName));
        Assert.Equal(["F1", "F12", "Escape", "R", "Tab", "Space"], new[] { PilotAction.Help, PilotAction.Picture, PilotAction.Menu, PilotAction.Restart, PilotAction.Swap, PilotAction.Arm }.Select(action => ActionMap.KeyName(map.KeyOf(action))));
    }

    [Fact]
    public void A_key_that_is_taken_changes_hands_and_all_comes_back_from_the_file()
    {
        ActionMap map = new();
        int tab = map.KeyOf(PilotAction.Swap), view = map.KeyOf(PilotAction.View);
        Assert.True(map.TrySetKey(PilotAction.View, tab, out string said));
        Assert.Equal("View is on Tab; Swap went to V.", said);
        Assert.Equal((tab, view), (map.KeyOf(PilotAction.View), map.KeyOf(PilotAction.Swap)));
        Assert.False(map.TrySetKey(PilotAction.View, 26, out said));
        Assert.Equal("W flies the craft and cannot do anything else.", said);
        Assert.True(map.TrySetPad(PilotAction.Help, new(PadButton.A), out said));
        Assert.Equal("Help is on a; Arm went to leftshoulder+start.", said);
        List<string> wrong = [];
        string text = ActionMapFile.Write(map);
        Assert.Equal(text, ActionMapFile.Write(ActionMapFile.Read(text, "keys.toml", wrong)));
        Assert.Empty(wrong);
    }

    [Theory]
    [InlineData("[keys]\narm = \"Blank\"", "keys.toml:2: keys.arm is \"Blank\"; there is no key of that name. It is left where it was.")]
    [InlineData("[keys]\narm = \"W\"", "keys.toml:2: keys.arm is \"W\": W flies the craft and cannot do anything else. It is left where it was.")]
    [InlineData("[keys]\narm = \"J\"\nswap = \"J\"", "keys.toml:3: keys.swap is \"J\", which arm already has. It is left where it was.")]
    [InlineData("[pad]\narm = \"q\"", "keys.toml:2: pad.arm is \"q\"; it must be a button such as \"x\" or \"leftshoulder+x\". It is left where it was.")]
    [InlineData("[keys]\nloop = \"J\"", "keys.toml:2: there is no key keys.loop; it is left out.")]
    [InlineData("[keys]\narm = 4", "keys.toml:2: keys.arm is 4; it must be a text in double quotes. The default, nothing, is used.")]
    public void A_mistake_in_the_keys_is_one_sentence(string text, string said)
    {
        List<string> wrong = [];
        ActionMapFile.Read(text, "keys.toml", wrong);
        Assert.Equal(said, Assert.Single(wrong));
    }

    [Fact]
    public void A_keyboard_moves_sticks_at_a_pace_and_lets_go_to_hover()
    {
        KeyboardSticks keys = new() { HoverStick = 0.3 };
        Assert.True(keys.Handle(new(Simfeel.Cockpit.Platform.WindowEventKind.KeyDown, 79)));
        Assert.True(keys.Handle(new(Simfeel.Cockpit.Platform.WindowEventKind.KeyDown, 26)));
        Assert.False(keys.Handle(new(Simfeel.Cockpit.Platform.WindowEventKind.KeyDown, 44)));
        keys.Advance(0.035);
        Assert.Equal(new Sticks(0.1, 0, 0, 0.37), Rounded(keys.Sticks));
        for (int n = 0; n < 60; n++) keys.Advance(1 / 60.0);
        Assert.Equal(new Sticks(1, 0, 0, 1), Rounded(keys.Sticks));
        keys.Handle(new(Simfeel.Cockpit.Platform.WindowEventKind.FocusLost));
        keys.Advance(0.06);
        Assert.Equal(0.5, keys.Sticks.Roll, 1e-9);
        keys.Advance(1);
        Assert.Equal(new Sticks(0, 0, 0, 0.3), keys.Sticks);

        static Sticks Rounded(Sticks one) => new(Math.Round(one.Roll, 6), Math.Round(one.Pitch, 6), Math.Round(one.Yaw, 6), Math.Round(one.Throttle, 6));
    }

    [Fact]
    public void Delays_count_from_the_oldest_event_of_a_frame()
    {
        long second = System.Diagnostics.Stopwatch.Frequency;
        StickDelayMeter meter = new();
        meter.Shown(5);
        Assert.Equal(0, meter.Delays.Count);
        meter.Arrived(second);
        meter.Arrived(second + (second / 100));
        meter.Shown(second + (second / 50));
        meter.Arrived(2 * second);
        meter.Shown((2 * second) + (second / 20));
        Assert.Equal(2, meter.Delays.Count);
        Assert.Equal(0.02, meter.Delays.Median_s, 1e-6);
        Assert.Equal(0.05, meter.Delays.Percentile_s(100), 1e-6);
    }

    [Fact]
    public void Mapping_texts_of_pads_are_understood()
    {
        PadLayout? layout = PadLayout.Parse("guid,name,a:b1,dpup:h0.1,dpleft:-a6,leftx:a0,lefty:a1~,rightx:a3,righty:a4,lefttrigger:a2,nonsense,:,x:,crc:abcd,");
        Assert.NotNull(layout);
        Assert.Null(PadLayout.Parse("guid,name,a:b1,leftx:a0,"));
        Assert.Null(PadLayout.Parse(""));
    }
}
