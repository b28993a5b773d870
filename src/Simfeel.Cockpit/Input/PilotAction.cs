namespace Simfeel.Cockpit.Input;

/// <summary>Everything a pilot can do with a key or a pad button; each can be put on another one.</summary>
public enum PilotAction
{
    /// <summary>Lets the rotors turn, or stops them.</summary>
    Arm,

    /// <summary>Both craft back to their start.</summary>
    Restart,

    /// <summary>Flies the other build from the start.</summary>
    Swap,

    /// <summary>Flies the other build from where this one is.</summary>
    SwapInPlace,

    /// <summary>The other build flies along, translucent.</summary>
    Shadow,

    /// <summary>Self-levelling on and off.</summary>
    Level,

    /// <summary>Holds and releases time.</summary>
    Pause,

    /// <summary>One reading of the sticks while time is held.</summary>
    SingleStep,

    /// <summary>Slower, down to a tenth.</summary>
    Slower,

    /// <summary>Faster, up to real time.</summary>
    Faster,

    /// <summary>Next view.</summary>
    View,

    /// <summary>Mass view: parts as spheres, inertia ellipsoid, thrust arrows.</summary>
    MassView,

    /// <summary>Graphs of rates against commands, rotor speeds, pack and g.</summary>
    Graphs,

    /// <summary>The part bench.</summary>
    Bench,

    /// <summary>What was found in the flights so far.</summary>
    Results,

    /// <summary>Stores a picture.</summary>
    Picture,

    /// <summary>Lists the keys.</summary>
    Help,

    /// <summary>A time mark at this moment of a recording.</summary>
    Mark,

    /// <summary>Back to the mark before.</summary>
    PreviousMark,

    /// <summary>On to the next mark.</summary>
    NextMark,

    /// <summary>The list of time marks.</summary>
    Marks,

    /// <summary>A level grid that stays at the height at which it was switched on.</summary>
    LevelGrid,

    /// <summary>Opens the menu, closes a page.</summary>
    Menu,
}
