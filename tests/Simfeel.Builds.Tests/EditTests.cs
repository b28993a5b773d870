using Simfeel.Builds.Assembly;
using Simfeel.Physics.Air;
using Simfeel.Physics.Mass;

namespace Simfeel.Builds.Tests;

/// <summary>Changing single keys, and hybrids of two builds.</summary>
public class EditTests
{
    private static readonly Build Start = BuildText.Read(BuildText.Plus("[[extra]]\nmass_g = 10\nz_mm = -30\n"));

    [Fact]
    public void DependentEstimatesFollow()
    {
        Build larger = BuildEditor.Edit(Start, "motor.stator_height_mm", 14).Build!;
        Assert.Equal(Math.Pow(2, 0.85), larger.Motor.Body.Mass / Start.Motor.Body.Mass, 9);
        Assert.Equal(2, larger.Motor.Electrics.TorqueLimit / Start.Motor.Electrics.TorqueLimit, 9);
        Assert.Equal(ValueSource.Edited, larger.Values.Single(v => v.Key == "motor.stator_height_mm").Source);
        Assert.Equal(0.007, Start.Motor.Body.StatorHeight, 12);
    }

    [Fact]
    public void StatedNumbersStay()
    {
        Build stated = BuildText.Read(BuildText.With("motor", "mass_g = 33"));
        Assert.Equal(0.033, BuildEditor.Edit(stated, "motor.stator_height_mm", 14).Build!.Motor.Body.Mass, 12);
    }

    [Fact]
    public void WordsFlagsAndExtrasCanBeChanged()
    {
        Assert.Equal("plus", BuildEditor.Edit(Start, "frame.layout", "plus").Build!.Frame.Layout);
        Assert.Equal(0, BuildEditor.Edit(Start, "speed_controller.braking", 0).Build!.SpeedController.BrakeCurrentLimit);
        Assert.Equal(0.02, BuildEditor.Edit(Start, "extra[1].mass_g", 20).Build!.Extras[0].Mass, 12);
        Build both = BuildEditor.Edit(Start, [new("battery.cells", 4), new("motor.kv_rpm_per_V", 2600)]).Build!;
        Assert.Equal(4, both.Battery.Cells);
        Assert.Equal(60 / (2 * Math.PI * 2600), both.Motor.Electrics.Kt, 12);
    }

    [Theory]
    [InlineData("motor.mass_g", 1e9, "0.3 to 1500 g", "")]
    [InlineData("motor.mass_g", double.NaN, "not a finite number", "")]
    [InlineData("battery.cells", 2.5, "whole number from 1 to 14", "")]
    [InlineData("motor.mas_g", 33, "no such key", "did you mean motor.mass_g?")]
    [InlineData("extra[2].mass_g", 33, "no such key", "")]
    [InlineData("extra.mass_g", 33, "no such key", "")]
    [InlineData("extra[", 33, "no such key", "")]
    [InlineData("name", 33, "no such key", "")]
    [InlineData("propeller.diameter_in", 9, "overlap", "")]
    public void BadEditIsRefused(string key, double value, string message, string hint)
    {
        BuildResult result = BuildEditor.Edit(Start, key, value);
        Assert.Null(result.Build);
        Diagnostic error = Assert.Single(result.Diagnostics, d => d.Severity == Severity.Error);
        Assert.Equal(key, error.Key);
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
        if (hint.Length > 0) Assert.Equal(hint, error.Hint);
    }

    [Fact]
    public void HybridSwapsOnlyItsGroups()
    {
        Build a = BuildText.Starter("wagtail"), b = BuildText.Starter("curlew");
        Build hybrid = Hybrid.Of(a, b, PartGroups.MotorMass | PartGroups.PropellerInertia);
        Assert.Equal(b.Motor.Body, hybrid.Motor.Body);
        Assert.Equal(b.Propeller.Body, hybrid.Propeller.Body);
        Assert.Equal(a.Motor.Electrics, hybrid.Motor.Electrics);
        Assert.Equal(a.Motor.Bell, hybrid.Motor.Bell);
        Assert.Equal(a.Propeller.Blades, hybrid.Propeller.Blades);
        Assert.Same(a.Frame, hybrid.Frame);
        Assert.Throws<ArgumentException>(() => BuildEditor.Edit(hybrid, "motor.mass_g", 33));
        // The 4 motors and propellers bring exactly their own masses.
        double difference = 4 * (b.Motor.Body.Mass + b.Propeller.Body.Mass - a.Motor.Body.Mass - a.Propeller.Body.Mass);
        Assert.Equal(difference, Mass(hybrid) - Mass(a), 12);
    }

    /// <summary>Swapping every group turns one build into the other, bit for bit; each group alone changes something.</summary>
    [Fact]
    public void HybridEndsAreTheBuildsThemselves()
    {
        AirState air = StandardAtmosphere.At(0);
        Build a = BuildText.Starter("wagtail"), b = BuildText.Starter("curlew");
        Assert.Equal(State(a), State(Hybrid.Of(a, b, PartGroups.None)));
        Assert.Equal(State(b), State(Hybrid.Of(a, b, PartGroups.All)));
        foreach (PartGroups group in Enum.GetValues<PartGroups>().Where(g => g is not (PartGroups.None or PartGroups.All or PartGroups.Pilot)))
            Assert.NotEqual(State(a), State(Hybrid.Of(a, b, group)));

        string State(Build build)
        {
            AssembledBuild assembled = BuildAssembler.Assemble(build, air);
            return string.Join(' ', assembled.Craft with { Rotors = [] }, assembled.Hardware,
                string.Join(' ', assembled.Craft.Rotors.Select(r => $"{r with { Table = null! }} {r.Table.GetHashCode()}")),
                $"{assembled.Craft.Battery.Capacity} {assembled.Craft.Battery.SeriesResistance}").Replace("System.Double[]", "", StringComparison.Ordinal);
        }
    }

    private static double Mass(Build build) => MassProperties.Combine([.. PartPlacer.Place(build).Select(p => p.Mass)]).Mass;
}
