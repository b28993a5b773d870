namespace Simfeel.Physics.Kernel;

/// <summary>
/// Places in a recorded row, which holds each number of all lanes side by side: number i of a lane stands at i times the width plus the
/// lane. States and loads are rows of their own, since most readers want states only.
/// </summary>
public static class RowIndex
{
    /// <summary>Duties in a row of states, behind the block of <see cref="StateIndex"/> with the induced velocities.</summary>
    public static int Duty(int rotorCount) => StateIndex.Used(rotorCount, true);

    /// <summary>Numbers of a lane in a row of states.</summary>
    public static int States(int rotorCount) => Duty(rotorCount) + rotorCount;

    /// <summary>Acceleration in a row of loads, three numbers, as all vectors.</summary>
    public const int Acceleration = 0;

    /// <summary>Angular acceleration, body axes.</summary>
    public const int AngularAcceleration = 3;

    /// <summary>Velocity through the air, body axes.</summary>
    public const int AirVelocity = 6;

    /// <summary>Force of the air, body axes.</summary>
    public const int AirForce = 9;

    /// <summary>The part of it that acts on the rotors.</summary>
    public const int RotorForce = 12;

    /// <summary>Voltage at the battery's terminals.</summary>
    public const int PackVoltage = 15;

    /// <summary>Current out of the battery.</summary>
    public const int PackCurrent = 16;

    /// <summary>First of the numbers that every rotor has one of; they follow one another, each for all rotors.</summary>
    public const int PerRotor = 17;

    /// <summary>Numbers of a lane in a row of loads.</summary>
    public static int Loads(int rotorCount) => PerRotor + ((int)RotorNumber.Count * rotorCount);
}

/// <summary>Numbers that every rotor has one of, in the order of a row of loads; <see cref="Sample"/> says what they are.</summary>
public enum RotorNumber
{
    /// <summary>Thrust.</summary>
    Thrust,

    /// <summary>Thrust over that in free air.</summary>
    ThrustFactor,

    /// <summary>Torque of the air.</summary>
    AirTorque,

    /// <summary>Torque of the motor.</summary>
    MotorTorque,

    /// <summary>Motor current.</summary>
    MotorCurrent,

    /// <summary>Torque reserve up.</summary>
    ReserveUp,

    /// <summary>Torque reserve down.</summary>
    ReserveDown,

    /// <summary>How many there are.</summary>
    Count,
}
