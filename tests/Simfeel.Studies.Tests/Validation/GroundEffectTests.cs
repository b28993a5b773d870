using Simfeel.Physics.Rotors;

namespace Simfeel.Studies.Tests.Validation;

/// <summary>
/// Cheeseman and Bennett, ARC R&amp;M 3021 (1955), beyond the values of the case: speed, the ground itself, and nonsense heights.
/// </summary>
public class GroundEffectTests
{
    /// <summary>By hand: (R / 4z)^2 is 1/16 at z = R and 1/4 at z = R / 2; speed divides it by 1 + (V / v)^2.</summary>
    [Theory]
    [InlineData(1, 1, 1 / (1 - (1 / 32.0)))]
    [InlineData(1, -1, 1 / (1 - (1 / 32.0)))]
    [InlineData(0.5, 2, 1 / (1 - (1 / 20.0)))]
    [InlineData(0.5, 0, 4 / 3.0)]
    [InlineData(0.25, 0, 4 / 3.0)]
    [InlineData(0, 0, 4 / 3.0)]
    [InlineData(-1, 0, 4 / 3.0)]
    [InlineData(double.PositiveInfinity, 0, 1)]
    public void Thrust_ratio(double height, double speed, double ratio) =>
        Assert.Equal(ratio, GroundEffect.ThrustRatio(height, speed), 12);

    [Fact]
    public void Speed_takes_the_gain_away()
    {
        for (double speed = 0.1; speed < 10; speed += 0.1)
            Assert.True(GroundEffect.ThrustRatio(1, speed) < GroundEffect.ThrustRatio(1, speed - 0.1));
    }
}
