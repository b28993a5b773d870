using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>What is far from the build is said to be, and only where the table tells it.</summary>
public class FitCautionTests
{
    [Theory]
    [InlineData(1.11, true, 1, true, 1, true, false)]
    [InlineData(1.13, true, 1, true, 1, true, true)]
    [InlineData(0.87, true, 1, true, 1, true, true)]
    [InlineData(0.89, true, 1, true, 1, true, false)]
    [InlineData(1.5, false, 1, true, 1, true, false)]
    [InlineData(1, true, 1.34, true, 1, true, true)]
    [InlineData(1, true, 1.32, true, 0.76, true, false)]
    [InlineData(1, true, 1, true, 0.74, true, true)]
    [InlineData(1, true, 3, false, 0.1, false, false)]
    public void Far_from_the_build_is_a_caution(double kv, bool kvTold, double thrust, bool thrustTold, double torque, bool torqueTold, bool caution)
    {
        StandFit fit = new()
        {
            Table = null!,
            Before = null!,
            After = null!,
            Constants = [Constant("motor.kv_rpm_per_V", 1900, kv, kvTold), Constant("propeller.thrust_factor", 0.9, thrust, thrustTold), Constant("propeller.torque_factor", 1.1, torque, torqueTold)],
            Residuals = [],
            Rows = [],
            Refused = [],
            Throttle = "",
            ThrottleIsDuty = false,
            Notes = [],
        };
        Assert.Equal(caution, FitCautions.Of(fit).Count > 0);

        static FittedConstant Constant(string key, double before, double factor, bool told) =>
            new(key, "", "", before, factor * before, 0.01, told, told ? "" : "no reading");
    }

    [Theory]
    [InlineData(2.01, true)]
    [InlineData(1.99, false)]
    [InlineData(0.51, false)]
    [InlineData(0.49, true)]
    public void An_inertia_twice_or_half_as_large_is_a_caution(double factor, bool caution) =>
        Assert.Equal(caution, FitCautions.OfSwing(factor * 1.5e-3, 1.5e-3).Count > 0);

    /// <summary>Two standard deviations to either side, a size never below nothing.</summary>
    [Fact]
    public void A_band_is_two_standard_deviations_wide()
    {
        FittedConstant near = new("key", "", "", 100, 100, 0.1, true, ""), wide = near with { RelativeSigma = 0.6 };
        Assert.Equal(80, near.Low, 1e-9);
        Assert.Equal(120, near.High, 1e-9);
        Assert.Equal(0, wide.Low);
        Assert.Equal(220, wide.High, 1e-9);
    }
}
