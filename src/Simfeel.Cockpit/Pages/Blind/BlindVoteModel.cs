namespace Simfeel.Cockpit.Pages.Blind;

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
