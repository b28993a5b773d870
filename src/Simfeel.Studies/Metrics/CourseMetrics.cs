using Simfeel.Flight.Drills;
using static Simfeel.Studies.Metrics.LogReading;

namespace Simfeel.Studies.Metrics;

/// <summary>
/// Metrics of the drills over the ground, flown by the virtual pilot, whose reaction time is in them. Times count from the first stick
/// movement. A craft that cannot keep a drill's speed in level flight has no numbers there.
/// </summary>
internal static class CourseMetrics
{
    private const double Start = Drill.LeadIn;
    private const double Stopped = 1, Turned = 175 * Math.PI / 180;

    private static readonly DisplayUnit Metres = new("m", 1, 1), MetresPerSecond = new("m/s", 1, 1), Milliseconds = new("ms", 1000, 0);

    public static IEnumerable<Metric> All() =>
        Read().Select(metric => metric.Drill.StartSpeed is null ? metric : metric with { Read = log => AtSpeed(metric.Drill, log) ? metric.Read(log) : double.NaN });

    private static IEnumerable<Metric> Read() =>
    [
        new()
        {
            Drill = CourseDrills.Dash, Topic = Topic.Travelling, Name = "dash_time_to_15_m_s", Title = "time to 15 m/s ahead", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.03, Weight = 0.6,
            Read = log => log.TimeAbove(Start, 15, Speed) - Start,
            Say = s => $"From a hover {s.Less} is 15 metres a second fast after {s.Smaller} milliseconds and {s.More} after {s.Larger}.",
        },
        new()
        {
            // speed over ground at the end of the drill, five seconds after the start from hover
            Drill = CourseDrills.Dash, Topic = Topic.Travelling, Name = "dash_speed", Title = "speed after a dash of 5 s", Unit = "m/s",
            LoadsFrom = Metric.Never,
            Display = MetresPerSecond, Floor = 0.5, Weight = 0.7,
            Read = log => Speed(log.Samples[^1]),
            Say = s => $"Five seconds after leaving a hover at full throttle {s.More} flies {s.Larger} metres a second and {s.Less} {s.Smaller}.",
        },
        new()
        {
            // from the first stick movement until slower than 1 m/s
            Drill = CourseDrills.Brake, Topic = Topic.Travelling, Name = "brake_time", Title = "time to stand still from 12 m/s", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.05, Weight = 0.6,
            Read = log => log.TimeBelow(Start, Stopped, Speed) - Start,
            Say = s => $"From 12 metres a second {s.More} needs {s.Larger} milliseconds to stand still and {s.Less} needs {s.Smaller}.",
        },
        new()
        {
            Drill = CourseDrills.Brake, Topic = Topic.Travelling, Name = "brake_distance", Title = "way to stand still from 12 m/s", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = Metres, Floor = 0.3, Weight = 0.7,
            Read = log => log.At(log.TimeBelow(Start, Stopped, Speed), sample => sample.State.p_WB.X) - log.At(Start, sample => sample.State.p_WB.X),
            Say = s => $"Braking from 12 metres a second {s.More} runs on for {s.Larger} metres and {s.Less} for {s.Smaller}.",
        },
        new()
        {
            // until the direction over ground has turned by 175 of the 180 degrees
            Drill = CourseDrills.Turn, Topic = Topic.Travelling, Name = "turn_time", Title = "time for half a circle", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.05, Weight = 0.6,
            Read = log => TrackTurned(log) - Start,
            Say = s => $"Half a circle at 12 metres a second takes {s.More} {s.Larger} milliseconds and {s.Less} {s.Smaller}.",
        },
        new()
        {
            // half of the farthest place to the side
            Drill = CourseDrills.Turn, Topic = Topic.Travelling, Name = "turn_radius", Title = "radius of that half circle", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = new("m", 1, 2), Floor = 0.3, Weight = 0.5,
            Read = log => log.Largest(Start, sample => sample.State.p_WB.Y) / 2,
            Say = s => $"Asked for the same tight half circle, {s.More} flies it with a radius of {s.Larger} metres and {s.Less} of {s.Smaller}.",
        },
        new()
        {
            // highest less lowest place from the beginning of the turn on
            Drill = CourseDrills.Turn, Topic = Topic.Travelling, Name = "turn_height_change", Title = "height wandering in the turn", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = new("m", 1, 2), Floor = 0.3, Weight = 0.6,
            Read = log => log.Largest(Start, Height) + log.Largest(Start, sample => -Height(sample)),
            Say = s => $"In a tight half circle {s.More} wanders {s.Larger} metres up or down and {s.Less} {s.Smaller}.",
        },
        new()
        {
            // from the first stick movement until level with the last pole
            Drill = CourseDrills.Slalom, Topic = Topic.Travelling, Name = "slalom_time", Title = "time through the slalom", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.1, Weight = 0.4,
            Read = log => log.TimeAbove(Start, CourseDrills.SlalomStart(log.Effort) + (CourseDrills.Poles * CourseDrills.PoleSpacing), sample => sample.State.p_WB.X) - Start,
            Say = s => $"Through the slalom {s.More} takes {s.Larger} milliseconds and {s.Less} {s.Smaller}.",
        },
        new()
        {
            Drill = CourseDrills.Slalom, Topic = Topic.Travelling, Name = "slalom_miss", Title = "farthest off the slalom's line", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = new("m", 1, 2), Floor = 0.15, Weight = 0.8,
            Read = SlalomMiss,
            Say = s => $"Left and right through a row of poles, {s.More} strays {s.Larger} metres off the line and {s.Less} {s.Smaller}.",
        },
        new()
        {
            // mean travel of the roll stick: how busy the thumb is
            Drill = CourseDrills.Slalom, Topic = Topic.Travelling, Name = "slalom_stick_work", Title = "roll stick travel in the slalom", Unit = "1/s",
            LoadsFrom = Metric.Never,
            Display = new("full sticks/s", 1, 2), Floor = 0.1, Weight = 0.4,
            Read = StickWork,
            Say = s => $"Through the slalom the thumb is busier on {s.More}: {s.Larger} full sticks of roll a second against {s.Smaller} on {s.Less}.",
        },
        new()
        {
            // mean over the last second
            Drill = CourseDrills.Cruise, Topic = Topic.Travelling, Name = "cruise_power", Title = "power in level flight", Unit = "W",
            LoadsFrom = CourseDrills.Cruise.Duration - 1,
            Display = new("W", 1, 0), Floor = 1, Weight = 0.3, Instrument = true,
            Read = CruisePower,
            Say = s => $"Level flight takes {s.Larger} watts for {s.More} and {s.Smaller} watts for {s.Less}.",
        },
        new()
        {
            // way for energy: mean speed over mean power of the last second
            Drill = CourseDrills.Cruise, Topic = Topic.Travelling, Name = "specific_range", Title = "way for a watt hour", Unit = "m/J",
            LoadsFrom = CourseDrills.Cruise.Duration - 1,
            Display = new("m/Wh", 3600, 0), Floor = 1.0 / 3600, Weight = 0.8,
            Read = log => log.Mean(End(log) - 1, End(log), Speed) / CruisePower(log),
            Say = s => $"A watt hour carries {s.More} {s.Larger} metres and {s.Less} {s.Smaller}.",
        },
    ];

