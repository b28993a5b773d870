using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Stand;

namespace Simfeel.Physics.Trim;

/// <summary>The balance of a craft that hovers level in still air, every rotor lifting the same share.</summary>
/// <param name="Rotor">One rotor's working point, all rotors on the pack.</param>
/// <param name="State">The craft at rest in that hover, rotors at speed and the pack settled.</param>
/// <param name="TimeConstant">With which the rotors follow small changes of duty, s.</param>
public readonly record struct HoverTrim(OperatingPoint Rotor, CraftState State, double TimeConstant)
{
    /// <summary>Finds the hover of a craft in air of a density (kg/m^3) under a gravity (m/s^2).</summary>
    public static HoverTrim Of(Craft craft, double density, double gravity, double stateOfCharge)
    {
        ArgumentNullException.ThrowIfNull(craft);
        int count = craft.Rotors.Count;
        VirtualStand stand = new(craft, density, stateOfCharge, count);
        OperatingPoint point = stand.AtThrust(craft.Mass * gravity / count);
        CraftState state = CraftState.AtRest(craft, stateOfCharge);
        state.q_WB = Quat.Identity;
        state.PairVoltage = craft.Battery.PairResistance * point.PackCurrent;
        state.RotorSpeeds = PerRotor.All(point.Speed);
        double area = Math.PI * craft.Rotors[0].Radius * craft.Rotors[0].Radius;
        state.InducedVelocities = PerRotor.All(MomentumTheory.HoverInducedVelocity(point.Thrust, density, area));
        return new(point, state, stand.TimeConstant(point));
    }
}
