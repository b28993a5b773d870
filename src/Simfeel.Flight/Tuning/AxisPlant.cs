using System.Numerics;
using Simfeel.Flight.Control;
using Simfeel.Physics;
using Simfeel.Physics.Motors;
using Simfeel.Physics.Stand;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// One axis of a craft near hover, from wanted angular acceleration to rate: P(s) = g (1 + lead s) / (s (1 + lag s)),
/// behind a dead time. The lag is the rotors'. Yaw has a lead J / (dQ/dw), since a motor that speeds its rotor up turns
/// the body the other way at once, long before the air's torque follows.
/// </summary>
/// <param name="Gain">Angular acceleration reached for each one asked, at low frequency.</param>
/// <param name="Lag">Time constant of the rotors at hover, s.</param>
/// <param name="Lead">0 for roll and pitch, s.</param>
/// <param name="DeadTime">Speed controller's command delay, s.</param>
public readonly record struct AxisPlant(double Gain, double Lag, double Lead, double DeadTime)
{
    /// <summary>Frequency response at w, rad/s; rate (rad/s) for angular acceleration (rad/s^2).</summary>
    public Complex Response(double w)
    {
        Complex s = new(0, w);
        return Gain * (1 + (Lead * s)) / (s * (1 + (Lag * s))) * Complex.Exp(-s * DeadTime);
    }

    /// <summary>Plants of roll and pitch (alike but for nothing: geometry sits in the allocation) and of yaw.</summary>
    public static (AxisPlant RollPitch, AxisPlant Yaw) Of(
        FlightUnit unit, HoverTrim hover, ThrustMap map, double density)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(map);
        RotorConstants rotor = unit.Craft.Rotors[0];
        OperatingPoint at = hover.Rotor;
        // only the air's loads are read off this stand, so its charge does not matter
        VirtualStand stand = new(unit.Craft, density, 1, unit.Craft.Rotors.Count);
        double step = 1e-3 * at.Speed;
        OperatingPoint above = stand.AtSpeed(at.Speed + step), below = stand.AtSpeed(at.Speed - step);
        double thrustBySpeed = (above.Thrust - below.Thrust) / (2 * step);
        double torqueBySpeed = (above.Torque - below.Torque) / (2 * step);
        double torqueByDuty = (MotorModel.Torque(rotor, at.Duty + 1e-4, at.PackVoltage, at.Speed)
            - MotorModel.Torque(rotor, at.Duty - 1e-4, at.PackVoltage, at.Speed)) / 2e-4;

        // steady change of speed with duty at the pack's voltage: roll, pitch and yaw leave the total draw alone
        double speedByDuty = torqueByDuty * hover.TimeConstant / rotor.SpinInertia;
        double dutyByShare = map.Slope(at.Thrust / map.FullThrust);
        double tilt = thrustBySpeed * speedByDuty * dutyByShare / map.FullThrust;
        double turn = torqueBySpeed * speedByDuty * dutyByShare / (map.FullThrust * map.TorquePerThrust);
        return (
            new(tilt, hover.TimeConstant, 0, unit.CommandDelay),
            new(turn, hover.TimeConstant, rotor.SpinInertia / torqueBySpeed, unit.CommandDelay));
    }
}
