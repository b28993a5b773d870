namespace Simfeel.Studies.Blind;

/// <summary>The votes of one pair of builds in one kind of test.</summary>
/// <param name="BuildA">Name of the first build, as in the first of the votes.</param>
/// <param name="BuildB">Name of the second.</param>
/// <param name="Rows">The votes.</param>
public sealed record VoteTally(string BuildA, string BuildB, IReadOnlyList<VoteRow> Rows)
{
    /// <summary>The votes against chance.</summary>
    public BlindResult Result { get; } = BlindResult.Of(Rows[0].Test, [.. Rows.Select(row => row.Vote)]);

    /// <summary>The tallies of a log in the order in which their first votes stand in it. Which build came first does not part them.</summary>
    public static IReadOnlyList<VoteTally> Of(IEnumerable<VoteRow> rows) =>
    [
        .. rows
            .GroupBy(row => (Pair(row.Subject.BuildA, row.Subject.BuildB), row.Test))
            .Select(group => new VoteTally(group.First().Subject.BuildA, group.First().Subject.BuildB, [.. group])),
    ];

    private static (string First, string Second) Pair(string a, string b) => string.CompareOrdinal(a, b) <= 0 ? (a, b) : (b, a);
}
