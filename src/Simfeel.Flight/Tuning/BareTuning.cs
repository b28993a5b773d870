using Simfeel.Flight.Control;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// The policy "bare": no controller. The gyro is not heard; a stick asks the rotors for a difference in thrust in proportion to the
/// rate it would command, and full stick for all the room between hover and idle. For lessons: the craft turns faster and faster, and
/// letting go of the stick does not stop it.
/// </summary>
internal static class BareTuning
{
    /// <summary>Gains of one axis (0 roll, 1 pitch, 2 yaw). Margins do not exist without a loop: NaN.</summary>
    /// <param name="allocation">The craft's allocation.</param>
    /// <param name="room">Share of full thrust between hover and idle.</param>
    /// <param name="fullStick">Rate that full stick commands, rad/s.</param>
    /// <param name="axis">The axis.</param>
    public static AxisTuning Of(Allocation allocation, double room, double fullStick, int axis)
    {
        double largest = 0;
        for (int k = 0; k < allocation.Shares.GetLength(0); k++) largest = Math.Max(largest, Math.Abs(allocation.Shares[k, axis]));
        return new(new AxisGains(Math.Max(0, room) / (largest * fullStick), 0, 0, 0), double.NaN, double.NaN, double.NaN);
    }

    /// <summary>Rates that full sticks command, rad/s.</summary>
    public static Vec3 FullStick(PilotProfile profile) => profile.RateFor(new Sticks(1, 1, 1, 0));
}
