using Simfeel.Physics;
using Simfeel.Physics.Kernel;

namespace Simfeel.Flight.Drills;

/// <summary>What a flight left behind: sticks and samples at every stick reading, the first at time 0.</summary>
public sealed class FlightLog
{
    /// <summary>Name of the drill.</summary>
    public required string Drill { get; init; }

    /// <summary>What flew.</summary>
    public required TunedUnit Unit { get; init; }

    /// <summary>Who flew.</summary>
    public required PilotProfile Profile { get; init; }

    /// <summary>Where it flew.</summary>
    public required FieldConditions Field { get; init; }

    /// <summary>Share of full stick, 0.25 to 1.</summary>
    public required double Effort { get; init; }

    /// <summary>Time between rows, s.</summary>
    public double Period => Profile.StickPeriod;

    /// <summary>Samples, each evaluated at its own state, in rows.</summary>
    public required LogRows Samples { get; init; }

    /// <summary>Where the sticks stood at each row.</summary>
    public required IReadOnlyList<Sticks> Sticks { get; init; }

    /// <summary>The same flight in memory of its own, loads left out: little enough to keep many of.</summary>
    public FlightLog StatesOnly() => new()
    {
        Drill = Drill,
        Unit = Unit,
        Profile = Profile,
        Field = Field,
        Effort = Effort,
        Samples = Samples.StatesOnly(),
        Sticks = [.. Sticks],
        TouchesGround = TouchesGround,
    };

    /// <summary>Hash over the state at every row, for the determinism contract. Worked out anew at every call.</summary>
    public ulong Hash()
    {
        bool inflow = (Field.Effects & AirEffects.DynamicInflow) != 0;
        ulong hash = StateHash.Start;
        foreach (LogRow sample in Samples) hash = StateBlock.Mix(hash, sample.State, Unit.Unit.Craft.Rotors.Count, inflow);
        return hash;
    }

    /// <summary>Whether the craft touched the ground, with a propeller or anything else: from there on it was not the drill's flight.</summary>
    public bool TouchesGround { get; init; }

    /// <summary>Time of a row, s.</summary>
    public double TimeOf(int row) => row * Period;
}
