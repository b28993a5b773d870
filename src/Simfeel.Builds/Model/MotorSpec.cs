namespace Simfeel.Builds;

/// <summary>One motor type; every mount carries the same. Mass, bell and electrics are apart so that each can be swapped alone.</summary>
/// <param name="Body">What it weighs and how large it is.</param>
/// <param name="Bell">What has to be spun up.</param>
/// <param name="Electrics">What turns current into torque.</param>
public sealed record MotorSpec(MotorBody Body, MotorBell Bell, MotorElectrics Electrics);

/// <summary>Mass and size of a motor.</summary>
public sealed record MotorBody
{
    /// <summary>Mass with its short wires, kg; 0.0003 to 1.5; estimated from the stator volume.</summary>
    public required double Mass { get; init; }

    /// <summary>Stator diameter, m; 0.003 to 0.12.</summary>
    public required double StatorDiameter { get; init; }

    /// <summary>Stator height, m; 0.001 to 0.06.</summary>
    public required double StatorHeight { get; init; }

    /// <summary>Diameter of the bell, m; 0.004 to 0.15; estimated as 1.25 stator diameters.</summary>
    public required double OuterDiameter { get; init; }

    /// <summary>Height without the shaft, m; 0.002 to 0.15; estimated as stator height plus half a stator diameter.</summary>
    public required double Height { get; init; }

    /// <summary>Bell, magnets and shaft over the whole mass; 0.2 to 0.8, default 0.45.</summary>
    public required double RotatingShare { get; init; }

    /// <summary>Stator volume pi/4 d^2 h, m^3.</summary>
    public double StatorVolume => Math.PI / 4 * StatorDiameter * StatorDiameter * StatorHeight;
}

/// <summary>The rotating part of a motor.</summary>
public sealed record MotorBell
{
    /// <summary>Spin inertia about the shaft, kg m^2; 1e-10 to 1e-3; estimated as a ring at 0.41 outer diameters.</summary>
    public required double SpinInertia { get; init; }
}

/// <summary>Electrical constants of a motor.</summary>
public sealed record MotorElectrics
{
    /// <summary>Torque constant, N m/A: 60/(2 pi KV) with KV of 20 to 60000 rpm/V.</summary>
    public required double Kt { get; init; }

    /// <summary>Winding resistance between two wires, ohm; 0.001 to 5; estimated from Kt and the stator volume.</summary>
    public required double WindingResistance { get; init; }

    /// <summary>Torque toward which the motor saturates, N m; 0.0005 to 20; estimated from the stator volume.</summary>
    public required double TorqueLimit { get; init; }

    /// <summary>Loss torque that does not depend on speed, N m; from the no-load current or the stator volume.</summary>
    public required double LossTorque { get; init; }

    /// <summary>Loss torque that grows with speed, N m s/rad; from the no-load current or the stator volume.</summary>
    public required double LossTorquePerSpeed { get; init; }

    /// <summary>Commutation droop, ohm s/rad; from the winding's inductance and the number of poles.</summary>
    public required double CommutationDroop { get; init; }
}
