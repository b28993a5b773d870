namespace Simfeel.Flight.Control;

/// <summary>Gains of one axis of the rate controller; the controller asks for an angular acceleration.</summary>
/// <param name="Proportional">rad/s^2 per rad/s of error.</param>
/// <param name="Integral">rad/s^2 per rad of summed error.</param>
/// <param name="Derivative">rad/s^2 per rad/s^2 of measured acceleration.</param>
/// <param name="FeedForward">rad/s^2 per rad/s^2 of commanded acceleration.</param>
public readonly record struct AxisGains(double Proportional, double Integral, double Derivative, double FeedForward);

/// <summary>Gains of the three axes.</summary>
/// <param name="Roll">About x.</param>
/// <param name="Pitch">About y.</param>
/// <param name="Yaw">About z.</param>
public readonly record struct Gains(AxisGains Roll, AxisGains Pitch, AxisGains Yaw)
{
    /// <summary>Gains by axis: 0 roll, 1 pitch, 2 yaw.</summary>
    public AxisGains this[int axis] => axis switch { 0 => Roll, 1 => Pitch, _ => Yaw };
}
