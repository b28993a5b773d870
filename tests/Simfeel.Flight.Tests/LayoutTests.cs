using Simfeel.Builds;
using Simfeel.Flight.Drills;
using Simfeel.Physics.Air;

namespace Simfeel.Flight.Tests;

/// <summary>Every named layout, with four, six and eight rotors, tunes, hovers, turns about each axis and stops.</summary>
public class LayoutTests
{
    [Theory]
    [InlineData("square", 4)]
    [InlineData("wide", 4)]
    [InlineData("stretched", 4)]
    [InlineData("swept", 4)]
    [InlineData("plus", 4)]
    [InlineData("six", 6)]
    [InlineData("eight", 8)]
    public void Flies(string layout, int rotors)
    {
        string wagtail = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml"));
        string text = wagtail
            .Replace("layout = \"square\"", $"layout = \"{layout}\"", StringComparison.Ordinal)
            // wide enough for eight discs side by side, and no weighed mass that six motors would exceed
            .Replace("wheelbase_mm = 225", "wheelbase_mm = 400", StringComparison.Ordinal);
        text = text[..text.IndexOf("[measured]", StringComparison.Ordinal)];
        BuildResult result = BuildReader.Parse(text, layout);
        Assert.NotNull(result.Build);
        AirState air = StandardAtmosphere.At(0);
        TunedUnit unit = TunedUnit.Matched(FlightUnit.Of(BuildAssembler.Assemble(result.Build, air)), air, Starters.Profile);
        Assert.Equal(rotors, unit.Unit.Craft.Rotors.Count);

        FlightLog hover = DrillRunner.Fly(DrillCatalogue.Hover, unit, Starters.Profile);
        Assert.True(hover.Samples[^1].State.p_WB.Length < 0.05, $"drifted {hover.Samples[^1].State.p_WB.Length} m");
        FlightLog stop = DrillRunner.Fly(DrillCatalogue.Stop, unit, Starters.Profile);
        Assert.True(stop.Samples.Max(sample => sample.State.w_WB_B.X) > 0.95 * Starters.Profile.RollPitch.EndRate);
        Assert.True(stop.Samples[^1].State.w_WB_B.Length < 0.3);
        FlightLog yaw = DrillRunner.Fly(DrillCatalogue.Yaw, unit, Starters.Profile);
        Assert.True(yaw.Samples.Max(sample => sample.State.w_WB_B.Z) > 3);
        FlightLog flip = DrillRunner.Fly(DrillCatalogue.Flip, unit, Starters.Profile);
        Assert.True(flip.Samples[^1].State.q_WB.ToMatrix().M22 > 0.9);
    }
}
