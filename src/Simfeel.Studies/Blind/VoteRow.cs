using Simfeel.Flight.Tuning;

namespace Simfeel.Studies.Blind;

/// <summary>What was compared blind, and how it was flown and shown: what the caller of a session knows.</summary>
/// <param name="BuildA">Name of the first build.</param>
/// <param name="BuildB">Name of the second build.</param>
/// <param name="Metric">Name of the metric in which they differ most plainly; empty where nothing was computed.</param>
/// <param name="Difference_Percent">
/// B less A in that metric, percent of the mean of both sizes as in <see cref="Compare.MetricPair.DifferencePercent"/>, -200 to 200; NaN where
/// nothing was computed.
/// </param>
/// <param name="Policy">Tuning policy of both.</param>
/// <param name="VideoDelay_ms">Delay added to the picture, ms, 0 to 300.</param>
/// <param name="Version">Version of the program.</param>
public sealed record VoteSubject(
    string BuildA, string BuildB, string Metric, double Difference_Percent, TuningPolicy Policy, double VideoDelay_ms, string Version)
{
    /// <summary>Largest difference, percent.</summary>
    public const double LargestDifference_Percent = 200;

    /// <summary>Largest added delay, ms.</summary>
    public const double LongestVideoDelay_ms = 300;
}

/// <summary>One vote of a log. Nothing in it names a person.</summary>
/// <param name="Date">When the vote was given, to the second.</param>
/// <param name="Test">Kind of the test.</param>
/// <param name="Vote">The vote and its truth.</param>
/// <param name="Subject">What was compared.</param>
public sealed record VoteRow(DateTimeOffset Date, BlindTest Test, RevealedTrial Vote, VoteSubject Subject);
