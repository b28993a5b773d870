using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Metrics;

/// <summary>Reading events and sums off a log; times are interpolated between rows.</summary>
internal static class LogReading
{
    /// <summary>Value of a signal at a time, s, by straight lines between rows.</summary>
    public static double At(this FlightLog log, double time, Signal signal)
    {
        double row = Math.Clamp(time / log.Period, 0, log.Samples.Count - 1);
        int before = Math.Min((int)row, log.Samples.Count - 2);
        double share = row - before;
        return ((1 - share) * signal(log.Samples[before])) + (share * signal(log.Samples[before + 1]));
    }

    /// <summary>First time after a start at which a signal falls through (or lies below) a level; NaN where it never does.</summary>
    public static double TimeBelow(this FlightLog log, double from, double level, Signal signal)
    {
        if (double.IsNaN(from)) return double.NaN;
        int first = (int)Math.Ceiling((from / log.Period) - 1e-9);
        for (int row = first; row < log.Samples.Count; row++)
        {
            double now = signal(log.Samples[row]);
            if (now > level) continue;
            if (row == first) return from;
            double before = signal(log.Samples[row - 1]);
            return log.TimeOf(row - 1) + (log.Period * (before - level) / (before - now));
        }
        return double.NaN;
    }

    /// <summary>First time after a start at which a signal rises through a level; NaN where it never does.</summary>
    public static double TimeAbove(this FlightLog log, double from, double level, Signal signal) =>
        log.TimeBelow(from, -level, sample => -signal(sample));

    /// <summary>Largest value of a signal from a time on.</summary>
    public static double Largest(this FlightLog log, double from, Signal signal)
    {
        double largest = double.NegativeInfinity;
        for (int row = (int)(from / log.Period); row < log.Samples.Count; row++)
            largest = Math.Max(largest, signal(log.Samples[row]));
        return largest;
    }

    /// <summary>Mean of a signal between two times: trapezoids over the rows.</summary>
    public static double Mean(this FlightLog log, double from, double to, Signal signal)
    {
        int first = (int)Math.Round(from / log.Period), last = (int)Math.Round(to / log.Period);
        double sum = 0;
        for (int row = first; row < last; row++) sum += (signal(log.Samples[row]) + signal(log.Samples[row + 1])) / 2;
        return sum / (last - first);
    }

    /// <summary>Angle turned about a body axis (0 x, 1 y, 2 z) up to each row, rad: trapezoids over the rate.</summary>
    public static double[] Turned(this FlightLog log, int axis)
    {
        double[] angle = new double[log.Samples.Count];
        for (int row = 1; row < angle.Length; row++)
        {
            angle[row] = angle[row - 1]
                + (log.Period / 2 * (log.Samples[row - 1].State.w_WB_B[axis] + log.Samples[row].State.w_WB_B[axis]));
        }
        return angle;
    }

    /// <summary>Time after a start at which a rising angle passes a value; NaN where it never does.</summary>
    public static double TimeTurned(this FlightLog log, double from, int axis, double angle)
    {
        double[] turned = log.Turned(axis);
        double start = turned[(int)Math.Round(from / log.Period)];
        for (int row = 1; row < turned.Length; row++)
        {
            if (turned[row] - start < angle) continue;
            double before = turned[row - 1] - start, now = turned[row] - start;
            return log.TimeOf(row - 1) + (log.Period * (angle - before) / (now - before)) - from;
        }
        return double.NaN;
    }

    /// <summary>Height above the start, m.</summary>
    public static double Height(LogRow sample) => -sample.State.p_WB.Z;

    /// <summary>Speed upwards, m/s.</summary>
    public static double Climb(LogRow sample) => -sample.State.v_WB.Z;

    /// <summary>Share of the rotors in the force of the air against the motion, 0 to 1; NaN at rest.</summary>
    public static double RotorDragShare(LogRow sample)
    {
        Vec3 v = sample.AirVelocity_B;
        return Vec3.Dot(sample.RotorForce_B, v) / Vec3.Dot(sample.AirForce_B, v);
    }

    /// <summary>Square of roll and pitch rate together, rad^2/s^2.</summary>
    public static double RollPitchRateSquared(LogRow sample)
    {
        Vec3 w = sample.State.w_WB_B;
        return (w.X * w.X) + (w.Y * w.Y);
    }

    /// <summary>Sum of the rotors' thrusts, N.</summary>
    public static double Thrust(LogRow sample)
    {
        PerRotor thrust = sample.Thrust;
        double sum = 0;
        for (int k = 0; k < Craft.MaxRotors; k++) sum += thrust[k];
        return sum;
    }
}
