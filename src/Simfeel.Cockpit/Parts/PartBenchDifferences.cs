using Simfeel.Flight;
using Simfeel.Physics;
using Simfeel.Physics.Stand;

namespace Simfeel.Cockpit.Parts;

/// <summary>What a change of parts changes, in the numbers that a pilot feels.</summary>
internal static class PartBenchDifferences
{
    /// <summary>Number by number, the build as its file has it against the changed one.</summary>
    public static IReadOnlyList<PartBenchDifference> Between(TunedUnit before, TunedUnit after, double stateOfCharge)
    {
        return
        [
            Row("Mass", "g", unit => 1000 * unit.Unit.Craft.Mass),
            Row("Roll inertia", "g m2", unit => 1000 * unit.Unit.Craft.I_BBcm_B.M00),
            Row("Pitch inertia", "g m2", unit => 1000 * unit.Unit.Craft.I_BBcm_B.M11),
            Row("Yaw inertia", "g m2", unit => 1000 * unit.Unit.Craft.I_BBcm_B.M22),
            Row("Hover throttle", "%", unit => 100 * unit.Hover.Rotor.Duty),
            Row("Thrust to weight", "", unit => ThrustToWeight(unit, stateOfCharge)),
            Row("Rotor time constant", "ms", unit => 1000 * unit.Hover.TimeConstant),
            Row("Roll bandwidth", "Hz", unit => unit.Roll.Crossover / (2 * Math.PI)),
            Row("Torque reserve up in hover", "N m", unit => unit.Hover.Rotor.ReserveUp),
        ];

        PartBenchDifference Row(string name, string symbol, Func<TunedUnit, double> read) => new(name, symbol, read(before), read(after));
    }

    /// <summary>Thrust of all rotors at full throttle, the pack settled under them, over the weight.</summary>
    private static double ThrustToWeight(TunedUnit unit, double stateOfCharge)
    {
        Craft craft = unit.Unit.Craft;
        VirtualStand stand = new(craft, unit.Density, stateOfCharge, craft.Rotors.Count);
        return craft.Rotors.Count * stand.AtDuty(1).Thrust / (craft.Mass * unit.Gravity);
    }
}
