using Simfeel.Studies.Compare;

namespace Simfeel.Studies.Sheet.Writing;

/// <summary>Signs that say the same as a colour does.</summary>
internal static class Signs
{
    /// <summary>Letter and sign of a build: a disc for A, a triangle for B.</summary>
    public static string Of(bool isB) => isB ? "\u25B2 B" : "\u25CF A";

    /// <summary>Sign, word and tone of a feel; what is undecided outweighs what would be felt.</summary>
    public static Cell Of(Feel feel, bool undecided) => feel switch
    {
        Feel.Reading => new("\u00B7 a reading", Tone.Quiet),
        Feel.Unknown => new("- unknown", Tone.Undecided),
        _ when undecided => new("? undecided", Tone.Undecided),
        Feel.Felt => new("\u25A0\u25A0 felt", Tone.Felt),
        Feel.Perhaps => new("\u25A0\u25A1 perhaps", Tone.Perhaps),
        _ => new("\u25A1\u25A1 not felt", Tone.Quiet),
    };
}
