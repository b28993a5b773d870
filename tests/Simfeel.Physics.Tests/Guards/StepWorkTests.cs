using Simfeel.Physics.Guards;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Guards;

/// <summary>
/// Who is blamed for energy out of nowhere: the bound is put just below and just above what each load adds to the kinetic energy by
/// the laws of motion, so that the work is known to a part in a million.
/// </summary>
public class StepWorkTests
{
    private const double Step = 1 / 4000.0, Mass = 0.7, SpinInertia = 1.2e-5;

    private static readonly Mat3 Inertia = new(2.5e-3, 3e-5, -8e-5, 3e-5, 2.1e-3, 2e-5, -8e-5, 2e-5, 4.3e-3);
    private static readonly Vec3 Velocity = new(3, -2, 1), Rate = new(4, 1, -6), Force = new(5, 1, -3), Moment = new(0.2, -0.3, 0.4);

    [Theory]
    [InlineData(1500, 0.08, 0, 1, KernelStage.Motors)]
    [InlineData(-900, -0.05, 0, -1, KernelStage.Motors)]
    [InlineData(1500, 0, -0.06, 1, KernelStage.RotorAir)]
    public void A_rotor_gains_what_the_torque_on_it_gives(double speed, double motor, double air, double spin, KernelStage culprit)
    {
        double after = speed + (Step * (motor - air) / SpinInertia);
        double gain = SpinInertia / 2 * ((after * after) - (speed * speed));
        Assert.True(gain > 0);
        Judge(gain, culprit, (ref work) => work.AddRotor(speed, 1 / SpinInertia, motor, air, spin, Step));
    }

    [Fact]
    public void The_body_gains_what_force_and_moment_of_the_air_give() =>
        Judge(Gain(Force, Moment), KernelStage.BodyAir, (ref work) => work.Body = work.All = new(Force, Moment));

    /// <summary>What the rotors do to the craft is all loads less those on the body, and less the motors' reaction about the shaft.</summary>
    [Fact]
    public void The_craft_gains_what_the_rotors_give()
    {
        StepLoads body = new(new(-0.3, 0.2, 0.1), new(-0.01, 0.02, 0));
        const double reaction = 0.07;
        Judge(Gain(Force, Moment + new Vec3(0, 0, reaction)), KernelStage.RotorAir, (ref work) =>
        {
            work.Body = body;
            work.All = new(Force + body.Force, Moment + body.Moment);
            // a rotor that stands gains next to nothing itself
            work.AddRotor(0, 1e-9, reaction, 0, 1, Step);
        });
        Judge(Gain(Force, Moment), KernelStage.FittedRotors, (ref work) => work.All = new(Force, Moment), fitted: true);
    }

    /// <summary>A craft without mass, as a broken record may have it, is moved by no force; its turning still counts.</summary>
    [Fact]
    public void A_craft_without_mass_gains_by_turning_alone()
    {
        double moved = Step * Vec3.Dot(Force, Velocity), turned = Gain(Vec3.Zero, Moment);
        Judge(moved + turned, KernelStage.BodyAir, (ref work) => work.Body = work.All = new(Force, Moment), mass: 0);
    }

    private static double Gain(Vec3 force, Vec3 moment)
    {
        Vec3 v = Velocity + (Step / Mass * force), w = Rate + (Step * (Inertia.Inverse * moment));
        return (Mass / 2 * (Vec3.Dot(v, v) - Vec3.Dot(Velocity, Velocity))) + ((Vec3.Dot(w, Inertia * w) - Vec3.Dot(Rate, Inertia * Rate)) / 2);
    }

    private static void Judge(double gain, KernelStage culprit, Adding add, bool fitted = false, double mass = Mass)
    {
        Mat3 inverse = Inertia.Inverse;
        Dictionary<string, double> elements = new()
        {
            ["axx_1_kg_m2"] = inverse.M00,
            ["ayy_1_kg_m2"] = inverse.M11,
            ["azz_1_kg_m2"] = inverse.M22,
            ["axy_1_kg_m2"] = inverse.M01,
            ["axz_1_kg_m2"] = inverse.M02,
            ["ayz_1_kg_m2"] = inverse.M12,
        };
        StepRecord record = new() { Step = Step, Fitted = fitted, Numbers = [.. StepNumbers.Body.Select(name => elements.GetValueOrDefault(name))] };
        Assert.Equal(culprit, Blamed(gain * (1 - 1e-6)));
        Assert.Equal(KernelStage.Advance, Blamed(gain * (1 + 1e-6)));

        KernelStage Blamed(double most)
        {
            StepWork work = new() { AirVelocity = Velocity, Rate = Rate, Mass = mass, MostPower = most / Step };
            work.Clear();
            add(ref work);
            return work.Culprit(record);
        }
    }

    private delegate void Adding(ref StepWork work);
}
