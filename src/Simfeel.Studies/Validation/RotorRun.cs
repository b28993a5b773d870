using System.Collections.Immutable;
using Simfeel.Physics.Air;
using Simfeel.Physics.Rotors;

namespace Simfeel.Studies.Validation;

/// <summary>Loads of a rotor in one state.</summary>
/// <param name="CT">Thrust coefficient.</param>
/// <param name="CP">Power coefficient (in the rotor convention the same number as that of torque, CQ).</param>
internal readonly record struct Loads(double CT, double CP);

/// <summary>Runs the blade element solver in axial flow, in the coefficients that reports use.</summary>
internal static class RotorRun
{
    /// <summary>ISO 2533 at sea level.</summary>
    public static AirState SeaLevel { get; } = StandardAtmosphere.At(0);

    // Every blade position of axial flow is the same.
    private static readonly BladeElementOptions Axial = new() { Azimuths = 4 };

    /// <summary>CT = T / (rho A (wR)^2) and CQ = Q / (rho A (wR)^2 R), at a climb speed over wR.</summary>
    public static Loads Rotor(RotorGeometry geometry, double rpm, double climb = 0, BladeElementOptions? options = null)
    {
        double w = rpm * Math.PI / 30;
        RotorCoefficients c = new BladeElementSolver(geometry, SeaLevel, options ?? Axial).Solve(w, climb * w * geometry.Radius, 0).Coefficients;
        double square = 1 + (climb * climb);
        return new(c.Thrust * square, c.Torque * square);
    }

    /// <summary>CT = T / (rho n^2 D^4) and CP = P / (rho n^3 D^5), at an advance ratio J = V / (n D).</summary>
    public static Loads Propeller(RotorGeometry geometry, double rpm, double advance)
    {
        Loads rotor = Rotor(geometry, rpm, advance / Math.PI);
        return new(rotor.CT * Math.Pow(Math.PI, 3) / 4, rotor.CP * Math.Pow(Math.PI, 4) / 4);
    }

    /// <summary>Figure of merit of hover from the coefficients of a propeller, sqrt(2 / pi) CT^1.5 / CP.</summary>
    public static double FigureOfMerit(Loads propeller) => Math.Sqrt(2 / Math.PI) * Math.Pow(propeller.CT, 1.5) / propeller.CP;

    /// <summary>Best efficiency that momentum theory allows a propeller, 2 / (1 + sqrt(1 + 8 CT / (pi J^2))).</summary>
    public static double IdealEfficiency(double thrust, double advance) =>
        2 / (1 + Math.Sqrt(1 + (8 * thrust / (Math.PI * advance * advance))));

    /// <summary>An untwisted blade of constant chord; angles in degrees.</summary>
    public static RotorGeometry Untwisted(double diameter, int blades, double chordOverRadius, double pitchDeg, double root, SectionPolar polar)
    {
        double twist = Radians(pitchDeg);
        ImmutableArray<BladeStation> stations = [new(root, chordOverRadius, twist), new(1, chordOverRadius, twist)];
        return new(diameter, blades, stations, root, polar);
    }

    public static double Radians(double degrees) => degrees * Math.PI / 180;

    /// <summary>Place between two where a function changes its sign.</summary>
    public static double Root(double low, double high, Func<double, double> function)
    {
        bool rising = function(high) > 0;
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (low + high);
            if (function(middle) > 0 == rising) high = middle;
            else low = middle;
        }
        return 0.5 * (low + high);
    }
}
