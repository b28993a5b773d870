using Simfeel.Studies.Compare;
using Simfeel.Studies.Metrics;
using Simfeel.Studies.Sheet.Writing;
using Simfeel.Studies.Uncertainty;

namespace Simfeel.Studies.Tests.Sheet;

/// <summary>Numbers and signs as a sheet prints them, by hand.</summary>
public class NumberWordsTests
{
    private static readonly Metric StopTime = Of("stop_time"), Lift = Of("thrust_to_weight"), Fall = Of("fall_in_1_s");

    [Theory]
    [InlineData(1.25, 1, "1.2", "+1.2")]
    [InlineData(-0.04, 1, "0.0", "0.0")]
    [InlineData(0.04, 1, "0.0", "0.0")]
    [InlineData(0.06, 1, "0.1", "+0.1")]
    [InlineData(-0.06, 1, "-0.1", "-0.1")]
    [InlineData(-1234.5678, 2, "-1234.57", "-1234.57")]
    [InlineData(double.NaN, 1, "-", "-")]
    [InlineData(double.PositiveInfinity, 0, "-", "-")]
    public void Fixed_decimals(double value, int decimals, string plain, string signed)
    {
        Assert.Equal(plain, Numbers.Fixed(value, decimals));
        Assert.Equal(signed, Numbers.Signed(value, decimals));
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(1e-10, "0")]
    [InlineData(-1e-10, "0")]
    [InlineData(2e-9, "2E-09")]
    [InlineData(1.2345e-4, "0.000123")]
    [InlineData(1e-3, "0.001")]
    [InlineData(0.0123456, "0.01235")]
    [InlineData(-1234.56, "-1235")]
    [InlineData(9999, "9999")]
    [InlineData(10000, "10000")]
    [InlineData(123456.7, "123457")]
    [InlineData(double.NaN, "-")]
    public void About_four_digits_without_a_power_of_ten(double value, string text) => Assert.Equal(text, Numbers.Plain(value));

    [Fact]
    public void Values_carry_their_unit_and_differences_a_decimal_more()
    {
        Assert.Equal(("123 ms", "-"), (Numbers.Of(StopTime, 0.1234), Numbers.Of(StopTime, double.NaN)));
        Assert.Equal("2.3", Numbers.Of(Lift, 2.345));
        Assert.Equal("4.90 m", Numbers.Of(Fall, 4.9));
        // milliseconds have no decimals: below a hundred of them a difference gets one
        Assert.Equal("+12.3", Numbers.Difference(StopTime, 0.01234));
        Assert.Equal("-99.9", Numbers.Difference(StopTime, -0.0999));
        Assert.Equal("+100", Numbers.Difference(StopTime, 0.1));
        Assert.Equal("+123", Numbers.Difference(StopTime, 0.1234));
        Assert.Equal("-0.10", Numbers.Difference(Fall, -0.1));
        Assert.Equal("+12.3 ms", Numbers.DifferenceOf(StopTime, 0.01234));
        Assert.Equal("-12.3 to +12.3", Numbers.Of(StopTime, new Band(-0.01234, 0, 0.01234)));
        Assert.Equal("-", Numbers.Of(StopTime, new Band(double.NaN, 0, 0.01)));
        Assert.Equal(("+13 %", "-"), (Numbers.Percent(12.6), Numbers.Percent(double.NaN)));
        Assert.Equal(("thrust, N", "share, ratio"), (Numbers.Axis("thrust", "N"), Numbers.Axis("share", "")));
        Assert.Equal("-", StopTime.Display.Number(double.NaN));
    }

    /// <summary>Nothing that is unknown or undecided is said to be felt.</summary>
    [Fact]
    public void Doubt_outweighs_what_would_be_felt()
    {
        Assert.Contains("felt", Signs.Of(Feel.Felt, undecided: false).Text, StringComparison.Ordinal);
        Assert.Contains("undecided", Signs.Of(Feel.Felt, undecided: true).Text, StringComparison.Ordinal);
        Assert.Contains("perhaps", Signs.Of(Feel.Perhaps, undecided: false).Text, StringComparison.Ordinal);
        Assert.Contains("unknown", Signs.Of(Feel.Unknown, undecided: true).Text, StringComparison.Ordinal);
        Assert.Contains("reading", Signs.Of(Feel.Reading, undecided: true).Text, StringComparison.Ordinal);
        Assert.EndsWith(" A", Signs.Of(isB: false), StringComparison.Ordinal);
        Assert.EndsWith(" B", Signs.Of(isB: true), StringComparison.Ordinal);
    }

    private static Metric Of(string name) => MetricCatalogue.All.Single(metric => metric.Name == name);
}
