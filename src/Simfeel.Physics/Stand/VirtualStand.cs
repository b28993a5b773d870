using Simfeel.Physics.Maths;
using Simfeel.Physics.Motors;

namespace Simfeel.Physics.Stand;

/// <summary>
/// A thrust stand that needs no hardware: rotors in steady axial flow, with the motor and pack laws of the flight kernel.
/// The pack has settled, so its RC pair counts as resistance.
/// </summary>
public sealed class VirtualStand
{
    private const int Bisections = 60;

    private readonly RotorConstants _rotor;
    private readonly BatteryConstants _battery;
    private readonly double _source;
    private readonly double _density;
    private readonly int _running;

    /// <summary>A stand for a craft's first rotor.</summary>
    /// <param name="craft">The craft whose rotor and pack are tested.</param>
    /// <param name="density">Air density, kg/m^3.</param>
    /// <param name="stateOfCharge">0 to 1.</param>
    /// <param name="running">Equal motors that pull on the pack at once: 1 on a bench, all of them in flight.</param>
    public VirtualStand(Craft craft, double density, double stateOfCharge, int running)
    {
        ArgumentNullException.ThrowIfNull(craft);
        ArgumentOutOfRangeException.ThrowIfNegative(stateOfCharge);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(stateOfCharge, 1);
        _rotor = craft.Rotors[0];
        _battery = craft.Battery;
        _source = _battery.OpenCircuitVoltageAt(stateOfCharge);
        _density = density;
        _running = running;
    }

    /// <summary>The balance at a rotor speed (rad/s) and axial velocity (m/s, climb positive).</summary>
    public OperatingPoint AtSpeed(double speed, double axial = 0)
    {
        (double thrust, double torque) = Air(speed, axial);
        (double current, double voltage, double duty) = Electrics(speed, torque);
        return new(
            speed, duty, thrust, torque, current, voltage, (_source - voltage) / (_battery.SeriesResistance + _battery.PairResistance),
            MotorModel.ReserveUp(_rotor, voltage, speed, torque),
            MotorModel.ReserveDown(_rotor, voltage, speed, torque));
    }

    /// <summary>The balance at a duty, 0 to 1.</summary>
    public OperatingPoint AtDuty(double duty, double axial = 0)
    {
        (double below, _) = RisingSearch.Enclose(
            speed => Electrics(speed, Air(speed, axial).Torque).Duty - duty, 0, 1.2 * _source / _rotor.Kt);
        return AtSpeed(below, axial);
    }

    /// <summary>The balance at which one rotor lifts a thrust (N) in still air; at most that of full duty.</summary>
    public OperatingPoint AtThrust(double thrust)
    {
        (_, double above) = RisingSearch.Enclose(speed => Air(speed, 0).Thrust - thrust, 0, AtDuty(1).Speed);
        return AtSpeed(above);
    }

    /// <summary>
    /// Time constant (s) with which the rotor follows a small change of duty at a working point in still air:
    /// J / (dQ/dw - d(motor torque)/dw) at constant voltage.
    /// </summary>
    public double TimeConstant(OperatingPoint at)
    {
        double step = Math.Max(1e-3 * at.Speed, 1e-3);
        double air = (Air(at.Speed + step, 0).Torque - Air(at.Speed - step, 0).Torque) / (2 * step);
        double motor = (MotorModel.Torque(_rotor, at.Duty, at.PackVoltage, at.Speed + step)
            - MotorModel.Torque(_rotor, at.Duty, at.PackVoltage, at.Speed - step)) / (2 * step);
        return _rotor.SpinInertia / (air - motor);
    }

    /// <summary>
    /// Torque reserve up (N m) of one rotor when all running motors go from a working point to full duty at once, before
    /// any rotor has gained speed: the pack sags under them, its RC pair still as it was. At most
    /// <see cref="OperatingPoint.ReserveUp"/>, which holds the pack's voltage.
    /// </summary>
    public double ReserveUpTogether(OperatingPoint at)
    {
        double source = _source - (_battery.PairResistance * at.PackCurrent);
        // at a voltage that only just turns the motors they ask for nothing
        double low = Math.Min(_rotor.Kt * at.Speed, source), high = source;
        for (int n = 0; n < Bisections; n++)
        {
            double middle = (low + high) / 2;
            double current = MotorModel.Current(_rotor, 1, middle, at.Speed);
            double power = (_running * MotorModel.PackPower(_rotor, current, at.Speed)) + _battery.ElectronicsPower;
            if ((source - middle) * middle > _battery.SeriesResistance * power) low = middle;
            else high = middle;
        }
        return MotorModel.ReserveUp(_rotor, low, at.Speed, at.Torque);
    }

    private (double Thrust, double Torque) Air(double speed, double axial)
    {
        double radius = _rotor.Radius, area = Math.PI * radius * radius;
        Rotors.RotorCoefficients c = _rotor.Table.At(speed, radius, axial, 0);
        double pressure = _density * area * ((speed * speed * radius * radius) + (axial * axial));
        return (c.Thrust * pressure, c.Torque * pressure * radius);
    }

    /// <summary>What a motor asks of the pack to hold a speed (rad/s) against a torque of the air (N m); no duty will do beyond the limits.</summary>
    private (double Current, double Voltage, double Duty) Electrics(double speed, double torque)
    {
        double current = CurrentFor(torque, speed);
        double power = (_running * MotorModel.PackPower(_rotor, current, speed)) + _battery.ElectronicsPower;
        double inside = (_source * _source) - (4 * (_battery.SeriesResistance + _battery.PairResistance) * power);
        double voltage = (_source + Math.Sqrt(Math.Max(0, inside))) / 2;
        double limits = _rotor.Resistance + (_rotor.CommutationDroop * Math.Abs(speed));
        bool reachable = inside >= 0 && current <= _rotor.CurrentLimit;
        return (current, voltage, reachable ? ((_rotor.Kt * speed) + (current * limits)) / voltage : double.PositiveInfinity);
    }

    /// <summary>
    /// Motor current whose shaft torque balances the air, A; up to that of full saturation. Driving, the torque over its limit is
    /// y = u (3 + u^2) / (1 + 3 u^2), so that (1 + y) / (1 - y) = ((1 + u) / (1 - u))^3, and with cube roots a and b of 1 + y and 1 - y
    /// u = (a - b) / (a + b), here without the difference.
    /// </summary>
    private double CurrentFor(double torque, double speed)
    {
        double limit = 3 * _rotor.TorqueLimit / _rotor.Kt;
        // without current the shaft feels the losses alone
        double magnetic = torque - MotorModel.ShaftTorque(_rotor, 0, speed);
        if (magnetic * speed < 0) return Math.Clamp(magnetic / _rotor.Kt, -limit, limit);
        double y = Math.Clamp(magnetic / _rotor.TorqueLimit, -1, 1), a = Math.Cbrt(1 + y), b = Math.Cbrt(1 - y);
        return limit * 2 * y / ((a + b) * ((a * a) + (a * b) + (b * b)));
    }
}
