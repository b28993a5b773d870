using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Air;

namespace Simfeel.Studies.Flights;

/// <summary>
/// Finds, while two craft are flown freely, what drills measure one by one: what each did fastest, hardest and furthest. Where
/// there is a metric of the kind, the find has its definition, so a drill flown by hand gives the drill's number. Nothing is
/// found while a craft is disarmed, crashed, touched or short of a rotor. Nothing is allocated but by <see cref="Rows"/>.
/// </summary>
public sealed class FlightFinds
{
    private const double Degree = Math.PI / 180;

    private readonly CraftFinds[] _craft = [new(), new()];

    /// <summary>Takes a reading of the sticks.</summary>
    /// <param name="craft">The craft that flew by it, 0 or 1.</param>
    /// <param name="sample">The craft at that reading.</param>
    /// <param name="sticks">Where the sticks stood.</param>
    /// <param name="condition">How the craft fares.</param>
    /// <param name="period">Time between two readings, s.</param>
    /// <param name="switches">
    /// What holds. While the craft levels itself, letting go of the stick begins a turn instead of ending one; while it holds a climb rate,
    /// the throttle stick is not the throttle.
    /// </param>
    public void Take(int craft, in Sample sample, in Sticks sticks, in CraftCondition condition, double period, PilotSwitches switches) =>
        _craft[craft].Take(sample, sticks, condition, period, switches);

    /// <summary>A craft (0 or 1) was put elsewhere, by a restart or a swap: nothing spans the jump.</summary>
    public void Interrupt(int craft) => _craft[craft].Interrupt();

    /// <summary>Everything found so far, both builds side by side, in the order in which it is shown.</summary>
    public IReadOnlyList<FindRow> Rows() =>
    [
        Row("fastest roll", "deg/s", 0, c => c.Rate.X / Degree, "Fastest roll rate, either way."),
        Row("fastest pitch", "deg/s", 0, c => c.Rate.Y / Degree, "Fastest pitch rate, either way."),
        Row("fastest yaw", "deg/s", 0, c => c.Rate.Z / Degree, "Fastest yaw rate, either way."),
        Row("highest roll acceleration", "deg/s²", 0, c => c.RollAcceleration / Degree, "Highest roll acceleration, either way."),
        Row("sharpest stop", "ms", 0, c => 1000 * c.SharpestStop?.Time, StopMeaning),
        Row("its bounce-back", "deg", 1, c => c.SharpestStop?.BounceBack / Degree, BounceMeaning),
        Row("biggest drop", "m", 1, c => c.Drop.Lost, DropMeaning),
        Row("fastest fall", "m/s", 1, c => c.Drop.Speed, "Fastest sinking in a drop of at least that time."),
        Row("hardest punch", "m", 1, c => c.Punch.Gain, PunchMeaning),
        Row("top speed", "m/s", 1, c => c.Speed, "Fastest speed over the ground, climbing and falling included."),
        Row("highest g", "g", 1, c => c.Load / StandardAtmosphere.StandardGravity, "Largest load, as an accelerometer feels it: 1 g in a hover, 0 g in a free fall."),
        Row("lowest pack voltage", "V", 2, c => c.PackVoltage, "Lowest voltage at the battery's terminals."),
        Row("least torque reserve up", "N m", 3, c => c.ReserveUp, "Least torque that the busiest motor had left over; 0 where one gave all it had."),
        Row("time saturated", "s", 2, c => c.SaturatedTime, "Time in which at least one motor gave all it had, by voltage or by its limits."),
    ];

    private static string StopMeaning =>
        $"From letting go of the roll or pitch stick at {StopFind.LeastRate / Degree:F0} deg/s or more until a tenth of the rate at that moment is left, stick at the centre; none while it levels itself.";

    private static string BounceMeaning =>
        $"Angle turned back after the furthest point of that stop, until the stick moves again, at most {DrillCatalogue.WatchAfterStop:F1} s after letting go.";

    private static string DropMeaning =>
        $"Height lost in one stretch of sinking with the throttle at its lowest (up to {100 * DropFind.Closed:F0} %), {DropFind.LeastTime:F1} s or longer; none while it holds a climb rate.";

    private static string PunchMeaning =>
        $"Height gained in the first second after the throttle is thrown open (above {100 * PunchFind.Open:F0} % within {1000 * PunchFind.OpeningTime:F0} ms, climb or sink at most {PunchFind.LargestClimb:F0} m/s), over what that climb would have given; none while it holds a climb rate.";

    private FindRow Row(string name, string unit, int decimals, Func<CraftFinds, double?> read, string meaning)
    {
        return new(name, unit, Of(_craft[0]), Of(_craft[1]), meaning) { Decimals = decimals };

        double? Of(CraftFinds craft) => craft.Flew ? read(craft) : null;
    }
}
