using Simfeel.Cockpit.Graphics.Aircraft;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Cockpit.Stage;

/// <summary>
/// States of one craft at the last stick readings, so that a frame can show any instant of the last half second: between
/// two readings, or later than it happened by the delay of a video link. Nothing is allocated after the constructor.
/// </summary>
internal sealed class PoseHistory
{
    /// <summary>Longest delay that can be shown, in stick readings.</summary>
    public const int Longest = 400;

    private const int Room = 512;

    /// <summary>A craft that moves further than this between two readings was put elsewhere, m: 300 m/s.</summary>
    private const double Jump = 0.3;

    private readonly CraftState[] _states = new CraftState[Room];
    private readonly PerRotor[] _angles = new PerRotor[Room];
    private readonly int[] _struck = new int[Room];
    private long _last = -1;

    /// <summary>Keeps the state of the next reading.</summary>
    public void Add(in CraftState state, IReadOnlyList<int> spins, int struck, double period)
    {
        PerRotor angles = _last < 0 ? default : _angles[_last % Room];
        for (int k = 0; k < spins.Count; k++) angles[k] = Turned(angles[k], spins[k] * state.RotorSpeeds[k] * period);
        _last++;
        long at = _last % Room;
        _states[at] = state;
        _angles[at] = angles;
        _struck[at] = struck;
    }

    /// <summary>The pose a number of readings ago; fractions lie between two readings.</summary>
    public void Read(double ago, ref CraftPose pose)
    {
        if (_last < 0) return;
        double at = Math.Max(_last - Math.Clamp(ago, 0, Longest), 0);
        long earlier = (long)Math.Floor(at), later = Math.Min(earlier + 1, _last);
        double share = at - earlier;
        ref readonly CraftState a = ref _states[earlier % Room], b = ref _states[later % Room];
        if ((b.p_WB - a.p_WB).Length > Jump) share = 0;
        pose.p_WB = a.p_WB + (share * (b.p_WB - a.p_WB));
        pose.q_WB = Between(a.q_WB, b.q_WB, share);
        pose.RotorSpeeds = a.RotorSpeeds;
        pose.RotorAngles = _angles[earlier % Room];
        pose.StruckRotors = _struck[earlier % Room];
    }

    /// <summary>A rotor's angle turned on, kept to one turn: what is drawn is a float, and a flight is many turns long.</summary>
    public static double Turned(double angle, double by)
    {
        double turned = angle + by;
        return turned - (Math.Tau * Math.Floor(turned / Math.Tau));
    }

    /// <summary>Straight line between two close quaternions, brought back to unit length.</summary>
    private static Quat Between(Quat a, Quat b, double share)
    {
        double dot = (a.W * b.W) + (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);
        double s = dot < 0 ? -share : share, r = 1 - share;
        Quat q = new((r * a.W) + (s * b.W), (r * a.X) + (s * b.X), (r * a.Y) + (s * b.Y), (r * a.Z) + (s * b.Z));
        double n = 1 / q.Norm;
        return new(n * q.W, n * q.X, n * q.Y, n * q.Z);
    }
}
