namespace Simfeel.Builds.Tests;

public class VariationTests
{
    private static readonly Build Sanderling = BuildText.Starter("sanderling"), Wagtail = BuildText.Starter("wagtail");

    [Fact]
    public void No_place_moves_nothing()
    {
        Build same = BuildVariation.Move(Wagtail, []).Build!;
        Assert.Equal(Wagtail.Motor, same.Motor);
        Assert.Equal(Wagtail.Stack, same.Stack);
        Assert.Equal(Wagtail.Drag, same.Drag);
        Assert.Equal(Wagtail.Values, same.Values);
    }

    [Fact]
    public void Stated_bands_move_to_their_ends()
    {
        Assert.Equal(0.20e-3, Moved(Sanderling, "propeller.mass_g", -1).Propeller.Body.Mass, 1e-12);
        Assert.Equal(0.26e-3, Moved(Sanderling, "propeller.mass_g", 1).Propeller.Body.Mass, 1e-12);
        Assert.Equal(0.245e-3, Moved(Sanderling, "propeller.mass_g", 0.5).Propeller.Body.Mass, 1e-12);
    }

    /// <summary>An estimate moves by the spread of its rule, and what is estimated from it follows.</summary>
    [Fact]
    public void Estimates_move_by_their_spread_and_take_others_along()
    {
        BuildValue resistance = Wagtail.Values.Single(value => value.Key == "motor.winding_resistance_mohm");
        Assert.Equal(ValueSource.Rule, resistance.Source);
        Assert.Equal(1.25, Moved(Wagtail, "motor.winding_resistance_mohm", 1).Motor.Electrics.WindingResistance / Wagtail.Motor.Electrics.WindingResistance, 1e-9);
        // the bell's inertia goes with its outer diameter squared
        Assert.Equal(1.05 * 1.05, Moved(Wagtail, "motor.outer_diameter_mm", 1).Motor.Bell.SpinInertia / Wagtail.Motor.Bell.SpinInertia, 1e-9);
    }

    [Fact]
    public void Propellers_known_by_size_are_uncertain_in_the_air()
    {
        Assert.Contains(BuildVariation.Uncertain(Wagtail), value => value.Key == "propeller.thrust_factor");
        Assert.Equal(1.2, Moved(Wagtail, "propeller.thrust_factor", 1).Propeller.Blades.ThrustFactor, 1e-12);
    }

    /// <summary>The whole was weighed, so a part that weighs more leaves less for the wiring.</summary>
    [Fact]
    public void Weighed_craft_keep_their_mass()
    {
        Build moved = Moved(Wagtail, "frame.hardware_mass_g", 1);
        Assert.True(moved.Frame.HardwareMass > Wagtail.Frame.HardwareMass);
        Assert.Equal(Wagtail.Stack.WiringMass + Wagtail.Frame.HardwareMass, moved.Stack.WiringMass + moved.Frame.HardwareMass, 1e-9);
    }

    private static Build Moved(Build build, string key, double place) => BuildVariation.Move(build, [new(key, place)]).Build!;
}
