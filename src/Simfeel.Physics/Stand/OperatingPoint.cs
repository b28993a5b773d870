namespace Simfeel.Physics.Stand;

/// <summary>A rotor, its motor and the pack in balance at a steady speed.</summary>
/// <param name="Speed">Rotor speed, rad/s.</param>
/// <param name="Duty">Duty of the speed controller that holds the speed; above 1 where the pack cannot.</param>
/// <param name="Thrust">N, of one rotor.</param>
/// <param name="Torque">Torque of the air on one rotor, equal to the motor's, N m.</param>
/// <param name="MotorCurrent">A, of one motor.</param>
/// <param name="PackVoltage">V.</param>
/// <param name="PackCurrent">A, all running motors and the electronics.</param>
/// <param name="ReserveUp">Motor torque at full duty at this speed and voltage less the torque in use, N m.</param>
/// <param name="ReserveDown">Torque in use less motor torque at zero duty, N m.</param>
public readonly record struct OperatingPoint(
    double Speed,
    double Duty,
    double Thrust,
    double Torque,
    double MotorCurrent,
    double PackVoltage,
    double PackCurrent,
    double ReserveUp,
    double ReserveDown)
{
    /// <summary>Power out of the pack, W.</summary>
    public double PackPower => PackVoltage * PackCurrent;
}
