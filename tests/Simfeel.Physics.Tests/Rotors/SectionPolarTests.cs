using System.Collections.Immutable;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

public class SectionPolarTests
{
    [Fact]
    public void Tables_are_exact_at_their_nodes_and_fade_to_the_plate()
    {
        TabulatedPolar polar = Specimens.Tabulated;
        for (int row = 0; row < Specimens.TableReynolds.Length; row++)
            for (int i = 0; i < Specimens.TableAnglesDeg.Length; i++)
            {
                SectionCoefficients c = polar.At(Specimens.Radians(Specimens.TableAnglesDeg[i]), Specimens.TableReynolds[row], 0);
                Assert.Equal(Specimens.TableLift[row][i], c.Lift, 1e-12);
                Assert.Equal(Specimens.TableDrag[row][i], c.Drag, 1e-12);
            }
        double beyond = Specimens.Radians(16) + TabulatedPolar.FadeWidth + 0.01;
        Assert.Equal(FlatPlate.At(beyond, 0.013), polar.At(beyond, 100e3, 0));
        Assert.Equal(polar.At(0.1, 100e3, 0), polar.At(0.1, 1e6, 0));
        Assert.Equal(polar.At(0.1, 20e3, 0), polar.At(0.1, 1e3, 0));
    }

    /// <summary>
    /// A plate of finite length across the flow: CD 1.17 to 1.28 (Hoerner, Fluid-Dynamic Drag, 1965; from memory); at 45
    /// degrees the normal force acts, so lift and drag are nearly equal.
    /// </summary>
    [Fact]
    public void Sections_become_plates_far_from_their_range()
    {
        foreach (SectionPolar polar in new SectionPolar[] { LowReynoldsPolar.Instance, Specimens.Tabulated })
        {
            Assert.InRange(polar.At(Math.PI / 2, 5e4, 0).Drag, 1.15, 1.35);
            Assert.InRange(polar.At(-Math.PI / 2, 5e4, 0).Drag, 1.15, 1.35);
            SectionCoefficients half = polar.At(Math.PI / 4, 5e4, 0);
            Assert.InRange(half.Lift / half.Drag, 0.9, 1.0);
            // Reversed flow: lift still acts toward the side the plate leans to.
            Assert.True(polar.At(Math.PI - 0.1, 5e4, 0).Lift < 0);
            Assert.True(polar.At(-Math.PI + 0.1, 5e4, 0).Lift > 0);
        }
    }

    [Fact]
    public void Coefficients_are_finite_and_continuous_and_drag_is_positive_at_every_angle()
    {
        foreach (SectionPolar polar in new SectionPolar[] { LowReynoldsPolar.Instance, Specimens.Tabulated })
            foreach (double reynolds in new[] { 1.0, 5e3, 2e4, 1e5, 1e6 })
                foreach (double mach in new[] { 0, 0.4, 0.7, 1.2 })
                {
                    SectionCoefficients last = polar.At(-Math.PI, reynolds, mach), first = last;
                    for (int i = -1799; i <= 1800; i++)
                    {
                        SectionCoefficients c = polar.At(i * Math.PI / 1800, reynolds, mach);
                        Assert.True(double.IsFinite(c.Lift) && c.Drag > 0, $"Re {reynolds} M {mach} step {i}");
                        Assert.InRange(Math.Abs(c.Lift - last.Lift), 0, 0.06);
                        Assert.InRange(Math.Abs(c.Drag - last.Drag), 0, 0.06);
                        last = c;
                    }
                    Assert.Equal(first.Lift, last.Lift, 1e-3);
                    Assert.Equal(first.Drag, last.Drag, 1e-3);
                }
    }

    [Fact]
    public void Mach_number_raises_attached_lift_by_prandtl_and_glauert_and_drag_late()
    {
        foreach (SectionPolar polar in new SectionPolar[] { LowReynoldsPolar.Instance, Specimens.Tabulated })
        {
            SectionCoefficients slow = polar.At(0.05, 1e5, 0), fast = polar.At(0.05, 1e5, 0.5), faster = polar.At(0.05, 1e5, 0.75);
            Assert.Equal(1 / Math.Sqrt(0.75), fast.Lift / slow.Lift, 5e-3);
            Assert.Equal(slow.Drag, fast.Drag, 1e-3);
            Assert.True(faster.Drag > fast.Drag + 0.01);
        }
    }

    [Fact]
    public void Bad_tables_are_refused()
    {
        ImmutableArray<double> two = [0, 1];
        Assert.Throws<ArgumentException>(() => new TabulatedPolar([0.1, 0], [1e5], [two], [two]));
        Assert.Throws<ArgumentException>(() => new TabulatedPolar([0, 4], [1e5], [two], [two]));
        Assert.Throws<ArgumentException>(() => new TabulatedPolar([0, 0.1], [-1], [two], [two]));
        Assert.Throws<ArgumentException>(() => new TabulatedPolar([0, 0.1], [1e5], [[0, 1, 2]], [two]));
        Assert.Throws<ArgumentException>(() => new TabulatedPolar([0, 0.1], [1e5], [[0, double.NaN]], [two]));
    }
}
