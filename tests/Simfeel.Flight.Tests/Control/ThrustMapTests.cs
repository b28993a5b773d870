using Simfeel.Physics.Stand;

namespace Simfeel.Flight.Tests.Control;

public class ThrustMapTests
{
    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    public void Duty_follows_the_stand_within_one_percent_of_full_duty(string name)
    {
        TunedUnit unit = Starters.Get(name);
        VirtualStand stand = new(unit.Unit.Craft, unit.Density, Starters.Profile.StateOfCharge, unit.Unit.Craft.Rotors.Count);
        double full = stand.AtDuty(1).Thrust;
        for (double duty = 0.15; duty < 1; duty += 0.05)
            Assert.Equal(duty, unit.Map.Duty(stand.AtDuty(duty).Thrust / full), 0.01);
        Assert.Equal(1, unit.Map.Duty(1), 12);
    }

    [Fact]
    public void Share_is_the_inverse_of_duty_and_slope_its_derivative()
    {
        TunedUnit unit = Starters.Get("wagtail");
        for (double share = 0.02; share < 1; share += 0.07)
        {
            Assert.Equal(share, unit.Map.Share(unit.Map.Duty(share)), 9);
            double slope = (unit.Map.Duty(share + 1e-6) - unit.Map.Duty(share - 1e-6)) / 2e-6;
            Assert.Equal(slope, unit.Map.Slope(share), 1e-4);
        }
    }
}
