using Simfeel.Builds;
using Simfeel.Physics;
using Simfeel.Physics.Motors;
using Simfeel.Physics.Rotors;

namespace Simfeel.Studies.Fit;

/// <summary>One motor with its propeller on a stand, with the laws of the flight kernel, at steady speed in still air.</summary>
public sealed class StandModel
{
    private const int Bisections = 60;

    private readonly double _density;
    private readonly double _propulsion;

    /// <summary>The stand of a build.</summary>
    /// <exception cref="ArgumentNullException">The build is null.</exception>
    public StandModel(AssembledBuild build)
        : this(build ?? throw new ArgumentNullException(nameof(build)), build.Craft.Rotors[0], StandFactors.None)
    {
    }

    private StandModel(AssembledBuild build, RotorConstants rotor, StandFactors factors)
    {
        Build = build;
        Rotor = rotor;
        Factors = factors;
        _density = build.Air.Density;
        _propulsion = _density * DiscArea * Rotor.Radius * Rotor.Radius;
    }

    /// <summary>The build whose numbers the model starts from.</summary>
    public AssembledBuild Build { get; }

    /// <summary>The motor, with the factors on its constants.</summary>
    public RotorConstants Rotor { get; }

    /// <summary>What the build's constants are multiplied by.</summary>
    public StandFactors Factors { get; }

    /// <summary>Swept area, m^2.</summary>
    public double DiscArea => Math.PI * Rotor.Radius * Rotor.Radius;

    /// <summary>The same stand with the build's own constants multiplied by factors.</summary>
    public StandModel With(StandFactors factors)
    {
        RotorConstants own = Build.Craft.Rotors[0];
        double winding = Build.Build.Motor.Electrics.WindingResistance;
        double turns = 1 / (factors.Kv * factors.Kv);
        double resistance = factors.Resistance * (IsRule("motor.winding_resistance_mohm") ? turns : 1);
        double inductance = factors.Inductance * (IsRule("motor.inductance_uH") ? turns : 1);
        double loss = factors.Loss * (HasNoLoadCurrent ? 1 / factors.Kv : 1);
        return new(Build, own with
        {
            Kt = own.Kt / factors.Kv,
            Resistance = own.Resistance + (winding * (resistance - 1)),
            LossTorque = own.LossTorque * loss,
            LossTorquePerSpeed = own.LossTorquePerSpeed * loss,
            CommutationDroop = own.CommutationDroop * inductance,
        }, factors);
    }

    /// <summary>True where the build gives its losses as a no-load current; else as a factor on the usual ones.</summary>
    public bool HasNoLoadCurrent => Build.Values.Any(value => value.Key == "motor.no_load_voltage_V")
        && Build.Values.Any(value => value.Key == "motor.no_load_current_A");

    /// <summary>Winding resistance, ohm, speed controller apart.</summary>
    public double WindingResistance =>
        Rotor.Resistance - Build.Craft.Rotors[0].Resistance + Build.Build.Motor.Electrics.WindingResistance;

    /// <summary>Thrust (N) and torque (N m) of the propeller at a speed, rad/s.</summary>
    public (double Thrust, double Torque) Air(double speed)
    {
        RotorCoefficients c = Rotor.Table.At(speed, Rotor.Radius, 0, 0);
        double scale = _propulsion * speed * speed;
        return (Factors.Thrust * c.Thrust * scale, Factors.Torque * c.Torque * scale * Rotor.Radius);
    }

    /// <summary>Motor current (A) whose torque after losses is the given one (N m) at a speed (rad/s).</summary>
    public double CurrentFor(double torque, double speed)
    {
        // the torque is nearly in proportion to the current, so the secant through zero is close and Newton closes in
        double current = (torque + Rotor.LossTorque + (Rotor.LossTorquePerSpeed * speed)) / Rotor.Kt;
        double most = 2.9 * Rotor.TorqueLimit / Rotor.Kt;
        for (int n = 0; n < 12; n++)
        {
            double step = 1e-4 * (1 + Math.Abs(current));
            double here = MotorModel.ShaftTorque(Rotor, current, speed);
            double slope = (MotorModel.ShaftTorque(Rotor, current + step, speed) - here) / step;
            double change = (torque - here) / Math.Max(slope, 0.02 * Rotor.Kt);
            current = Math.Clamp(current + change, 0, most);
            if (Math.Abs(change) < 1e-9 * (1 + current)) break;
        }
        return current;
    }

