using Simfeel.Cockpit.Application;
using Simfeel.Studies.Blind;

namespace Simfeel.Cockpit.Pages;

/// <summary>What the page before blind flights does.</summary>
public sealed class BlindSetupModel
{
    /// <summary>Begins with what is set.</summary>
    public required Action<BlindOptions> Begin { get; init; }
}

/// <summary>What the vote on a trial shows and does.</summary>
public sealed class BlindVoteModel
{
    /// <summary>Trial and flight.</summary>
    public required string State { get; init; }

    /// <summary>What is asked.</summary>
    public required string Question { get; init; }

    /// <summary>The votes.</summary>
    public required IReadOnlyList<string> Choices { get; init; }

    /// <summary>Flights of the trial.</summary>
    public required int Flights { get; init; }

    /// <summary>The flight in the air, counted from 1.</summary>
    public required int Here { get; init; }

    /// <summary>Why there is no vote yet; empty where there is one.</summary>
    public required string WhyNot { get; init; }

    /// <summary>Votes; counted from 1.</summary>
    public required Action<int> Vote { get; init; }

    /// <summary>Flies a flight of the trial, for the first time or again; counted from 1.</summary>
    public required Action<int> FlyAgain { get; init; }
}

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
