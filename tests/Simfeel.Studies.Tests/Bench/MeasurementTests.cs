using Simfeel.Studies.Bench.Measuring;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>How errors are put together, against the Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008).</summary>
public class MeasurementTests
{
    /// <summary>
    /// Its example in G.4.1: relative uncertainties of 0.25, 0.57 and 0.82 % from 10, 5 and 15 observations make 1.03 % with 19.0
    /// effective degrees of freedom, so that k = t95(19) = 2.09 and the expanded uncertainty is 2.2 %.
    /// </summary>
    [Fact]
    public void The_guides_example_of_effective_degrees_of_freedom()
    {
        Measurement measured = new(0, [new("a", 0.25, 9), new("b", 0.57, 4), new("c", 0.82, 14)]);
        Assert.Equal(1.03, measured.Sigma, 2);
        Assert.Equal(19.0, measured.Freedom, 1);
        Assert.Equal(2.09, measured.Coverage, 2);
        Assert.Equal(2.2, measured.HalfBand, 1);
    }

    /// <summary>Its table G.2, column 95 %.</summary>
    [Theory]
    [InlineData(1, 12.71)]
    [InlineData(2, 4.30)]
    [InlineData(3, 3.18)]
    [InlineData(5, 2.57)]
    [InlineData(10, 2.23)]
    [InlineData(20, 2.09)]
    [InlineData(double.PositiveInfinity, 1.960)]
    public void Coverage_is_students_t(double freedom, double factor) =>
        Assert.Equal(factor, new Measurement(0, [new("a", 3, freedom)]).Coverage, freedom == double.PositiveInfinity ? 3 : 2);

    /// <summary>
    /// Two weighings of one kind, 1 2 3 and 10 14: sums of squares 2 and 8 over 2 + 1 degrees of freedom, variance 10 / 3, by hand.
    /// </summary>
    [Fact]
    public void Scatter_is_pooled_about_each_mean()
    {
        Scatter scatter = Scatter.Pooled([[1, 2, 3], [10, 14]], 99);
        Assert.Equal(Math.Sqrt(10.0 / 3), scatter.Sigma, 12);
        Assert.Equal(3, scatter.Freedom);
    }

    [Fact]
    public void Too_few_readings_leave_the_stated_error_or_the_larger_scatter()
    {
        Assert.Equal(new Scatter(0.2, double.PositiveInfinity), Scatter.Pooled([[31.0], [33.0]], 0.2));
        Assert.Equal(new Scatter(0.2, double.PositiveInfinity), Scatter.Pooled([[31.0, 31.0]], 0.2));
        Assert.Equal(Math.Sqrt(0.5), Scatter.Pooled([[31.0, 32.0]], 0.2).Sigma, 12);
    }

    [Fact]
    public void Shares_add_up_and_the_largest_comes_first()
    {
        Measurement measured = new(1, [new("scales", 3), new("places", 5), new("scales", 4)]);
        Assert.Equal(0, measured.Shares().Sum(share => share.Share) - 1, 12);
        Assert.Equal(["scales", "places"], measured.Shares().Select(share => share.Name));
        Assert.Equal(0.5, measured.Shares()[0].Share, 12);
    }
}
