using Simfeel.Physics.Motors;
using Simfeel.Physics.Stand;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Stand;

/// <summary>The virtual stand against the equations that its working points must satisfy, and its lag against algebra.</summary>
public class VirtualStandTests
{
    private const double Density = 1.2, Charge = 0.7, Thrust = 0.012, Torque = 0.0012;

    private static readonly Craft Quad = TestCraft.Quad(TestCraft.Constant(Thrust, Torque, 0, 0));

    /// <summary>Coefficients refer to the whole flow: T = c rho A (w^2 R^2 + V^2), Q likewise with R.</summary>
    [Theory]
    [InlineData(900, 0)]
    [InlineData(900, 15)]
    [InlineData(1800, -9)]
    public void Loads_are_those_of_the_coefficients(double speed, double axial)
    {
        double radius = Quad.Rotors[0].Radius, square = (speed * speed * radius * radius) + (axial * axial);
        OperatingPoint at = new VirtualStand(Quad, Density, Charge, 4).AtSpeed(speed, axial);
        Assert.Equal(Thrust * Density * Math.PI * radius * radius * square, at.Thrust, 1e-12);
        Assert.Equal(Torque * Density * Math.PI * Math.Pow(radius, 3) * square, at.Torque, 1e-12);
    }

    /// <summary>
    /// Motor and air balance, Kirchhoff's laws hold in the winding and in the pack, on any speed, with a motor that saturates early
    /// as well as one that hardly does (<see cref="MotorModel"/> has the laws themselves, tested on their own).
    /// </summary>
    [Theory]
    [InlineData(0.35)]
    [InlineData(0.06)]
    public void Motor_air_and_pack_balance(double torqueLimit)
    {
        RotorConstants rotor = Quad.Rotors[0] with { TorqueLimit = torqueLimit, CurrentLimit = 1000 };
        Craft craft = Quad with { Rotors = [rotor, .. Quad.Rotors.Skip(1)] };
        BatteryConstants pack = craft.Battery;
        VirtualStand stand = new(craft, Density, Charge, 4);
        for (double speed = 200; speed <= 2000; speed += 200)
        {
            OperatingPoint at = stand.AtSpeed(speed);
            Assert.Equal(at.Torque, MotorModel.ShaftTorque(rotor, at.MotorCurrent, speed), 1e-9);
            Assert.Equal(pack.OpenCircuitVoltageAt(Charge) - at.PackVoltage, (pack.SeriesResistance + pack.PairResistance) * at.PackCurrent, 1e-9);
            Assert.Equal(at.PackPower, (4 * MotorModel.PackPower(rotor, at.MotorCurrent, speed)) + pack.ElectronicsPower, 1e-7);
            // what the speed controller applies is used up by back-EMF, winding and commutation
            Assert.Equal(
                at.Duty * at.PackVoltage, (rotor.Kt * speed) + (at.MotorCurrent * (rotor.Resistance + (rotor.CommutationDroop * speed))), 1e-9);
            // the pair of points that belongs to one duty, or to one thrust, is one point
            if (at.Duty >= 1) continue;
            Assert.Equal(speed, stand.AtDuty(at.Duty).Speed, 1e-6);
            Assert.Equal(speed, stand.AtThrust(at.Thrust).Speed, 1e-6);
        }
    }

    /// <summary>Where the flow drives the propeller the motor brakes: its current is (Q + Q0) / Kt, below zero.</summary>
    [Fact]
    public void A_driven_propeller_is_held_by_a_braking_current()
    {
        Craft driven = TestCraft.Quad(TestCraft.Constant(-0.004, -0.003, 0, 0));
        RotorConstants rotor = driven.Rotors[0];
        OperatingPoint at = new VirtualStand(driven, Density, Charge, 1).AtSpeed(1200, -20);
        double losses = rotor.LossTorque + (rotor.LossTorquePerSpeed * 1200);
        Assert.True(at.Torque + losses < 0);
        Assert.Equal((at.Torque + losses) / rotor.Kt, at.MotorCurrent, 1e-9);
    }

    /// <summary>No duty holds a speed for which the motor would need more current than its limit.</summary>
    [Fact]
    public void Beyond_the_current_limit_there_is_no_duty()
    {
        RotorConstants rotor = Quad.Rotors[0];
        double needed = new VirtualStand(Quad, Density, Charge, 1).AtSpeed(1500).MotorCurrent;
        Assert.True(double.IsFinite(Held(1.01 * needed)) && double.IsPositiveInfinity(Held(0.99 * needed)));

        double Held(double limit) =>
            new VirtualStand(Quad with { Rotors = [rotor with { CurrentLimit = limit }] }, Density, Charge, 1).AtSpeed(1500).Duty;
    }

    /// <summary>
    /// J dw/dt = Kt (d V - Kt w) / R - Q0 - q1 w - c w^2 has about a speed the time constant J / (2 c w + Kt^2 / R + q1), with a
    /// motor without saturation and droop.
    /// </summary>
    [Theory]
    [InlineData(600)]
    [InlineData(1400)]
    public void The_lag_is_that_of_the_linear_equation(double speed)
    {
        RotorConstants rotor = Quad.Rotors[0] with { TorqueLimit = 1e6, CommutationDroop = 0 };
        VirtualStand stand = new(Quad with { Rotors = [rotor] }, Density, Charge, 1);
        double load = Torque * Density * Math.PI * Math.Pow(rotor.Radius, 5);
        double expected = rotor.SpinInertia / ((2 * load * speed) + (rotor.Kt * rotor.Kt / rotor.Resistance) + rotor.LossTorquePerSpeed);
        Assert.Equal(1, stand.TimeConstant(stand.AtSpeed(speed)) / expected, 1e-6);
    }

    /// <summary>The RC pair keeps its voltage while the motors are called: the reserve together starts from what is left of the source.</summary>
    [Fact]
    public void Reserve_together_starts_from_the_settled_pair()
    {
        RotorConstants rotor = Quad.Rotors[0] with { TorqueLimit = 1e6, CommutationDroop = 0, CurrentLimit = 1000, LossTorquePerSpeed = 0 };
        Craft craft = Quad with { Rotors = [rotor], Battery = Quad.Battery with { ElectronicsPower = 0 } };
        VirtualStand stand = new(craft, Density, Charge, 4);
        OperatingPoint at = stand.AtSpeed(1200);
        // full duty: the pack feels four times the current i, V - Rp I - Rs 4 i = Kt w + R i
        double left = craft.Battery.OpenCircuitVoltageAt(Charge) - (craft.Battery.PairResistance * at.PackCurrent) - (rotor.Kt * 1200);
        double current = left / (rotor.Resistance + (4 * craft.Battery.SeriesResistance));
        Assert.Equal((rotor.Kt * current) - rotor.LossTorque - at.Torque, stand.ReserveUpTogether(at), 1e-9);
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(1.01)]
    public void A_charge_out_of_its_range_is_refused(double charge) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new VirtualStand(Quad, Density, charge, 1));
}
