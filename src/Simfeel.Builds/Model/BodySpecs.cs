using Simfeel.Physics.Maths;

namespace Simfeel.Builds;

/// <summary>Electronics on the deck, and the wiring between everything.</summary>
public sealed record StackSpec
{
    /// <summary>Mass of speed controllers, flight controller, receiver and video transmitter, kg; 0.0003 to 2.</summary>
    public required double Mass { get; init; }

    /// <summary>Length, width, height, m; estimated from the mass.</summary>
    public required Vec3 Size { get; init; }

    /// <summary>Centre from the build's origin, body axes, m.</summary>
    public required Vec3 p_OC { get; init; }

    /// <summary>Power drawn all the time, W; 0.05 to 300; estimated from the mass.</summary>
    public required double Power { get; init; }

    /// <summary>Wires, solder, straps, spread near the centre, kg; what a weighed all-up mass leaves over, else estimated.</summary>
    public required double WiringMass { get; init; }
}

/// <summary>The flight camera.</summary>
public sealed record CameraSpec
{
    /// <summary>Mass, kg; 0 (none, default) to 2.</summary>
    public required double Mass { get; init; }

    /// <summary>Edge of the cube that stands for it, m; estimated from the mass.</summary>
    public required double Size { get; init; }

    /// <summary>Centre from the build's origin, body axes, m.</summary>
    public required Vec3 p_OC { get; init; }

    /// <summary>How far it looks up from level, rad; default 25 degrees.</summary>
    public required double Tilt { get; init; }
}

/// <summary>Any further part.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Mass">kg; 1e-5 to 20.</param>
/// <param name="Shape">Shape, size, place and attitude.</param>
public sealed record ExtraSpec(string Name, double Mass, PartShape Shape);

/// <summary>Drag of the body, rotors apart.</summary>
public sealed record DragSpec
{
    /// <summary>Drag coefficient times area for flow along x, y, z, m^2; estimated from the parts.</summary>
    public required Vec3 Area { get; init; }

    /// <summary>Point where it acts, from the build's origin, body axes, m; estimated from the parts.</summary>
    public required Vec3 p_OD { get; init; }
}

/// <summary>The gyro's filter.</summary>
public sealed record GyroSpec
{
    /// <summary>Cut-off of the low-pass filter, Hz; 5 to 4000, default 150.</summary>
    public required double LowPass_Hz { get; init; }
}

/// <summary>
/// What was measured on the finished craft beyond its mass, as the difference to the sum of the parts, so that it can
/// be carried over to a hybrid.
/// </summary>
public sealed record MeasuredSpec
{
    /// <summary>Added to the computed centre of gravity, m; zero where none was measured.</summary>
    public Vec3 BalanceShift { get; init; }

    /// <summary>Added to the computed Ixx, Iyy, Izz about the centre of gravity, kg m^2; zero where none was measured.</summary>
    public Vec3 InertiaShift { get; init; }
}
