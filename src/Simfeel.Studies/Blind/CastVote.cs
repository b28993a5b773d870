using System.Diagnostics;

namespace Simfeel.Studies.Blind;

/// <summary>A vote that was given: shows what was voted and not whether it was right. <see cref="VoteLog"/> can store it.</summary>
public sealed class CastVote
{
    [DebuggerBrowsable(DebuggerBrowsableState.Never)]
    private readonly SealedTrial _sealed;

    private readonly int _choice;

    internal CastVote(BlindTest test, SealedTrial trial, int number, int choice) =>
        (Test, _sealed, Trial, _choice) = (test, trial, number, choice);

    /// <summary>Kind of the test.</summary>
    public BlindTest Test { get; }

    /// <summary>Number of the trial, counted from 1.</summary>
    public int Trial { get; }

    /// <summary>The vote in words.</summary>
    public string Answer => Test.Choices[_choice - 1];

    /// <summary>The truth beside the vote.</summary>
    internal RevealedTrial Open() => _sealed.Open(Test, Trial, _choice);

    /// <summary>What was voted.</summary>
    public override string ToString() => $"trial {Trial}: {Answer}";
}
