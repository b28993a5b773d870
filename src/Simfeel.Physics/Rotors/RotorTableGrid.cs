namespace Simfeel.Physics.Rotors;

/// <summary>
/// The coordinates of a <see cref="RotorTable"/>. A working state of a rotor is its speed w (rad/s, negative where
/// it turns backwards), axial velocity Vc (climb positive) and in-plane velocity Vx of the hub through the air. With
/// U^2 = (wR)^2 + Vc^2 + Vx^2 everything that can happen lies on a bounded domain:
/// <list type="bullet">
/// <item>u in [-1, 3], a stand-in for the angle atan2(Vc, wR): with s = Vc / (|Vc| + |wR|), u is s where w is at
/// least 0 and 2 - s where the rotor turns backwards; -1 and 3 are the same state;</item>
/// <item>g = Vx^2 / (Vx^2 + k U^2), in-plane flow, dense where the inflow turns from hover to edgewise flow and densest where
/// the first of it sweeps the vortex ring away;</item>
/// <item>z = U / (U + U0), a stand-in for log U: Reynolds and Mach number.</item>
/// </list>
/// Only + - * / and compare are needed. Each coordinate is mapped to a node index by a monotone piecewise-linear
/// rule, so that nodes lie close together where the coefficients bend.
/// </summary>
public static class RotorTableGrid
{
    /// <summary>Weight k of U^2 in the in-plane coordinate g.</summary>
    public const double InPlaneWeight = 0.035;

    /// <summary>Speed U0 of the speed coordinate z, m/s.</summary>
    public const double SpeedScale = 1000;

    /// <summary>Knots of the flow-angle coordinate u, where its node spacing changes.</summary>
    public static ReadOnlySpan<double> AngleKnots => [-1, -0.4, 0.45, 1, 3];

    /// <summary>Cells between neighbouring <see cref="AngleKnots"/>.</summary>
    public static ReadOnlySpan<int> AngleCellsPerSpan => [8, 56, 8, 16];

    /// <summary>Knots of the in-plane coordinate g; the last is g of pure in-plane flow.</summary>
    public static ReadOnlySpan<double> InPlaneKnots => [0, 0.1, 0.88, 1 / (1 + InPlaneWeight)];

    /// <summary>Cells between neighbouring <see cref="InPlaneKnots"/>.</summary>
    public static ReadOnlySpan<int> InPlaneCellsPerSpan => [5, 13, 6];

    /// <summary>First and last speed coordinate z; slower and faster flow takes the coefficients of the end.</summary>
    public static ReadOnlySpan<double> SpeedKnots => [FirstSpeed, LastSpeed];

    /// <summary>Speed coordinate z of the first and the last node.</summary>
    public const double FirstSpeed = 0.008, LastSpeed = 0.2;

    /// <summary>Cells in flow angle.</summary>
    public const int AngleCells = 88;

    /// <summary>Cells in in-plane flow.</summary>
    public const int InPlaneCells = 24;

    /// <summary>Cells in speed.</summary>
    public const int SpeedCells = 8;

    /// <summary>Flow-angle coordinate u of node i, 0 to <see cref="AngleCells"/>.</summary>
    public static double AngleAt(int i) => NodeAt(i, AngleKnots, AngleCellsPerSpan);

    /// <summary>In-plane coordinate g of node j, 0 to <see cref="InPlaneCells"/>.</summary>
    public static double InPlaneAt(int j) => NodeAt(j, InPlaneKnots, InPlaneCellsPerSpan);

    /// <summary>Speed U (m/s) of node k, 0 to <see cref="SpeedCells"/>.</summary>
    public static double SpeedAt(int k)
    {
        double z = NodeAt(k, SpeedKnots, [SpeedCells]);
        return SpeedScale * z / (1 - z);
    }

    /// <summary>Continuous node index of a flow-angle coordinate.</summary>
    public static double AngleIndex(double u) => IndexOf(u, AngleKnots, AngleCellsPerSpan);

    /// <summary>Continuous node index of an in-plane coordinate.</summary>
    public static double InPlaneIndex(double g) => IndexOf(g, InPlaneKnots, InPlaneCellsPerSpan);

    /// <summary>Continuous node index of a speed U, m/s.</summary>
    public static double SpeedIndex(double speed) =>
        IndexOf(speed / (speed + SpeedScale), SpeedKnots, [SpeedCells]);

    /// <summary>
    /// Direction of the flow at node (i, j): wR/U, Vc/U and Vx/U, whose squares sum to 1.
    /// </summary>
    public static (double Rotation, double Axial, double InPlane) DirectionAt(int i, int j)
    {
        double g = InPlaneAt(j);
        double inPlaneSquared = Math.Min(1, InPlaneWeight * g / (1 - g));
        double rest = Math.Sqrt(Math.Max(0, 1 - inPlaneSquared));
        double u = AngleAt(i);
        double s = u <= 1 ? u : 2 - u;
        double side = u <= 1 ? 1 : -1;
        double norm = Math.Sqrt((s * s) + ((1 - Math.Abs(s)) * (1 - Math.Abs(s))));
        return (side * (1 - Math.Abs(s)) / norm * rest, s / norm * rest, Math.Sqrt(inPlaneSquared));
    }

    /// <summary>Continuous node indices of a working state: w in rad/s, speeds in m/s, radius in m.</summary>
    public static (double Angle, double InPlane, double Speed) IndicesOf(double w, double radius, double axial, double inPlane)
    {
        double tip = w * radius;
        double squared = (tip * tip) + (axial * axial) + (inPlane * inPlane);
        double s = axial / (Math.Abs(axial) + Math.Abs(tip) + 1e-30);
        double u = tip >= 0 ? s : 2 - s;
        double g = inPlane * inPlane / ((inPlane * inPlane) + (InPlaneWeight * squared) + 1e-30);
        return (AngleIndex(u), InPlaneIndex(g), SpeedIndex(Math.Sqrt(squared)));
    }

    private static double NodeAt(int index, ReadOnlySpan<double> knots, ReadOnlySpan<int> cells)
    {
        int span = 0;
        while (span < cells.Length - 1 && index > cells[span]) index -= cells[span++];
        double width = knots[span + 1] - knots[span];
        return index == cells[span] ? knots[span + 1] : knots[span] + (width * index / cells[span]);
    }

    private static double IndexOf(double value, ReadOnlySpan<double> knots, ReadOnlySpan<int> cells)
    {
        double index = 0;
        for (int span = 0; span < cells.Length; span++)
        {
            double inside = Math.Clamp(value, knots[span], knots[span + 1]) - knots[span];
            index += inside * cells[span] / (knots[span + 1] - knots[span]);
        }
        return index;
    }
}
