using Simfeel.Physics.Rotors;
using Simfeel.Physics.Stand;
using Simfeel.Physics.Tests.Rotors;

namespace Simfeel.Physics.Tests.Stand;

/// <summary>
/// A working state's numbers in both systems of coefficients, by their definitions (Leishman, Principles of Helicopter Aerodynamics,
/// 2nd ed. 2006, ch. 2; for the propeller's J, CT, CP the usual ones over n and D).
/// </summary>
public class WindTunnelTests
{
    private const double Speed = 900;

    private static readonly RotorGeometry Blade = Specimens.Default(2);
    private static readonly WindTunnel Tunnel = new(Blade, Specimens.SeaLevel);

    [Fact]
    public void Hover_is_that_of_momentum_theory()
    {
        WindTunnelPoint hover = Tunnel.At(Speed, 0, 0);
        double ideal = Math.Sqrt(hover.Thrust / (2 * 1.225 * Math.PI * Blade.Radius * Blade.Radius));
        Assert.True(hover.Thrust > 0);
        Assert.Equal(ideal, Tunnel.HoverInducedVelocity(Speed), 1e-9);
        Assert.Equal(hover.Thrust * ideal / (hover.Torque * Speed), hover.FigureOfMerit!.Value, 1e-9);
        Assert.InRange(hover.FigureOfMerit.Value, 0.3, 0.8);
        // losses spread the inflow unevenly, which costs more than the ideal
        Assert.InRange(hover.InducedVelocity / ideal, 1, 1.3);
    }

    /// <summary>A blade without pitch and camber lifts nothing and has no induced velocity of hover.</summary>
    [Fact]
    public void Without_lift_there_is_no_induced_velocity()
    {
        RotorGeometry pushing = Specimens.Untwisted(0.127, 3, 0.16, Specimens.Radians(-8), 0.15, new LinearPolar(5.7, 0.02, 0));
        WindTunnel tunnel = new(pushing, Specimens.SeaLevel);
        Assert.True(tunnel.At(Speed, 0, 0).Thrust < 0);
        Assert.Equal(0, tunnel.HoverInducedVelocity(Speed));
        Assert.Null(tunnel.At(Speed, 0, 0).FigureOfMerit);
    }

    [Theory]
    [InlineData(6, 0)]
    [InlineData(0, 7)]
    [InlineData(4, 5)]
    public void Reynolds_and_mach_number_are_those_of_the_section_and_the_tip(double axial, double edgewise)
    {
        WindTunnelPoint at = Tunnel.At(Speed, axial, edgewise);
        // mean square over a turn of the speed at 0.75 R: (0.75 w R + Vx sin)^2 has (0.75 w R)^2 + Vx^2 / 2
        double section = Math.Sqrt(Math.Pow(0.75 * Speed * Blade.Radius, 2) + (axial * axial) + (edgewise * edgewise / 2));
        Assert.Equal(section * Blade.At(0.75).Chord * Blade.Radius / (1.78938e-5 / 1.225), at.Reynolds, 1e-3 * at.Reynolds);
        double tip = Math.Sqrt(Math.Pow((Speed * Blade.Radius) + edgewise, 2) + (axial * axial));
        Assert.Equal(tip / 340.294, at.TipMach, 1e-9);
    }

    [Theory]
    [InlineData(6, 3)]
    [InlineData(-2, 1)]
    public void Coefficients_are_loads_over_their_units(double axial, double edgewise)
    {
        WindTunnelPoint at = Tunnel.At(Speed, axial, edgewise);
        double n = Speed / (2 * Math.PI), d = 2 * Blade.Radius, area = Math.PI * d * d / 4, tip = Speed * d / 2;
        Near(at.Thrust / (1.225 * n * n * d * d * d * d), at.PropellerThrustCoefficient);
        Near(at.Torque * Speed / (1.225 * n * n * n * d * d * d * d * d), at.PropellerPowerCoefficient);
        Near(axial / (n * d), at.AdvanceRatio);
        Near(at.Thrust / (1.225 * area * tip * tip), at.RotorThrustCoefficient);
        Near(at.Torque / (1.225 * area * tip * tip * d / 2), at.RotorTorqueCoefficient);
        if (axial >= 0) Near(at.AdvanceRatio * at.PropellerThrustCoefficient / at.PropellerPowerCoefficient, at.Efficiency!.Value);
        else Assert.Null(at.Efficiency);
        Assert.Null(at.FigureOfMerit);

        static void Near(double expected, double actual) => Assert.Equal(1, actual / expected, 1e-12);
    }

    /// <summary>Flow along the disc alone leaves no figure of merit either, and a propeller that the flow drives has no efficiency.</summary>
    [Fact]
    public void What_means_nothing_has_no_value()
    {
        Assert.Null(Tunnel.At(Speed, 0, 4).FigureOfMerit);
        Assert.Equal(0, Tunnel.At(Speed, 0, 4).Efficiency);
        WindTunnelPoint driven = Tunnel.At(300, 30, 0);
        Assert.True(driven.Power < 0);
        Assert.Null(driven.Efficiency);
    }

    [Fact]
    public void Measured_factors_scale_the_loads()
    {
        WindTunnelPoint plain = Tunnel.At(Speed, 3, 5), scaled = new WindTunnel(Blade, Specimens.SeaLevel, 1.1, 0.9).At(Speed, 3, 5);
        Assert.Equal(1.1, scaled.Thrust / plain.Thrust, 1e-12);
        Assert.Equal(0.9, scaled.Torque / plain.Torque, 1e-12);
        Assert.Equal(0.9, scaled.InPlane / plain.InPlane, 1e-12);
        // the drag of a disc across a slow flow is small beside its thrust
        Assert.InRange(plain.InPlane / plain.Thrust, 1e-4, 0.1);
    }

    /// <summary>The range of descents in which the torque is weak, its edges included, and the edgewise flow that sweeps the wake away.</summary>
    [Theory]
    [InlineData(-0.5, 0, true)]
    [InlineData(-2, 0, true)]
    [InlineData(-1, 1, true)]
    [InlineData(-0.49, 0, false)]
    [InlineData(-2.01, 0, false)]
    [InlineData(-1, 1.01, false)]
    [InlineData(1, 0, false)]
    public void Weak_descents_are_named(double axial, double edgewise, bool weak)
    {
        const double hover = 8;
        WindTunnelPoint at = new(Speed, axial * hover, edgewise * hover, 1, 1, 0, 0, 0, 0, 1.225, 0.13);
        Assert.Equal(weak, at.IsWeakDescent(hover));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-1, 0)]
    [InlineData(100, -1)]
    public void States_out_of_range_are_refused(double speed, double edgewise) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Tunnel.At(speed, 0, edgewise));
}
