namespace Simfeel.Physics.Air;

/// <summary>Still air at one place.</summary>
/// <param name="Temperature">K.</param>
/// <param name="Pressure">Pa.</param>
/// <param name="Density">kg/m^3.</param>
/// <param name="SoundSpeed">m/s.</param>
/// <param name="Viscosity">Dynamic viscosity, Pa s.</param>
public readonly record struct AirState(
    double Temperature,
    double Pressure,
    double Density,
    double SoundSpeed,
    double Viscosity)
{
    /// <summary>Kinematic viscosity, m^2/s.</summary>
    public double KinematicViscosity => Viscosity / Density;
}
