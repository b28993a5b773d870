using Simfeel.Flight.Drills;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Pilots;

/// <summary>
/// A pilot of flesh and blood as far as numbers go: sees the craft a reaction time late, looks at an aim point ahead on the course, and
/// moves rate sticks and throttle with the thumbs of the profile. The same person for every build: no gain depends on the craft, whose
/// hover throttle is all that is known of it, as a pilot knows it after a minute.
/// </summary>
/// <remarks>
/// Steering towards an aim point: the sideways acceleration 2 v^2 sin(angle to it) / distance leads through it on a circle (S. Park,
/// J. Deyst, J. How, A new nonlinear guidance logic for trajectory tracking, AIAA 2004-4900). From the acceleration wanted follow the
/// direction and size of the thrust, from those attitude and throttle (T. Lee, M. Leok, N. McClamroch, Geometric tracking control of a
/// quadrotor UAV, 2010). What the pilot's own sticks have asked for during the reaction time is known to him before it is seen, as in
/// the predictor of O. J. M. Smith (1957); with it the attitude can be held at a bandwidth that the reaction time alone would not
/// allow (crossover model of D. McRuer: crossover times delay stays well under 1 for all that is only seen).
/// </remarks>
public sealed class VirtualPilot
{
    /// <summary>Time from seeing to moving, s (common practice: simple visual reactions take about 0.2 s).</summary>
    public const double ReactionTime = 0.2;

    /// <summary>Quickness of attitude, speed along and height, rad/s, and of the trims of speed and height, 1/s. Our choice.</summary>
    private const double AttitudeGain = 5, SpeedGain = 1.2, HeightGain = 1.2, SpeedTrimGain = 0.35, ClimbTrimGain = 0.7;

    /// <summary>Largest trims, m/s^2 ahead and upwards.</summary>
    private const double LargestSpeedTrim = 30, LargestClimbTrim = 8;

    private readonly TunedUnit _unit;
    private readonly PilotProfile _profile;
    private readonly ThrottleCurve _throttle;
    private readonly Sight[] _seen;
    private readonly Vec3[] _asked;
    private int _row = -1;
    private double _dragTrim, _climbTrim;

    /// <summary>A pilot at the sticks of a craft that is steady where it starts; he already holds what keeps it so.</summary>
    public VirtualPilot(TunedUnit unit, PilotProfile profile, in DrillStart start)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(profile);
        Vec3 push = unit.Gravity * start.Collective / unit.HoverShare * start.State.q_WB.Rotate(-Vec3.UnitZ);
        (_dragTrim, _climbTrim) = (push.X / Math.Max(1, start.State.v_WB.X), -push.Z - unit.Gravity);
        (_unit, _profile, _throttle) = (unit, profile, unit.Throttle);
        int rows = Rows(ReactionTime), late = Rows(ReactionTime + profile.DisplayDelay);
        _seen = new Sight[late];
        // he makes up for his own reaction, which he knows, and not for a picture that comes later than it seems
        _asked = new Vec3[rows];

