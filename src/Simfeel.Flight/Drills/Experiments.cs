using Simfeel.Flight.Pilots;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Drills;

/// <summary>
/// Drills that show one law of motion each, for lessons. Unlike the others they take numbers of their own; all of them go on as they
/// start for <see cref="Drill.LeadIn"/>, if they start steady.
/// </summary>
public static class Experiments
{
    /// <summary>Time that <c>push</c> watches after the stick is let go, s.</summary>
    public const double WatchAfterPush = 0.4;

    /// <summary>Upward speed with which <c>tumble</c> throws the craft, m/s: it comes back to the height of the hand after 1.6 s.</summary>
    public const double ThrowSpeed = 8;

    /// <summary>Share of the spin that <c>tumble</c> gives the next axis, since nobody throws without a wobble.</summary>
    public const double Wobble = 0.02;

    /// <summary>Throttle stick for each m/s by which <c>sink</c> sinks too fast.</summary>
    private const double SinkThrottle = 0.05;

    /// <summary>One stick held over for a time, then let go.</summary>
    /// <param name="axis">0 roll, 1 pitch, 2 yaw.</param>
    /// <param name="hold">Time that it is held, s.</param>
    public static Drill Push(int axis, double hold) => new(
        "push", "One stick held over for a moment, then let go: how the craft starts to turn.", Drill.LeadIn + hold + WatchAfterPush,
        (hover, effort) => view =>
        {
            double over = view.Time >= Drill.LeadIn && view.Time < Drill.LeadIn + hold ? effort : 0;
            return new(axis == 0 ? over : 0, axis == 1 ? over : 0, axis == 2 ? over : 0, hover);
        });

    /// <summary>Held tilted and let go with the sticks in the middle.</summary>
    /// <param name="axis">0 roll, 1 pitch.</param>
    /// <param name="tilt">Angle from level, rad.</param>
    public static Drill Release(int axis, double tilt) => new(
        "release", "Let go tilted with the sticks in the middle: whether it rights itself.", 1.5, (hover, _) => _ => new(0, 0, 0, hover))
    {
        Upset = (_, start) => start with
        {
            State = start.State with { q_WB = Quat.FromAxisAngle(axis == 0 ? Vec3.UnitX : Vec3.UnitY, tilt) },
        },
    };

    /// <summary>Thrown upwards spinning with the motors off.</summary>
    /// <param name="axis">Body axis that it spins about: 0 roll, 1 pitch, 2 yaw.</param>
    /// <param name="spin">Rate, rad/s.</param>
    public static Drill Tumble(int axis, double spin) => new(
        "tumble", "Thrown up spinning with the motors off: whether it keeps its axis.", 2 * ThrowSpeed / StandardAtmosphere.StandardGravity, (_, _) => _ => default)
    {
        MotorsOff = true,
        Upset = (_, start) => start with
        {
            State = start.State with
            {
                v_WB = new(0, 0, -ThrowSpeed),
                w_WB_B = Spun(axis, spin),
                RotorSpeeds = default,
                InducedVelocities = default,
                PairVoltage = 0,
            },
            Duty = default,
        },
    };

    /// <summary>A steady descent, straight down or while flying ahead.</summary>
    /// <param name="speed">Speed ahead at the start, m/s; it keeps its attitude.</param>
    /// <param name="sink">Sink speed, m/s, reached in the first second.</param>
    public static Drill Sink(double speed, double sink) => new(
        "sink", "Sinking at one speed, straight or while flying ahead: how it is shaken in its own wake.", Drill.LeadIn + 4,
        start =>
        {
            double level = start.Unit.Throttle.Stick(start.Begin.Collective);
            return view =>
            {
                double wanted = sink * Math.Clamp(view.Time - Drill.LeadIn, 0, 1);
                double error = view.Sample.State.v_WB.Z - wanted;
                return new(0, 0, 0, Math.Clamp(level + (SinkThrottle * error), 0, 1));
            };
        })
    { StartSpeed = _ => speed };

    /// <summary>Full throttle while it already climbs.</summary>
    /// <param name="speed">Climb at the start, m/s.</param>
    public static Drill Climb(double speed) => new(
        "climb", "Full throttle while it already climbs: what is left of the thrust.", Drill.LeadIn + 0.4,
        (hover, effort) => view => new(0, 0, 0, view.Time < Drill.LeadIn ? hover : hover + (effort * (1 - hover))))
    {
        Upset = (_, start) => start with { State = start.State with { v_WB = new(0, 0, -speed) } },
    };

    /// <summary>Steady level flight at any speed; hover at 0.</summary>
    /// <param name="speed">m/s.</param>
    public static Drill Level(double speed) => new(
        "level", "Steady level flight at one speed: what it takes.", Drill.LeadIn + 2,
        start =>
        {
            VirtualPilot pilot = new(start.Unit, start.Profile, start.Begin);
            return view => pilot.Fly(view.Sample.Sight, CourseDrills.Straight(speed));
        })
    { FeelsLoads = true, StartSpeed = _ => speed };

    /// <summary>A spin about one body axis with a little of the next.</summary>
    private static Vec3 Spun(int axis, double spin)
    {
        double[] rates = new double[3];
        rates[axis] = spin;
        rates[(axis + 1) % 3] = Wobble * spin;
        return new(rates[0], rates[1], rates[2]);
    }
}
