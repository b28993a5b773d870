using Simfeel.Builds.Format;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds;

/// <summary>What can grow. The exponents are those of the estimates (<c>MotorRules</c>, <c>PropellerRules</c>, <c>BatteryRules</c>).</summary>
public static class BuildKnobs
{
    private const double NoLimit = 1e4;

    /// <summary>
    /// Stator volume V at the same KV: sizes with V^(1/3), mass with V^0.85, bell inertia with its mass and diameter squared, winding
    /// resistance with V^(-5/3), torque limit and losses with V, inductance with V^(-1/3). The speed controllers stay.
    /// </summary>
    public static BuildKnob MotorVolume { get; } = new()
    {
        Name = "motor.volume",
        Title = "stator volume",
        Unit = "mm3",
        Rule = "Same KV and speed controllers; mass grows with volume^0.85, bell inertia with its mass and diameter squared, torque limit and losses with volume, winding resistance falls with volume^(5/3).",
        UsualRange = (0.4, 2.6),
        Size = build => build.Motor.Body.StatorVolume * 1e9,
        Grow = (build, factor) =>
        {
            MotorBody body = build.Motor.Body;
            MotorElectrics electrics = build.Motor.Electrics;
            double length = Math.Cbrt(factor), mass = Math.Pow(factor, 0.85);
            return Loose(build) with
            {
                Motor = new(
                    body with
                    {
                        StatorDiameter = length * body.StatorDiameter,
                        StatorHeight = length * body.StatorHeight,
                        OuterDiameter = length * body.OuterDiameter,
                        Height = length * body.Height,
                        Mass = mass * body.Mass,
                    },
                    new MotorBell { SpinInertia = mass * length * length * build.Motor.Bell.SpinInertia },
                    electrics with
                    {
                        WindingResistance = Math.Pow(factor, -5.0 / 3) * electrics.WindingResistance,
                        TorqueLimit = factor * electrics.TorqueLimit,
                        LossTorque = factor * electrics.LossTorque,
                        LossTorquePerSpeed = factor * electrics.LossTorquePerSpeed,
                        CommutationDroop = electrics.CommutationDroop / length,
                    }),
            };
        },
        Consequences =
        [
            ("the bells' inertia stayed", (build, grown) => grown with { Motor = grown.Motor with { Bell = build.Motor.Bell } }),
            ("the mass at the arm ends stayed", (build, grown) => grown with { Motor = grown.Motor with { Body = build.Motor.Body } }),
            ("there were no current limit", (_, grown) => grown with
            {
                SpeedController = grown.SpeedController with
                {
                    CurrentLimit = NoLimit,
                    BrakeCurrentLimit = grown.SpeedController.BrakeCurrentLimit > 0 ? NoLimit : 0,
                },
            }),
        ],
    };

    /// <summary>Distance of the motors from the middle; the arms' mass with their length, plates and all else as they are.</summary>
    public static BuildKnob ArmLength { get; } = new()
    {
        Name = "arm.length",
        Title = "wheelbase",
        Unit = "mm",
        Rule = "The motors move outwards from the middle and the arms get longer and heavier; their section, the plates and all else stay.",
        UsualRange = (0.8, 1.6),
        Size = build => build.Frame.Wheelbase * 1e3,
        Grow = (build, factor) => Loose(build) with
        {
            Frame = build.Frame with
            {
                Wheelbase = factor * build.Frame.Wheelbase,
                Mounts = [.. build.Frame.Mounts.Select(mount => mount with
                {
                    p_OM = new Vec3(factor * mount.p_OM.X, factor * mount.p_OM.Y, mount.p_OM.Z),
                })],
            },
        },
        Consequences =
        [
            ("the arms' mass stayed", (build, grown) => grown with
            {
                Frame = grown.Frame with { ArmWidth = grown.Frame.ArmWidth * build.Frame.Wheelbase / grown.Frame.Wheelbase },
            }),
        ],
    };

    /// <summary>Propeller of the same shape: pitch with diameter, mass with diameter^2.1, spin inertia with mass and diameter squared.</summary>
    public static BuildKnob PropellerDiameter { get; } = new()
    {
        Name = "propeller.diameter",
        Title = "propeller diameter",
        Unit = "in",
        Rule = "The same shape larger: pitch grows with diameter, mass with diameter^2.1, spin inertia with mass and diameter squared.",
        UsualRange = (0.75, 1.2),
        Size = build => build.Propeller.Blades.Diameter / TradeUnits.Inch,
        Grow = (build, factor) =>
        {
            double mass = Math.Pow(factor, 2.1);
            return Loose(build) with
            {
                Propeller = new(
                    new PropellerBody
                    {
                        Mass = mass * build.Propeller.Body.Mass,
                        SpinInertia = mass * factor * factor * build.Propeller.Body.SpinInertia,
                    },
                    build.Propeller.Blades with
                    {
                        Diameter = factor * build.Propeller.Blades.Diameter,
                        Pitch = factor * build.Propeller.Blades.Pitch,
                    }),
                Frame = build.Frame with { DuctDiameter = factor * build.Frame.DuctDiameter },
            };
        },
        Consequences =
        [
            ("the propellers' mass and inertia stayed", (build, grown) =>
                grown with { Propeller = grown.Propeller with { Body = build.Propeller.Body } }),
            ("there were no current limit", MotorVolume.Consequences[2].Without),
        ],
    };

