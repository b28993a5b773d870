using Simfeel.Studies.Handling;

namespace Simfeel.Studies.Tests.Handling;

/// <summary>Quickness against closed forms of second-order steps and of motion at constant acceleration.</summary>
public class QuicknessTests
{
    private const double Period = 0.0005;

    /// <summary>Unit step of a second-order system, time by natural frequency: textbook formulas, solved outside of this code.</summary>
    [Theory]
    [InlineData(0.5, 0.469713899)]
    [InlineData(0.7, 0.438406548)]
    [InlineData(0.8, 0.417674748)]
    [InlineData(1, 0.367879441)]
    public void Second_order_step(double zeta, double quickness)
    {
        double d = Math.Sqrt(1 - (zeta * zeta));
        double[] time = [.. Enumerable.Range(0, (int)(40 / Period)).Select(n => n * Period)];
        double[] angle = [.. time.Select(t => zeta == 1
            ? 1 - ((1 + t) * Math.Exp(-t))
            : 1 - (Math.Exp(-zeta * t) * (Math.Cos(d * t) + (zeta / d * Math.Sin(d * t)))))];
        double[] rate = [.. time.Select(t => zeta == 1 ? t * Math.Exp(-t) : Math.Exp(-zeta * t) * Math.Sin(d * t) / d)];

        Assert.Equal(quickness, AttitudeQuickness.Of(rate, angle).Quickness, 1e-6);
    }

    /// <summary>Bang-bang from rest to rest: rate sqrt(alpha D), quickness sqrt(alpha / D), or the rate limit by D.</summary>
    [Theory]
    [InlineData(30, double.PositiveInfinity, 14.472025, 27.639532)]
    [InlineData(120, 20, 20, 9.549296585)]
    public void Rest_to_rest_at_constant_acceleration(double degrees, double limit, double peak, double quickness)
    {
        const double alpha = 400, h = 1e-6;
        double angle = degrees * Math.PI / 180, top = Math.Min(limit, Math.Sqrt(alpha * angle));
        double ramp = top / alpha, all = (angle / top) + ramp;
        double[] rate = [.. Enumerable.Range(0, (int)(all / h) + 2).Select(n => Math.Max(0, Math.Min(top, alpha * Math.Min(n * h, all - (n * h)))))];
        double[] turned = new double[rate.Length];
        for (int n = 1; n < turned.Length; n++) turned[n] = turned[n - 1] + (h / 2 * (rate[n - 1] + rate[n]));
        AttitudeQuickness read = AttitudeQuickness.Of(rate, turned);
        Assert.Equal(1, read.PeakRate / peak, 1e-4);
        Assert.Equal(1, read.Quickness / quickness, 1e-4);
        Assert.Equal(angle, read.LeastChange, 1e-4);
    }

    [Fact]
    public void Least_change_is_what_is_left_after_swinging_back_either_way()
    {
        AttitudeQuickness read = AttitudeQuickness.Of([0, -3, -1, 1, 0], [0.1, -0.5, -0.9, -0.7, -0.8]);
        Assert.Equal(3, read.PeakRate, 1e-12);
        Assert.Equal(1, read.PeakChange, 1e-12);
        Assert.Equal(0.8, read.LeastChange, 1e-12);
    }
}
