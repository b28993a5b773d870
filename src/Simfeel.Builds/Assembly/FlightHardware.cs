namespace Simfeel.Builds;

/// <summary>What flight control needs to know of a build beyond the craft's physics.</summary>
/// <param name="GyroLowPass_Hz">Cut-off of the gyro's low-pass filter, Hz.</param>
/// <param name="CommandDelay">From the flight controller's command to the changed motor voltage, s.</param>
/// <param name="IdleDuty">Smallest duty in flight over full duty, 0 to 0.25.</param>
/// <param name="CameraTilt">How far the flight camera looks up from level, rad.</param>
/// <param name="BatteryCurrentRating">Current above which the pack is overloaded, A.</param>
public sealed record FlightHardware(
    double GyroLowPass_Hz,
    double CommandDelay,
    double IdleDuty,
    double CameraTilt,
    double BatteryCurrentRating);