    /// <summary>Power into the speed controller, W.</summary>
    public double Power(double current, double speed) => MotorModel.PackPower(Rotor, current, speed);

    /// <summary>Voltage that the motor needs over the bridge, V: duty times the controller's voltage.</summary>
    public double BridgeVoltage(double current, double speed) =>
        (Rotor.Kt * speed) + (current * (Rotor.Resistance + (Rotor.CommutationDroop * speed)));

    /// <summary>Speed (rad/s) at which the motor with its propeller settles at a bridge voltage, V.</summary>
    public double SpeedAt(double bridgeVoltage)
    {
        double low = 0, high = 1.2 * Math.Max(bridgeVoltage, 0) / Rotor.Kt;
        for (int n = 0; n < Bisections; n++)
        {
            double middle = (low + high) / 2;
            if (BridgeVoltage(CurrentFor(Air(middle).Torque, middle), middle) > bridgeVoltage) high = middle;
            else low = middle;
        }
        return low;
    }

    /// <summary>Power (W) into the speed controller with which the propeller lifts a thrust, N.</summary>
    public double PowerFor(double thrust)
    {
        double low = 0, high = 1e4;
        for (int n = 0; n < Bisections; n++)
        {
            double middle = (low + high) / 2;
            if (Air(middle).Thrust > thrust) high = middle;
            else low = middle;
        }
        return Power(CurrentFor(Air(low).Torque, low), low);
    }

    // What the build estimates goes with the square of the number of turns, hence of Kt, and follows a changed KV.
    private bool IsRule(string key) => Build.Values.Any(value => value.Key == key && value.Source == ValueSource.Rule);

    /// <summary>Least power (W) that can lift a thrust (N) with this disc: momentum theory, T^1.5 / sqrt(2 rho A).</summary>
    public double IdealPower(double thrust) => thrust <= 0 ? 0 : thrust * Math.Sqrt(thrust / (2 * _density * DiscArea));
}

/// <summary>What a fit multiplies the build's constants by; all 1 is the build itself.</summary>
/// <param name="Thrust">Thrust of the propeller.</param>
/// <param name="Torque">Torque of the propeller.</param>
/// <param name="Kv">Speed constant of the motor.</param>
/// <param name="Resistance">Winding resistance, speed controller apart.</param>
/// <param name="Loss">Iron and friction torque.</param>
/// <param name="Inductance">Winding inductance, which slows the motor under load.</param>
public readonly record struct StandFactors(
    double Thrust, double Torque, double Kv, double Resistance, double Loss, double Inductance)
{
    /// <summary>The number of factors.</summary>
    public const int Count = 6;

    /// <summary>The build itself.</summary>
    public static StandFactors None => new(1, 1, 1, 1, 1, 1);

    /// <summary>From the logarithms, in the order of the parameters.</summary>
    public static StandFactors FromLogarithms(IReadOnlyList<double> x)
    {
        ArgumentNullException.ThrowIfNull(x);
        return new(Math.Exp(x[0]), Math.Exp(x[1]), Math.Exp(x[2]), Math.Exp(x[3]), Math.Exp(x[4]), Math.Exp(x[5]));
    }

    /// <summary>The factor at an index, in the order of the parameters.</summary>
    public double this[int index] => index switch
    {
        0 => Thrust,
        1 => Torque,
        2 => Kv,
        3 => Resistance,
        4 => Loss,
        5 => Inductance,
        _ => throw new ArgumentOutOfRangeException(nameof(index)),
    };
}
