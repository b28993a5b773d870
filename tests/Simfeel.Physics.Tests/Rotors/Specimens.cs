using System.Collections.Immutable;
using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>A tabulated section, blades for closed forms, and the default propellers of the usual sizes.</summary>
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

    /// <summary>A section of our own, given as a table: what a small cambered one looks like, rounded.</summary>
    public static readonly double[] TableReynolds = [20e3, 100e3];

    public static readonly double[] TableAnglesDeg = [-6, -2, 2, 6, 10, 14, 16];

    public static readonly ImmutableArray<double>[] TableLift =
    [
        [-0.48, -0.10, 0.39, 0.75, 0.90, 0.87, 0.88],
        [-0.50, -0.05, 0.42, 0.84, 1.20, 1.17, 1.08],
    ];

    public static readonly ImmutableArray<double>[] TableDrag =
    [
        [0.043, 0.029, 0.036, 0.049, 0.084, 0.155, 0.190],
        [0.022, 0.013, 0.014, 0.018, 0.028, 0.076, 0.122],
    ];

    public static TabulatedPolar Tabulated { get; } =
        new([.. TableAnglesDeg.Select(Radians)], TableReynolds, TableLift, TableDrag);

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
}
