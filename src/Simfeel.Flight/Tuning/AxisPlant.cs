using System.Numerics;
using Simfeel.Flight.Control;
using Simfeel.Physics.Maths;
using Simfeel.Physics.Trim;

namespace Simfeel.Flight.Tuning;

/// <summary>
/// One axis of a craft near hover, from wanted angular acceleration to rate, behind a dead time: the flight kernel itself, made linear by
/// small central differences. Three states answer together: the rate r, the speeds of the rotors and their induced velocities, the
/// latter two along the pattern in which the mixer moves the rotors for this axis. So rotor lag, the push of a rotor that spins up before
/// the air has followed it, the damping of a turn by the air, and the reaction of the motors on yaw are all in it.
/// </summary>
/// <param name="Numerator">b(s) = b0 + b1 s + b2 s^2.</param>
/// <param name="Denominator">a(s) = a0 + a1 s + a2 s^2 + s^3: P(s) = b(s) / a(s).</param>
/// <param name="DeadTime">Speed controller's command delay, s.</param>
public readonly record struct AxisPlant(Vec3 Numerator, Vec3 Denominator, double DeadTime)
{
    /// <summary>Sizes of the differences: of the rate, rad/s; of rotor speed and induced velocity, shares; of duty.</summary>
    private const double RateStep = 0.02, SpeedShare = 1e-3, InflowShare = 1e-3, DutyStep = 1e-3;

    /// <summary>Frequency response at w, rad/s; rate (rad/s) for angular acceleration (rad/s^2).</summary>
    public Complex Response(double w)
    {
        // s = i w: even powers are real, odd ones imaginary
        Complex b = new(Numerator.X - (w * (w * Numerator.Z)), w * Numerator.Y);
        Complex a = new(Denominator.X - (w * (w * Denominator.Z)), w * (Denominator.Y - (w * w)));
        return b / a * Complex.FromPolarCoordinates(1, -w * DeadTime);
    }

    /// <summary>The plant of an axis (0 roll, 1 pitch, 2 yaw) at hover, with dynamic inflow.</summary>
    /// <param name="unit">The craft.</param>
    /// <param name="hover">Its hover.</param>
    /// <param name="map">Its thrust map.</param>
    /// <param name="allocation">Its allocation.</param>
    /// <param name="density">Air density, kg/m^3.</param>
    /// <param name="gravity">m/s^2.</param>
    /// <param name="axis">The axis.</param>
    public static AxisPlant Of(
        FlightUnit unit, HoverTrim hover, ThrustMap map, Allocation allocation, double density, double gravity, int axis)
    {
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(allocation);
        int rotors = unit.Craft.Rotors.Count;
        double[] pattern = new double[rotors];
        double size = 0;
        for (int k = 0; k < rotors; k++) size += allocation.Shares[k, axis] * allocation.Shares[k, axis];
        size = Math.Sqrt(size);
        for (int k = 0; k < rotors; k++) pattern[k] = allocation.Shares[k, axis] / size;
        using HoverSlopes slopes = new(unit.Craft, hover, pattern, density, gravity, axis);
        Vec3 byRate = slopes.By(RateStep, 0, 0, 0), bySpeed = slopes.By(0, SpeedShare * hover.Rotor.Speed, 0, 0);
        Vec3 byInflow = slopes.By(0, 0, InflowShare * hover.State.InducedVelocities[0], 0), byDuty = slopes.By(0, 0, 0, DutyStep);
        // 1 rad/s^2 moves the shares along the pattern by its size, and each share its duty
        double duty = size * map.Slope(hover.Rotor.Thrust / map.FullThrust);
        return Of(
            new Mat3(
                byRate.X, bySpeed.X, byInflow.X,
                byRate.Y, bySpeed.Y, byInflow.Y,
                byRate.Z, bySpeed.Z, byInflow.Z),
            duty * byDuty,
            unit.CommandDelay);
    }

    /// <summary>
    /// First entry of (s - A)^-1 B over s, after Faddeev and Le Verrier: adj(s - A) = s^2 + s (A - tr A) + A^2 - A tr A + c with
    /// c = ((tr A)^2 - tr A^2) / 2.
    /// </summary>
    private static AxisPlant Of(Mat3 a, Vec3 b, double deadTime)
    {
        Mat3 squared = a * a;
        double trace = a.Trace, c = ((trace * trace) - squared.Trace) / 2;
        Vec3 ab = a * b, aab = squared * b;
        double determinant = (a.M00 * ((a.M11 * a.M22) - (a.M12 * a.M21)))
            - (a.M01 * ((a.M10 * a.M22) - (a.M12 * a.M20))) + (a.M02 * ((a.M10 * a.M21) - (a.M11 * a.M20)));
        return new(
            new Vec3(aab.X - (trace * ab.X) + (c * b.X), ab.X - (trace * b.X), b.X),
            new Vec3(-determinant, c, -trace),
            deadTime);
    }
}
