using Simfeel.Studies.Validation;

namespace Simfeel.Studies.Tests.Validation;

/// <summary>Arithmetic of the checks, by hand, and that each rule can fail.</summary>
public class ValidationCheckTests
{
    private static readonly PublishedPair[] Points = [new(2, 2.2), new(4, 3.8), new(10, 10)];

    [Fact]
    public void Errors_are_shares_or_differences_with_sign()
    {
        ValidationCheck shares = Check(CheckRule.WorstWithin, true, 0.1), differences = Check(CheckRule.WorstWithin, false, 0.2);
        Assert.Equal((0.1 - 0.05 + 0) / 3, shares.MeanError, 12);
        Assert.Equal(0.1, shares.WorstError, 12);
        Assert.Equal(0, differences.MeanError, 12);
        Assert.Equal(Math.Sqrt(0.08 / 3), differences.RootMeanSquareError, 12);
        Assert.Equal(0.2, Check(CheckRule.NeverAbove, false, 0).WorstError, 12);
        Assert.Equal(-0.2, Check(CheckRule.NeverBelow, false, 0).WorstError, 12);
    }

    [Theory]
    [InlineData(CheckRule.WorstWithin, 0.21, 0.19)]
    [InlineData(CheckRule.RootMeanSquareWithin, 0.17, 0.16)]
    [InlineData(CheckRule.NeverAbove, 0.21, 0.19)]
    [InlineData(CheckRule.NeverBelow, 0.21, 0.19)]
    public void Each_rule_has_a_bound_that_breaks(CheckRule rule, double kept, double broken)
    {
        Assert.True(Check(rule, false, kept).Inside);
        Assert.False(Check(rule, false, broken).Inside);
    }

    [Fact]
    public void A_mean_may_hide_its_parts_but_not_itself()
    {
        Assert.True(Check(CheckRule.MeanWithin, true, 0.02).Inside);
        Assert.False(Check(CheckRule.MeanWithin, true, 0.016).Inside);
    }

    [Theory]
    [InlineData(CheckRule.WorstWithin)]
    [InlineData(CheckRule.RootMeanSquareWithin)]
    [InlineData(CheckRule.MeanWithin)]
    [InlineData(CheckRule.NeverAbove)]
    [InlineData(CheckRule.NeverBelow)]
    public void What_is_not_a_number_is_not_inside(CheckRule rule) =>
        Assert.False(new ValidationCheck("", rule, false, 1e9, BoundBasis.SetBefore, [new(1, 1), new(1, double.NaN)]).Inside);

    private static ValidationCheck Check(CheckRule rule, bool relative, double bound) =>
        new("", rule, relative, bound, BoundBasis.SetBefore, Points);
}
