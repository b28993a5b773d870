using Simfeel.Physics.Rotors;

namespace Simfeel.Studies.Validation;

/// <summary>
/// The 6-foot rotor of constant chord of Castles and Gray, NACA TN-2474 (1951), from a secondary copy of its tables: three
/// untwisted blades, NACA 0015, airfoil from 0.169 R on. Lift slopes of the same report (Table VIII); the drag rise
/// 0.75 alpha^2 is that of the section tests in NACA TN-626.
/// </summary>
internal static class CastlesGrayRotor
{
    public const string Report = "Castles and Gray, Empirical Relation between Induced Velocity, Thrust, and Rate of Descent, NACA TN-2474 (1951), from a secondary copy of its tables";

    /// <summary>Thrust coefficient of the descents.</summary>
    public const double DescentThrust = 0.004;

    /// <summary>Speed of the descents, 1/min.</summary>
    public const double DescentRpm = 1200;

    /// <summary>Section lift slope, 1/rad, at 1200 and 1600 rpm.</summary>
    public const double Slope1200 = 5.90, Slope1600 = 6.07;

    public static Loads Turn(double pitchDeg, double rpm, double slope, double climb = 0) =>
        RotorRun.Rotor(RotorRun.Untwisted(1.8288, 3, 0.0479 / 0.9144, pitchDeg, 0.169, new LinearPolar(slope, 0.0105, 0.75)), rpm, climb);

    /// <summary>CQ in a descent of so many v_h, at the pitch that holds the thrust of the descents.</summary>
    public static double DescentTorque(double descent)
    {
        double climb = -descent * Math.Sqrt(DescentThrust / 2);
        double pitch = RotorRun.Root(-10, 15, p => Turn(p, DescentRpm, Slope1200, climb).CT - DescentThrust);
        return Turn(pitch, DescentRpm, Slope1200, climb).CP;
    }

    /// <summary>CQ without thrust.</summary>
    public static double FlatTorque(double rpm, double slope) => Turn(0, rpm, slope).CP;
}
