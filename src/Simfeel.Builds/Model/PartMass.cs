using Simfeel.Physics.Mass;

namespace Simfeel.Builds;

/// <summary>What a part belongs to in the mass budget.</summary>
public enum PartKind
{
    /// <summary>Arms, plates, ducts, hardware.</summary>
    Frame,

    /// <summary>Motors.</summary>
    Motors,

    /// <summary>Propellers.</summary>
    Propellers,

    /// <summary>Battery.</summary>
    Battery,

    /// <summary>Electronics on the deck.</summary>
    Electronics,

    /// <summary>Flight camera.</summary>
    Camera,

    /// <summary>Further parts.</summary>
    Extras,

    /// <summary>Wires, solder, straps.</summary>
    Wiring,
}

/// <summary>One part of the mass budget.</summary>
/// <param name="Name">What it is, such as <c>arm 1</c>; rotors are numbered as in the craft, from 1.</param>
/// <param name="Group">What it belongs to.</param>
/// <param name="Mass">Mass (kg), centre (m, from the build's origin) and inertia about that centre (kg m^2), in body axes.</param>
/// <param name="Shape">Its shape, for drawing.</param>
public sealed record PartMass(string Name, PartKind Group, MassProperties Mass, PartShape Shape);