        int Rows(double time) => Math.Max(1, (int)Math.Round(time / profile.StickPeriod));
    }

    /// <summary>What is seen: the craft a reaction time and the profile's display delay ago. The first sight is the start.</summary>
    public Sight Seen { get; private set; }

    /// <summary>Moves the sticks for what is to be flown; once for every reading of the sticks.</summary>
    /// <param name="craft">The craft now.</param>
    /// <param name="wish">What is to be flown.</param>
    public Sticks Fly(in Sight craft, in FlightWish wish)
    {
        _row++;
        int slot = _row % _seen.Length;
        bool early = _row < _seen.Length;
        Seen = early ? (_row == 0 ? craft : _seen[0]) : _seen[slot];
        // what was asked for since the sight that is seen now
        Vec3 turned = Vec3.Zero;
        for (int n = 0; n < Math.Min(_row, _asked.Length); n++) turned += _profile.StickPeriod * _asked[n];
        _seen[slot] = craft;

        Quat now = Turn(Seen.q_WB, turned);
        Vec3 velocity = Seen.v_WB + ((early ? 0 : ReactionTime) * Seen.a_WB);
        (Vec3 force, double heading) = Force(wish, velocity, early ? 0 : _profile.StickPeriod);
        Vec3 rate = Rate(now, force, heading, wish.TurnRate);
        // thrust points where the craft does: what it does not push the wanted way yet is not asked for (Lee and others)
        double along = Vec3.Dot(force, now.Rotate(-Vec3.UnitZ));
        double share = Math.Clamp(_unit.HoverShare * along / _unit.Gravity, 0, wish.LargestShare);
        Sticks sticks = new(
            _profile.RollPitch.Deflection(rate.X), _profile.RollPitch.Deflection(rate.Y), _profile.Yaw.Deflection(rate.Z), _throttle.Stick(share));
        _asked[_row % _asked.Length] = _profile.RateFor(sticks);
        return sticks;
    }

    /// <summary>Specific force of the rotors that is wanted, world axes, m/s^2, and where the nose should point, rad.</summary>
    private (Vec3 Force, double Heading) Force(in FlightWish wish, Vec3 velocity, double period)
    {
        Vec3 along = new(Math.Cos(wish.Track), Math.Sin(wish.Track), 0), across = new(-Math.Sin(wish.Track), Math.Cos(wish.Track), 0);
        double tooSlow = wish.Speed - Vec3.Dot(velocity, along), tooLow = Seen.p_WB.Z - wish.Down;
        double forward = SpeedGain * tooSlow, up = (HeightGain * HeightGain * tooLow) + (2 * HeightGain * velocity.Z);
        // trims move only while the pilot is near what he wants, or a run-up would wind them up
        double wished = Math.Max(1, wish.Speed), hold = _dragTrim * wish.Speed;
        if (Math.Abs(forward) < wish.LargestForward)
            _dragTrim = Math.Clamp(_dragTrim + (period * SpeedTrimGain * forward / wished), -LargestSpeedTrim / wished, LargestSpeedTrim / wished);
        _climbTrim = Math.Clamp(_climbTrim + (period * ClimbTrimGain * up), -LargestClimbTrim, LargestClimbTrim);
        double lift = Math.Max(0.2 * _unit.Gravity, _unit.Gravity + up + _climbTrim);
        double ahead = Math.Clamp(forward + hold, -wish.LargestForward, wish.LargestForward);
        // drift across the track that nobody asked for is killed, a turn is asked for
        double side = wish.Sideways - (SpeedGain * Vec3.Dot(velocity, across));

        // height comes first: what is left of the thrust may push sideways and ahead
        double most = wish.LargestShare / _unit.HoverShare * _unit.Gravity;
        double room = Math.Sqrt(Math.Max(0, (most * most) - (lift * lift))), flat = double.Hypot(ahead, side);
        double shrink = flat > room ? room / flat : 1;
        return ((shrink * ahead * along) + (shrink * side * across) + new Vec3(0, 0, -lift), wish.Track);
    }

    /// <summary>Body rates (rad/s) that bring the thrust into a direction and the nose to a heading.</summary>
    private static Vec3 Rate(Quat now, Vec3 force, double heading, double turnRate)
    {
        Vec3 up = force / force.Length;
        Vec3 nose = new(Math.Cos(heading), Math.Sin(heading), 0);
        // wanted body axes in the world: z away from the thrust, x as near the heading as that allows
        Vec3 z = -up;
        Vec3 y = Vec3.Cross(z, nose);
        y /= y.Length;
        Vec3 x = Vec3.Cross(y, z);
        Mat3 wanted = new(x.X, y.X, z.X, x.Y, y.Y, z.Y, x.Z, y.Z, z.Z), r = now.ToMatrix();
        Mat3 error = r.Transpose * wanted;
        // the turn that is left: half the skew part, its size brought back from the sine to the angle
        Vec3 skew = 0.5 * new Vec3(error.M21 - error.M12, error.M02 - error.M20, error.M10 - error.M01);
        double sine = skew.Length, angle = Math.Atan2(sine, (error.Trace - 1) / 2);
        Vec3 left = sine > 1e-9 ? angle / sine * skew : Vec3.Zero;
        return (AttitudeGain * left) + (r.Transpose * new Vec3(0, 0, turnRate));
    }

    /// <summary>An attitude turned on by a rotation vector about body axes.</summary>
    private static Quat Turn(Quat q, Vec3 turned)
    {
        double angle = turned.Length;
        return angle < 1e-9 ? q : q * Quat.FromAxisAngle(turned / angle, angle);
    }
}

/// <summary>What a pilot sees of a craft.</summary>
/// <param name="p_WB">Place of the centre of gravity in the world, m.</param>
/// <param name="v_WB">Its velocity, m/s.</param>
/// <param name="q_WB">Attitude.</param>
/// <param name="a_WB">Its acceleration, m/s^2.</param>
public readonly record struct Sight(Vec3 p_WB, Vec3 v_WB, Quat q_WB, Vec3 a_WB);

/// <summary>What a pilot wants to fly at a moment.</summary>
/// <param name="Track">Direction over ground, from north to east, rad; the nose follows it.</param>
/// <param name="Speed">Speed along the track, m/s.</param>
/// <param name="Down">Place along world z (down) to hold, m.</param>
/// <param name="Sideways">Acceleration to the right of the track that steers, m/s^2.</param>
/// <param name="TurnRate">Turn about the vertical that goes with it, rad/s.</param>
/// <param name="LargestForward">Largest acceleration along the track, ahead and back, m/s^2.</param>
/// <param name="LargestShare">Largest share of full thrust.</param>
public readonly record struct FlightWish(
    double Track, double Speed, double Down, double Sideways, double TurnRate, double LargestForward, double LargestShare);
