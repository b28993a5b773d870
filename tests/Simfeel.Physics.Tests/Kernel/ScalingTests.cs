using Simfeel.Physics.Kernel;
using Simfeel.Physics.Lanes;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;
using Simfeel.Physics.Tests.Rotors;

namespace Simfeel.Physics.Tests.Kernel;

/// <summary>
/// A craft scaled by l in every length keeps to the exponents of Kushleyev, Mellinger, Powers and Kumar, Auton. Robots 35
/// (2013) 287-300: mass l^3, inertia l^5, and with speeds as v: moment l^3 v^2, acceleration v^2 / l, angular acceleration
/// v^2 / l^2. Froude scaling has v as sqrt(l), Mach scaling (as it is called there) a constant v. The section has
/// no Reynolds or Mach effects; gravity follows v^2 / l; motor and pack at one voltage, currents as power.
/// </summary>
public class ScalingTests
{
    private const double Time = 0.25;
    private const int Steps = 4000;

    public static TheoryData<double, double> Scales => new() { { 0.5, 0.5 }, { 2, 0.5 }, { 0.5, 0 }, { 2, 0 } };

    private static readonly RotorTable Table = RotorTableBuilder.Build(
        Specimens.Untwisted(0.127, 3, 0.2, Specimens.Radians(14), 0.15, new Frozen()), Specimens.SeaLevel);

    /// <summary>A section at one Reynolds number, without Mach effects.</summary>
    private sealed class Frozen : SectionPolar
    {
        public override SectionCoefficients At(double angle, double reynolds, double mach) =>
            LowReynoldsPolar.Instance.At(angle, 1e5, 0);
    }

    [Theory]
    [MemberData(nameof(Scales))]
    public void Flight_follows_the_exponents(double length, double speedExponent)
    {
        double speed = Math.Pow(length, speedExponent), time = length / speed;
        (CraftState end, Sample sample) full = Fly(1, 1), scaled = Fly(length, speed);
        Close(length * full.end.p_WB, scaled.end.p_WB);
        Close(speed * full.end.v_WB, scaled.end.v_WB);
        Close(1 / time * full.end.w_WB_B, scaled.end.w_WB_B);
        Close(speed * speed / length * full.sample.a_WB, scaled.sample.a_WB);
        Close(1 / (time * time) * full.sample.AngularAcceleration_B, scaled.sample.AngularAcceleration_B);
        for (int k = 0; k < 4; k++)
        {
            Assert.Equal(1, scaled.end.RotorSpeeds[k] * time / full.end.RotorSpeeds[k], 1e-6);
            Assert.Equal(1, scaled.sample.Thrust[k] / full.sample.Thrust[k] / (length * length * speed * speed), 1e-6);
            Assert.Equal(1, scaled.sample.MotorTorque[k] / full.sample.MotorTorque[k] / (length * length * length * speed * speed), 1e-6);
        }
        Assert.True(full.end.w_WB_B.Length > 1 && full.end.v_WB.Length > 1, "the flight moves");

        static void Close(Vec3 expected, Vec3 actual) => Assert.InRange((actual - expected).Length / expected.Length, 0, 1e-6);
    }

    /// <summary>A quarter second (of the full-size craft) from turning rotors, with duties that turn it about all axes.</summary>
    private static (CraftState, Sample) Fly(double length, double speed)
    {
        Craft craft = Scaled(length, speed);
        double time = length / speed;
        CraftState start = CraftState.AtRest(craft);
        for (int k = 0; k < 4; k++) start.RotorSpeeds[k] = 900 / time;
        using CraftBatch<Lane1> batch = TestCraft.Batch(craft, start, 1.225, 9.80665 * speed * speed / length);
        double[] duty = [0.55, 0.62, 0.5, 0.58];
        for (int k = 0; k < 4; k++) batch.SetCommand(0, k, duty[k]);
        for (int n = 0; n < Steps; n++) batch.Step(Integrator.Midpoint, Time * time / Steps);
        batch.Evaluate();
        return (batch.GetState(0), batch.GetSample(0));
    }

    private static Craft Scaled(double l, double v)
    {
        Craft quad = TestCraft.Quad(Table);
        double l2 = l * l, power = l2 * v * v * v, current = power, ohm = 1 / current;
        return quad with
        {
            Mass = quad.Mass * l2 * l,
            I_BBcm_B = (l2 * l2 * l) * quad.I_BBcm_B,
            DragArea = l2 * quad.DragArea,
            p_BcmD_B = l * quad.p_BcmD_B,
            Battery = quad.Battery with
            {
                Capacity = quad.Battery.Capacity * current * l / v,
                SeriesResistance = quad.Battery.SeriesResistance * ohm,
                PairResistance = quad.Battery.PairResistance * ohm,
                PairCapacitance = quad.Battery.PairCapacitance * current * l / v,
                ElectronicsPower = quad.Battery.ElectronicsPower * power,
            },
            Rotors = [.. quad.Rotors.Select(rotor => rotor with
            {
                p_BcmR_B = l * rotor.p_BcmR_B,
                Radius = l * rotor.Radius,
                SpinInertia = l2 * l2 * l * rotor.SpinInertia,
                Kt = rotor.Kt * l / v,
                Resistance = rotor.Resistance * ohm,
                CommutationDroop = rotor.CommutationDroop * ohm * l / v,
                CurrentLimit = rotor.CurrentLimit * current,
                BrakeCurrentLimit = rotor.BrakeCurrentLimit * current,
                TorqueLimit = rotor.TorqueLimit * l2 * l * v * v,
                LossTorque = rotor.LossTorque * l2 * l * v * v,
                LossTorquePerSpeed = rotor.LossTorquePerSpeed * l2 * l2 * v,
            })],
        };
    }
}
