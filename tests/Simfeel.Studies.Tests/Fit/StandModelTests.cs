using Simfeel.Builds;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Motors;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>The stand's laws: electricity of the motor, momentum theory, and what follows from a changed number of turns.</summary>
public class StandModelTests
{
    private static readonly StandModel Wagtail = new(SyntheticStand.Starter("wagtail"));

    /// <summary>Thrust and torque over density, disc, radius and speed squared; the virtual stand of the flight kernel gives 1856 gf and 0.1966 N m at 30773 rpm.</summary>
    [Fact]
    public void Thrust_and_torque_of_the_propeller()
    {
        (double thrust, double torque) = Wagtail.Air(30773 / TradeUnits.RpmPerRadian);
        Assert.Equal(1855, thrust / TradeUnits.GramForce, 2.0);
        Assert.Equal(0.1966, torque, 1e-3);
        (double more, double braked) = Wagtail.With(StandFactors.None with { Thrust = 1.1, Torque = 1.3 }).Air(30773 / TradeUnits.RpmPerRadian);
        Assert.Equal(1.1, more / thrust, 1e-12);
        Assert.Equal(1.3, braked / torque, 1e-12);
        Assert.Equal(Math.PI * 0.06477 * 0.06477, Wagtail.DiscArea, 1e-9);
    }

    /// <summary>T^1.5 / sqrt(2 rho A), any handbook of helicopters: 1000 gf on 5.1 inch in 1.225 kg/m3 need 170.9 W.</summary>
    [Fact]
    public void Least_power_is_that_of_momentum_theory()
    {
        Assert.Equal(Math.Pow(9.80665, 1.5) / Math.Sqrt(2 * 1.225 * Math.PI * 0.06477 * 0.06477), Wagtail.IdealPower(9.80665), 1e-3);
        Assert.Equal(170.9, Wagtail.IdealPower(9.80665), 0.05);
        Assert.Equal((0, 0), (Wagtail.IdealPower(0), Wagtail.IdealPower(-1)));
        Assert.True(Wagtail.IdealPower(1e-3) > 0);
    }

    /// <summary>Kirchhoff over the winding: V = K w + R i and the droop of commutation, P = i (K w + R i).</summary>
    [Fact]
    public void Voltage_and_power_of_the_motor()
    {
        double kt = 60 / (2 * Math.PI * 1770), r = Wagtail.Rotor.Resistance, droop = Wagtail.Rotor.CommutationDroop;
        Assert.Equal(kt, Wagtail.Rotor.Kt, 1e-9);
        Assert.Equal(2000 * kt, Wagtail.BridgeVoltage(0, 2000), 1e-6);
        Assert.Equal(10 * r, Wagtail.BridgeVoltage(10, 0), 1e-12);
        Assert.Equal((2000 * kt) + (10 * r) + (10 * 2000 * droop), Wagtail.BridgeVoltage(10, 2000), 1e-6);
        Assert.Equal(10 * ((2000 * kt) + (10 * r)), Wagtail.Power(10, 2000), 1e-6);
    }

    /// <summary>The current is the one whose torque after losses is asked for; it ends at zero and at 2.9 times the limit of saturation.</summary>
    [Fact]
    public void Current_for_a_torque()
    {
        foreach (double speed in (double[])[0, 500, 2000, 3500])
        {
            foreach (double torque in (double[])[0, 0.01, 0.1, 0.3])
                Assert.Equal(torque, MotorModel.ShaftTorque(Wagtail.Rotor, Wagtail.CurrentFor(torque, speed), speed), 1e-9);
        }
        Assert.Equal(0, Wagtail.CurrentFor(-5, 1000));
        Assert.Equal(2.9 * Wagtail.Rotor.TorqueLimit / Wagtail.Rotor.Kt, Wagtail.CurrentFor(50, 1000), 1e-9);
    }

    [Fact]
    public void Speed_at_a_voltage_and_power_for_a_thrust_are_the_inverse()
    {
        foreach (double speed in (double[])[300, 1500, 3000])
        {
            (double thrust, double torque) = Wagtail.Air(speed);
            double current = Wagtail.CurrentFor(torque, speed);
            Assert.Equal(speed, Wagtail.SpeedAt(Wagtail.BridgeVoltage(current, speed)), 1e-6);
            Assert.Equal(1, Wagtail.PowerFor(thrust) / Wagtail.Power(current, speed), 1e-6);
        }
        Assert.Equal((0, 0), (Wagtail.SpeedAt(0), Wagtail.SpeedAt(-3)));
    }

