using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>
/// The craft that is timed: four rotors of 5 inch, invented parts. The lanes of a batch fly neighbours of it, so that
/// they look into different cells of the rotor table.
/// </summary>
internal static class Specimen
{
    /// <summary>Craft of a lane: mass, size and battery spread by a few percent.</summary>
    public static Craft Craft(int lane, RotorTable table)
    {
        double scale = 1 + (0.01 * lane);
        double arm = 0.078 * scale;
        return new Craft
        {
            Mass = 0.62 * scale,
            I_BBcm_B = new Mat3(1.5e-3 * scale, 1e-5, 2e-5, 1e-5, 1.9e-3 * scale, 1e-6, 2e-5, 1e-6, 2.8e-3 * scale),
            DragArea = new Vec3(0.010, 0.011, 0.017),
            p_BcmD_B = new Vec3(0.002, 0, 0.005),
            Rotors = [.. Enumerable.Range(0, 4).Select(n => Rotor(n, arm, table))],
            Battery = Battery(scale),
        };
    }

    /// <summary>
    /// Smooth coefficients of about the right size over all working states: momentum-like thrust that falls with climb,
    /// torque that follows it, and a slope over speed. Made up; what is timed does not depend on the values.
    /// </summary>
    public static RotorTable Table()
    {
        double[] nodes = new double[RotorTable.NodeCount];
        for (int k = 0; k <= RotorTableGrid.SpeedCells; k++)
            for (int j = 0; j <= RotorTableGrid.InPlaneCells; j++)
                for (int i = 0; i <= RotorTableGrid.AngleCells; i++)
                {
                    (double rotation, double axial, _) = RotorTableGrid.DirectionAt(i, j);
                    int at = RotorTable.NodeOffset(i, j, k);
                    double band = 1 + (0.03 * k);
                    nodes[at] = band * ((0.012 * rotation * rotation) - (0.04 * axial * Math.Abs(rotation)) - (0.02 * axial * Math.Abs(axial)));
                    nodes[at + 1] = (0.0012 * rotation * Math.Abs(rotation) / band) + (0.001 * axial);
                    nodes[at + 2] = 0.004 * Math.Abs(rotation);
                    nodes[at + 3] = 0.001 * band;
                }
        return new RotorTable(nodes);
    }

    private static RotorConstants Rotor(int n, double arm, RotorTable table) => new()
    {
        p_BcmR_B = new Vec3(n < 2 ? arm : -arm, n is 0 or 3 ? arm : -arm, -0.012),
        Spin = n % 2 == 0 ? 1 : -1,
        Radius = 0.0648,
        Table = table,
        SpinInertia = 6.5e-6,
        Kt = 60 / (2 * Math.PI * 1800),
        Resistance = 0.064,
        CommutationDroop = 2.5e-5,
        CurrentLimit = 60,
        BrakeCurrentLimit = 60,
        TorqueLimit = 0.48,
        LossTorque = 0.004,
        LossTorquePerSpeed = 2.1e-6,
    };

    private static BatteryConstants Battery(double scale) => new()
    {
        OpenCircuitVoltage = [19.8, 21.3, 21.96, 22.32, 22.56, 22.8, 23.04, 23.34, 23.76, 24.18, 24.66, 25.2],
        Capacity = 4680 * scale,
        SeriesResistance = 0.031,
        PairResistance = 0.010,
        PairCapacitance = 300,
        ElectronicsPower = 15,
    };
}
