namespace Simfeel.Cockpit.Marks;

/// <summary>A moment of a recording that somebody wants to come back to.</summary>
/// <param name="Time">Time since the recording began, s.</param>
/// <param name="Note">What is to be seen there; may be empty.</param>
public readonly record struct TimeMark(double Time, string Note)
{
    /// <summary>Longest note, characters.</summary>
    public const int LongestNote = 120;

    /// <summary>Latest moment, s: a day.</summary>
    public const double Latest = 86400;

    /// <summary>Notes that can be chosen without a keyboard; the first is what a new mark has.</summary>
    public static IReadOnlyList<string> Words { get; } =
        ["look here", "starts to roll", "lets go", "rotor at its limit", "bounce-back", "in its own wake", "other build"];
}