    /// <summary>Pitch of the propellers alone; their mass and inertia stay. Without effect where the file gives blade stations.</summary>
    public static BuildKnob PropellerPitch { get; } = new()
    {
        Name = "propeller.pitch",
        Title = "propeller pitch",
        Unit = "in",
        Rule = "Steeper blades of the same mass and inertia.",
        UsualRange = (0.6, 1.5),
        Size = build => build.Propeller.Blades.Pitch / TradeUnits.Inch,
        Grow = (build, factor) => Loose(build) with
        {
            Propeller = build.Propeller with { Blades = build.Propeller.Blades with { Pitch = factor * build.Propeller.Blades.Pitch } },
        },
    };

    /// <summary>KV with the same copper: resistance and inductance with 1/KV^2.</summary>
    public static BuildKnob MotorKv { get; } = new()
    {
        Name = "motor.kv",
        Title = "motor KV",
        Unit = "rpm/V",
        Rule = "Another winding of the same copper: resistance and inductance fall with KV squared; size, mass and torque limit stay.",
        UsualRange = (0.6, 1.5),
        Size = build => 60 / (2 * Math.PI * build.Motor.Electrics.Kt),
        Grow = (build, factor) =>
        {
            MotorElectrics electrics = build.Motor.Electrics;
            return Loose(build) with
            {
                Motor = build.Motor with
                {
                    Electrics = electrics with
                    {
                        Kt = electrics.Kt / factor,
                        WindingResistance = electrics.WindingResistance / (factor * factor),
                        CommutationDroop = electrics.CommutationDroop / (factor * factor),
                    },
                },
            };
        },
    };

    /// <summary>Pack of the same voltage and kind: capacity and current rating with mass, resistance with its inverse, edges with its cube root.</summary>
    public static BuildKnob BatteryMass { get; } = new()
    {
        Name = "battery.mass",
        Title = "battery mass",
        Unit = "g",
        Rule = "The same kind of pack with as many cells: capacity and current rating grow with mass, resistance falls with it, edges grow with its cube root; it stays where it is mounted.",
        UsualRange = (0.4, 2.5),
        Size = build => build.Battery.Mass * 1e3,
        Grow = (build, factor) =>
        {
            BatterySpec battery = build.Battery;
            double length = Math.Cbrt(factor);
            Vec3 size = length * battery.Size;
            // the face on the plate stays where it is
            double shift = Math.Sign(battery.p_OC.Z) * (size.Z - battery.Size.Z) / 2;
            return Loose(build) with
            {
                Battery = battery with
                {
                    Mass = factor * battery.Mass,
                    Size = size,
                    p_OC = battery.p_OC + new Vec3(0, 0, shift),
                    Capacity = factor * battery.Capacity,
                    NominalEnergy = factor * battery.NominalEnergy,
                    CurrentRating = factor * battery.CurrentRating,
                    SeriesResistance = battery.SeriesResistance / factor,
                    PairResistance = battery.PairResistance / factor,
                },
            };
        },
        Consequences =
        [
            ("the pack's mass stayed", (build, grown) =>
                grown with { Battery = grown.Battery with { Mass = build.Battery.Mass, Size = build.Battery.Size, p_OC = build.Battery.p_OC } }),
            ("the pack's resistance stayed", (build, grown) => grown with
            {
                Battery = grown.Battery with { SeriesResistance = build.Battery.SeriesResistance, PairResistance = build.Battery.PairResistance },
            }),
        ],
    };

    /// <summary>The whole craft larger or smaller; see <see cref="Builds.CraftSize"/>.</summary>
    public static BuildKnob WholeCraft { get; } = new()
    {
        Name = "craft.size",
        Title = "size of the whole craft",
        Unit = "mm",
        Rule = "The same craft larger: every length grows, masses with length^3, inertias with length^5, torques with length^4, currents with length^3.5, at the same voltage.",
        UsualRange = (0.5, 2),
        Size = build => build.Frame.Wheelbase * 1e3,
        Grow = (build, factor) => CraftSize.Grow(Loose(build), factor),
    };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<BuildKnob> All { get; } =
        [MotorVolume, ArmLength, PropellerDiameter, PropellerPitch, MotorKv, BatteryMass, WholeCraft];

    /// <summary>The knob of a name, or one that moves a single number of the build file; null where there is neither.</summary>
    /// <param name="name">Name of a knob, or a full key such as <c>motor.mass_g</c>.</param>
    public static BuildKnob? Find(string name) => All.FirstOrDefault(knob => knob.Name == name) ?? OfKey(name);

    /// <summary>A knob that moves one number of the file; what is estimated from it follows.</summary>
    private static BuildKnob? OfKey(string key)
    {
        if (BuildFormat.Find(key) is not { Kind: KeyKind.Number } spec || spec.Table is "" or "measured" or "pilot") return null;
        return new()
        {
            Name = key,
            Title = $"{key} ({spec.Meaning})",
            Unit = spec.Unit,
            Rule = "This number alone moves; what the file leaves to estimates follows from it.",
            UsualRange = (0.5, 2),
            Size = Size,
            Grow = (build, factor) =>
            {
                BuildResult result = BuildEditor.Swap(build, [new(key, factor * Size(build))]);
                return result.Build ?? throw new InvalidOperationException(
                    string.Join(" ", result.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => d.Message)));
            },
        };

        double Size(Build build) =>
            build.Values.FirstOrDefault(value => value.Key == key)?.Typical
            ?? throw new InvalidOperationException($"{build.Name} has no {key} to grow.");
    }

    /// <summary>What grew is no longer what the file says.</summary>
    private static Build Loose(Build build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return build with { Values = [], Sheet = null };
    }
}
