using Simfeel.Physics.Rotors;

namespace Simfeel.Builds.Tests;

/// <summary>What must hold for the table of any propeller.</summary>
internal static class TableChecks
{
    /// <summary>
    /// Largest change of the thrust and torque coefficients between neighbouring nodes, over the solidity (both go with the blades'
    /// area): along angle, in-plane flow, speed. Largest found: 0.24, 0.42, 0.04 and 0.10, 0.08, 0.013.
    /// </summary>
    public static readonly (double Thrust, double Torque)[] MostJump = [(0.25, 0.11), (0.45, 0.09), (0.05, 0.015)];

    /// <summary>All checks.</summary>
    /// <param name="name">For messages.</param>
    /// <param name="geometry">The propeller.</param>
    /// <param name="table">Its table.</param>
    /// <param name="fullTip">Tip speed at full throttle, m/s.</param>
    public static void All(string name, RotorGeometry geometry, RotorTable table, double fullTip)
    {
        foreach (double number in table.Nodes) Assert.True(double.IsFinite(number), $"{name}: a node is not finite");
        double[] jumps = Jumps(table);
        double solidity = Solidity(geometry);
        for (int axis = 0; axis < 3; axis++)
        {
            Assert.True(jumps[axis] <= MostJump[axis].Thrust * solidity, $"{name}: thrust jumps by {jumps[axis] / solidity:G3} of the solidity along axis {axis}");
            Assert.True(jumps[axis + 3] <= MostJump[axis].Torque * solidity, $"{name}: torque jumps by {jumps[axis + 3] / solidity:G3} of the solidity along axis {axis}");
        }

        double last = 0;
        for (double tip = 0.05 * fullTip; tip <= 1.15 * fullTip; tip += 0.05 * fullTip)
        {
            RotorCoefficients still = table.At(tip, 1, 0, 0);
            double thrust = still.Thrust * tip * tip;
            Assert.True(thrust > last, $"{name}: static thrust does not rise at {tip:F0} m/s");
            last = thrust;
            // driving: hover, half the zero-thrust climb, edgewise
            foreach ((double axial, double inPlane) in new (double, double)[] { (0, 0), (0.5 * ZeroThrust(table, tip), 0), (0, 0.2 * tip) })
                Assert.True(table.At(tip, 1, axial, inPlane).Torque > 0, $"{name}: torque at {tip:F0} m/s, climb {axial:F1}, edgewise {inPlane:F1}");
            // windmilling: flow far faster than the blades' pitch from either side turns the rotor on
            Assert.True(table.At(tip, 1, 3 * ZeroThrust(table, tip), 0).Torque < 0, $"{name}: does not windmill in climb at {tip:F0} m/s");
        }
    }

    /// <summary>Climb speed at which thrust vanishes at a tip speed: by bisection.</summary>
    public static double ZeroThrust(RotorTable table, double tip)
    {
        double low = 0, high = 3 * tip;
        for (int n = 0; n < 40; n++)
        {
            double middle = (low + high) / 2;
            if (table.At(tip, 1, middle, 0).Thrust > 0) low = middle;
            else high = middle;
        }
        return high;
    }

    /// <summary>Area of all blades over that of the disc.</summary>
    private static double Solidity(RotorGeometry geometry)
    {
        const int count = 100;
        double span = 1 - geometry.RootCutOut;
        double chord = Enumerable.Range(0, count).Average(i => geometry.At(geometry.RootCutOut + (span * (i + 0.5) / count)).Chord);
        return geometry.Blades * chord * span / Math.PI;
    }

    /// <summary>Largest jumps of thrust along the three axes, then of torque.</summary>
    public static double[] Jumps(RotorTable table)
    {
        double[] most = new double[6];
        for (int k = 0; k <= RotorTableGrid.SpeedCells; k++)
            for (int j = 0; j <= RotorTableGrid.InPlaneCells; j++)
                for (int i = 0; i <= RotorTableGrid.AngleCells; i++)
                {
                    int here = RotorTable.NodeOffset(i, j, k);
                    if (i > 0) Take(0, RotorTable.NodeOffset(i - 1, j, k));
                    if (j > 0) Take(1, RotorTable.NodeOffset(i, j - 1, k));
                    if (k > 0) Take(2, RotorTable.NodeOffset(i, j, k - 1));

                    void Take(int axis, int there)
                    {
                        for (int c = 0; c < 2; c++)
                        {
                            double jump = Math.Abs(table.Nodes[here + c] - table.Nodes[there + c]);
                            most[axis + (3 * c)] = Math.Max(most[axis + (3 * c)], jump);
                        }
                    }
                }
        return most;
    }
}
