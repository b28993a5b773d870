using Simfeel.Physics;

namespace Simfeel.Flight.Drills;

/// <summary>What a flight left behind: sticks and samples at every stick reading, the first at time 0.</summary>
public sealed class FlightLog
{
    /// <summary>A log.</summary>
    public FlightLog(
        string drill, TunedUnit unit, PilotProfile profile, double effort, Sample[] samples, Sticks[] sticks, ulong hash)
    {
        (Drill, Unit, Profile, Effort, Samples, Sticks, Hash) = (drill, unit, profile, effort, samples, sticks, hash);
    }

    /// <summary>Name of the drill.</summary>
    public string Drill { get; }

    /// <summary>What flew.</summary>
    public TunedUnit Unit { get; }

    /// <summary>Who flew.</summary>
    public PilotProfile Profile { get; }

    /// <summary>Share of full stick, 0.25 to 1.</summary>
    public double Effort { get; }

    /// <summary>Time between rows, s.</summary>
    public double Period => Profile.StickPeriod;

    /// <summary>Samples, each evaluated at its own state.</summary>
    public IReadOnlyList<Sample> Samples { get; }

    /// <summary>Where the sticks stood at each row.</summary>
    public IReadOnlyList<Sticks> Sticks { get; }

    /// <summary>Hash over the state at every row, for the determinism contract.</summary>
    public ulong Hash { get; }

    /// <summary>Time of a row, s.</summary>
    public double TimeOf(int row) => row * Period;
}
