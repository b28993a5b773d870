namespace Simfeel.Physics.Air;

/// <summary>
/// The standard atmosphere of ISO 2533:1975 (below 20 km the U.S. Standard Atmosphere 1976 to a few parts in a million): troposphere
/// with a constant lapse rate and the isothermal layer above it, in hydrostatic balance. For setting up a flight; it
/// uses the platform's power and exponential, so it does not belong in the step.
/// </summary>
public static class StandardAtmosphere
{
    /// <summary>Standard gravity g_n, m/s^2 (ISO 2533; by definition).</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>Sea-level temperature, K (ISO 2533).</summary>
    public const double SeaLevelTemperature = 288.15;

    /// <summary>Sea-level pressure, Pa (ISO 2533).</summary>
    public const double SeaLevelPressure = 101325;

    /// <summary>Specific gas constant of dry air, J/(kg K) (ISO 2533).</summary>
    public const double GasConstant = 287.05287;

    /// <summary>Ratio of specific heats (ISO 2533).</summary>
    public const double HeatRatio = 1.4;

    /// <summary>Nominal Earth radius that turns geometric into geopotential altitude, m (ISO 2533).</summary>
    public const double EarthRadius = 6356766;

    /// <summary>Lowest geometric altitude served, m: the lower end of ISO 2533.</summary>
    public const double LowestAltitude = -2000;

    /// <summary>Highest geometric altitude served, m; the isothermal layer ends at 20 km geopotential, a little above.</summary>
    public const double HighestAltitude = 20000;

    /// <summary>Largest temperature offset served either way, K: wider than any weather.</summary>
    public const double LargestTemperatureOffset = 60;

    private const double LapseRate = -0.0065; // K/m of geopotential altitude
    private const double TropopauseAltitude = 11000; // m, geopotential
    private const double TropopauseTemperature = SeaLevelTemperature + (LapseRate * TropopauseAltitude);

    // Sutherland's law in the form of ISO 2533, table of primary constants.
    private const double SutherlandCoefficient = 1.458e-6; // kg/(m s K^0.5)
    private const double SutherlandTemperature = 110.4; // K

    /// <summary>Air at an altitude on a standard or on a warmer or colder day.</summary>
    /// <param name="geometricAltitude">Height above mean sea level, m; <see cref="LowestAltitude"/> to <see cref="HighestAltitude"/>.</param>
    /// <param name="temperatureOffset">
    /// Added to the standard temperature, K. The pressure stays that of the standard day and density, sound speed and
    /// viscosity follow (common practice in performance charts, "ISA + 20").
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">Altitude or offset lies outside its range.</exception>
    public static AirState At(double geometricAltitude, double temperatureOffset = 0)
    {
        CheckAltitude(geometricAltitude);
        if (!(Math.Abs(temperatureOffset) <= LargestTemperatureOffset))
        {
            throw new ArgumentOutOfRangeException(
                nameof(temperatureOffset),
                temperatureOffset,
                $"The temperature offset must be from {-LargestTemperatureOffset} to {LargestTemperatureOffset} K, but is {temperatureOffset} K.");
        }

        double altitude = GeopotentialAltitude(geometricAltitude);
        double standardTemperature = SeaLevelTemperature + (LapseRate * Math.Min(altitude, TropopauseAltitude));
        double pressure = SeaLevelPressure * Math.Pow(standardTemperature / SeaLevelTemperature, -StandardGravity / (GasConstant * LapseRate));
        if (altitude > TropopauseAltitude)
            pressure *= Math.Exp(-StandardGravity * (altitude - TropopauseAltitude) / (GasConstant * TropopauseTemperature));

        double temperature = standardTemperature + temperatureOffset;
        return new(
            temperature,
            pressure,
            pressure / (GasConstant * temperature),
            Math.Sqrt(HeatRatio * GasConstant * temperature),
            Viscosity(temperature));
    }

    /// <summary>Geopotential altitude H = r h / (r + h) of a geometric altitude h, both m.</summary>
    public static double GeopotentialAltitude(double geometricAltitude) =>
        EarthRadius * geometricAltitude / (EarthRadius + geometricAltitude);

    /// <summary>Dynamic viscosity of air, Pa s, at a temperature above 0 K: Sutherland's law, 1.458e-6 T^1.5 / (T + 110.4).</summary>
    public static double Viscosity(double temperature) =>
        SutherlandCoefficient * temperature * Math.Sqrt(temperature) / (temperature + SutherlandTemperature);

    private static void CheckAltitude(double geometricAltitude)
    {
        if (geometricAltitude is >= LowestAltitude and <= HighestAltitude) return;
        throw new ArgumentOutOfRangeException(
            nameof(geometricAltitude),
            geometricAltitude,
            $"The altitude must be from {LowestAltitude} to {HighestAltitude} m, but is {geometricAltitude} m.");
    }
}
