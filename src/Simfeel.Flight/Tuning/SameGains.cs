using Simfeel.Flight.Control;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// The policy "same-gains": the numbers of one craft's controller copied to another. A controller's number says what share of full
/// thrust an error asks of the rotors. The gains here ask for an angular acceleration instead, which the allocation turns into shares,
/// so keeping the number means dividing by what an acceleration costs this craft and multiplying by what it costs the other.
/// </summary>
internal static class SameGains
{
    /// <summary>Gains of one axis (0 roll, 1 pitch, 2 yaw) that ask of a craft's rotors the shares that the reference's ask of its own.</summary>
    public static AxisGains Of(TunedUnit reference, Allocation allocation, int axis)
    {
        double factor = Cost(reference.Allocation, axis) / Cost(allocation, axis);
        AxisGains gains = reference.Gains[axis];
        return new(factor * gains.Proportional, factor * gains.Integral, factor * gains.Derivative, factor * gains.FeedForward);
    }

    /// <summary>Root mean square over the rotors of the share of full thrust that 1 rad/s^2 takes; craft may have more or fewer rotors.</summary>
    private static double Cost(Allocation allocation, int axis)
    {
        double sum = 0;
        int rotors = allocation.Shares.GetLength(0);
        for (int k = 0; k < rotors; k++) sum += allocation.Shares[k, axis] * allocation.Shares[k, axis];
        return Math.Sqrt(sum / rotors);
    }
}
