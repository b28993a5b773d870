using Simfeel.Flight.Control;
using Simfeel.Flight.Tuning;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Stand;

namespace Simfeel.Flight;

/// <summary>A craft with its hover, its allocation and the gains of a tuning policy, ready to fly. Immutable.</summary>
public sealed record TunedUnit
{
    /// <summary>The craft and its electronics.</summary>
    public required FlightUnit Unit { get; init; }

    /// <summary>Air density, kg/m^3.</summary>
    public required double Density { get; init; }

    /// <summary>Gravity, m/s^2.</summary>
    public required double Gravity { get; init; }

    /// <summary>Its hover.</summary>
    public required HoverTrim Hover { get; init; }

    /// <summary>Thrust to duty.</summary>
    public required ThrustMap Map { get; init; }

    /// <summary>Angular acceleration to thrust.</summary>
    public required Allocation Allocation { get; init; }

    /// <summary>Throttle curve whose hover stick is where a craft with a stick in proportion to duty would hover.</summary>
    public ThrottleCurve Throttle =>
        new(Math.Clamp(Hover.Rotor.Duty, 0.05, 0.95), Math.Clamp(HoverShare, 0.01, 0.99));

    /// <summary>Smallest share of full thrust that the mixer asks of a rotor.</summary>
    public double IdleShare => Map.Share(Unit.IdleDuty);

    /// <summary>Tuning of roll and pitch.</summary>
    public required AxisTuning RollPitch { get; init; }

    /// <summary>Tuning of yaw.</summary>
    public required AxisTuning Yaw { get; init; }

    /// <summary>Gains by axis.</summary>
    public Gains Gains => new(RollPitch.Gains, RollPitch.Gains, Yaw.Gains);

    /// <summary>Share of full thrust at which the mixer gives every rotor its hover duty.</summary>
    public required double HoverShare { get; init; }

    /// <summary>
    /// Largest integral of each axis, rad/s^2: a third of the angular acceleration that the rotors have between hover
    /// and idle.
    /// </summary>
    public Vec3 IntegralLimit
    {
        get
        {
            double room = HoverShare - IdleShare;
            return new(Limit(0), Limit(1), Limit(2));

            double Limit(int axis)
            {
                double largest = 0;
                for (int k = 0; k < Unit.Craft.Rotors.Count; k++)
                    largest = Math.Max(largest, Math.Abs(Allocation.Shares[k, axis]));
                return Math.Max(0, room) / largest / 3;
            }
        }
    }

    /// <summary>Tunes a craft by the policy "matched", at hover in air.</summary>
    /// <exception cref="InvalidOperationException">The craft cannot hover, or no gains reach the policy's margins.</exception>
    public static TunedUnit Matched(FlightUnit unit, AirState air, PilotProfile profile)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(profile);
        HoverTrim hover = HoverTrim.Of(unit.Craft, air.Density, StandardGravity, profile.StateOfCharge);
        double weight = unit.Craft.Mass * StandardGravity / unit.Craft.Rotors.Count;
        if (hover.Rotor.Thrust < 0.999 * weight)
        {
            throw new InvalidOperationException(
                $"{unit.Name} cannot hover: each rotor lifts at most {hover.Rotor.Thrust:F2} N and would need {weight:F2} N.");
        }
        ThrustMap map = ThrustMap.Of(unit.Craft, air.Density, profile.StateOfCharge, hover);
        (AxisTuning rollPitch, AxisTuning yaw) = MatchedTuning.Tune(unit, hover, map, air.Density, profile);
        return new()
        {
            Unit = unit,
            Density = air.Density,
            Gravity = StandardGravity,
            Hover = hover,
            Map = map,
            HoverShare = map.Share(hover.Rotor.Duty),
            Allocation = Allocation.Of(unit.Craft, map),
            RollPitch = rollPitch,
            Yaw = yaw,
        };
    }

    private const double StandardGravity = 9.80665;
}
