using Simfeel.Physics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Motors;

namespace Simfeel.Builds.Tests;

/// <summary>A tired pack against a new, full one.</summary>
public class TiredPackTests
{
    private static readonly AirState Air = StandardAtmosphere.At(0);

    [Theory]
    [InlineData("sanderling")]
    [InlineData("wagtail")]
    [InlineData("gannet")]
    public void ATiredPackLowersThrustAndReserve(string name)
    {
        Build build = BuildReader.Read(Path.Combine(BuildText.StarterDirectory(), name + ".toml")).Build!;
        (PackPoint fresh, PackPoint tired) = TiredPack.Of(build, Air);
        Assert.InRange(tired.Thrust / fresh.Thrust, 0.4, 0.9);
        Assert.InRange(tired.Speed / fresh.Speed, 0.6, 0.95);
        Assert.InRange(tired.Voltage / fresh.Voltage, 0.6, 0.95);
        Assert.True(tired.HoverReserveUp <= fresh.HoverReserveUp);
        // static thrust goes nearly with the square of the speed, a little faster since Reynolds number falls too
        Assert.InRange(Math.Log(tired.Thrust / fresh.Thrust) / Math.Log(tired.Speed / fresh.Speed), 1.9, 2.4);
    }

    /// <summary>
    /// Where the pack decides, the reserve falls; where the speed controllers' current limit decides, as in the hover of a
    /// strong craft, it stays.
    /// </summary>
    [Fact]
    public void TheReserveFallsUnlessTheCurrentLimitDecides()
    {
        Build build = BuildText.Read(BuildText.Minimal);
        TiredPack limited = TiredPack.Of(build, Air), free = TiredPack.Of(BuildEditor.Edit(build, "speed_controller.current_limit_A", 500).Build!, Air);
        Assert.Equal(limited.Fresh.HoverReserveUp, limited.Tired.HoverReserveUp);
        Assert.True(free.Tired.HoverReserveUp < 0.97 * free.Fresh.HoverReserveUp, $"{free.Tired.HoverReserveUp} of {free.Fresh.HoverReserveUp}");
    }

    /// <summary>V = OCV - I (R0 + R1) with the doubled resistances of the cells, at 20 % charge.</summary>
    [Fact]
    public void ThePackSagsByItsOwnCircuit()
    {
        Build build = BuildText.Read(BuildText.With("battery", "wear_percent = 35"));
        BatteryConstants worn = BuildAssembler.Assemble(BuildEditor.Edit(build, "battery.wear_percent", 100).Build!, Air).Craft.Battery;
        Craft craft = BuildAssembler.Assemble(build, Air).Craft;
        (PackPoint fresh, PackPoint tired) = TiredPack.Of(build, Air);
        // the age of the build's own pack does not matter
        Assert.Equal(new(fresh, tired), TiredPack.Of(BuildText.Read(BuildText.Minimal), Air));
        double source = worn.OpenCircuitVoltageAt(0.2), current = (source - tired.Voltage) / (worn.SeriesResistance + worn.PairResistance);
        // power: what the motors take, i (e + R i), and the electronics
        RotorConstants motor = craft.Rotors[0];
        double each = MotorModel.PackPower(motor, MotorModel.Current(motor, 1, tired.Voltage, tired.Speed), tired.Speed);
        Assert.Equal((4 * each) + craft.Battery.ElectronicsPower, tired.Voltage * current, 1e-6 * tired.Voltage * current);
    }
}
