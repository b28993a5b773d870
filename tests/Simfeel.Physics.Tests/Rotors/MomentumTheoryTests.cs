using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>
/// Closed forms: Leishman, Principles of Helicopter Aerodynamics, 2nd ed. 2006, ch. 2, and Johnson, Helicopter Theory,
/// 1980 (formulas from memory, values evaluated apart from this project). Climb, windmill, edgewise flow and the vortex
/// ring stand beside their published values in Simfeel.Studies/Validation.
/// </summary>
public class MomentumTheoryTests
{
    [Theory]
    [InlineData(0.127, 1.2258, 6.284607, 7.703671)]
    [InlineData(0.2032, 4.9033, 7.855838, 38.519533)]
    [InlineData(0.254, 7.355, 7.697144, 56.612498)]
    public void Hover(double diameter, double thrust, double velocity, double power)
    {
        double area = Math.PI * diameter * diameter / 4;
        Assert.Equal(velocity, MomentumTheory.HoverInducedVelocity(thrust, 1.225, area), 6);
        Assert.Equal(power, MomentumTheory.HoverPower(thrust, 1.225, area), 5);
    }

    [Theory]
    [InlineData(0.1, 2, 0.008, 0.04055923454)]
    [InlineData(0.2, 4, 0.008, 0.03370722939)]
    [InlineData(0.3, 6, 0.008, 0.04471889584)]
    [InlineData(0.15, 20, 0.012, 0.08899637986)]
    public void Glauert_with_incidence(double advance, double incidenceDeg, double thrust, double inflow)
    {
        double free = advance * Math.Tan(Specimens.Radians(incidenceDeg));
        Assert.Equal(thrust, 2 * (inflow - free) * MomentumTheory.MassFlowSpeed(inflow - free, free, advance), 9);
    }

    [Fact]
    public void Momentum_thrust_rises_with_induced_velocity_in_every_flow()
    {
        for (double axial = -1; axial <= 1; axial += 0.05)
            for (double inPlane = 0; inPlane <= 1; inPlane += 0.1)
            {
                double last = double.NegativeInfinity;
                for (double v = -2; v <= 2; v += 0.01)
                {
                    double thrust = v * MomentumTheory.MassFlowSpeed(v, axial, inPlane);
                    Assert.True(thrust > last, $"V {axial} Vx {inPlane} v {v}");
                    last = thrust;
                }
            }
    }

    [Fact]
    public void Branch_is_smooth_in_descent_speed()
    {
        double last = MomentumTheory.InducedVelocityRatio(0.5), slope = 0;
        for (double x = 0.49; x > -4; x -= 0.01)
        {
            double now = MomentumTheory.InducedVelocityRatio(x);
            // Steepest where the vortex ring gives way to the windmill: slope is -3.7 to 1.2.
            Assert.InRange((now - last) / 0.01, -4, 3);
            Assert.InRange(Math.Abs(((now - last) / 0.01) - slope), 0, 1);
            slope = (now - last) / 0.01;
            last = now;
        }
    }

    [Theory]
    [InlineData(2, 0.95, 5, 0.631777852980)]
    [InlineData(3, 0.90, 10, 0.749801586841)]
    public void Prandtl_tip_loss(int blades, double radius, double inflowDeg, double factor) =>
        Assert.Equal(factor, RotorAnnulus.Prandtl(blades, radius, Math.Sin(Specimens.Radians(inflowDeg))), 11);

    /// <summary>
    /// The closed forms solve their equations (Leishman, section 2.13): v (V + v) = v_h^2 in climb, -v_h^2 in the windmill, and
    /// v^2 (Vx^2 + v^2) = v_h^4 edge-on.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.7)]
    [InlineData(3)]
    public void Closed_forms_solve_their_equations(double x)
    {
        double climb = MomentumTheory.ClimbRatio(x), edge = MomentumTheory.EdgewiseRatio(x), windmill = MomentumTheory.WindmillRatio(-2 - x);
        Assert.True(climb > 0 && edge > 0 && windmill > 0);
        Assert.Equal(1, climb * (x + climb), 1e-12);
        Assert.Equal(-1, windmill * (-2 - x + windmill), 1e-12);
        Assert.Equal(1, edge * edge * ((x * x) + (edge * edge)), 1e-12);
        // of the windmill's two solutions the one in which the wake slows down least
        Assert.True(windmill <= 1);
    }

    /// <summary>The quartic in common use starts at kappa, reaches 1.816 at V = -v_h and about the windmill's 1 at V = -2 v_h.</summary>
    [Fact]
    public void Quartic_of_the_vortex_ring_meets_its_ends()
    {
        Assert.Equal(1.15, MomentumTheory.VortexRingQuartic(0, 1.15));
        Assert.Equal(1.816, MomentumTheory.VortexRingQuartic(-1, 1), 1e-12);
        Assert.Equal(MomentumTheory.WindmillRatio(-2), MomentumTheory.VortexRingQuartic(-2, 1), 0.03);
    }

    /// <summary>
    /// In-plane flow sweeps the vortex ring away: what the branch adds to Glauert's Vm^2 = Vx^2 + (V + v)^2 is halved at Vx = v / 2 and
    /// gone at Vx = 5 v, in any unit of speed.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    public void In_plane_flow_fades_the_branch_out(double v)
    {
        double full = Added(0);
        Assert.True(Math.Abs(full) > 0.01 * v * v);
        Assert.Equal(0.5, Added(0.5 * v) / full, 1e-9);
        Assert.InRange(Added(5 * v) / full, 0, 2e-4);

        double Added(double inPlane)
        {
            double axial = -0.6 * v, speed = MomentumTheory.MassFlowSpeed(v, axial, inPlane);
            return (speed * speed) - (inPlane * inPlane) - ((axial + v) * (axial + v));
        }
    }
}
