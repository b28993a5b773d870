using Simfeel.Physics.Rotors;
using Simfeel.Studies.Validation;

namespace Simfeel.Studies.Tests.Validation;

/// <summary>Coefficients of reports and what momentum theory makes of them, by hand.</summary>
public class RotorRunTests
{
    /// <summary>
    /// A rotor's CT counts disc and tip speed, a propeller's n^2 D^4: pi^3 / 4 apart, power pi^4 / 4 (any handbook of propellers), and the climb over
    /// tip speed is J / pi.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void A_propellers_coefficients_are_a_rotors(double advance)
    {
        RotorGeometry blade = RotorRun.Untwisted(0.25, 2, 0.12, 12, 0.15, LowReynoldsPolar.Instance);
        Loads propeller = RotorRun.Propeller(blade, 6000, advance), rotor = RotorRun.Rotor(blade, 6000, advance / Math.PI);
        Assert.Equal(7.7515692, propeller.CT / rotor.CT, 1e-6);
        Assert.Equal(24.3522728, propeller.CP / rotor.CP, 1e-6);
        Assert.True(propeller.CT > 0);
    }

    [Fact]
    public void Blades_without_twist()
    {
        RotorGeometry blade = RotorRun.Untwisted(0.25, 3, 0.12, 30, 0.2, LowReynoldsPolar.Instance);
        Assert.Equal((0.25, 3, 0.2), (blade.Diameter, blade.Blades, blade.RootCutOut));
        Assert.Equal([0.2, 1], blade.Stations.Select(station => station.Radius));
        Assert.All(blade.Stations, station => Assert.Equal((0.12, Math.PI / 6), (station.Chord, Math.Round(station.Twist, 15)), (a, b) => a.Item1 == b.Item1 && Math.Abs(a.Item2 - b.Item2) < 1e-12));
    }

    /// <summary>Ideal power over power: CT 0.1 and CP 0.04 make sqrt(2 / pi) 0.1^1.5 / 0.04 = 0.6308.</summary>
    [Fact]
    public void Figure_of_merit_by_hand() => Assert.Equal(0.63078, RotorRun.FigureOfMerit(new(0.1, 0.04)), 1e-5);

    /// <summary>Froude: without thrust nothing is lost; 8 CT / (pi J^2) = 3 makes 2 / 3, = 8 makes a half.</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(3, 2 / 3.0)]
    [InlineData(8, 0.5)]
    public void Ideal_efficiency_by_hand(double loading, double efficiency) =>
        Assert.Equal(efficiency, RotorRun.IdealEfficiency(loading * Math.PI * 0.25 / 8, 0.5), 1e-12);

    [Fact]
    public void Roots_are_found_whichever_way_a_function_goes()
    {
        Assert.Equal(Math.Sqrt(2), RotorRun.Root(0, 2, x => (x * x) - 2), 1e-9);
        Assert.Equal(Math.Sqrt(2), RotorRun.Root(0, 2, x => 2 - (x * x)), 1e-9);
        Assert.Equal(Math.PI / 4, RotorRun.Radians(45), 1e-15);
    }
}