    private static bool AtSpeed(Drill drill, FlightLog log) => Speed(log.Samples[0]) > 0.999 * drill.StartSpeed!(log.Effort);

    private static double End(FlightLog log) => log.TimeOf(log.Samples.Count - 1);

    private static double Speed(LogRow sample) => double.Hypot(sample.State.v_WB.X, sample.State.v_WB.Y);

    private static double CruisePower(FlightLog log) => log.Mean(End(log) - 1, End(log), sample => sample.PackVoltage * sample.PackCurrent);

    private static double TrackTurned(FlightLog log)
    {
        double turned = 0, before = 0;
        for (int row = (int)Math.Round(Start / log.Period); row < log.Samples.Count; row++)
        {
            double track = Math.Atan2(log.Samples[row].State.v_WB.Y, log.Samples[row].State.v_WB.X);
            double step = Math.IEEERemainder(track - before, 2 * Math.PI);
            if (turned + step >= Turned) return log.TimeOf(row - 1) + (log.Period * (Turned - turned) / step);
            (turned, before) = (turned + step, track);
        }
        return double.NaN;
    }

    private static double SlalomMiss(FlightLog log)
    {
        double start = CourseDrills.SlalomStart(log.Effort), end = (CourseDrills.Poles + 0.5) * CourseDrills.PoleSpacing, farthest = 0;
        for (int row = (int)Math.Round(Start / log.Period); row < log.Samples.Count; row++)
        {
            double along = log.Samples[row].State.p_WB.X - start;
            if (along < 0 || along > end) continue;
            farthest = Math.Max(farthest, Math.Abs(log.Samples[row].State.p_WB.Y - CourseDrills.SlalomLine(along)));
        }
        return farthest;
    }

    private static double StickWork(FlightLog log)
    {
        double travel = 0;
        int first = (int)Math.Round(Start / log.Period);
        for (int row = first + 1; row < log.Sticks.Count; row++) travel += Math.Abs(log.Sticks[row].Roll - log.Sticks[row - 1].Roll);
        return travel / (log.Period * (log.Sticks.Count - 1 - first));
    }
}
