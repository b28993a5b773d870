using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Motors;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Stand;
using Simfeel.Physics.Tests.Kernel;

namespace Simfeel.Physics.Tests.Motors;

/// <summary>
/// Torque reserve, limits and droop of motor and speed controller against their circuit equations (M. Drela, First-Order DC
/// Electric Motor Model, MIT, 2007; current limit, droop and braking are algebra on top).
/// </summary>
/// <remarks>The torque limit of 1e6 N m switches saturation off, see <see cref="MotorFormulaTests"/>.</remarks>
public class ReserveTests
{
    private const double Kt = 0.0053, R = 0.064, I0 = 1.4, Voltage = 22, Density = 1.225, Radius = 0.0648;

    [Theory]
    [InlineData(800, 0.02)]
    [InlineData(1500, 0.05)]
    [InlineData(2500, 0.12)]
    public void Braking_has_more_reserve_down_than_coasting_by_the_braking_torque(double speed, double torque)
    {
        RotorConstants braking = Motor(TestCraft.NoAir), coasting = braking with { BrakeCurrentLimit = 0 };
        // coasting: only the losses hold it; braking: the winding is short-circuited
        Assert.Equal(torque + (Kt * I0), MotorModel.ReserveDown(coasting, Voltage, speed, torque), 1e-12);
        Assert.Equal(torque + (Kt * I0) + (Kt * Kt * speed / R), MotorModel.ReserveDown(braking, Voltage, speed, torque), 1e-12);
        RotorConstants limited = braking with { BrakeCurrentLimit = 15 };
        Assert.Equal(torque + (Kt * I0) + (Kt * 15), MotorModel.ReserveDown(limited, Voltage, speed, torque), 1e-12);
    }

    [Theory]
    [InlineData(1000)]
    [InlineData(3000)]
    public void Reserve_up_is_the_torque_of_full_duty_less_the_torque_in_use(double speed)
    {
        double full = Kt * (((Voltage - (Kt * speed)) / R) - I0);
        Assert.Equal(full - 0.04, MotorModel.ReserveUp(Motor(TestCraft.NoAir), Voltage, speed, 0.04), 1e-12);
    }

    /// <summary>Below the corner speed (V - R i_limit) / Kt the torque of full duty is flat, above it falls with Kt^2/R.</summary>
    [Fact]
    public void The_current_limit_is_a_plateau_of_torque()
    {
        RotorConstants motor = Motor(TestCraft.NoAir) with { CurrentLimit = 60 };
        double corner = (Voltage - (R * 60)) / Kt, plateau = Kt * (60 - I0);
        for (double speed = 100; speed < 4000; speed += 50)
        {
            double expected = speed <= corner ? plateau : Kt * (((Voltage - (Kt * speed)) / R) - I0);
            Assert.Equal(expected, MotorModel.ReserveUp(motor, Voltage, speed, 0), 1e-12);
        }
        Assert.InRange(corner, 500, 3500);
    }

    /// <summary>Unloaded, i0 = (V - Kt w) / (R + k w) gives w = (V - R i0) / (Kt + k i0).</summary>
    [Fact]
    public void Droop_lowers_the_no_load_speed_by_the_predicted_amount()
    {
        const double droop = 2.5e-5;
        double plain = Stand(Motor(TestCraft.NoAir)).AtDuty(1).Speed;
        double slowed = Stand(Motor(TestCraft.NoAir) with { CommutationDroop = droop }).AtDuty(1).Speed;
        Assert.Equal((Voltage - (R * I0)) / Kt, plain, 1e-6);
        Assert.Equal((Voltage - (R * I0)) / (Kt + (droop * I0)), slowed, 1e-6);
    }

