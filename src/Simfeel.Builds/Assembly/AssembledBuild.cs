using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds;

/// <summary>A build put together in some air, ready to fly.</summary>
public sealed record AssembledBuild
{
    /// <summary>What it was made of.</summary>
    public required Build Build { get; init; }

    /// <summary>The air that the rotor tables were computed for.</summary>
    public required AirState Air { get; init; }

    /// <summary>Constants for the flight kernel; body axes from the centre of gravity.</summary>
    public required Craft Craft { get; init; }

    /// <summary>Every part with its mass, place from the build's origin, and shape. Their sum is the craft but for measured balance and inertia.</summary>
    public required IReadOnlyList<PartMass> Parts { get; init; }

    /// <summary>Centre of gravity from the build's origin, body axes, m.</summary>
    public required Vec3 p_OBcm { get; init; }

    /// <summary>What flight control needs to know.</summary>
    public required FlightHardware Hardware { get; init; }

    /// <summary>Every number of the build with its provenance; those with <see cref="BuildValue.FilledIn"/> were not in the file.</summary>
    public IReadOnlyList<BuildValue> Values => Build.Values;
}
