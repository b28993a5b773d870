using Simfeel.Studies.Bench;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Balance tests from a readings file to a coordinate, against handbooks and closed forms.</summary>
public class BenchBalanceTests
{
    /// <summary>
    /// FAA-H-8083-1, Aircraft Weight and Balance Handbook, a nosewheel airplane on scales: 340 lb under the nose, 2006 lb in all, nose 78
    /// inches ahead of the mains and the mains 128 inches behind the datum; CG 114.8 inches behind it, 13.2 ahead of the mains. The
    /// same numbers as grams and millimetres.
    /// </summary>
    [Fact]
    public void A_nosewheel_airplane_on_scales()
    {
        BenchReport report = BenchCases.Report("[balance_x]\nfront_g = 340\nrear_g = 1666\nfront_at_mm = -50\nrear_at_mm = -128");
        double x = BenchCases.Of(report, BenchKind.Balance, BenchAxis.X).Measured!.Value;
        Assert.Equal(-114.8, 1e3 * x, 1);
        Assert.Equal(13.2, 1e3 * x + 128, 1);
    }

    /// <summary>A lever in balance: 200 g at 90 mm right and 300 g at 60 mm left balance about the middle.</summary>
    [Fact]
    public void A_lever_in_balance_to_the_side_and_its_band()
    {
        BenchReport report = BenchCases.Report("[balance_y]\nright_g = 200\nleft_g = 300\nright_at_mm = 90\nleft_at_mm = -60\nscale_pm_g = 2\nat_pm_mm = 1");
        Studies.Bench.Measuring.Measurement y = BenchCases.Of(report, BenchKind.Balance, BenchAxis.Y).Measured!;
        Assert.Equal(0, y.Value, 12);
        // slopes by hand: 90/500 and 60/500 mm per g, 200/500 and 300/500 mm per mm
        double sigma = Math.Sqrt(Math.Pow(0.18 * 2, 2) + Math.Pow(0.12 * 2, 2) + 0.16 + 0.36);
        Assert.Equal(sigma, 1e3 * y.Sigma, 9);
        Assert.Equal(1.959964 * sigma, 1e3 * y.HalfBand, 5);
    }

    /// <summary>A uniform plate hung from a corner: the plumb line runs along its diagonal, tan(angle) = b / a (textbook).</summary>
    [Theory]
    [InlineData(60, 0)]
    [InlineData(-60, 4)]
    public void A_plate_hung_from_its_corner(double hookX, double hookZ)
    {
        // a plate of 120 by 50 mm about the middle, hung from a corner at the level of the arms: its centre is 25 mm above
        double angle = Math.Atan2(50, 120) * 180 / Math.PI;
        BenchReport report = BenchCases.Report($"[balance_x]\nedge_mm = 0\n[balance_z]\nhook_x_mm = {hookX}\nhook_z_mm = {hookZ}\nhook_angle_deg = {angle:R}\nhook_angle_pm_deg = 1\nhook_pm_mm = 0");
        Studies.Bench.Measuring.Measurement z = BenchCases.Of(report, BenchKind.Balance, BenchAxis.Z).Measured!;
        Assert.Equal(hookZ - 25, 1e3 * z.Value, 9);
        // one degree moves it by 60 mm / cos^2, one millimetre along x by tan
        double tan = 50.0 / 120, degree = 60 * (1 + (tan * tan)) * Math.PI / 180;
        Assert.Equal(double.Hypot(degree, tan), 1e3 * z.Sigma, 9);
    }

    [Fact]
    public void A_hook_at_the_balance_point_tells_nothing()
    {
        FitException error = Assert.Throws<FitException>(() => BenchCases.Report("[balance_x]\nedge_mm = 0\n[balance_z]\nhook_x_mm = 10\nhook_z_mm = 0\nhook_angle_deg = 20"));
        Assert.Equal((4, "balance_z.hook_x_mm"), (error.Diagnostics[0].Line!.Value, error.Diagnostics[0].Key));
        Assert.Contains("15 mm", error.Diagnostics[0].Message, StringComparison.Ordinal);
    }

    /// <summary>Three tries of 1, 2 and 3 mm scatter by 1 mm: the mean is known to 1/sqrt(3), and the shared millimetre stays.</summary>
    [Fact]
    public void Tries_on_an_edge_are_averaged_but_share_an_error()
    {
        BenchReport report = BenchCases.Report("[balance_x]\nedge_mm = [1, 2, 3]");
        Studies.Bench.Measuring.Measurement x = BenchCases.Of(report, BenchKind.Balance, BenchAxis.X).Measured!;
        Assert.Equal(2, 1e3 * x.Value, 12);
        Assert.Equal(Math.Sqrt(1 + (1.0 / 3)), 1e3 * x.Sigma, 9);
        // Welch and Satterthwaite by hand: (4/3)^2 / ((1/3)^2 / 2) = 32
        Assert.Equal(32, x.Freedom, 9);
    }
}
