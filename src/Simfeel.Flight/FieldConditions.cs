using Simfeel.Physics;

namespace Simfeel.Flight;

/// <summary>
/// What the field does to every craft that flies there, the same for all that are compared. Still air unless there is wind;
/// printed with every result.
/// </summary>
public sealed record FieldConditions
{
    /// <summary>
    /// Height above the ground at which a drill starts unless told otherwise, m: out of the ground's reach, and further up than
    /// any drill falls.
    /// </summary>
    public const double FreeHeight = 200;

    /// <summary>Effects of moving air on the rotors beyond their steady loads.</summary>
    public AirEffects Effects { get; init; } = AirEffects.All;

    /// <summary>Seed of all that is random: the noise of wakes. Every craft meets the same numbers.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>
    /// Mean wind at <see cref="Physics.Air.DrydenGusts.ReferenceHeight"/> above the ground, m/s, with the gusts that go with it; 0 for
    /// still air.
    /// </summary>
    public double WindSpeed { get; init; }

    /// <summary>Where the wind comes from, from north towards east, rad.</summary>
    public double WindFrom { get; init; }

    /// <summary>
    /// Height of the start (the craft's centre of gravity) above flat ground, m.
    /// </summary>
    public double StartHeight { get; init; } = FreeHeight;
}
