using Simfeel.Physics.Maths;
using Simfeel.Physics.Motors;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Motors;

/// <summary>
/// The motor at full duty against the closed forms of M. Drela, First-Order DC Electric Motor Model, MIT, 2007:
/// i = (v - w/Kv)/R, Q = (i - i0)/Kv. Loss torque Kt i0 at all speeds above the 20 rad/s in which it fades in.
/// </summary>
/// <remarks>
/// The saturating torque is Q (1 - 8/27 (Q/limit)^2 + ...), so a limit of 1e6 N m leaves a relative 1e-14 of a torque of
/// 0.1 N m: nothing.
/// </remarks>
public class MotorFormulaTests
{
    private const double NoLimit = 1e6, Rpm = Math.PI / 30;

    // a brushed 6 V "400" motor: R 0.31 ohm, i0 0.77 A, 2760 rpm/V (published with the model)
    private const double R = 0.31, I0 = 0.77;

    private static readonly double Kt = 60 / (2 * Math.PI * 2760);

    // v; no-load rpm; stall N m; i*; eta*; rpm and N m there; i and W at greatest power, computed from the closed forms
    [Theory]
    [InlineData(6.0, 15901.188, 0.0643014989, 3.860469635, 0.640868138, 13256.982, 0.010692685, 10.062419, 26.768208)]
    [InlineData(8.4, 22525.188, 0.0910877445, 4.567769273, 0.691271792, 19275.817, 0.013139864, 13.933387, 53.715176)]
    public void Motor_meets_the_closed_forms(
        double v, double noLoad, double stall, double iBest, double etaBest, double rpmBest, double torqueBest, double iPeak, double power)
    {
        RotorConstants motor = Motor(Kt, R, I0);
        Assert.Equal(0.00345989007, Kt, 1e-11);

        // no load: torque zero at Kv (v - i0 R)
        double w0 = (v - (I0 * R)) / Kt;
        Assert.Equal(noLoad, w0 / Rpm, 1e-3);
        Bound.Check("no-load torque, N m", Math.Abs(MotorModel.Torque(motor, 1, v, w0)), 1e-9 * stall);

        // stall: the line through two speeds above the fade, prolonged to rest
        double q40 = MotorModel.Torque(motor, 1, v, 40), q80 = MotorModel.Torque(motor, 1, v, 80);
        Bound.Check("stall torque, relative", Math.Abs(((2 * q40) - q80) / (((v / R) - I0) * Kt) - 1), 1e-9);
        Assert.Equal(stall, (2 * q40) - q80, 1e-9);
        Assert.Equal((v / R) * Kt, MotorModel.Torque(motor, 1, v, 0), 1e-12);

        // best efficiency: i* = sqrt(v i0 / R), eta* = (1 - sqrt(i0 R / v))^2
        double iStar = Math.Sqrt(v * I0 / R), wStar = (v - (iStar * R)) / Kt;
        Bound.Check("i*, A", Math.Abs(MotorModel.Current(motor, 1, v, wStar) - iStar), 1e-9);
        Bound.Check("eta*", Math.Abs(Efficiency(wStar) - Math.Pow(1 - Math.Sqrt(I0 * R / v), 2)), 1e-9);
        Assert.Equal(iBest, iStar, 1e-8);
        Assert.Equal(etaBest, Efficiency(wStar), 1e-8);
        Assert.Equal(rpmBest, wStar / Rpm, 1e-3);
        Assert.Equal(torqueBest, MotorModel.Torque(motor, 1, v, wStar), 1e-8);
        Assert.True(Efficiency(wStar) > Efficiency(0.99 * wStar) && Efficiency(wStar) > Efficiency(1.01 * wStar));

        // greatest shaft power: i = (v/R + i0)/2
        double iTop = ((v / R) + I0) / 2, wTop = (v - (iTop * R)) / Kt;
        Assert.Equal(iPeak, MotorModel.Current(motor, 1, v, wTop), 1e-6);
        Assert.Equal(power, Shaft(wTop), 1e-6);
        Bound.Check("greatest power, relative", Math.Abs((Shaft(wTop) / ((iTop - I0) * (v - (iTop * R)))) - 1), 1e-9);
        Assert.True(Shaft(wTop) > Shaft(0.99 * wTop) && Shaft(wTop) > Shaft(1.01 * wTop));

        double Shaft(double w) => w * MotorModel.Torque(motor, 1, v, w);
        double Efficiency(double w) => Shaft(w) / MotorModel.PackPower(motor, MotorModel.Current(motor, 1, v, w), w);
    }

