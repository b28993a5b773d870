namespace Simfeel.Cockpit.Input;

/// <summary>
/// Buttons of a gamepad by their place, in SDL's order and names of its mapping texts. The left shoulder is the shift of
/// the pad: each other button means something else while it is held.
/// </summary>
public enum PadButton
{
    /// <summary>Lower one of the four.</summary>
    A,

    /// <summary>Right one of the four.</summary>
    B,

    /// <summary>Left one of the four.</summary>
    X,

    /// <summary>Upper one of the four.</summary>
    Y,

    /// <summary>Left of the middle.</summary>
    Back,

    /// <summary>The maker's button; left to the system.</summary>
    Guide,

    /// <summary>Right of the middle.</summary>
    Start,

    /// <summary>Left stick pressed in.</summary>
    LeftStick,

    /// <summary>Right stick pressed in.</summary>
    RightStick,

    /// <summary>Upper left front button; shift.</summary>
    LeftShoulder,

    /// <summary>Upper right front button.</summary>
    RightShoulder,

    /// <summary>Cross, up.</summary>
    DpUp,

    /// <summary>Cross, down.</summary>
    DpDown,

    /// <summary>Cross, left.</summary>
    DpLeft,

    /// <summary>Cross, right.</summary>
    DpRight,
}
