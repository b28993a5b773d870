namespace Simfeel.Flight.Tests;

public class CurveTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.3, 0.5)]
    [InlineData(1, 1)]
    public void StickCurve_is_odd_rising_and_meets_its_ends(double centreShare, double shape)
    {
        const double end = 14;
        StickCurve curve = new(centreShare * end, end, shape);
        Assert.Equal(end, curve.Rate(1), 12);
        Assert.Equal(-end, curve.Rate(-1), 12);
        Assert.Equal(end, curve.Rate(1.5), 12);
        double before = curve.Rate(0);
        Assert.Equal(0, before);
        for (int n = 1; n <= 1000; n++)
        {
            double x = n / 1000.0, now = curve.Rate(x);
            Assert.True(now >= before, $"the curve falls at {x}");
            Assert.Equal(-now, curve.Rate(-x));
            before = now;
        }
        Assert.Equal(centreShare * end, curve.Rate(1e-6) / 1e-6, 6);
    }

    [Theory]
    [InlineData(-1, 10, 0)]
    [InlineData(11, 10, 0)]
    [InlineData(1, 0, 0)]
    [InlineData(1, 10, 1.1)]
    [InlineData(double.NaN, 10, 0)]
    [InlineData(1, double.NaN, 0)]
    public void StickCurve_refuses_what_would_not_rise(double centre, double end, double shape) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new StickCurve(centre, end, shape));

    [Theory]
    [InlineData(0.25, 0.1)]
    [InlineData(0.5, 0.12)]
    [InlineData(0.4, 0.4)]
    public void ThrottleCurve_rises_through_hover(double stick, double share)
    {
        ThrottleCurve curve = new(stick, share);
        Assert.Equal(0, curve.Share(0));
        Assert.Equal(1, curve.Share(1), 12);
        Assert.Equal(share, curve.Share(stick), 12);
        for (int n = 1; n <= 100; n++) Assert.True(curve.Share(n / 100.0) > curve.Share((n - 1) / 100.0));
    }

    [Theory]
    [InlineData(0, 0.1)]
    [InlineData(1, 0.1)]
    [InlineData(0.5, 0)]
    [InlineData(0.5, 1)]
    [InlineData(double.NaN, 0.5)]
    public void ThrottleCurve_refuses_points_outside(double stick, double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ThrottleCurve(stick, share));
}
