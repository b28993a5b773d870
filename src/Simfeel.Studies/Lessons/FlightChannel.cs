using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Physics.Maths;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Lessons;

/// <summary>Something that can be read at every moment of a flight.</summary>
/// <param name="Name">Identifier in lesson files.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Display">Unit for people.</param>
/// <param name="Read">All rows of a log, SI; the axis (0 roll, 1 pitch, 2 yaw) is the drill's.</param>
public sealed record FlightChannel(string Name, string Title, DisplayUnit Display, Func<FlightLog, int, double[]> Read)
{
    private const double Degrees = 180 / Math.PI;

    private static readonly DisplayUnit Rate = new("deg/s", Degrees, 0), Angle = new("deg", Degrees, 1), Metres = new("m", 1, 2), Speed = new("m/s", 1, 2);

    /// <summary>All of them, in the order of the documentation.</summary>
    public static IReadOnlyList<FlightChannel> All { get; } =
    [
        new("rate", "turn rate", Rate, (log, axis) => Each(log, sample => sample.State.w_WB_B[axis])),
        new("angle", "angle turned", Angle, (log, axis) => log.Turned(axis)),
        new("tilt", "tilt from level", Angle, (log, _) => Each(log, sample => Math.Acos(Math.Clamp(sample.State.q_WB.ToMatrix().M22, -1, 1)))),
        new("axis_drift", "angle between the spin and its first axis in the craft", Angle, (log, _) => AxisDrift(log)),
        new("shake", "roll and pitch rate together", new("deg/s", Degrees, 1), (log, _) => Each(log, sample => Math.Sqrt(LogReading.RollPitchRateSquared(sample)))),
        new("height", "height over the start", Metres, (log, _) => Each(log, sample => LogReading.Height(sample))),
        new("fall", "height lost", Metres, (log, _) => Each(log, sample => -LogReading.Height(sample))),
        new("climb", "speed upwards", Speed, (log, _) => Each(log, sample => LogReading.Climb(sample))),
        new("sink", "speed downwards", Speed, (log, _) => Each(log, sample => -LogReading.Climb(sample))),
        new("speed", "speed", Speed, (log, _) => Each(log, sample => sample.State.v_WB.Length)),
        new("sideways", "way to the side", Metres, (log, _) => Each(log, sample => sample.State.p_WB.Y)),
        new("thrust", "thrust of all rotors", new("N", 1, 2), (log, _) => Each(log, sample => LogReading.Thrust(sample))),
        new("power", "power from the pack", new("W", 1, 1), (log, _) => Each(log, sample => sample.PackVoltage * sample.PackCurrent)),
        new("pack_voltage", "pack voltage", new("V", 1, 2), (log, _) => Each(log, sample => sample.PackVoltage)),
        new("rotor_speed", "mean rotor speed", new("rpm", 60 / (2 * Math.PI), 0), (log, _) => OverRotors(log, (sample, k) => sample.State.RotorSpeeds[k])),
        new("front_less_rear", "rotor speed, front less rear", new("rpm", 60 / (2 * Math.PI), 0), (log, _) => FrontLessRear(log)),
        new("reserve_up", "torque reserve up, mean of the rotors", new("mN m", 1000, 0), (log, _) => OverRotors(log, (sample, k) => sample.ReserveUp[k])),
        new("reserve_down", "torque reserve down, mean of the rotors", new("mN m", 1000, 0), (log, _) => OverRotors(log, (sample, k) => sample.ReserveDown[k])),
    ];

    /// <summary>The channel of a name; null where there is none.</summary>
    public static FlightChannel? Find(string name) => All.FirstOrDefault(channel => channel.Name == name);

    private static double[] Each(FlightLog log, Func<LogRow, double> read) => [.. log.Samples.Select(read)];

    private static double[] OverRotors(FlightLog log, Func<LogRow, int, double> read)
    {
        int count = log.Unit.Unit.Craft.Rotors.Count;
        return Each(log, sample => Enumerable.Range(0, count).Average(k => read(sample, k)));
    }

    /// <summary>Mean speed of the rotors ahead of the centre of gravity less that of those behind it, rad/s.</summary>
    private static double[] FrontLessRear(FlightLog log)
    {
        IReadOnlyList<RotorConstants> rotors = log.Unit.Unit.Craft.Rotors;
        double middle = rotors.Average(rotor => rotor.p_BcmR_B.X);
        int[] front = [.. Enumerable.Range(0, rotors.Count).Where(k => rotors[k].p_BcmR_B.X > middle + 1e-6)];
        int[] rear = [.. Enumerable.Range(0, rotors.Count).Where(k => rotors[k].p_BcmR_B.X < middle - 1e-6)];
        return Each(log, sample => front.Average(k => sample.State.RotorSpeeds[k]) - rear.Average(k => sample.State.RotorSpeeds[k]));
    }

    /// <summary>Angle between the present angular velocity and the first one, both in body axes, rad.</summary>
    private static double[] AxisDrift(FlightLog log)
    {
        Vec3 first = log.Samples[0].State.w_WB_B;
        return Each(log, sample =>
        {
            Vec3 now = sample.State.w_WB_B;
            double sizes = first.Length * now.Length;
            return sizes < 1e-9 ? 0 : Math.Acos(Math.Clamp(Vec3.Dot(first, now) / sizes, -1, 1));
        });
    }
}
