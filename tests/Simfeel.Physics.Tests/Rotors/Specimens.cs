using System.Collections.Immutable;
using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>Published rotors and sections, and the default propellers of the usual sizes.</summary>
internal static class Specimens
{
    public const double Inch = 0.0254;

    /// <summary>ISO 2533 at sea level.</summary>
    public static AirState SeaLevel { get; } = new(288.15, 101325, 1.225, 340.294, 1.78938e-5);

    /// <summary>Propellers known by size only, with a usual full speed (common practice).</summary>
    public static readonly (string Name, double Diameter, double Pitch, int Blades, double FullRpm)[] Defaults =
    [
        ("31 mm x 0.8 in, 4 blades", 0.031, 0.8 * Inch, 4, 50000),
        ("3 x 2.4, 3 blades", 3 * Inch, 2.4 * Inch, 3, 42000),
        ("5.1 x 4.3, 3 blades", 5.1 * Inch, 4.3 * Inch, 3, 29000),
        ("6 x 4.4, 3 blades", 6 * Inch, 4.4 * Inch, 3, 24000),
        ("7 x 4.1, 3 blades", 7 * Inch, 4.1 * Inch, 3, 21500),
        ("10 x 5, 2 blades", 10 * Inch, 5 * Inch, 2, 12000),
    ];

    /// <summary>XFOIL 6.99, Ncrit 4, Mach 0: section SDA1075 of Deters, Ananda and Selig, AIAA 2014-2151.</summary>
    public static readonly double[] SdaReynolds = [20e3, 30e3, 40e3, 60e3, 80e3, 100e3];

    public static readonly double[] SdaAnglesDeg = [-6, -4, -2, 0, 2, 4, 6, 8, 10, 12, 14, 16];

    public static readonly ImmutableArray<double>[] SdaLift =
    [
        [-0.4793, -0.3358, -0.1024, 0.1228, 0.3865, 0.5838, 0.7458, 0.8727, 0.9018, 0.8688, 0.8669, 0.8850],
        [-0.4823, -0.3266, -0.0856, 0.2167, 0.4233, 0.6175, 0.8034, 0.9667, 1.0721, 1.0277, 0.9039, 0.8970],
        [-0.4900, -0.3263, -0.0608, 0.2287, 0.4256, 0.6255, 0.8220, 0.9977, 1.1131, 1.1038, 1.0302, 0.9220],
        [-0.4976, -0.2994, -0.0464, 0.2203, 0.4220, 0.6314, 0.8357, 1.0224, 1.1552, 1.1519, 1.0883, 1.0145],
        [-0.5012, -0.2735, -0.0467, 0.2139, 0.4204, 0.6328, 0.8414, 1.0341, 1.1808, 1.1942, 1.1260, 1.0568],
        [-0.5031, -0.2639, -0.0500, 0.2100, 0.4185, 0.6332, 0.8443, 1.0412, 1.1961, 1.2292, 1.1675, 1.0824],
    ];

    public static readonly ImmutableArray<double>[] SdaDrag =
    [
        [0.04332, 0.03197, 0.02909, 0.03173, 0.03575, 0.04130, 0.04948, 0.06172, 0.08445, 0.12027, 0.15515, 0.18996],
        [0.03587, 0.02647, 0.02446, 0.02507, 0.02737, 0.03064, 0.03538, 0.04241, 0.05310, 0.08050, 0.13789, 0.17922],
        [0.03169, 0.02347, 0.02093, 0.02118, 0.02282, 0.02523, 0.02892, 0.03449, 0.04354, 0.06353, 0.10248, 0.16703],
        [0.02669, 0.01970, 0.01702, 0.01703, 0.01813, 0.01999, 0.02293, 0.02740, 0.03507, 0.05367, 0.08935, 0.13664],
        [0.02366, 0.01737, 0.01510, 0.01476, 0.01565, 0.01733, 0.01993, 0.02392, 0.03085, 0.04730, 0.08281, 0.12681],
        [0.02167, 0.01598, 0.01389, 0.01329, 0.01411, 0.01567, 0.01809, 0.02178, 0.02830, 0.04256, 0.07587, 0.12199],
    ];

