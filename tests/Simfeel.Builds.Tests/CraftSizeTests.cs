using Simfeel.Physics.Air;

namespace Simfeel.Builds.Tests;

/// <summary>A craft grown as a whole is similar to the small one under gravity.</summary>
public class CraftSizeTests
{
    /// <summary>Froude similarity (any handbook of model testing): masses with s^3, inertias with s^5, places with s, times with s^(1/2).</summary>
    [Theory]
    [InlineData("wagtail")]
    [InlineData("curlew")]
    [InlineData("sanderling")]
    public void Everything_grows_by_its_power_of_length(string name)
    {
        const double s = 1.7;
        Build small = BuildText.Starter(name);
        AssembledBuild one = BuildAssembler.Assemble(small, StandardAtmosphere.At(0)), large = BuildAssembler.Assemble(BuildKnobs.WholeCraft.Grow(small, s), StandardAtmosphere.At(0));
        Power(3, one.Craft.Mass, large.Craft.Mass);
        Power(5, one.Craft.I_BBcm_B.M00, large.Craft.I_BBcm_B.M00);
        Power(5, one.Craft.I_BBcm_B.M11, large.Craft.I_BBcm_B.M11);
        Power(5, one.Craft.I_BBcm_B.M22, large.Craft.I_BBcm_B.M22);
        Power(1, one.Craft.Rotors[0].p_BcmR_B.Y, large.Craft.Rotors[0].p_BcmR_B.Y);
        Power(1, one.Craft.Rotors[0].p_BcmR_B.Z, large.Craft.Rotors[0].p_BcmR_B.Z);
        Power(1, one.Craft.Rotors[0].Radius, large.Craft.Rotors[0].Radius);
        Power(5, one.Craft.Rotors[0].SpinInertia, large.Craft.Rotors[0].SpinInertia);
        Power(2, one.Craft.DragArea.Z, large.Craft.DragArea.Z);
        Power(4, one.Craft.Rotors[0].TorqueLimit, large.Craft.Rotors[0].TorqueLimit);
        // a voltage that stays, with speeds that fall as s^(-1/2) and torques that grow as s^4
        Power(0.5, one.Craft.Rotors[0].Kt, large.Craft.Rotors[0].Kt);
        Power(3.5, one.Craft.Rotors[0].CurrentLimit, large.Craft.Rotors[0].CurrentLimit);
        Power(-3.5, one.Craft.Rotors[0].Resistance, large.Craft.Rotors[0].Resistance);
        Power(-3.5, one.Craft.Battery.SeriesResistance, large.Craft.Battery.SeriesResistance);
        Power(4, one.Craft.Battery.Capacity, large.Craft.Battery.Capacity);
        Power(-0.5, one.Hardware.GyroLowPass_Hz, large.Hardware.GyroLowPass_Hz);
        Power(0.5, one.Hardware.CommandDelay, large.Hardware.CommandDelay);

        static void Power(double exponent, double before, double after) => Assert.Equal(exponent, Math.Log(after / before) / Math.Log(s), 1e-9);
    }
}
