using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Control;

/// <summary>
/// Assists around the rate controller for beginners and keyboards: roll and pitch sticks command a tilt instead of a rate, and
/// the throttle stick a climb instead of a thrust. Read once at each stick reading; only + - * / and square roots.
/// </summary>
internal static class SelfLevelling
{
    /// <summary>Sine of the tilt at full stick: 50 degrees.</summary>
    public const double LargestTilt = 0.766;

    /// <summary>Climb at the upper end of the throttle stick and descent at the lower end, m/s; the latter lands softly.</summary>
    public const double FullClimb = 4, FullDescent = 2;

    /// <summary>
    /// Share of the rate loop's crossover frequency at which tilt is brought to its command: a fifth leaves the rate loop fast
    /// enough to be taken as at once (common practice for cascaded loops is a third to a tenth).
    /// </summary>
    private const double Bandwidth = 0.2;

    /// <summary>Time in which a difference of climb is brought to nothing, s.</summary>
    private const double ClimbTime = 0.4;

    /// <summary>Below this throttle the rotors of a craft that touches the ground idle, so that it stays there.</summary>
    private const double IdleThrottle = 0.02;

    /// <summary>
    /// Rates about the body axes (rad/s) that turn the craft upright or to the commanded tilt: w = k (d x g) with g the direction
    /// down in body axes and d where it should be, which turns g straight to d. The yaw stick commands its rate as ever.
    /// </summary>
    public static Vec3 Rate(in CraftState state, Sticks sticks, TunedUnit unit, PilotProfile profile)
    {
        double roll = LargestTilt * sticks.Roll, pitch = LargestTilt * sticks.Pitch;
        double tilt2 = (roll * roll) + (pitch * pitch);
        if (tilt2 > LargestTilt * LargestTilt)
        {
            double shrink = LargestTilt / Math.Sqrt(tilt2);
            roll *= shrink;
            pitch *= shrink;
            tilt2 = LargestTilt * LargestTilt;
        }
        Vec3 wanted = new(-pitch, roll, Math.Sqrt(1 - tilt2));
        Vec3 down = state.q_WB.Conjugate.Rotate(Vec3.UnitZ);
        Vec3 turn = Vec3.Cross(wanted, down);
        double size = turn.Length;
        // past a right angle the sine falls again; turn on at full rate, about the roll axis where exactly upside down
        if (Vec3.Dot(wanted, down) < 0) turn = size > 1e-6 ? turn / size : Vec3.UnitX;
        double gain = Bandwidth * unit.Roll.Crossover, most = profile.RollPitch.EndRate;
        return new(
            Math.Min(Math.Max(gain * turn.X, -most), most),
            Math.Min(Math.Max(gain * turn.Y, -most), most),
            profile.Yaw.Rate(sticks.Yaw) + (gain * turn.Z));
    }

    /// <summary>
    /// Share of full thrust that brings the craft to the commanded climb, more the more it tilts. In proportion only, so a climb
    /// settles a little below its command.
    /// </summary>
    public static double Collective(in CraftState state, Sticks sticks, TunedUnit unit, double hover, bool touching)
    {
        if (touching && sticks.Throttle < IdleThrottle) return 0;
        double climb = sticks.Throttle > hover
            ? FullClimb * (sticks.Throttle - hover) / (1 - hover)
            : FullDescent * (sticks.Throttle - hover) / hover;
        double difference = climb + state.v_WB.Z;
        double upright = state.q_WB.ToMatrix().M22;
        double share = unit.HoverShare * (1 + (difference / (ClimbTime * unit.Gravity))) / Math.Max(upright, 0.5);
        return Math.Min(Math.Max(share, 0), 1);
    }
}
