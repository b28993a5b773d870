namespace Simfeel.Flight;

/// <summary>Where the sticks stand.</summary>
/// <param name="Roll">-1 (left) to 1 (right).</param>
/// <param name="Pitch">-1 (nose down) to 1 (nose up).</param>
/// <param name="Yaw">-1 (left) to 1 (right).</param>
/// <param name="Throttle">0 to 1.</param>
public readonly record struct Sticks(double Roll, double Pitch, double Yaw, double Throttle);
