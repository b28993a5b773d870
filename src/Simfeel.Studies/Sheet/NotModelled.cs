namespace Simfeel.Studies.Sheet;

/// <summary>What the model leaves out.</summary>
public static class NotModelled
{
    /// <summary>One sentence for each.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "Arms and propellers do not bend, and nothing vibrates: noise that a gyro hears from the frame is not there.",
        "Ducts have mass and size but no effect on the air.",
        "The air is still; gusts are left out, and the shaking in a craft's own wake is an estimate.",
        "Rotors do not lift or disturb each other except through their wakes in a descent.",
        "Damaged propellers, worn bearings, hot motors and a pack at other than room temperature are left out.",
        "The pilot of the drills is a script with a limited thumb, not a person; what a pilot feels is inferred from percentages.",
    ];
}
