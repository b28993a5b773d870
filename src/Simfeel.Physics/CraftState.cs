using Simfeel.Physics.Maths;

namespace Simfeel.Physics;

/// <summary>
/// What is integrated for one craft, and nothing else. World W: north, east, down from the field's origin. A default
/// value has no attitude; start from <see cref="AtRest"/>.
/// </summary>
public record struct CraftState
{
    /// <summary>Position of the centre of gravity in the world, m.</summary>
    public Vec3 p_WB;

    /// <summary>Velocity of the centre of gravity in the world, m/s.</summary>
    public Vec3 v_WB;

    /// <summary>Attitude, body to world; of unit length.</summary>
    public Quat q_WB;

    /// <summary>Angular velocity, body axes, rad/s.</summary>
    public Vec3 w_WB_B;

    /// <summary>Charge left in the battery, A s.</summary>
    public double Charge;

    /// <summary>Voltage over the battery's RC pair, V.</summary>
    public double PairVoltage;

    /// <summary>Rotor speeds relative to the body, positive in each rotor's own direction, rad/s.</summary>
    public PerRotor RotorSpeeds;

    /// <summary>
    /// Induced velocities of the rotors, m/s, down positive; integrated where <see cref="AirEffects.DynamicInflow"/> is on, else
    /// not used.
    /// </summary>
    public PerRotor InducedVelocities;

    /// <summary>At rest at the origin, level, rotors standing, battery charged to a share of its capacity.</summary>
    public static CraftState AtRest(Craft craft, double stateOfCharge = 1)
    {
        ArgumentNullException.ThrowIfNull(craft);
        return new() { q_WB = Quat.Identity, Charge = stateOfCharge * craft.Battery.Capacity };
    }
}
