using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Lessons;

namespace Simfeel.Cockpit.Stage;

/// <summary>The flights of a lesson shown beside each other, at one moment of both, and the eye that looks at them.</summary>
internal sealed class LessonStage
{
    /// <summary>Flights shorter than this are shown slowly at first, s.</summary>
    private const double Short = 2.5;

    /// <summary>Time that the end stays before it begins again, s of wall time.</summary>
    private const double Rest = 1.2;

    /// <summary>Least height over the ground, m.</summary>
    private const double Clearance = 4;

    /// <summary>Direction from the craft to the eye, from north towards east, and its height over their level, rad.</summary>
    private const double Azimuth = 158 * Math.PI / 180, Elevation = 14 * Math.PI / 180;

    private const double FieldOfView = 38 * Math.PI / 180;

    private readonly LessonFlight[] _flights;
    private readonly PerRotor[][] _angles;
    private readonly Vec3[] _starts;
    private readonly CraftPose[] _poses = new CraftPose[2];
    private readonly double _width;
    private int _speed;
    private double _rested;

    /// <summary>A stage for what came out of a lesson.</summary>
    public LessonStage(LessonResult result)
    {
        _flights = [result.A, result.B];
        _angles = [.. _flights.Select(Angles)];
        double[] reach = [.. _flights.Select(flight => ViewRig.Reach(flight.Assembled))];
        _width = 2.4 * (reach[0] + reach[1]);
        double lowest = _flights.Max(flight => flight.Log.Samples.Max(sample => sample.State.p_WB.Z));
        double height = Math.Max(lowest, 0) + Clearance;
        _starts = [new(0, -0.6 * (reach[0] + reach[1]), -height), new(0, 0.6 * (reach[0] + reach[1]), -height)];
        _speed = Length < Short ? 1 : FlightClock.Speeds.Count - 1;
    }

    /// <summary>Length of the flights, s.</summary>
    public double Length => LengthOf(_flights);

    /// <summary>Length of flights that are shown together, s: that of the shortest.</summary>
    public static double LengthOf(params IEnumerable<LessonFlight> flights) => flights.Min(flight => (flight.Log.Samples.Count - 1) * flight.Log.Period);

    /// <summary>The moment, s.</summary>
    public double Time { get; private set; }

    /// <summary>Whether both flights were seen to their end, or their result was asked for.</summary>
    public bool Seen { get; set; }

    /// <summary>Whether time goes on.</summary>
    public bool Plays { get; set; } = true;

    /// <summary>Speed of time.</summary>
    public double Speed => FlightClock.Speeds[_speed];

    /// <summary>Whether masses and arrows are shown.</summary>
    public bool ShowsMasses { get; set; }

    /// <summary>A craft as it was put together.</summary>
    public Builds.AssembledBuild Assembled(int craft) => _flights[craft].Assembled;

    /// <summary>Next speed of time, round and round.</summary>
    public void NextSpeed() => _speed = (_speed + 1) % FlightClock.Speeds.Count;

    /// <summary>Shows another moment and holds it.</summary>
    public void Seek(double time)
    {
        Time = Math.Clamp(time, 0, Length);
        Plays = false;
    }

    /// <summary>Lets wall time (s) pass; after the end it begins again.</summary>
    public void Advance(double seconds)
    {
        if (!Plays) return;
        if (Time >= Length)
        {
            _rested += seconds;
            if (_rested < Rest) return;
            (_rested, Time) = (0, 0);
            return;
        }
        Time = Math.Min(Length, Time + (seconds * Speed));
        Seen |= Time >= Length;
    }

    /// <summary>Poses of both craft at this moment.</summary>
    public ReadOnlySpan<CraftPose> Poses()
    {
        for (int craft = 0; craft < 2; craft++)
        {
            FlightLog log = _flights[craft].Log;
            int row = Math.Clamp((int)Math.Round(Time / log.Period), 0, log.Samples.Count - 1);
            Sample sample = log.Samples[row];
            _poses[craft] = new()
            {
                p_WB = sample.State.p_WB + _starts[craft],
                q_WB = sample.State.q_WB,
                RotorSpeeds = sample.State.RotorSpeeds,
                RotorAngles = _angles[craft][row],
                Thrust = sample.Thrust,
                Opacity = 1,
            };
        }
        return _poses;
    }

    /// <summary>An eye behind and beside the two that holds both in the picture.</summary>
    /// <param name="poses">Their poses.</param>
    /// <param name="shape">Width of the picture over its height.</param>
    public Camera Eye(ReadOnlySpan<CraftPose> poses, double shape)
    {
        Vec3 middle = 0.5 * (poses[0].p_WB + poses[1].p_WB);
        Vec3 apart = poses[1].p_WB - poses[0].p_WB;
        double across = double.Hypot(apart.X, apart.Y) + (_width / 2), upright = Math.Abs(apart.Z) + (_width / 2);
        double half = Math.Tan(FieldOfView / 2);
        double distance = 0.55 * Math.Max(across / shape, upright) / half;
        Vec3 away = new(Math.Cos(Elevation) * Math.Cos(Azimuth), Math.Cos(Elevation) * Math.Sin(Azimuth), -Math.Sin(Elevation));
        Vec3 eye = middle + (distance * away);
        if (eye.Z > -0.4) eye = eye with { Z = -0.4 };
        Vec3 to = middle - eye;
        return new(eye, Quat.FromEuler(0, -Math.Atan2(to.Z, double.Hypot(to.X, to.Y)), Math.Atan2(to.Y, to.X)), FieldOfView, 0);
    }

    /// <summary>Angles that the rotors have turned at every row, rad.</summary>
    private static PerRotor[] Angles(LessonFlight flight)
    {
        IReadOnlyList<RotorConstants> rotors = flight.Log.Unit.Unit.Craft.Rotors;
        PerRotor[] angles = new PerRotor[flight.Log.Samples.Count];
        for (int row = 1; row < angles.Length; row++)
        {
            for (int k = 0; k < rotors.Count; k++)
                angles[row][k] = PoseHistory.Turned(angles[row - 1][k], rotors[k].Spin * flight.Log.Samples[row].State.RotorSpeeds[k] * flight.Log.Period);
        }
        return angles;
    }
}
