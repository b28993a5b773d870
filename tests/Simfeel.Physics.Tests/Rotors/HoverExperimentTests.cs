using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>
/// Model rotors measured in hover, computed from section data of the same reports with nothing fitted here. Both
/// read from secondary copies of the reports' tables.
/// </summary>
public class HoverExperimentTests
{
    /// <summary>
    /// Knight and Hefner, NACA TN-626 (1937): 5-foot rotors, chord 2 in, NACA 0015, 960 rpm. Section lift slope 5.75,
    /// drag 0.0113 + 1.25 alpha^2. CT and CQ halved from the report's convention.
    /// </summary>
    [Theory]
    [InlineData(2, 6, 0.002210, 0.0001580, 0.15, 0.15)]
    [InlineData(2, 8, 0.003250, 0.0002470, 0.08, 0.08)]
    [InlineData(2, 10, 0.004235, 0.0003455, 0.08, 0.08)]
    [InlineData(2, 12, 0.004950, 0.0004390, 0.10, 0.14)]
    [InlineData(5, 6, 0.003470, 0.0003400, 0.15, 0.15)]
    [InlineData(5, 8, 0.005515, 0.0005430, 0.08, 0.08)]
    [InlineData(5, 10, 0.007740, 0.0008175, 0.08, 0.08)]
    [InlineData(5, 12, 0.010000, 0.0011400, 0.10, 0.14)]
    public void Knight_and_Hefner(int blades, double pitchDeg, double ct, double cq, double thrustBound, double torqueBound)
    {
        RotorCoefficients c = KnightHefner(blades, pitchDeg);
        Assert.InRange(c.Thrust / ct, 1 - thrustBound, 1 + thrustBound);
        Assert.InRange(c.Torque / cq, 1 - torqueBound, 1 + torqueBound);
    }

    [Theory]
    [InlineData(2, 0.0000540)]
    [InlineData(5, 0.0001190)]
    public void Knight_and_Hefner_flat_pitch(int blades, double cq)
    {
        RotorCoefficients flat = KnightHefner(blades, 0), two = KnightHefner(blades, 2), four = KnightHefner(blades, 4);
        Assert.Equal(0, flat.Thrust, 1e-9);
        // The measured drag of the whole rotor lies below that of its section tests (B = 5: 21 %); sign and order only.
        Assert.InRange(flat.Torque / cq, 0.8, 1.3);
        Assert.True(0 < two.Thrust && two.Thrust < four.Thrust);
        Assert.True(flat.Torque < two.Torque && two.Torque < four.Torque);
    }

    /// <summary>
    /// Castles and Gray, NACA TN-2474 (1951), Table V run 15: 6-foot rotor of three blades, NACA 0015, untwisted, 1200 rpm.
    /// Section lift slope 5.90 (its Table VIII), drag rise 0.75 alpha^2 (TN-626). A plain tip-loss calculation made
    /// elsewhere lies 2 % below to 14 % above in thrust and 1 % below to 6 % above in torque.
    /// </summary>
    [Theory]
    [InlineData(4.91, 0.00168, 0.000070)]
    [InlineData(6.68, 0.00289, 0.000137)]
    [InlineData(8.46, 0.00400, 0.000226)]
    [InlineData(10.29, 0.00488, 0.000342)]
    public void Castles_and_Gray(double pitchDeg, double ct, double inducedTorque)
    {
        RotorCoefficients c = CastlesGray(pitchDeg), flat = CastlesGray(0);
        Assert.InRange(c.Thrust / ct, 0.95, 1.15);
        Assert.InRange((c.Torque - flat.Torque) / inducedTorque, 0.95, 1.10);
    }

    /// <summary>
    /// Same report, runs 4 and 5: at constant thrust the torque beyond that of zero thrust vanishes at a descent of
    /// 1.84 to 1.87 v_h (ideal autorotation, interpolated), and is negative beyond 2.1 v_h.
    /// </summary>
    [Fact]
    public void Castles_and_Gray_autorotation()
    {
        double flat = CastlesGray(0).Torque;
        Assert.True(InducedTorque(1.2) > 0);
        Assert.True(InducedTorque(2.1) < 0);
        double low = 1.2, high = 2.1;
        while (high - low > 1e-4)
        {
            double middle = 0.5 * (low + high);
            if (InducedTorque(middle) > 0) low = middle;
            else high = middle;
        }
        Assert.InRange(low, 1.6, 2.0);

        // Collective pitch that holds CT = 0.004 in descent at so many v_h.
        double InducedTorque(double descent)
        {
            double axial = -descent * Math.Sqrt(0.004 / 2);
            double lowPitch = 0, highPitch = 15;
            for (int i = 0; i < 40; i++)
            {
                double middle = 0.5 * (lowPitch + highPitch);
                if (CastlesGray(middle, axial).Thrust > 0.004) highPitch = middle;
                else lowPitch = middle;
            }
            return CastlesGray(lowPitch, axial).Torque - flat;
        }
    }

    private static RotorCoefficients KnightHefner(int blades, double pitchDeg) => Turn(
        Specimens.Untwisted(1.524, blades, 0.0508 / 0.762, Specimens.Radians(pitchDeg), 1.0 / 6, new LinearPolar(5.75, 0.0113, 1.25)),
        960);

    private static RotorCoefficients CastlesGray(double pitchDeg, double axialOverTip = 0) => Turn(
        Specimens.Untwisted(1.8288, 3, 0.0479 / 0.9144, Specimens.Radians(pitchDeg), 0.169, new LinearPolar(5.90, 0.0105, 0.75)),
        1200,
        axialOverTip);

    /// <summary>CT and CQ over (wR)^2.</summary>
    private static RotorCoefficients Turn(RotorGeometry geometry, double rpm, double axialOverTip = 0)
    {
        double w = rpm * Math.PI / 30, tip = w * geometry.Radius;
        RotorCoefficients c = new BladeElementSolver(geometry, Specimens.SeaLevel).Solve(w, axialOverTip * tip, 0).Coefficients;
        double square = 1 + (axialOverTip * axialOverTip);
        return new(c.Thrust * square, c.Torque * square, 0, 0);
    }
}
