namespace Simfeel.Cockpit.Input.Wizard;

/// <summary>What the wizard says for each arrangement and control.</summary>
internal static class WizardTexts
{
    public static readonly string[] Arrangements =
    [
        "Mode 2: throttle and yaw on the left stick (most pilots)",
        "Mode 1: throttle and roll on the right stick",
        "Mode 3: throttle and yaw on the right stick",
        "Mode 4: throttle and roll on the left stick",
        "A joystick with a twist grip or pedals",
    ];

    public static readonly string[] Centring =
    [
        "The middle is hover",
        "The stick raises and lowers a throttle that is held",
        "Full travel, as it is",
    ];

    public static readonly string[] OneSided =
    [
        "It stays where I leave it: a throttle stick or slider",
        "It springs back: a trigger",
        "It goes both ways: let me move it again",
    ];

    public static readonly string[] Checks =
    [
        "All is right: store it",
        "Roll goes the wrong way",
        "Pitch goes the wrong way",
        "Yaw goes the wrong way",
        "Throttle goes the wrong way",
        "Begin again",
    ];

    /// <summary>The move that is positive: throttle up, yaw right, pitch towards the pilot, roll right.</summary>
    public static string First(StickArrangement arrangement, StickControl control) => control switch
    {
        StickControl.Throttle => $"Throttle: move {Part(arrangement, control)} all the way up and hold it",
        StickControl.Pitch => $"Pitch: pull {Part(arrangement, control)} all the way down, towards you, and hold it",
        _ => $"{control}: move {Part(arrangement, control)} all the way to the right and hold it",
    };

    public static string Second(StickArrangement arrangement, StickControl control) => control switch
    {
        StickControl.Throttle => $"Throttle: now {Part(arrangement, control)} all the way down, then let go",
        StickControl.Pitch => $"Pitch: now push {Part(arrangement, control)} all the way up, away from you, then let go",
        _ => $"{control}: now {Part(arrangement, control)} all the way to the left, then let go",
    };

    public static string Help(StickControl control) => control == StickControl.Throttle
        ? "Any control that you like may be the throttle, also a slider or a trigger."
        : "Only this one; the others stay untouched.";

    private static string Part(StickArrangement arrangement, StickControl control)
    {
        if (arrangement == StickArrangement.Joystick)
        {
            return control switch
            {
                StickControl.Throttle => "the throttle lever",
                StickControl.Yaw => "the twist grip or the pedals",
                _ => "the stick",
            };
        }
        bool isLeft = control switch
        {
            StickControl.Throttle => arrangement is StickArrangement.Mode2 or StickArrangement.Mode4,
            StickControl.Yaw => arrangement is StickArrangement.Mode2 or StickArrangement.Mode1,
            StickControl.Pitch => arrangement is StickArrangement.Mode1 or StickArrangement.Mode3,
            _ => arrangement is StickArrangement.Mode3 or StickArrangement.Mode4,
        };
        return isLeft ? "the left stick" : "the right stick";
    }
}
