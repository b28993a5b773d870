using Simfeel.Studies.Blame;
using Simfeel.Studies.Sheet;
using Simfeel.Studies.Sheet.Sections;

namespace Simfeel.Studies.Tests.Sheet;

/// <summary>The sentence that says who is to blame, for shares made up.</summary>
public class StrongestBlameTests
{
    [Theory]
    [InlineData(new[] { 0.030, 0.010, 0, 0 }, true, 1, null)]
    [InlineData(new[] { 0.050, 0.001, -0.011, 0 }, true, null, " works the other way")]
    [InlineData(new[] { 0.030, 0.020, -0.050, 0.04 }, false, 0, "the largest share of all, ")]
    public void Mostly_is_said_of_the_largest_share_only(double[] shares, bool mostly, int? then, string? other)
    {
        FeelSheet sheet = SampleSheet.Of;
        BlameLedger some = sheet.Blame.First(ledger => ledger.Metric.Name == "stop_time");
        BlameLedger ledger = some with
        {
            A = 0.06,
            B = 0.06 + shares.Sum(),
            Gap = null,
            Shares = [.. some.Shares.Select((share, n) => share with { Share = n < shares.Length ? shares[n] : 0 })],
        };
        string said = WordsSection.Strongest(sheet, ledger);
        Assert.Equal(mostly, said.Contains($"mostly {PartGroupNames.Title(some.Shares[0].Group)} (", StringComparison.Ordinal));
        if (then is int second) Assert.Contains($", then {PartGroupNames.Title(some.Shares[second].Group)} (", said, StringComparison.Ordinal);
        else Assert.DoesNotContain(", then ", said, StringComparison.Ordinal);
        if (other is not null) Assert.Contains(other, said, StringComparison.Ordinal);
        else Assert.DoesNotContain("other way", said, StringComparison.Ordinal);
    }
}
