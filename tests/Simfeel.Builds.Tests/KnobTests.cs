using Simfeel.Physics.Air;

namespace Simfeel.Builds.Tests;

public class KnobTests
{
    private static readonly Build Wagtail = BuildText.Starter("wagtail");

    public static TheoryData<string> Names => [.. BuildKnobs.All.Select(knob => knob.Name), "motor.mass_g"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Factor_one_makes_the_same_craft(string name)
    {
        BuildKnob knob = BuildKnobs.Find(name)!;
        AssembledBuild one = BuildAssembler.Assemble(Wagtail, StandardAtmosphere.At(0)), same = BuildAssembler.Assemble(knob.Grow(Wagtail, 1), StandardAtmosphere.At(0));
        Assert.Equal(one.Craft.Mass, same.Craft.Mass, 1e-12);
        Assert.Equal(one.Craft.I_BBcm_B.M00, same.Craft.I_BBcm_B.M00, 1e-15);
        Assert.Equal(one.Craft.Rotors[0].SpinInertia, same.Craft.Rotors[0].SpinInertia, 1e-18);
        Assert.Equal(one.Craft.Rotors[0].Resistance, same.Craft.Rotors[0].Resistance, 1e-15);
        Assert.Equal(one.Craft.Battery.SeriesResistance, same.Craft.Battery.SeriesResistance, 1e-15);
    }

    [Fact]
    public void Parts_grow_by_the_exponents_of_the_estimates()
    {
        Grows(BuildKnobs.MotorVolume, 0.85, build => build.Motor.Body.Mass);
        Grows(BuildKnobs.MotorVolume, 0.85 + (2.0 / 3), build => build.Motor.Bell.SpinInertia);
        Grows(BuildKnobs.MotorVolume, -5.0 / 3, build => build.Motor.Electrics.WindingResistance);
        Grows(BuildKnobs.MotorVolume, 1, build => build.Motor.Electrics.TorqueLimit);
        Grows(BuildKnobs.MotorVolume, 0, build => build.Motor.Electrics.Kt);
        Grows(BuildKnobs.PropellerDiameter, 2.1, build => build.Propeller.Body.Mass);
        Grows(BuildKnobs.PropellerDiameter, 4.1, build => build.Propeller.Body.SpinInertia);
        Grows(BuildKnobs.BatteryMass, 1, build => build.Battery.Capacity);
        Grows(BuildKnobs.BatteryMass, -1, build => build.Battery.SeriesResistance);
        Grows(BuildKnobs.ArmLength, 1, build => build.Frame.Mounts[0].p_OM.X);
        Grows(BuildKnobs.MotorKv, -2, build => build.Motor.Electrics.WindingResistance);

        static void Grows(BuildKnob knob, double exponent, Func<Build, double> of)
        {
            double slope = Math.Log(of(knob.Grow(Wagtail, 1.1)) / of(Wagtail)) / Math.Log(1.1);
            Assert.Equal(exponent, slope, 1e-9);
        }
    }

    /// <summary>The grown motor is the motor that the estimates would have made of a stator of that size.</summary>
    [Fact]
    public void Grown_motors_are_those_of_the_rules()
    {
        // redshank and its like leave the motor's constants to the rules
        Build plain = Edited(BuildText.Starter("wagtail"), ("motor.mass_g", 33));
        double stator = Math.Cbrt(1.4);
        Build byRule = BuildReader.Parse(
            Text().Replace("stator_diameter_mm = 22", $"stator_diameter_mm = {22 * stator:R}", StringComparison.Ordinal)
                .Replace("stator_height_mm = 7 ", $"stator_height_mm = {7 * stator:R} ", StringComparison.Ordinal)
                .Replace("mass_g = { value = 33, source = \"measured\" }", $"mass_g = {33 * Math.Pow(1.4, 0.85):R}", StringComparison.Ordinal)
                .Replace("all_up_mass_g = 598", "all_up_mass_g = 650", StringComparison.Ordinal),
            "grown.toml").Build!;
        Build grown = BuildKnobs.MotorVolume.Grow(plain, 1.4);
        Assert.Equal(byRule.Motor.Electrics.WindingResistance, grown.Motor.Electrics.WindingResistance, 1e-9);
        Assert.Equal(byRule.Motor.Electrics.TorqueLimit, grown.Motor.Electrics.TorqueLimit, 1e-9);
        Assert.Equal(byRule.Motor.Bell.SpinInertia, grown.Motor.Bell.SpinInertia, 1e-12);

        static string Text() => File.ReadAllText(Path.Combine(BuildText.StarterDirectory(), "wagtail.toml"));
    }

    /// <summary>Wagtail is weighed as a whole; a heavier motor still makes it heavier, by four motors' worth.</summary>
    [Fact]
    public void What_was_weighed_keeps_its_difference()
    {
        Build heavier = BuildKnobs.Find("motor.mass_g")!.Grow(Wagtail, 1.5);
        double before = BuildAssembler.Assemble(Wagtail, StandardAtmosphere.At(0)).Craft.Mass;
        Assert.Equal(before + (4 * 0.0165), BuildAssembler.Assemble(heavier, StandardAtmosphere.At(0)).Craft.Mass, 1e-9);
    }

    [Fact]
    public void What_cannot_be_is_refused_with_words()
    {
        Assert.Null(BuildKnobs.Find("motor.size"));
        Assert.Null(BuildKnobs.Find("measured.all_up_mass_g"));
        Assert.Null(BuildKnob.Refusal(Wagtail));
        Assert.Contains("overlap", BuildKnob.Refusal(BuildKnobs.ArmLength.Grow(Wagtail, 0.6)), StringComparison.Ordinal);
        Assert.Contains("allowed", Assert.Throws<InvalidOperationException>(() => BuildKnobs.Find("motor.mass_g")!.Grow(Wagtail, 1e4)).Message, StringComparison.OrdinalIgnoreCase);
    }

    private static Build Edited(Build build, params (string Key, double Value)[] edits) =>
        BuildEditor.Edit(build, edits.Select(edit => new KeyValuePair<string, double>(edit.Key, edit.Value))).Build!;
}