    [Fact]
    public void Brushless_set_meets_the_closed_forms()
    {
        // 1950 rpm/V, 0.07 ohm, 1.1 A, 14.8 V: Kt 0.004897075172, i* 15.250292737 A, eta* 0.860943177, Km 0.018509204
        double kt = 60 / (2 * Math.PI * 1950);
        RotorConstants motor = Motor(kt, 0.07, 1.1);
        Assert.Equal(0.004897075172, kt, 1e-12);
        Assert.Equal(0.018509204, kt / Math.Sqrt(0.07), 1e-9);
        double w = (14.8 - (15.250292737 * 0.07)) / kt;
        double i = MotorModel.Current(motor, 1, 14.8, w);
        Assert.Equal(15.250292737, i, 1e-9);
        Assert.Equal(0.860943177, w * MotorModel.ShaftTorque(motor, i, w) / (14.8 * i), 1e-9);
    }

    // v i = i^2 R + i0 w / Kv + Q w, both driving and braking, at any duty
    [Fact]
    public void Electrical_power_is_copper_plus_loss_plus_shaft()
    {
        RotorConstants motor = Motor(Kt, R, I0);
        Random random = new(7);
        double worst = 0;
        for (int n = 0; n < 10_000; n++)
        {
            double v = 3 + (20 * random.NextDouble()), duty = random.NextDouble();
            double w = 25 + (6000 * random.NextDouble());
            double i = MotorModel.Current(motor, duty, v, w);
            double left = duty * v * i, pack = MotorModel.PackPower(motor, i, w);
            double right = (i * i * R) + (I0 * Kt * w) + (w * MotorModel.ShaftTorque(motor, i, w));
            double size = Math.Abs(duty * v * i) + (i * i * R) + Math.Abs(Kt * w * i);
            worst = Math.Max(worst, Math.Max(Math.Abs(left - right), Math.Abs(left - pack)) / size);
        }
        Bound.Check("power closure of a motor, relative", worst, 1e-12);
    }

    [Theory]
    [InlineData(1.0, 0, 45)]
    [InlineData(0.0, 2500, -30)]
    [InlineData(0.9, 1.0, 45)]
    public void Current_is_held_at_the_limits(double duty, double w, double current)
    {
        RotorConstants motor = Motor(0.005, 0.06, 0) with { CurrentLimit = 45, BrakeCurrentLimit = 30 };
        Assert.Equal(current, MotorModel.Current(motor, duty, 15, w));
    }

    [Fact]
    public void Coasting_motor_takes_no_current_and_only_its_losses_brake_it()
    {
        RotorConstants motor = Motor(0.005, 0.06, 0.8) with { BrakeCurrentLimit = 0 };
        Assert.Equal(0, MotorModel.Current(motor, 0, 15, 2500));
        Assert.Equal(-0.8 * 0.005, MotorModel.Torque(motor, 0, 15, 2500), 1e-15);
    }

    // the droop is an apparent resistance k_c w: limits the current, burns nothing
    [Fact]
    public void Commutation_droop_limits_current_without_heat()
    {
        RotorConstants motor = Motor(0.005, 0.06, 0) with { CommutationDroop = 2e-5 };
        const double w = 2000;
        double i = MotorModel.Current(motor, 1, 15, w);
        Assert.Equal((15 - (0.005 * w)) / (0.06 + (2e-5 * w)), i, 1e-12);
        Assert.Equal((0.005 * w * i) + (0.06 * i * i), MotorModel.PackPower(motor, i, w), 1e-10);
        Assert.Equal(i, MotorModel.Current(motor, 1, 15, w));
    }

    [Fact]
    public void Torque_saturates_softly_odd_and_monotone_toward_the_limit()
    {
        RotorConstants motor = Motor(0.005, 0.06, 0) with { TorqueLimit = 0.3 };
        double last = 0;
        for (int n = 1; n <= 400; n++)
        {
            double i = n, torque = MotorModel.ShaftTorque(motor, i, 1000);
            Assert.True(torque >= last && torque <= 0.3 * (1 + 1e-15));
            Assert.Equal(-torque, MotorModel.ShaftTorque(motor, -i, -1000), 1e-15);
            // braking gives e i back, so it takes that much from the shaft
            Assert.Equal(-0.005 * i, MotorModel.ShaftTorque(motor, -i, 1000), 1e-15);
            // the (3, 2) Pade approximant of tanh differs from it by at most 0.024 of the limit (at x about 2.1)
            Assert.InRange(torque - (0.3 * Math.Tanh(0.005 * i / 0.3)), -1e-12, 0.024 * 0.3);
            last = torque;
        }
        Assert.Equal(0.3, MotorModel.ShaftTorque(motor, 1000, 1000), 1e-15);
    }

    private static RotorConstants Motor(double kt, double resistance, double noLoadCurrent) => new()
    {
        p_BcmR_B = Vec3.Zero,
        Spin = 1,
        Radius = 0.06,
        Table = TestCraft.NoAir,
        SpinInertia = 1.2e-5,
        Kt = kt,
        Resistance = resistance,
        CurrentLimit = 1e9,
        BrakeCurrentLimit = 1e9,
        TorqueLimit = NoLimit,
        LossTorque = kt * noLoadCurrent,
    };
}