    /// <summary>
    /// A coil of n turns: K grows with n, resistance and inductance in the same room with n squared. What the build estimates follows a
    /// changed KV so; what somebody measured does not.
    /// </summary>
    [Fact]
    public void Estimates_follow_the_number_of_turns_and_measured_numbers_do_not()
    {
        double winding = Wagtail.Build.Build.Motor.Electrics.WindingResistance;
        StandModel wound = Wagtail.With(StandFactors.None with { Kv = 1.1 });
        Assert.Equal(1 / 1.1, wound.Rotor.Kt / Wagtail.Rotor.Kt, 1e-12);
        Assert.Equal(winding / 1.21, wound.WindingResistance, 1e-12);
        Assert.Equal(1 / 1.21, wound.Rotor.CommutationDroop / Wagtail.Rotor.CommutationDroop, 1e-12);
        Assert.Equal((Wagtail.Rotor.LossTorque, Wagtail.Rotor.LossTorquePerSpeed), (wound.Rotor.LossTorque, wound.Rotor.LossTorquePerSpeed));
        Assert.Equal(winding, Wagtail.WindingResistance, 1e-15);

        StandModel stated = new(Edited("stator_height_mm = 7 ", "winding_resistance_mohm = 45\ninductance_uH = 20\nno_load_current_A = 1.5\nno_load_voltage_V = 10\nstator_height_mm = 7 "));
        StandModel turned = stated.With(StandFactors.None with { Kv = 1.1 });
        Assert.Equal(0.045, turned.WindingResistance, 1e-12);
        Assert.Equal(stated.Rotor.CommutationDroop, turned.Rotor.CommutationDroop, 1e-15);
        // a no-load current is losses over K: the losses fall with it
        Assert.True(stated.HasNoLoadCurrent && !Wagtail.HasNoLoadCurrent);
        Assert.Equal(1 / 1.1, turned.Rotor.LossTorque / stated.Rotor.LossTorque, 1e-12);
        Assert.Equal(1 / 1.1, turned.Rotor.LossTorquePerSpeed / stated.Rotor.LossTorquePerSpeed, 1e-12);
    }

    [Fact]
    public void Each_factor_moves_its_own_constant()
    {
        double winding = Wagtail.WindingResistance;
        StandModel model = Wagtail.With(StandFactors.None with { Resistance = 1.5, Loss = 2, Inductance = 3 });
        Assert.Equal(1.5 * winding, model.WindingResistance, 1e-12);
        // the speed controller's own resistance stays
        Assert.Equal(Wagtail.Rotor.Resistance + (0.5 * winding), model.Rotor.Resistance, 1e-12);
        Assert.Equal((2 * Wagtail.Rotor.LossTorque, 2 * Wagtail.Rotor.LossTorquePerSpeed), (model.Rotor.LossTorque, model.Rotor.LossTorquePerSpeed));
        Assert.Equal(3 * Wagtail.Rotor.CommutationDroop, model.Rotor.CommutationDroop, 1e-12);
        // factors are on the build's numbers, not on top of each other
        Assert.Equal(Wagtail.Rotor, model.With(StandFactors.None).Rotor);
    }

    [Fact]
    public void Factors_have_an_order()
    {
        StandFactors factors = StandFactors.FromLogarithms([0, Math.Log(2), Math.Log(3), Math.Log(4), Math.Log(5), Math.Log(6)]);
        for (int n = 0; n < StandFactors.Count; n++) Assert.Equal(n + 1, factors[n], 1e-12);
        Assert.Equal((1, 2, 3), (factors.Thrust, Math.Round(factors.Torque, 9), Math.Round(factors.Kv, 9)));
        Assert.Equal(StandFactors.None, StandFactors.FromLogarithms(new double[6]));
        Assert.Throws<ArgumentOutOfRangeException>(() => factors[6]);
    }

    private static AssembledBuild Edited(string from, string to) => SyntheticStand.Assembled(
        BuildReader.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml")).Replace(from, to, StringComparison.Ordinal), "x.toml").Build!);
}
