using Simfeel.Studies.Bench.Measuring;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Tests.Metrics;

public class DisplayUnitTests
{
    private static readonly DisplayUnit Thousands = new("1000 deg/s2", 180 / Math.PI / 1000, 1);

    [Fact]
    public void A_sentence_has_no_thousand_before_its_unit()
    {
        // 453.8 rad/s2 are 26000 deg/s2 to three digits
        Assert.Equal("26.0", Thousands.Number(453.8));
        Assert.Equal("26000 deg/s2", Thousands.WithSymbol(453.8));
        Assert.Equal("+6400 deg/s2", Thousands.WithSymbol("+6.4"));
        Assert.Equal("-6400 deg/s2", Thousands.WithSymbol("-6.4"));
    }

    [Fact]
    public void Other_units_stand_behind_the_number_and_nothing_behind_a_gap()
    {
        Assert.Equal("58 ms", new DisplayUnit("ms", 1000, 0).WithSymbol(0.058));
        Assert.Equal("1.40", new DisplayUnit("", 1, 2).WithSymbol(1.4));
        Assert.Equal("-", Thousands.WithSymbol(double.NaN));
    }

    [Fact]
    public void A_kitchen_scale_errs_by_a_gram_or_a_five_hundredth()
    {
        Assert.Equal(1e-3, KitchenScale.Sigma(0.8));
        Assert.Equal(0.2e-3, KitchenScale.Sigma(0.1), 12);
    }
}
