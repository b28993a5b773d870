using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Stand;

namespace Simfeel.Builds;

/// <summary>What a pack lets one rotor do while all of them pull on it, electronics included.</summary>
/// <param name="Thrust">Of one rotor at full throttle, N.</param>
/// <param name="Speed">Of the rotor at full throttle, rad/s.</param>
/// <param name="Voltage">At the pack's terminals at full throttle, V.</param>
/// <param name="HoverReserveUp">Torque reserve up of one rotor at the speed of hover when all motors call for it at once, N m.</param>
public readonly record struct PackPoint(double Thrust, double Speed, double Voltage, double HoverReserveUp);

/// <summary>A build on a new, full pack and on the same pack tired: worn out and nearly empty.</summary>
/// <param name="Fresh">New and full.</param>
/// <param name="Tired">Worn out, at <see cref="TiredCharge"/>.</param>
public readonly record struct TiredPack(PackPoint Fresh, PackPoint Tired)
{
    /// <summary>Charge of the tired pack, 0 to 1: where pilots land (common practice).</summary>
    public const double TiredCharge = 0.2;

    /// <summary>Compares the two in air of one state, whatever the age of the build's own pack.</summary>
    /// <exception cref="ArgumentException">The build is a hybrid.</exception>
    public static TiredPack Of(Build build, AirState air)
    {
        VirtualStand fresh = Stand(0, 1, out Craft craft), tired = Stand(100, TiredCharge, out _);
        double hover = fresh.AtThrust(craft.Mass * StandardAtmosphere.StandardGravity / craft.Rotors.Count).Speed;
        return new(Point(fresh), Point(tired));

        VirtualStand Stand(double wear, double charge, out Craft craft)
        {
            craft = BuildAssembler.Assemble(BuildEditor.Edit(build, "battery.wear_percent", wear).Build!, air).Craft;
            return new(craft, air.Density, charge, craft.Rotors.Count);
        }

        PackPoint Point(VirtualStand stand)
        {
            OperatingPoint full = stand.AtDuty(1);
            return new(full.Thrust, full.Speed, full.PackVoltage, stand.ReserveUpTogether(stand.AtSpeed(hover)));
        }
    }
}
