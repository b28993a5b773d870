using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>Sections against laws that any section of their kind follows, and the edges of what a blade may be.</summary>
public class PolarLawTests
{
    [Theory]
    [InlineData(0, 0, 0.01)]
    [InlineData(0.1, 0.57, 0.013)]
    [InlineData(-0.2, -1.14, 0.022)]
    public void A_linear_section_has_its_line_and_its_parabola(double angle, double lift, double drag)
    {
        SectionCoefficients c = new LinearPolar(5.7, 0.01, 0.3).At(angle, 1e5, 0);
        Assert.Equal(lift, c.Lift, 1e-12);
        Assert.Equal(drag, c.Drag, 1e-12);
    }

    /// <summary>
    /// Skin friction falls with Reynolds number, faster than in a turbulent boundary layer (exponent -0.2, Prandtl) and slower than in a
    /// laminar one (-0.5, Blasius): Schlichting, Boundary-Layer Theory. Profile drag grows with the square of lift about its least, and
    /// less so the larger the Reynolds number.
    /// </summary>
    [Fact]
    public void A_small_section_has_the_drag_of_a_boundary_layer()
    {
        double best = Enumerable.Range(-400, 800).Select(n => n * 0.01).MinBy(degrees => Drag(degrees, 1e5));
        Assert.InRange(best, -4, 4);
        double exponent = Math.Log(Drag(best, 2e5) / Drag(best, 5e4)) / Math.Log(4);
        Assert.InRange(exponent, -0.5, -0.2);
        Assert.Equal(4, Grown(6, 1e5) / Grown(3, 1e5), 0.2);
        Assert.True(Grown(4, 5e4) > 1.5 * Grown(4, 2e5));

        double Grown(double degrees, double reynolds) => Drag(best + degrees, reynolds) - Drag(best, reynolds);

        static double Drag(double degrees, double reynolds) => LowReynoldsPolar.Instance.At(Specimens.Radians(degrees), reynolds, 0).Drag;
    }

    [Fact]
    public void A_blade_may_go_to_the_edge_of_its_range_and_no_farther()
    {
        Assert.Equal(1, Blade(1, 0.9, 0.9).Blades);
        Assert.Equal(0.9, Blade(2, 0.9, 0.9).RootCutOut);
        Assert.Throws<ArgumentException>(() => Blade(0, 0.5, 0.5));
        Assert.Throws<ArgumentException>(() => Blade(2, 0.91, 0.5));
        Assert.Throws<ArgumentException>(() => Blade(2, 0, 0.5));
        Assert.Throws<ArgumentException>(() => Blade(2, 0.5, 0));

        static RotorGeometry Blade(int blades, double rootCutOut, double firstStation) =>
            new(0.1, blades, [new(firstStation, 0.1, 0.2), new(1, 0.1, 0.1)], rootCutOut, new LinearPolar(5.7, 0.01, 0));
    }
}
