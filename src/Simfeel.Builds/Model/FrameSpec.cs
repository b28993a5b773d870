using Simfeel.Physics.Maths;

namespace Simfeel.Builds;

/// <summary>A motor mount.</summary>
/// <param name="p_OM">Where the motor stands on the arm's middle plane, from the build's origin O, body axes, m.</param>
/// <param name="Spin">+1 where the propeller turns clockwise seen from above, -1 where it turns the other way.</param>
public readonly record struct MotorMount(Vec3 p_OM, int Spin);

/// <summary>
/// Arms and plates. The build's origin O is the centre of the bottom plate, in the arms' middle plane; body axes x
/// forward, y right, z down.
/// </summary>
public sealed record FrameSpec
{
    /// <summary>Layout word of the file, such as <c>square</c>; <c>explicit</c> where positions were given.</summary>
    public required string Layout { get; init; }

    /// <summary>Motor mounts, 3 to 8.</summary>
    public required IReadOnlyList<MotorMount> Mounts { get; init; }

    /// <summary>Distance between opposite motor shafts, m; 0.04 to 1.5. With explicit positions twice the mean radius.</summary>
    public required double Wheelbase { get; init; }

    /// <summary>Arm width, m; 0.001 to 0.08; estimated from the wheelbase.</summary>
    public required double ArmWidth { get; init; }

    /// <summary>Arm thickness, m; 0.0005 to 0.03; estimated from the wheelbase.</summary>
    public required double ArmThickness { get; init; }

    /// <summary>Density of arms and plates, kg/m^3; 500 to 3000, default 1580.</summary>
    public required double MaterialDensity { get; init; }

    /// <summary>Bottom plate length along x, m; 0.01 to 0.8; estimated from the wheelbase.</summary>
    public required double PlateLength { get; init; }

    /// <summary>Bottom plate width along y, m; 0.008 to 0.5; estimated from the wheelbase.</summary>
    public required double PlateWidth { get; init; }

    /// <summary>Bottom plate thickness, m; 0.0003 to 0.02; estimated from the arm.</summary>
    public required double PlateThickness { get; init; }

    /// <summary>Bottom plate mass, kg; 0.0001 to 3; estimated from its volume.</summary>
    public required double PlateMass { get; init; }

    /// <summary>Top plate thickness, m; 0 (none) to 0.02.</summary>
    public required double TopPlateThickness { get; init; }

    /// <summary>Top plate mass, kg; 0 to 2; estimated from its volume.</summary>
    public required double TopPlateMass { get; init; }

    /// <summary>Height between the plates, m; 0 to 0.2; estimated from the wheelbase.</summary>
    public required double DeckHeight { get; init; }

    /// <summary>Screws, standoffs and mounts, kg; 0 to 1; estimated from the plates.</summary>
    public required double HardwareMass { get; init; }

    /// <summary>Mass of one duct or guard ring, kg; 0 (none, default) to 0.2.</summary>
    public required double DuctMass { get; init; }

    /// <summary>Inner diameter of a duct, m; the propeller's with a gap of 2 %.</summary>
    public required double DuctDiameter { get; init; }

    /// <summary>Height of a duct, m; 0.001 to 0.15.</summary>
    public required double DuctHeight { get; init; }
}
