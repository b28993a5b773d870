using Simfeel.Flight.Pilots;

namespace Simfeel.Flight.Drills;

/// <summary>
/// Drills over the ground, flown by the <see cref="VirtualPilot"/>, who knows the course and so begins it in time. All but
/// <see cref="Dash"/> start in steady level flight to the north.
/// </summary>
public static class CourseDrills
{
    /// <summary>Speed at which <c>brake</c> and <c>turn</c> begin, m/s.</summary>
    public const double Speed = 12;

    /// <summary>Spacing of the slalom's poles along the course and how far to the side the course passes each, m.</summary>
    public const double PoleSpacing = 20, PoleOffset = 2;

    /// <summary>Poles of the slalom, the first a spacing after the lead-in.</summary>
    public const int Poles = 4;

    /// <summary>Largest push ahead while a speed is held, m/s^2: well over what any starter build's drag asks for.</summary>
    private const double LargestAcceleration = 30;

    private const double Degree = Math.PI / 180;

    /// <summary>From hover as fast as it goes, level.</summary>
    public static Drill Dash { get; } = new(
        "dash", "From hover into level flight at full throttle: how fast it gets going.", Drill.LeadIn + 5,
        start =>
        {
            VirtualPilot pilot = Pilot(start);
            double share = start.Unit.HoverShare + (start.Effort * (1 - start.Unit.HoverShare));
            // as much tilt as holding the height leaves
            return view => pilot.Fly(view.Sample.Sight, view.Time < Drill.LeadIn ? Straight(0) : new(0, 1000, 0, 0, 0, 1000, share));
        })
    { FeelsLoads = true };

    /// <summary>From <see cref="Speed"/> to standing.</summary>
    public static Drill Brake { get; } = new(
        "brake", "From level flight to standing: how soon and in how many metres it stops.", Drill.LeadIn + 4.5,
        start =>
        {
            VirtualPilot pilot = Pilot(start);
            double hardest = HardestBrake(start.Effort, start.Unit.Gravity);
            return view => pilot.Fly(view.Sample.Sight, view.Time < Drill.LeadIn ? Straight(Speed) : Straight(0) with { LargestForward = hardest });
        })
    { FeelsLoads = true, StartSpeed = _ => Speed };

    /// <summary>Half a circle at <see cref="Speed"/>, level, banked by 25 degrees and 40 more at full effort.</summary>
    public static Drill Turn { get; } = new(
        "turn", "Half a circle in level flight: how tight and how level it turns.", Drill.LeadIn + 6.5,
        start =>
        {
            // some of the bank is kept back to come back onto the line
            double most = Math.Min(Bank(start.Effort) + (10 * Degree), 75 * Degree);
            return Along(start, Speed, new(HalfCircle(Speed * Drill.LeadIn, TurnRadius(start.Effort, start.Unit.Gravity)), most));
        })
    { FeelsLoads = true, StartSpeed = _ => Speed };

    /// <summary>Left and right of a row of poles, 9 m/s and 3 more at full effort.</summary>
    public static Drill Slalom { get; } = new(
        "slalom", "Left and right through a row of poles: how closely it follows the line.", Drill.LeadIn + 10,
        start => Along(start, SlalomSpeed(start.Effort), new(SlalomCourse(SlalomStart(start.Effort)), 65 * Degree)))
    { FeelsLoads = true, StartSpeed = SlalomSpeed };

    /// <summary>Steady level flight at 5 m/s and 10 more at full effort.</summary>
    public static Drill Cruise { get; } = new(
        "cruise", "Steady level flight: what a kilometre costs.", Drill.LeadIn + 3,
        start =>
        {
            VirtualPilot pilot = Pilot(start);
            double speed = CruiseSpeed(start.Effort);
            return view => pilot.Fly(view.Sample.Sight, Straight(speed));
        })
    { FeelsLoads = true, StartSpeed = CruiseSpeed };

    /// <summary>All of them, in the order in which results are shown.</summary>
    public static IReadOnlyList<Drill> All { get; } = [Dash, Brake, Turn, Slalom, Cruise];

    /// <summary>Speed of <c>cruise</c> at a stick effort, m/s.</summary>
    public static double CruiseSpeed(double effort) => 5 + (10 * effort);

    /// <summary>Speed of <c>slalom</c> at a stick effort, m/s.</summary>
    public static double SlalomSpeed(double effort) => 8 + (4 * effort);

    /// <summary>Bank of <c>turn</c> at a stick effort, rad.</summary>
    public static double Bank(double effort) => (25 + (40 * effort)) * Degree;

    /// <summary>Radius of <c>turn</c>, m: of a level turn at that bank, v^2 / (g tan bank) (any handbook of flight mechanics).</summary>
    public static double TurnRadius(double effort, double gravity) => Speed * Speed / (gravity * Math.Tan(Bank(effort)));

    /// <summary>Where the slalom's course begins, m to the north of the start.</summary>
    public static double SlalomStart(double effort) => SlalomSpeed(effort) * Drill.LeadIn;

    /// <summary>Largest braking of <c>brake</c> at a stick effort, m/s^2: a tilt of 60 degrees in still air at full effort, in proportion below.</summary>
    public static double HardestBrake(double effort, double gravity) => effort * gravity * Math.Tan(60 * Degree);

    /// <summary>Sideways place of the slalom's course at a distance behind its start, m.</summary>
    public static double SlalomLine(double along) =>
        along < 0 || along > (Poles + 1) * PoleSpacing ? 0 : PoleOffset * Math.Sin(Math.PI * along / PoleSpacing) * Math.Min(1, Math.Min(along, ((Poles + 1) * PoleSpacing) - along) / (PoleSpacing / 2));

    private static VirtualPilot Pilot(in ScriptStart start) => new(start.Unit, start.Profile, start.Begin);

    /// <summary>Straight to the north at a speed (m/s) and at the height of the start.</summary>
    internal static FlightWish Straight(double speed) => new(0, speed, 0, 0, 0, LargestAcceleration, 1);

    /// <summary>Straight on for the lead-in, then along a course.</summary>
    private static Func<PilotView, Sticks> Along(in ScriptStart start, double speed, Steering steering)
    {
        VirtualPilot pilot = Pilot(start);
        double gravity = start.Unit.Gravity;
        return view =>
        {
            if (view.Time < Drill.LeadIn) return pilot.Fly(view.Sample.Sight, Straight(speed));
            (double track, double sideways, double turnRate) = steering.Towards(pilot.Seen, gravity);
            return pilot.Fly(view.Sample.Sight, Straight(speed) with { Track = track, Sideways = sideways, TurnRate = turnRate });
        };
    }

    private static (double X, double Y)[] HalfCircle(double x, double radius)
    {
        const int corners = 24;
        return
        [
            (x - 1, 0),
            .. Enumerable.Range(0, corners + 1).Select(n => Math.PI * n / corners).Select(angle =>
                (x + (radius * Math.Sin(angle)), radius * (1 - Math.Cos(angle)))),
            (x - 1000, 2 * radius),
        ];
    }

    private static (double X, double Y)[] SlalomCourse(double x)
    {
        const int corners = 12 * (Poles + 1);
        const double length = (Poles + 1) * PoleSpacing;
        return
        [
            .. Enumerable.Range(0, corners + 1).Select(n => length * n / corners).Select(along => (x + along, SlalomLine(along))),
            (x + length + 1000, 0),
        ];
    }
}
