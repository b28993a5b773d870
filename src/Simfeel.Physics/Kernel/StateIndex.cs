namespace Simfeel.Physics.Kernel;

/// <summary>
/// Places in a block of state, <see cref="Stride"/> lanes that hold what is integrated, and nothing else.
/// The same layout serves the block of time derivatives.
/// </summary>
public static class StateIndex
{
    /// <summary>Position of the centre of gravity in the world (north, east, down), three lanes, m.</summary>
    public const int Position = 0;

    /// <summary>Velocity of the centre of gravity in the world, three lanes, m/s.</summary>
    public const int Velocity = 3;

    /// <summary>Attitude q_WB as w, x, y, z, four lanes.</summary>
    public const int Attitude = 6;

    /// <summary>Angular velocity w_WB_B in body axes, three lanes, rad/s.</summary>
    public const int Rate = 10;

    /// <summary>Charge left in the battery, A s.</summary>
    public const int Charge = 13;

    /// <summary>Voltage over the battery's RC pair, V.</summary>
    public const int PairVoltage = 14;

    /// <summary>Rotor speeds relative to the body, positive in each rotor's own direction, rad/s.</summary>
    public const int RotorSpeed = 15;

    /// <summary>
    /// Induced velocities of the rotors, m/s, behind the speeds of a craft with a number of rotors. Integrated with
    /// <see cref="AirEffects.DynamicInflow"/> only.
    /// </summary>
    public static int Inflow(int rotorCount) => RotorSpeed + rotorCount;

    /// <summary>Lanes that a craft uses, with or without dynamic inflow.</summary>
    public static int Used(int rotorCount, bool dynamicInflow) => RotorSpeed + (dynamicInflow ? 2 * rotorCount : rotorCount);

    /// <summary>Lanes reserved for a block.</summary>
    public const int Stride = 32;
}
