using Simfeel.Physics.Air;

namespace Simfeel.Physics.Tests.Air;

public class StandardAtmosphereTests
{
    // Evaluated apart from this project from the primary constants of ISO 2533:1975 (quoted from memory); the 1000 m
    // row agrees with the printed table of the U.S. Standard Atmosphere 1976 (281.651 K, 89876 Pa, 1.1117 kg/m^3,
    // 336.43 m/s; from memory).
    [Theory]
    [InlineData(0, 288.15, 101325, 1.225000, 340.294, 1.78938e-5, 1.46072e-5, 9.80665)]
    [InlineData(500, 284.9003, 95461.29, 1.167273, 338.3696, 1.773657e-5, 1.519488e-5, 9.805107)]
    [InlineData(1000, 281.6510, 89876.28, 1.111660, 336.4346, 1.757850e-5, 1.581285e-5, 9.803565)]
    [InlineData(2000, 275.1541, 79501.41, 1.006554, 332.5316, 1.725982e-5, 1.714744e-5, 9.800482)]
    [InlineData(3000, 268.6592, 70121.14, 0.9092543, 328.5836, 1.693765e-5, 1.862806e-5, 9.7974)]
    [InlineData(5000, 255.6755, 54048.26, 0.7364286, 320.5454, 1.628248e-5, 2.211006e-5, 9.791241)]
    public void Troposphere_matches_the_tabulated_standard(
        double altitude, double temperature, double pressure, double density, double sound, double viscosity, double kinematic, double gravity)
    {
        AirState air = StandardAtmosphere.At(altitude);

        // The sea-level viscosities are printed to six digits only, hence the second tolerance there.
        double printed = altitude == 0 ? 4e-6 : 1e-6;
        AssertRelative(temperature, air.Temperature, 1e-6);
        AssertRelative(pressure, air.Pressure, 1e-6);
        AssertRelative(density, air.Density, 1e-6);
        AssertRelative(sound, air.SoundSpeed, 1e-6);
        AssertRelative(viscosity, air.Viscosity, printed);
        AssertRelative(kinematic, air.KinematicViscosity, printed);
        AssertRelative(gravity, GravityAt(altitude), 1e-6);
    }

    // Geopotential table of the same standard, evaluated apart from this project. The last row is the layer base that
    // handbooks print from the U.S. Standard Atmosphere 1976; its molar mass (28.9644 against 28.96442 kg/kmol) puts
    // pressures at this level 3e-6 higher.
    [Theory]
    [InlineData(1000, 89874.56, 1.111643, 1e-6)]
    [InlineData(2000, 79495.20, 1.006490, 1e-6)]
    [InlineData(3000, 70108.53, 0.9091219, 1e-6)]
    [InlineData(5000, 54019.89, 0.7361155, 1e-6)]
    [InlineData(11000, 22632.1, 0.363918, 4e-6)]
    public void Geopotential_levels_match_the_tabulated_standard(double geopotential, double pressure, double density, double tolerance)
    {
        AirState air = StandardAtmosphere.At(Geometric(geopotential));

        AssertRelative(pressure, air.Pressure, tolerance);
        AssertRelative(density, air.Density, tolerance);
    }

    [Fact]
    public void Isothermal_layer_heads_for_the_printed_pressure_at_its_top()
    {
        // 5474.89 Pa at 20 km geopotential, 216.65 K throughout (U.S. Standard Atmosphere 1976). The top lies 63 m
        // above the served range, so the pressure there is carried up by the barometric formula of this layer.
        AirState air = StandardAtmosphere.At(StandardAtmosphere.HighestAltitude);
        double below = 20000 - StandardAtmosphere.GeopotentialAltitude(StandardAtmosphere.HighestAltitude);
        double scaleHeight = 287.05287 * 216.65 / 9.80665;

        Assert.InRange(below, 62, 64);
        Assert.Equal(216.65, air.Temperature, 1e-9);
        AssertRelative(5474.89, air.Pressure * Math.Exp(-below / scaleHeight), 4e-6);
    }

    /// <summary>Gravity at a geometric altitude, g_n (r / (r + h))^2: what the standard's geopotential altitude stands for.</summary>
    private static double GravityAt(double altitude)
    {
        double ratio = StandardAtmosphere.EarthRadius / (StandardAtmosphere.EarthRadius + altitude);
        return StandardAtmosphere.StandardGravity * ratio * ratio;
    }

    [Fact]
    public void Pressure_is_in_hydrostatic_balance_across_both_layers()
    {
        // dp/dh = -rho g with the local gravity, checked by central differences: ties gravity, density and the
        // geopotential altitude together without using any formula of the standard.
        for (double h = -1900; h < 19900; h += 37)
        {
            double slope = (StandardAtmosphere.At(h + 1).Pressure - StandardAtmosphere.At(h - 1).Pressure) / 2;
            double weight = StandardAtmosphere.At(h).Density * GravityAt(h);
            AssertRelative(-weight, slope, 1e-6);
        }
    }

    [Fact]
    public void Offset_changes_temperature_and_what_follows_from_it_but_not_pressure()
    {
        AirState standard = StandardAtmosphere.At(1500);
        AirState hot = StandardAtmosphere.At(1500, 20);
        double ratio = hot.Temperature / standard.Temperature;

        Assert.Equal(standard.Temperature + 20, hot.Temperature, 1e-9);
        Assert.Equal(standard.Pressure, hot.Pressure);
        AssertRelative(standard.Density / ratio, hot.Density, 1e-14);
        AssertRelative(standard.SoundSpeed * Math.Sqrt(ratio), hot.SoundSpeed, 1e-14);
        Assert.True(hot.Viscosity > standard.Viscosity);
    }

    [Theory]
    [InlineData(-2000.5)]
    [InlineData(20000.5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Altitude_out_of_range_is_refused_with_value_and_range(double altitude)
    {
        ArgumentOutOfRangeException air = Assert.Throws<ArgumentOutOfRangeException>(() => StandardAtmosphere.At(altitude));

        Assert.Equal("geometricAltitude", air.ParamName);
        Assert.Contains("from -2000 to 20000 m", air.Message, StringComparison.Ordinal);
        Assert.Contains($"{altitude} m", air.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-60.5)]
    [InlineData(61)]
    [InlineData(double.NaN)]
    public void Offset_out_of_range_is_refused_with_value_and_range(double offset)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => StandardAtmosphere.At(0, offset));

        Assert.Equal("temperatureOffset", error.ParamName);
        Assert.Contains("from -60 to 60 K", error.Message, StringComparison.Ordinal);
    }

    // ISO 2533: 15 degrees Celsius at sea level.
    [Theory]
    [InlineData(-60, 228.15)]
    [InlineData(60, 348.15)]
    public void Ends_of_the_offsets_range_are_served(double offset, double temperature) =>
        Assert.Equal(temperature, StandardAtmosphere.At(0, offset).Temperature, 1e-9);

    private static double Geometric(double geopotential) => 6356766 * geopotential / (6356766 - geopotential);

    private static void AssertRelative(double expected, double actual, double tolerance) =>
        Assert.Equal(expected, actual, Math.Abs(expected) * tolerance);
}
