using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Drills;

/// <summary>A state in which a craft stays as it is, and what its controller holds there.</summary>
/// <param name="State">The state; flies north at the field's origin.</param>
/// <param name="Collective">Collective share of full thrust.</param>
/// <param name="Trim">Angular accelerations that the controller's integrators carry, rad/s^2.</param>
/// <param name="Duty">Duty of every rotor.</param>
public readonly record struct DrillStart(CraftState State, double Collective, Vec3 Trim, PerRotor Duty)
{
    private static readonly ConditionalWeakTable<TunedUnit, ConcurrentDictionary<(double, bool), DrillStart>> Known = [];

    /// <summary>
    /// Level hover at rest. All rotors start at the same speed; where the centre of gravity lies off their middle the integrators
    /// already carry the difference and the rotors find theirs within the lead-in.
    /// </summary>
    public static DrillStart Hover(TunedUnit unit) => Hover(unit, (unit ?? throw new ArgumentNullException(nameof(unit))).Hover.State);

    /// <summary>At a state of the caller's with the controller and the rotors as in hover.</summary>
    public static DrillStart Hover(TunedUnit unit, in CraftState state)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return new(state, unit.HoverShare, -unit.HoverShare * unit.Allocation.EqualThrustAcceleration, PerRotor.All(unit.Hover.Rotor.Duty));
    }

    /// <summary>
    /// Steady level flight to the north; hover at speed 0. A craft that cannot keep a speed level starts at the largest of nine
    /// tenths, eight tenths and so on that it can keep. Worked out once for each craft and speed.
    /// </summary>
    /// <param name="unit">The craft.</param>
    /// <param name="speed">m/s.</param>
    /// <param name="effects">Effects of the field; of them the lag of inflow counts here, wakes begin with the flight.</param>
    public static DrillStart Level(TunedUnit unit, double speed, AirEffects effects)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (speed == 0) return Hover(unit);
        return Known.GetOrCreateValue(unit).GetOrAdd((speed, (effects & AirEffects.DynamicInflow) != 0), key =>
        {
            for (int tenths = 10; tenths > 0; tenths--)
            {
                if (LevelTrim.Of(unit, tenths / 10.0 * key.Item1, key.Item2 ? AirEffects.DynamicInflow : AirEffects.None) is DrillStart start) return start;
            }
            return Hover(unit);
        });
    }
}
