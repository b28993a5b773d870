using Simfeel.Flight.Control;
using Simfeel.Flight.Tuning;
using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Trim;

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

    /// <summary>How the gains were chosen.</summary>
    public TuningPolicy Policy { get; init; }

    /// <summary>Tuning of roll.</summary>
    public required AxisTuning Roll { get; init; }

    /// <summary>Tuning of pitch.</summary>
    public required AxisTuning Pitch { get; init; }

    /// <summary>Tuning of yaw.</summary>
    public required AxisTuning Yaw { get; init; }

    /// <summary>Gains by axis.</summary>
    public Gains Gains => new(Roll.Gains, Pitch.Gains, Yaw.Gains);

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
    /// <exception cref="InvalidOperationException">The craft cannot hover or turn about every axis, or no gains reach the policy's margins.</exception>
    public static TunedUnit Matched(FlightUnit unit, AirState air, PilotProfile profile) => Tuned(unit, air, profile, TuningRule.Matched);

    /// <summary>Tunes a craft by a policy, at hover in air.</summary>
    /// <exception cref="InvalidOperationException">The craft cannot hover or turn about every axis, or no gains reach the margins of its policy.</exception>
    /// <exception cref="ArgumentException">The policy needs a reference and has none.</exception>
    public static TunedUnit Tuned(FlightUnit unit, AirState air, PilotProfile profile, TuningRule rule)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(rule);
        HoverTrim hover = HoverTrim.Of(unit.Craft, air.Density, StandardAtmosphere.StandardGravity, profile.StateOfCharge);
        double weight = unit.Craft.Mass * StandardAtmosphere.StandardGravity / unit.Craft.Rotors.Count;
        if (hover.Rotor.Thrust < 0.999 * weight)
        {
            throw new InvalidOperationException(
                $"{unit.Name} cannot hover: each rotor lifts at most {hover.Rotor.Thrust:F2} N and would need {weight:F2} N.");
        }
        ThrustMap map = ThrustMap.Of(unit.Craft, air.Density, profile.StateOfCharge, hover);
        Allocation allocation = Allocation.Of(unit.Craft, map);
        RateLoop[] loops =
        [
            .. Enumerable.Range(0, 3).Select(axis => new RateLoop(
                AxisPlant.Of(unit, hover, map, allocation, air.Density, StandardAtmosphere.StandardGravity, axis), unit.GyroLowPass_Hz, profile)),
        ];
        double hoverShare = map.Share(hover.Rotor.Duty);
        if (map.Share(unit.IdleDuty) >= hoverShare)
        {
            throw new InvalidOperationException(
                $"{unit.Name} cannot hover: idling at {100 * unit.IdleDuty:G3} % its rotors lift more than its weight, which takes {100 * hover.Rotor.Duty:F1} %; lower idle_percent, or look at kv_rpm_per_V and the battery's cells.");
        }
        (AxisTuning roll, AxisTuning pitch, AxisTuning yaw) = rule.Policy switch
        {
            TuningPolicy.SameGains => Copied(rule.Reference ?? throw new ArgumentException("same-gains needs a craft whose gains to keep.", nameof(rule))),
            TuningPolicy.Bare => Bare(),
            _ => Matching(),
        };
        TunedUnit tuned = new()
        {
            Unit = unit,
            Density = air.Density,
            Gravity = StandardAtmosphere.StandardGravity,
            Hover = hover,
            Map = map,
            HoverShare = hoverShare,
            Allocation = allocation,
            Policy = rule.Policy,
            Roll = roll,
            Pitch = pitch,
            Yaw = yaw,
        };
        return rule.Policy == TuningPolicy.Limit ? LimitTuning.Best(tuned, loops[0], loops[1], profile) : tuned;

        // the motors' reaction on yaw leads already; lead times up to the rotors' lag are tried on the others
        (AxisTuning, AxisTuning, AxisTuning) Matching() =>
        (
            MatchedTuning.Of(loops[0], hover.TimeConstant, profile.FeedForward),
            MatchedTuning.Of(loops[1], hover.TimeConstant, profile.FeedForward),
            MatchedTuning.Of(loops[2], 0, profile.FeedForward));

        (AxisTuning, AxisTuning, AxisTuning) Copied(TunedUnit reference) =>
        (
            MatchedTuning.Reading(new LoopCurve(loops[0]), SameGains.Of(reference, allocation, 0)),
            MatchedTuning.Reading(new LoopCurve(loops[1]), SameGains.Of(reference, allocation, 1)),
            MatchedTuning.Reading(new LoopCurve(loops[2]), SameGains.Of(reference, allocation, 2)));

        (AxisTuning, AxisTuning, AxisTuning) Bare()
        {
            Vec3 full = BareTuning.FullStick(profile);
            double room = hoverShare - map.Share(unit.IdleDuty);
            return (
                BareTuning.Of(allocation, room, full.X, 0), BareTuning.Of(allocation, room, full.Y, 1), BareTuning.Of(allocation, room, full.Z, 2));
        }
    }
}
