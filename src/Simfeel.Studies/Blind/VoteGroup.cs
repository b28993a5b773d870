namespace Simfeel.Studies.Blind;

/// <summary>Votes on one size of difference in one kind of test.</summary>
/// <param name="Chance">Probability that a guess is right.</param>
/// <param name="Size_Percent">Size of the difference, percent, not negative.</param>
/// <param name="Votes">Real votes.</param>
/// <param name="Right">Right ones among them.</param>
internal readonly record struct VoteGroup(double Chance, double Size_Percent, int Votes, int Right)
{
    /// <summary>The groups of all real votes whose difference is known.</summary>
    public static IReadOnlyList<VoteGroup> Of(IEnumerable<VoteRow> rows) =>
    [
        .. rows
            .Where(row => !row.Vote.Control && !double.IsNaN(row.Subject.Difference_Percent))
            .GroupBy(row => (row.Test.Chance, Size: Math.Abs(row.Subject.Difference_Percent)))
            .OrderBy(group => group.Key)
            .Select(group => new VoteGroup(group.Key.Chance, group.Key.Size, group.Count(), group.Count(row => row.Vote.Right))),
    ];
}
