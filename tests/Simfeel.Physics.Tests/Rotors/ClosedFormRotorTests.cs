using System.Collections.Immutable;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>
/// Blade element momentum theory where it has a closed solution: linear lift, small angles, no tip loss. Hover of untwisted
/// rotors and the order of convergence are checked in Simfeel.Studies/Validation.
/// </summary>
public class ClosedFormRotorTests
{
    private const double TinyRoot = 1e-9;

    private static BladeElementOptions Simple(int annuli) => new()
    {
        Annuli = annuli,
        Azimuths = 4,
        EqualAnnuli = true,
        TipLoss = false,
        Swirl = false,
        SmallAngles = true,
    };

    /// <summary>CT and CP over (wR)^2 at inflow ratio of climb, rotor of 1 m radius at 100 rad/s.</summary>
    private static (double CT, double CP) Solve(RotorGeometry geometry, int annuli, double climb = 0)
    {
        var solver = new BladeElementSolver(geometry, Specimens.SeaLevel, Simple(annuli));
        RotorCoefficients c = solver.Solve(100, 100 * climb, 0).Coefficients;
        double square = 1 + (climb * climb);
        return (c.Thrust * square, c.Torque * square);
    }

    private static RotorGeometry Untwisted(double solidity, double slope, double degrees, double drag = 0) =>
        Specimens.Untwisted(2, 4, solidity * Math.PI / 4, Specimens.Radians(degrees), TinyRoot, new LinearPolar(slope, drag, 0));

    /// <summary>
    /// lambda = sqrt((s - lc/2)^2 + 2 s theta r) - (s - lc/2), s = sigma a / 16. Inboard, where the lift is downward, the
    /// formula goes on with a momentum balance that no flow has, so the rotor is compared outboard of r = 0.4; the
    /// published integrals over the whole radius check the formula as written here.
    /// </summary>
    [Theory]
    [InlineData(0.02, 0.005240304631934)]
    [InlineData(0.05, 0.003502495178537)]
    public void Untwisted_rotor_in_climb(double climb, double published)
    {
        const double root = 0.4;
        Assert.Equal(1, Integral(0) / published, 1e-8);
        var geometry = Specimens.Untwisted(
            2, 4, 0.1 * Math.PI / 4, Specimens.Radians(8), root, new LinearPolar(2 * Math.PI, 0, 0));
        Assert.Equal(1, Solve(geometry, 2000, climb).CT / Integral(root), 1e-6);

        double Integral(double from)
        {
            const int steps = 20000;
            double s = 0.1 * 2 * Math.PI / 16, half = s - (climb / 2), sum = 0;
            for (int i = 0; i < steps; i++)
            {
                double r = from + ((1 - from) * (i + 0.5) / steps);
                double inflow = Math.Sqrt((half * half) + (2 * s * Specimens.Radians(8) * r)) - half;
                sum += 4 * inflow * (inflow - climb) * r * (1 - from) / steps;
            }
            return sum;
        }
    }

    [Fact]
    public void Ideal_twist_has_uniform_inflow()
    {
        // Twist 6 deg / r down to r = 0.1; inside, the closed form's blade would stand beyond a quarter turn.
        const int annuli = 2000;
        const double root = 0.1;
        ImmutableArray<BladeStation> stations =
        [
            .. Enumerable.Range(0, annuli).Select(i => root + ((1 - root) * (i + 0.5) / annuli))
                .Select(r => new BladeStation(r, 0.1 * Math.PI / 4, Specimens.Radians(6) / r)),
        ];
        var geometry = new RotorGeometry(2, 4, stations, root, new LinearPolar(2 * Math.PI, 0, 0));
        RotorSolution solution = new BladeElementSolver(geometry, Specimens.SeaLevel, Simple(annuli)).Solve(100, 0, 0);
        Assert.Equal(0.05955719348706857, solution.InducedVelocity / 100, 1e-6);
        Assert.Equal(0.00709411859211 * (1 - (root * root)), solution.Coefficients.Thrust, 1e-8);
    }

    [Fact]
    public void Profile_power_and_drag_of_a_rotor_without_lift()
    {
        var geometry = Untwisted(0.1, 0, 0, drag: 0.01);
        RotorCoefficients hover = new BladeElementSolver(geometry, Specimens.SeaLevel, Simple(2000)).Solve(100, 0, 0).Coefficients;
        Assert.Equal(1.25e-4, hover.Torque, 1e-9);

        // H = (sigma cd0 / 4) mu from drag along the chord, and half as much again from friction along the span.
        const double mu = 1e-3;
        RotorCoefficients edgewise =
            new BladeElementSolver(geometry, Specimens.SeaLevel, Simple(2000) with { Azimuths = 16 }).Solve(100, 0, 100 * mu).Coefficients;
        Assert.Equal(3 * 0.1 * 0.01 / 8, edgewise.InPlane, 1e-8);
    }
}
