using Simfeel.Builds;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Blame;

/// <summary>What one group of parts is to blame for; all in the SI unit of the metric, signed as B - A.</summary>
/// <param name="Group">The group.</param>
/// <param name="Share">
/// Shapley value: the mean of what changing this group from A's to B's adds, over all orders in which the groups can be changed
/// (L. S. Shapley, A value for n-person games, 1953). Exactly 0 where the builds do not differ in the group.
/// </param>
/// <param name="OneAtATime">What changing this group alone adds to build A.</param>
/// <param name="LastOneIn">What changing this group adds when all others are B's already.</param>
public readonly record struct BlameShare(PartGroups Group, double Share, double OneAtATime, double LastOneIn);

/// <summary>The difference B - A of one metric, shared out over the groups of parts in which the builds differ.</summary>
public sealed record BlameLedger
{
    /// <summary>What was measured.</summary>
    public required Metric Metric { get; init; }

    /// <summary>Of build A, SI.</summary>
    public required double A { get; init; }

    /// <summary>Of build B, SI.</summary>
    public required double B { get; init; }

    /// <summary>A share for every group, in the order of <see cref="PartGroupNames.All"/>; their sum is the difference.</summary>
    public required IReadOnlyList<BlameShare> Shares { get; init; }

    /// <summary>Hybrids flown for it, A and B among them.</summary>
    public required int Hybrids { get; init; }

    /// <summary>Why there are no shares, such as a hybrid that never reached the event; null where there are.</summary>
    public string? Gap { get; init; }

    /// <summary>B - A, SI.</summary>
    public double Difference => B - A;

    /// <summary>The difference less the sum of what each group does alone: 0 where the groups do not need each other.</summary>
    public double Interaction => Difference - Shares.Sum(share => share.OneAtATime);

    /// <summary>The groups that differ, largest share first.</summary>
    public IEnumerable<BlameShare> Ranked =>
        Shares.Where(share => share.Share != 0 || share.OneAtATime != 0 || share.LastOneIn != 0)
            .OrderByDescending(share => Math.Abs(share.Share));
}
