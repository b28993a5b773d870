using Simfeel.Studies.Blind;

namespace Simfeel.Cockpit.Pages.Blind;

/// <summary>What the end of blind flights shows.</summary>
public sealed class BlindResultModel
{
    /// <summary>Names of the first and the second build.</summary>
    public required IReadOnlyList<string> Builds { get; init; }

    /// <summary>What the votes show.</summary>
    public required string Sentence { get; init; }

    /// <summary>What the controls show; empty without any.</summary>
    public required string Controls { get; init; }

    /// <summary>The truth beside each vote.</summary>
    public required IReadOnlyList<RevealedTrial> Trials { get; init; }

    /// <summary>Where the votes are.</summary>
    public required string File { get; init; }
}
