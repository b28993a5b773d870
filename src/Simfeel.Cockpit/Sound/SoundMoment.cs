using Simfeel.Physics;

namespace Simfeel.Cockpit.Sound;

/// <summary>What makes the sound of one frame: the flown craft as its sample has it.</summary>
public struct SoundMoment
{
    /// <summary>How many rotors there are, 0 to 8.</summary>
    public int RotorCount;

    /// <summary>Blades of a propeller.</summary>
    public int Blades;

    /// <summary>Radius of a propeller, m.</summary>
    public double Radius;

    /// <summary>Rotor speeds, rad/s; the sign does not matter.</summary>
    public PerRotor Speeds;

    /// <summary>Thrusts, N; the sign does not matter.</summary>
    public PerRotor Thrusts;

    /// <summary>Speed through the air, m/s.</summary>
    public double AirSpeed;

    /// <summary>Speed of an impact that began since the last frame, m/s; 0 for none.</summary>
    public double Impact;
}