    /// <summary>
    /// With a load Q = kq w^2 the balance V = Kt w + i (R + k w), i = (kq w^2 + Q0) / Kt is a cubic in w; its root by
    /// Newton's method.
    /// </summary>
    [Fact]
    public void Droop_lowers_the_top_speed_of_a_loaded_motor_by_the_predicted_amount()
    {
        const double load = 2.1e-8, droop = 2.5e-5;
        RotorConstants motor = Motor(TestCraft.Constant(0, load / (Density * Math.PI * Math.Pow(Radius, 5)), 0, 0));
        double plain = Stand(motor).AtDuty(1).Speed, slowed = Stand(motor with { CommutationDroop = droop }).AtDuty(1).Speed;
        Assert.Equal(Top(0), plain, 1e-6 * plain);
        Assert.Equal(Top(droop), slowed, 1e-6 * slowed);
        Assert.InRange(1 - (slowed / plain), 0.05, 0.3);

        static double Top(double k)
        {
            double w = 2500;
            for (int n = 0; n < 50; n++)
            {
                double i = ((load * w * w) + (Kt * I0)) / Kt, slope = 2 * load * w / Kt;
                w -= ((Kt * w) + (i * (R + (k * w))) - Voltage) / (Kt + (slope * (R + (k * w))) + (i * k));
            }
            return w;
        }
    }

    /// <summary>
    /// Four motors called to full duty at the same speed: i (R + 4 R0) = V - Kt w while no limit holds and the electronics
    /// draw nothing (the pack feels 4 i, since the duty is 1).
    /// </summary>
    [Fact]
    public void Together_motors_have_the_reserve_that_the_sagging_pack_leaves()
    {
        const double r0 = 0.02;
        RotorConstants motor = Motor(TestCraft.Constant(0.02, 0.004, 0, 0));
        VirtualStand stand = Stand(motor, r0, 4);
        OperatingPoint at = stand.AtSpeed(1500);
        double current = (Voltage - (Kt * 1500)) / (R + (4 * r0));
        Assert.Equal((Kt * (current - I0)) - at.Torque, stand.ReserveUpTogether(at), 1e-9);
        Assert.True(stand.ReserveUpTogether(at) < at.ReserveUp);
        // a stiff pack takes nothing away
        VirtualStand stiff = Stand(motor, 1e-9, 4);
        Assert.Equal(stiff.AtSpeed(1500).ReserveUp, stiff.ReserveUpTogether(stiff.AtSpeed(1500)), 1e-5);
    }

    /// <summary>The stand, the kernel's sample and the functions say the same.</summary>
    [Fact]
    public void Sample_and_stand_take_the_same_reserves()
    {
        RotorConstants motor = Motor(TestCraft.Constant(0.02, 0.004, 0, 0)) with { CurrentLimit = 45, BrakeCurrentLimit = 20, CommutationDroop = 1e-5 };
        OperatingPoint at = Stand(motor).AtDuty(0.5);
        Assert.Equal(MotorModel.ReserveUp(motor, at.PackVoltage, at.Speed, at.Torque), at.ReserveUp);
        Assert.Equal(MotorModel.ReserveDown(motor, at.PackVoltage, at.Speed, at.Torque), at.ReserveDown);

        Craft craft = Craft(motor, 1e-6);
        CraftState state = CraftState.AtRest(craft);
        state.RotorSpeeds = PerRotor.All(at.Speed);
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, state, Density, duty: 0.5);
        batch.Evaluate();
        Sample sample = batch.GetSample(0);
        Assert.Equal(MotorModel.ReserveUp(motor, sample.PackVoltage, at.Speed, sample.MotorTorque[1]), sample.ReserveUp[1]);
        Assert.Equal(MotorModel.ReserveDown(motor, sample.PackVoltage, at.Speed, sample.MotorTorque[1]), sample.ReserveDown[1]);
        Assert.Equal(at.ReserveUp, sample.ReserveUp[0], 1e-4);
    }

    private static VirtualStand Stand(RotorConstants motor, double packResistance = 1e-9, int running = 1) =>
        new(Craft(motor, packResistance), Density, 1, running);

    private static Craft Craft(RotorConstants motor, double packResistance) => new()
    {
        Mass = 0.5,
        I_BBcm_B = Mat3.Diagonal(1e-3, 1e-3, 2e-3),
        Rotors = [motor, motor with { Spin = -1 }],
        Battery = TestCraft.FlatBattery(Voltage, packResistance),
    };

    private static RotorConstants Motor(RotorTable table) => TestCraft.SilentRotor(1, 1.2e-5) with
    {
        Radius = Radius,
        Table = table,
        Kt = Kt,
        Resistance = R,
        CurrentLimit = 1e6,
        BrakeCurrentLimit = 1e6,
        TorqueLimit = 1e6,
        LossTorque = Kt * I0,
    };
}
