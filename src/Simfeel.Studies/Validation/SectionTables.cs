using System.Collections.Immutable;
using Simfeel.Physics.Rotors;

namespace Simfeel.Studies.Validation;

/// <summary>Lift and drag of a section over angle of attack and Reynolds number, NaN where a calculation did not converge.</summary>
/// <param name="AnglesDeg">Angles of attack, degrees.</param>
/// <param name="Reynolds">Reynolds numbers.</param>
/// <param name="Lift">Lift coefficients, one row per Reynolds number.</param>
/// <param name="Drag">Drag coefficients, shaped like lift.</param>
internal sealed record SectionTable(double[] AnglesDeg, double[] Reynolds, double[][] Lift, double[][] Drag);

/// <summary>
/// Sections computed with XFOIL 6.99 at Mach 0 (Drela, XFOIL: An Analysis and Design System for Low Reynolds Number Airfoils,
/// 1989): a calculation, not a measurement, and below Reynolds 60 000 sensitive to its transition parameter Ncrit.
/// </summary>
internal static class SectionTables
{
    private const double Absent = double.NaN;

    /// <summary>NACA 4412, Ncrit 9.</summary>
    public static SectionTable Naca4412 { get; } = new(
        [-4, -2, 0, 2, 4, 6, 8, 10, 12, 14],
        [30e3, 60e3, 100e3, 200e3],
        [
            [-0.3906, -0.1758, 0.0060, 0.1505, 0.2778, 0.3897, 0.5480, 0.6891, 0.7792, 0.8549],
            [-0.3452, -0.0278, 0.2649, Absent, 0.7074, 0.8693, 1.1609, 1.3664, 1.3586, 1.4031],
            [-0.1682, 0.1458, 0.4377, 0.6735, 0.8880, 1.0931, 1.2856, 1.3736, 1.3369, 1.4272],
            [0.0048, 0.2492, 0.4872, 0.6959, 0.9066, 1.1103, 1.2875, 1.3726, 1.3689, 1.3889],
        ],
        [
            [0.06358, 0.04095, 0.03551, 0.04479, 0.05700, 0.07267, 0.09742, 0.12566, 0.15300, 0.18237],
            [0.04514, 0.03238, 0.03001, Absent, 0.04042, 0.04872, 0.04325, 0.03559, 0.04938, 0.07358],
            [0.02907, 0.02253, 0.01791, 0.01785, 0.01965, 0.02226, 0.02364, 0.02661, 0.04372, 0.06030],
            [0.01669, 0.01285, 0.01002, 0.01101, 0.01268, 0.01458, 0.01650, 0.02234, 0.03811, 0.05641],
        ]);

    /// <summary>NACA 6405, thin and cambered, Ncrit 9.</summary>
    public static SectionTable Naca6405 { get; } = new(
        [-4, -2, 0, 2, 4, 6, 8, 10, 12],
        [30e3, 60e3, 100e3, 200e3],
        [
            [-0.3102, -0.3048, 0.2941, 0.5047, 0.6298, 0.7382, 0.8280, Absent, 1.1839],
            [-0.2615, -0.0584, 0.4360, 0.7499, 0.9752, 1.1722, 1.3121, 1.2919, 1.0621],
            [-0.1961, 0.1916, 0.6104, 0.8719, 1.0919, 1.1839, Absent, Absent, Absent],
            [Absent, 0.4192, Absent, 0.8943, 1.1038, 1.1992, Absent, Absent, Absent],
        ],
        [
            [0.08136, 0.05216, 0.03955, 0.03928, 0.05212, 0.06822, 0.08882, Absent, 0.14314],
            [0.07873, 0.05452, 0.03156, 0.03048, 0.03586, 0.02749, 0.04684, 0.08560, 0.13418],
            [0.07500, 0.04069, 0.02022, 0.01736, 0.01834, 0.02603, Absent, Absent, Absent],
            [Absent, 0.01114, Absent, 0.00987, 0.01154, 0.02304, Absent, Absent, Absent],
        ]);

    /// <summary>SDA1075, 12 % thick, of Deters, Ananda and Selig, AIAA 2014-2151 (its Table 4), Ncrit 4.</summary>
    public static SectionTable Sda1075 { get; } = new(
        [-6, -4, -2, 0, 2, 4, 6, 8, 10, 12, 14, 16],
        [20e3, 30e3, 40e3, 60e3, 80e3, 100e3],
        [
            [-0.4793, -0.3358, -0.1024, 0.1228, 0.3865, 0.5838, 0.7458, 0.8727, 0.9018, 0.8688, 0.8669, 0.8850],
            [-0.4823, -0.3266, -0.0856, 0.2167, 0.4233, 0.6175, 0.8034, 0.9667, 1.0721, 1.0277, 0.9039, 0.8970],
            [-0.4900, -0.3263, -0.0608, 0.2287, 0.4256, 0.6255, 0.8220, 0.9977, 1.1131, 1.1038, 1.0302, 0.9220],
            [-0.4976, -0.2994, -0.0464, 0.2203, 0.4220, 0.6314, 0.8357, 1.0224, 1.1552, 1.1519, 1.0883, 1.0145],
            [-0.5012, -0.2735, -0.0467, 0.2139, 0.4204, 0.6328, 0.8414, 1.0341, 1.1808, 1.1942, 1.1260, 1.0568],
            [-0.5031, -0.2639, -0.0500, 0.2100, 0.4185, 0.6332, 0.8443, 1.0412, 1.1961, 1.2292, 1.1675, 1.0824],
        ],
        [
            [0.04332, 0.03197, 0.02909, 0.03173, 0.03575, 0.04130, 0.04948, 0.06172, 0.08445, 0.12027, 0.15515, 0.18996],
            [0.03587, 0.02647, 0.02446, 0.02507, 0.02737, 0.03064, 0.03538, 0.04241, 0.05310, 0.08050, 0.13789, 0.17922],
            [0.03169, 0.02347, 0.02093, 0.02118, 0.02282, 0.02523, 0.02892, 0.03449, 0.04354, 0.06353, 0.10248, 0.16703],
            [0.02669, 0.01970, 0.01702, 0.01703, 0.01813, 0.01999, 0.02293, 0.02740, 0.03507, 0.05367, 0.08935, 0.13664],
            [0.02366, 0.01737, 0.01510, 0.01476, 0.01565, 0.01733, 0.01993, 0.02392, 0.03085, 0.04730, 0.08281, 0.12681],
            [0.02167, 0.01598, 0.01389, 0.01329, 0.01411, 0.01567, 0.01809, 0.02178, 0.02830, 0.04256, 0.07587, 0.12199],
        ]);

    /// <summary>SDA1075 as a section for blades.</summary>
    public static TabulatedPolar Sda1075Polar { get; } = new(
        [.. Sda1075.AnglesDeg.Select(RotorRun.Radians)],
        Sda1075.Reynolds,
        [.. Sda1075.Lift.Select(row => ImmutableArray.Create(row))],
        [.. Sda1075.Drag.Select(row => ImmutableArray.Create(row))]);
}
