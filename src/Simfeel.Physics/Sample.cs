using Simfeel.Physics.Maths;

namespace Simfeel.Physics;

/// <summary>
/// Everything derived from a state, worked out at the very state it carries. Metrics, displays and traces read samples
/// only.
/// </summary>
public record struct Sample
{
    /// <summary>The state that all else belongs to.</summary>
    public CraftState State;

    /// <summary>Acceleration of the centre of gravity in the world, m/s^2.</summary>
    public Vec3 a_WB;

    /// <summary>Angular acceleration, body axes, rad/s^2.</summary>
    public Vec3 AngularAcceleration_B;

    /// <summary>Velocity of the centre of gravity through the air, body axes, m/s.</summary>
    public Vec3 AirVelocity_B;

    /// <summary>Force of the air on rotors and body, body axes, N.</summary>
    public Vec3 AirForce_B;

    /// <summary>The part of <see cref="AirForce_B"/> that acts on the rotors, body axes, N.</summary>
    public Vec3 RotorForce_B;

    /// <summary>Voltage at the battery's terminals, V.</summary>
    public double PackVoltage;

    /// <summary>Current out of the battery, A; negative while braking rotors charge it.</summary>
    public double PackCurrent;

    /// <summary>Duty of each speed controller, 0 to 1.</summary>
    public PerRotor Duty;

    /// <summary>Thrust of each rotor along -z of the body, N.</summary>
    public PerRotor Thrust;

    /// <summary>Thrust of each rotor over that in free air: less than 1 in wakes, more near the ground.</summary>
    public PerRotor ThrustFactor;

    /// <summary>Torque of the air against each rotor, N m.</summary>
    public PerRotor AirTorque;

    /// <summary>Torque of each motor on its rotor after all losses, N m.</summary>
    public PerRotor MotorTorque;

    /// <summary>Motor current, A.</summary>
    public PerRotor MotorCurrent;

    /// <summary>
    /// Torque reserve up, N m: motor torque at full duty at this speed and voltage and under the limits, less the torque
    /// in use.
    /// </summary>
    public PerRotor ReserveUp;

    /// <summary>Torque reserve down, N m: torque in use less motor torque at zero duty (braking or coasting).</summary>
    public PerRotor ReserveDown;
}
