using Simfeel.Physics.Rotors;

namespace Simfeel.Builds;

/// <summary>One propeller type; every motor carries the same, mirrored where it turns the other way.</summary>
/// <param name="Body">Mass and inertia.</param>
/// <param name="Blades">Shape, which decides the aerodynamics.</param>
public sealed record PropellerSpec(PropellerBody Body, PropellerBlades Blades);

/// <summary>Mass properties of a propeller.</summary>
public sealed record PropellerBody
{
    /// <summary>Mass, kg; 3e-5 to 0.3; estimated from diameter and blades.</summary>
    public required double Mass { get; init; }

    /// <summary>Spin inertia about the shaft, kg m^2; 1e-10 to 0.1; estimated from the planform.</summary>
    public required double SpinInertia { get; init; }
}

/// <summary>Aerodynamic shape of a propeller. Compared by value, stations and polar included.</summary>
public sealed record PropellerBlades
{
    /// <summary>Diameter, m; 0.02 to 0.508.</summary>
    public required double Diameter { get; init; }

    /// <summary>Geometric pitch, m per turn; 0.005 to 0.508. With <see cref="Stations"/> a label only.</summary>
    public required double Pitch { get; init; }

    /// <summary>Number of blades; 2 to 8.</summary>
    public required int Count { get; init; }

    /// <summary>Blade width over that of a usual blade; 0.4 to 2.5, default 1. Without effect where <see cref="Stations"/> are given.</summary>
    public required double ChordScale { get; init; }

    /// <summary>Measured over modelled thrust; 0.5 to 1.5, default 1.</summary>
    public required double ThrustFactor { get; init; }

    /// <summary>Measured over modelled torque; 0.5 to 1.5, default 1.</summary>
    public required double TorqueFactor { get; init; }

    /// <summary>Measured chord and twist, in place of pitch and the usual planform; null where the file gives none.</summary>
    public BladeStations? Stations { get; init; }

    /// <summary>The blade's own section; null for <see cref="LowReynoldsPolar"/>.</summary>
    public TabulatedPolar? Polar { get; init; }

    /// <summary>The shape as the aerodynamics takes it; the factors from a thrust stand are not in it.</summary>
    public RotorGeometry Geometry() => Stations is BladeStations stations
        ? new(Diameter, Count, stations.Items, stations[0].Radius, (SectionPolar?)Polar ?? LowReynoldsPolar.Instance)
        : RotorGeometry.FromPitch(Diameter, Pitch, Count, ChordScale, Polar);
}
