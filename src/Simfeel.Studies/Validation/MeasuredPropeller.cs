using Simfeel.Physics.Rotors;

namespace Simfeel.Studies.Validation;

/// <summary>A series at one rotor speed.</summary>
internal sealed record Sweep(double Rpm, (double Advance, double Thrust, double Power)[] Points);

/// <summary>
/// A propeller measured in the UIUC wind tunnel. Coefficients as propellers have them: CT = T / (rho n^2 D^4),
/// CP = P / (rho n^3 D^5), J = V / (n D).
/// </summary>
internal sealed record MeasuredPropeller
{
    /// <summary>Its name at the source.</summary>
    public required string Name { get; init; }

    /// <summary>Diameter, m.</summary>
    public required double Diameter { get; init; }

    /// <summary>Nominal pitch, m per turn.</summary>
    public required double Pitch { get; init; }

    public int Blades { get; init; } = 2;

    /// <summary>r/R, c/R, angle of the chord in degrees; empty where nobody measured the blades.</summary>
    public (double Radius, double Chord, double TwistDeg)[] Stations { get; init; } = [];

    /// <summary>Speed, 1/min; CT; CP without airspeed.</summary>
    public required (double Rpm, double Thrust, double Power)[] Static { get; init; }

    /// <summary>Series in axial flow.</summary>
    public Sweep[] Sweeps { get; init; } = [];

    /// <summary>The measured blades with a given section.</summary>
    public RotorGeometry Measured(SectionPolar polar) => new(
        Diameter,
        Blades,
        [.. Stations.Select(s => new BladeStation(s.Radius, s.Chord, RotorRun.Radians(s.TwistDeg)))],
        Stations[0].Radius,
        polar);

    /// <summary>What Simfeel takes when only diameter, pitch and number of blades are known.</summary>
    public RotorGeometry BySize => RotorGeometry.FromPitch(Diameter, Pitch, Blades);
}
