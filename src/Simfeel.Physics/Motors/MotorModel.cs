using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Motors;

/// <summary>
/// One motor with its speed controller, at a given duty, pack voltage and speed; the laws of the flight kernel.
/// After M. Drela, First-Order DC Electric Motor Model, MIT 2007, with commutation droop, current limit, soft
/// saturation and a speed-dependent part of the loss torque added.
/// </summary>
public static unsafe class MotorModel
{
    /// <summary>Motor current, A.</summary>
    /// <param name="rotor">The motor.</param>
    /// <param name="duty">0 to 1.</param>
    /// <param name="voltage">At the speed controller, V.</param>
    /// <param name="speed">Rotor speed, rad/s.</param>
    public static double Current(RotorConstants rotor, double duty, double voltage, double speed)
    {
        RotorLanes<Lane1> lanes = Lanes(rotor);
        Lane1 w = Lane1.Of(speed);
        Lane1 free = MotorLaws<Lane1>.FreeCurrent(
            Lane1.Of(duty), Lane1.Of(voltage), Lane1.Of(rotor.Kt * speed), MotorLaws<Lane1>.Conductance(&lanes, w));
        return MotorLaws<Lane1>.HeldCurrent(free, lanes.BrakeLimit, lanes.CurrentLimit).v;
    }

    /// <summary>Torque of the current before iron and friction losses, N m, at a current (A) and speed (rad/s).</summary>
    public static double MagneticTorque(RotorConstants rotor, double current, double speed)
    {
        RotorLanes<Lane1> lanes = Lanes(rotor);
        return MotorLaws<Lane1>.MagneticTorque(&lanes, Lane1.Of(current), Lane1.Of(speed)).v;
    }

    /// <summary>Torque on the rotor after all losses, N m, at a current (A) and speed (rad/s).</summary>
    public static double ShaftTorque(RotorConstants rotor, double current, double speed)
    {
        RotorLanes<Lane1> lanes = Lanes(rotor);
        return MotorLaws<Lane1>.ShaftTorque(&lanes, Lane1.Of(current), Lane1.Of(speed)).v;
    }

    /// <summary>Torque on the rotor, N m, at a duty (0 to 1), voltage (V) and speed (rad/s).</summary>
    public static double Torque(RotorConstants rotor, double duty, double voltage, double speed) =>
        ShaftTorque(rotor, Current(rotor, duty, voltage, speed), speed);

    /// <summary>
    /// Torque reserve up, N m: the torque of full duty at this voltage and speed, under all limits, less the torque in use.
    /// </summary>
    /// <param name="rotor">The motor.</param>
    /// <param name="voltage">At the speed controller, V.</param>
    /// <param name="speed">Rotor speed, rad/s.</param>
    /// <param name="torque">Torque in use, N m.</param>
    public static double ReserveUp(RotorConstants rotor, double voltage, double speed, double torque) =>
        Torque(rotor, 1, voltage, speed) - torque;

    /// <summary>
    /// Torque reserve down, N m: the torque in use less that of zero duty at this voltage and speed, which brakes up to the
    /// braking limit, or coasts where that is 0 and only the losses hold the rotor.
    /// </summary>
    /// <param name="rotor">The motor.</param>
    /// <param name="voltage">At the speed controller, V.</param>
    /// <param name="speed">Rotor speed, rad/s.</param>
    /// <param name="torque">Torque in use, N m.</param>
    public static double ReserveDown(RotorConstants rotor, double voltage, double speed, double torque) =>
        torque - Torque(rotor, 0, voltage, speed);

    /// <summary>
    /// Power taken from the pack, W: i (e + R i). The commutation droop limits the current but burns nothing.
    /// </summary>
    public static double PackPower(RotorConstants rotor, double current, double speed)
    {
        ArgumentNullException.ThrowIfNull(rotor);
        return current * ((rotor.Kt * speed) + (rotor.Resistance * current));
    }

    private static RotorLanes<Lane1> Lanes(RotorConstants rotor)
    {
        ArgumentNullException.ThrowIfNull(rotor);
        RotorLanes<Lane1> lanes = default;
        CraftPacking.PackRotor(&lanes, 0, rotor);
        return lanes;
    }
}