    public static TabulatedPolar Sda1075 { get; } =
        new([.. SdaAnglesDeg.Select(Radians)], SdaReynolds, SdaLift, SdaDrag);

    /// <summary>DA4002 5 x 3.75, two blades: measured geometry, UIUC Propeller Data Site, volume 2.</summary>
    public static RotorGeometry Da4002 { get; } = new(
        5 * Inch,
        2,
        [
            Station(0.15, 0.1253, 41.47), Station(0.20, 0.1121, 44.05), Station(0.25, 0.1384, 40.14),
            Station(0.30, 0.1594, 36.43), Station(0.35, 0.1705, 33.12), Station(0.40, 0.1760, 30.11),
            Station(0.45, 0.1780, 27.73), Station(0.50, 0.1783, 25.86), Station(0.55, 0.1778, 24.09),
            Station(0.60, 0.1788, 22.40), Station(0.65, 0.1801, 20.92), Station(0.70, 0.1797, 19.82),
            Station(0.75, 0.1804, 18.93), Station(0.80, 0.1810, 18.17), Station(0.85, 0.1796, 17.53),
            Station(0.90, 0.1793, 16.84), Station(0.95, 0.1555, 14.43), Station(1.00, 0.0226, 15.52),
        ],
        0.15,
        Sda1075);

    /// <summary>Direct-drive 5 x 3, two blades, section unknown: measured geometry, UIUC Propeller Data Site, volume 2.</summary>
    public static RotorGeometry Gws5x3 { get; } = new(
        5 * Inch,
        2,
        [
            Station(0.15, 0.2290, 17.20), Station(0.20, 0.2344, 18.06), Station(0.30, 0.2372, 19.63),
            Station(0.40, 0.2386, 20.54), Station(0.50, 0.2361, 20.24), Station(0.55, 0.2321, 19.49),
            Station(0.60, 0.2261, 18.34), Station(0.65, 0.2177, 17.00), Station(0.70, 0.2078, 15.77),
            Station(0.75, 0.1967, 14.73), Station(0.80, 0.1842, 13.77), Station(0.85, 0.1696, 12.90),
            Station(0.90, 0.1532, 12.26), Station(0.95, 0.1266, 11.66), Station(1.00, 0.0242, 5.75),
        ],
        0.15,
        LowReynoldsPolar.Instance);

    /// <summary>DA4002 with the default section in place of its own.</summary>
    public static RotorGeometry Da4002DefaultSection { get; } =
        new(Da4002.Diameter, Da4002.Blades, Da4002.Stations, Da4002.RootCutOut, LowReynoldsPolar.Instance);

    public static RotorGeometry Default(int index)
    {
        (_, double diameter, double pitch, int blades, _) = Defaults[index];
        return RotorGeometry.FromPitch(diameter, pitch, blades);
    }

    /// <summary>An untwisted blade of constant chord.</summary>
    public static RotorGeometry Untwisted(double diameter, int blades, double chordOverRadius, double twist, double root, SectionPolar polar) =>
        new(diameter, blades, [new(root, chordOverRadius, twist), new(1, chordOverRadius, twist)], root, polar);

    public static double Radians(double degrees) => degrees * Math.PI / 180;

    /// <summary>Loads of a rotor turning in axial flow, propeller convention: CT = T/(rho n^2 D^4), CP = P/(rho n^3 D^5).</summary>
    public static (double CT, double CP) Propeller(RotorCoefficients c, double w, double radius, double axial)
    {
        double tip = w * radius;
        double square = ((tip * tip) + (axial * axial)) / (tip * tip);
        return (c.Thrust * square * Math.Pow(Math.PI, 3) / 4, c.Torque * square * Math.Pow(Math.PI, 4) / 4);
    }

    public static double FigureOfMerit(double ct, double cp) => Math.Sqrt(2 / Math.PI) * Math.Pow(ct, 1.5) / cp;

    private static BladeStation Station(double radius, double chord, double twistDeg) => new(radius, chord, Radians(twistDeg));
}
