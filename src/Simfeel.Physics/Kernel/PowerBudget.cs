using Simfeel.Physics.Motors;

namespace Simfeel.Physics.Kernel;

/// <summary>
/// Where the battery's power goes at one instant, W: what its chemistry gives is heat, work on the rotors, or stored.
/// <see cref="Source"/> = <see cref="Heat"/> + <see cref="Shaft"/> + <see cref="Stored"/>.
/// </summary>
public readonly record struct PowerBudget
{
    /// <summary>Open-circuit voltage times pack current; negative while braking motors charge the pack.</summary>
    public double Source { get; private init; }

    /// <summary>Heat in the pack's series resistance and in its RC pair.</summary>
    public double PackHeat { get; private init; }

    /// <summary>What flight controller, receiver and video draw.</summary>
    public double Electronics { get; private init; }

    /// <summary>R i^2 in windings and speed controllers, all motors.</summary>
    public double CopperHeat { get; private init; }

    /// <summary>Iron and friction losses, all motors.</summary>
    public double IronHeat { get; private init; }

    /// <summary>What the current would turn and a saturated motor does not, all motors.</summary>
    public double SaturationHeat { get; private init; }

    /// <summary>
    /// Torque on the rotors times their speed against the motors: work on the air, on the speed of the rotors and of the craft.
    /// </summary>
    public double Shaft { get; private init; }

    /// <summary>Into the capacitance of the pack's RC pair.</summary>
    public double Stored { get; private init; }

    /// <summary>All that becomes heat.</summary>
    public double Heat => PackHeat + Electronics + CopperHeat + IronHeat + SaturationHeat;

    /// <summary>The budget of a craft at a sample.</summary>
    public static PowerBudget Of(Craft craft, in Sample sample)
    {
        ArgumentNullException.ThrowIfNull(craft);
        BatteryConstants battery = craft.Battery;
        double current = sample.PackCurrent, pair = sample.State.PairVoltage;
        double leak = battery.PairResistance > 0 ? pair / battery.PairResistance : current;
        double copper = 0, iron = 0, saturation = 0, shaft = 0;
        for (int k = 0; k < craft.Rotors.Count; k++)
        {
            RotorConstants rotor = craft.Rotors[k];
            double i = sample.MotorCurrent[k], w = sample.State.RotorSpeeds[k];
            double magnetic = MotorModel.MagneticTorque(rotor, i, w);
            copper += rotor.Resistance * i * i;
            saturation += ((rotor.Kt * i) - magnetic) * w;
            iron += (magnetic - sample.MotorTorque[k]) * w;
            shaft += sample.MotorTorque[k] * w;
        }
        return new()
        {
            Source = battery.OpenCircuitVoltageAt(sample.State.Charge / battery.Capacity) * current,
            PackHeat = (battery.SeriesResistance * current * current) + (pair * leak),
            Electronics = battery.ElectronicsPower,
            CopperHeat = copper,
            IronHeat = iron,
            SaturationHeat = saturation,
            Shaft = shaft,
            Stored = pair * (current - leak),
        };
    }
}
