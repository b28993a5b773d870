using Simfeel.Physics;

namespace Simfeel.Cockpit.Overlay;

/// <summary>What one build's plate shows. The application writes it every frame.</summary>
public sealed class BuildReadout
{
    /// <summary>Name.</summary>
    public string Name { get; set; } = "";

    /// <summary>Number of rotors, 1 to <see cref="Craft.MaxRotors"/>.</summary>
    public int RotorCount { get; set; } = 4;

    /// <summary>Motor torque at full duty at this speed and voltage less the torque in use, one for each rotor, N m.</summary>
    public double[] ReserveUp { get; } = new double[Craft.MaxRotors];

    /// <summary>Torque in use less motor torque at zero duty, one for each rotor, N m.</summary>
    public double[] ReserveDown { get; } = new double[Craft.MaxRotors];

    /// <summary>Rotor speeds, rad/s.</summary>
    public double[] RotorSpeed { get; } = new double[Craft.MaxRotors];

    /// <summary>A bit for each rotor whose propeller struck something, rotor 1 in bit 0.</summary>
    public int StruckRotors { get; set; }

    /// <summary>Speed over the ground and in height together, m/s.</summary>
    public double Speed { get; set; }

    /// <summary>Height over the ground, m.</summary>
    public double Height { get; set; }

    /// <summary>Voltage of the pack at its terminals, V.</summary>
    public double PackVoltage { get; set; }

    /// <summary>Voltage of the pack at rest when it is empty, V.</summary>
    public double EmptyVoltage { get; set; }

    /// <summary>Voltage of the pack at rest when it is full, V.</summary>
    public double FullVoltage { get; set; }

    /// <summary>Current of the pack, A.</summary>
    public double PackCurrent { get; set; }

    /// <summary>Rates about the body axes (roll, pitch, yaw), rad/s.</summary>
    public double[] Rates { get; } = new double[3];

    /// <summary>Rates that the sticks command about the same axes, rad/s.</summary>
    public double[] RateCommands { get; } = new double[3];

    /// <summary>Acceleration that the pilot would feel along -z of the body, in units of standard gravity; 1 in hover.</summary>
    public double LoadFactor { get; set; }

    /// <summary>Whether it is simulated now: flown, or flying along as the shadow.</summary>
    public bool Flying { get; set; }
}
