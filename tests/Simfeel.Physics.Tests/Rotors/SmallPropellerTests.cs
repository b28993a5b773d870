using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>Propellers of the size that multirotors use. Measured ones are compared in Simfeel.Studies/Validation.</summary>
public class SmallPropellerTests
{
    /// <summary>
    /// Default propellers at their usual full speed: bands around static values published for the size and pitch (UIUC vol.
    /// 1 and 2: APC-type 7 x 6 CT 0.095 and 8 x 3.8 CT 0.114 on a rig that reads thrust low; 5-inch two-blade 0.11 to 0.13)
    /// and, for three blades, common practice: 1.4 to 1.9 kgf from 5 inch at 29 000 rpm.
    /// </summary>
    [Theory]
    [InlineData(5.1, 4.3, 3, 29000, 0.15, 0.22, 0.08, 0.12)]
    [InlineData(3, 2.4, 3, 42000, 0.14, 0.20, 0.07, 0.11)]
    [InlineData(7, 6, 2, 7000, 0.09, 0.15, 0.055, 0.085)]
    [InlineData(8, 3.8, 2, 7000, 0.09, 0.13, 0.030, 0.052)]
    [InlineData(5, 3, 2, 8900, 0.085, 0.125, 0.037, 0.055)]
    public void Default_propellers_are_in_the_usual_bands(
        double diameterIn, double pitchIn, int blades, double rpm, double lowThrust, double highThrust, double lowPower, double highPower)
    {
        RotorGeometry geometry = RotorGeometry.FromPitch(diameterIn * Specimens.Inch, pitchIn * Specimens.Inch, blades);
        (double ct, double cp) = Turn(geometry, rpm, 0);
        Assert.InRange(ct, lowThrust, highThrust);
        Assert.InRange(cp, lowPower, highPower);
    }

    [Fact]
    public void Power_never_beats_momentum_theory()
    {
        for (int i = 0; i < Specimens.Defaults.Length; i++)
        {
            RotorGeometry geometry = Specimens.Default(i);
            foreach (double share in new[] { 0.3, 0.6, 1.0 })
            {
                double rpm = share * Specimens.Defaults[i].FullRpm;
                (double ct, double cp) = Turn(geometry, rpm, 0);
                Assert.InRange(Specimens.FigureOfMerit(ct, cp), 0.2, 0.9);
                for (double j = 0.1; j < 1.2; j += 0.1)
                {
                    (ct, cp) = Turn(geometry, rpm, j);
                    if (ct <= 0) break;
                    Assert.True(j * ct / cp < 2 / (1 + Math.Sqrt(1 + (8 * ct / (Math.PI * j * j)))), $"propeller {i}, J {j}");
                }
            }
        }
    }

    /// <summary>Measured on every small propeller of UIUC vol. 2: CT falls as J rises, static CT rises with Reynolds number.</summary>
    [Fact]
    public void Thrust_falls_with_advance_and_rises_with_reynolds()
    {
        RotorGeometry geometry = Specimens.Default(2);
        double last = double.MaxValue;
        for (double j = 0; j < 1.2; j += 0.05)
        {
            double ct = Turn(geometry, 20000, j).CT;
            Assert.True(ct < last, $"J {j}");
            last = ct;
        }
        Assert.True(Turn(geometry, 5000, 0).CT < Turn(geometry, 10000, 0).CT);
        Assert.True(Turn(geometry, 10000, 0).CT < Turn(geometry, 20000, 0).CT);
    }

    [Fact]
    public void Blades_and_pitch_raise_thrust()
    {
        double two = Turn(RotorGeometry.FromPitch(0.127, 0.1, 2), 20000, 0).CT;
        double three = Turn(RotorGeometry.FromPitch(0.127, 0.1, 3), 20000, 0).CT;
        double flat = Turn(RotorGeometry.FromPitch(0.127, 0.08, 3), 20000, 0).CT;
        Assert.True(two < three && flat < three);
        Assert.True(three < 1.5 * two);
    }

    /// <summary>k^2 of six measured planforms is 0.30 to 0.40 with thickness in proportion to chord (computed from UIUC geometry).</summary>
    [Fact]
    public void Gyration_radius()
    {
        Assert.InRange(Specimens.Default(2).GyrationRadiusSquared, 0.30, 0.40);

        // Constant chord: k^2 = (1 - a^3) / (3 (1 - a)).
        double k2 = Specimens.Untwisted(1, 2, 0.1, 0, 0.2, new LinearPolar(6, 0, 0)).GyrationRadiusSquared;
        Assert.Equal((1 - Math.Pow(0.2, 3)) / (3 * 0.8), k2, 1e-5);
    }

    [Fact]
    public void Geometry_out_of_range_is_refused()
    {
        Assert.Throws<ArgumentException>(() => RotorGeometry.FromPitch(0, 0.1, 2));
        Assert.Throws<ArgumentException>(() => RotorGeometry.FromPitch(0.127, double.NaN, 2));
        Assert.Throws<ArgumentException>(() => RotorGeometry.FromPitch(0.127, 0.1, 0));
        Assert.Throws<ArgumentException>(() => RotorGeometry.FromPitch(0.127, 0.1, 2, -1));
        var polar = new LinearPolar(6, 0, 0);
        Assert.Throws<ArgumentException>(() => new RotorGeometry(0.1, 2, [new(0.5, 0.1, 0), new(0.4, 0.1, 0)], 0.1, polar));
        Assert.Throws<ArgumentException>(() => new RotorGeometry(0.1, 2, [new(0.5, 0.1, 0), new(1.1, 0.1, 0)], 0.1, polar));
        Assert.Throws<ArgumentException>(() => new RotorGeometry(0.1, 2, [new(0.5, 0.1, 0), new(1, -0.1, 0)], 0.1, polar));
        Assert.Throws<ArgumentException>(() => new RotorGeometry(0.1, 2, [new(0.5, 0.1, 0), new(1, 0.1, 0)], 0, polar));
    }

    private static (double CT, double CP) Turn(RotorGeometry geometry, double rpm, double advance)
    {
        double axial = advance * rpm / 60 * geometry.Diameter, w = rpm * Math.PI / 30;
        var solver = new BladeElementSolver(geometry, Specimens.SeaLevel);
        return Specimens.Propeller(solver.Solve(w, axial, 0).Coefficients, w, geometry.Radius, axial);
    }
}
