using Simfeel.Studies.Blind;

namespace Simfeel.Cockpit.Application.Blind;

/// <summary>How blind flights are flown.</summary>
/// <param name="Test">Kind of the test.</param>
/// <param name="Trials">Real trials, 1 to <see cref="MostTrials"/>.</param>
/// <param name="Controls">Trials with one build in every flight, 0 to <see cref="MostTrials"/>.</param>
/// <param name="Late">Delay added to the picture whenever the second build is flown, s, 0 to 0.3.</param>
public sealed record BlindOptions(BlindTest Test, int Trials = 12, int Controls = 3, double Late = 0)
{
    /// <summary>Most trials that anybody will fly in one sitting.</summary>
    public const int MostTrials = 60;

    /// <summary>Longest delay, s.</summary>
    public const double LongestLate = VoteSubject.LongestVideoDelay_ms / 1000;

    /// <summary>What is said where both builds are one and neither picture is late.</summary>
    public static string NothingToTell(string build) =>
        $"Blind flights of {build} against itself have no right answer: take another build, or let the picture come late with the second (--late MS).";

    /// <summary>File that votes are added to; <c>votes.csv</c> in the folder for pictures if null.</summary>
    public string? VotesFile { get; init; }
}
