using Simfeel.Flight.Drills;
using Simfeel.Physics;
using Simfeel.Studies.Handling;
using static Simfeel.Studies.Metrics.LogReading;

namespace Simfeel.Studies.Metrics;

/// <summary>
/// The metrics, drill by drill. Times count from the first stick movement (<see cref="Drill.LeadIn"/>) unless said
/// otherwise, so the radio's delay and the thumb's travel are in them, equal for every build.
/// </summary>
public static class MetricCatalogue
{
    private const double Start = Drill.LeadIn;
    private const double Degree = Math.PI / 180;

    private static readonly DisplayUnit Metres = new("m", 1, 2);
    private static readonly DisplayUnit MetresPerSecond = new("m/s", 1, 1);
    private static readonly DisplayUnit Milliseconds = new("ms", 1000, 0);
    private static readonly DisplayUnit Degrees = new("deg", 1 / Degree, 1);
    private static readonly DisplayUnit DegreesPerSecond2 = new("1000 deg/s2", 1 / Degree / 1000, 1);

    /// <summary>All metrics in the order in which they are shown.</summary>
    public static IReadOnlyList<Metric> All { get; } =
        [.. Falling(), .. Climbing(), .. Rolling(), .. Turning(), .. Washing(), .. Hovering(), .. CourseMetrics.All(), .. HandlingMetrics.All];

    private static IEnumerable<Metric> Falling() =>
    [
        new()
        {
            // height lost one second after the throttle starts to close; 4.9 m in a vacuum
            Drill = DrillCatalogue.Drop, Topic = Topic.Falling, Name = "fall_in_1_s", Title = "fall in the first second", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = Metres, Floor = 0.1, Weight = 0.9,
            Read = log => -log.At(Start + 1, Height),
            Say = s => $"With the throttle closed {s.More} falls {s.Larger} metres in the first second and {s.Less} falls {s.Smaller}.",
        },
        new()
        {
            // sink speed at the end of the drill, five seconds into the fall
            Drill = DrillCatalogue.Drop, Topic = Topic.Falling, Name = "settled_fall_speed", Title = "fall speed after 5 s", Unit = "m/s",
            LoadsFrom = Metric.Never,
            Display = MetresPerSecond, Floor = 0.3, Weight = 0.8,
            Read = log => -Climb(log.Samples[^1]),
            Say = s => $"Left to fall with the rotors idling, {s.More} ends up sinking at {s.Larger} metres a second and {s.Less} at {s.Smaller}.",
        },
        new()
        {
            // at the end of the drill: force of the air on the rotors against the motion over that on the whole craft
            Drill = DrillCatalogue.Drop, Topic = Topic.Falling, Name = "rotor_drag_share", Title = "rotors' share of that drag", Unit = "1",
            LoadsFrom = DrillCatalogue.Drop.Duration,
            Display = new("%", 100, 0), Floor = 0.05, Weight = 0,
            Instrument = true,
            Read = log => RotorDragShare(log.Samples[^1]),
            Say = s => $"In a long fall the idling rotors make {s.Larger} percent of {s.More}'s drag and {s.Smaller} percent of {s.Less}'s.",
        },
        new()
        {
            // from opening the throttle, one second into a fall, until the sinking ends
            Drill = DrillCatalogue.Catch, Topic = Topic.Falling, Name = "catch_time", Title = "time to catch a fall", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.01, Weight = 0.9,
            Read = log => log.TimeAbove(Open, 0, Climb) - Open,
            Say = s => $"Caught on the throttle after falling for a second, {s.More} needs {s.Larger} milliseconds to stop sinking and {s.Less} needs {s.Smaller}.",
        },
        new()
        {
            Drill = DrillCatalogue.Catch, Topic = Topic.Falling, Name = "catch_height", Title = "height lost while catching", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = Metres, Floor = 0.1, Weight = 0.7,
            Read = log => log.At(Open, Height) + log.Largest(Open, sample => -Height(sample)),
            Say = s => $"While it is being caught out of a fall, {s.More} drops another {s.Larger} metres and {s.Less} another {s.Smaller}.",
        },
    ];

    private const double Open = Start + DrillCatalogue.FallBeforeCatch;

    private static IEnumerable<Metric> Climbing() =>
    [
        new()
        {
            Drill = DrillCatalogue.Punch, Topic = Topic.Climbing, Name = "climb_in_1_s", Title = "climb in the first second", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = new("m", 1, 1), Floor = 0.5, Weight = 0.95,
            Read = log => log.At(Start + 1, Height),
            Say = s => $"With the throttle thrown open in a hover, {s.More} is {s.Larger} metres up after one second and {s.Less} is {s.Smaller}.",
        },
        new()
        {
            Drill = DrillCatalogue.Punch, Topic = Topic.Climbing, Name = "time_to_15_m_s", Title = "time to climb at 15 m/s", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.01, Weight = 0.6,
            Read = log => log.TimeAbove(Start, 15, Climb) - Start,
            Say = s => $"From a hover {s.Less} is climbing at 15 metres a second after {s.Smaller} milliseconds and {s.More} after {s.Larger}.",
        },
        new()
        {
            // largest sum of thrusts over the weight, the pack sagging
            Drill = DrillCatalogue.Punch, Topic = Topic.Climbing, Name = "thrust_to_weight", Title = "largest thrust to weight", Unit = "1",
            Display = new("", 1, 1), Floor = 0.2, Weight = 0.7,
            Read = log => log.Largest(Start, Thrust) / (log.Unit.Unit.Craft.Mass * log.Unit.Gravity),
            Say = s => $"{s.More} can lift {s.Larger} times its own weight, {s.Less} {s.Smaller} times.",
        },
        new()
        {
            Drill = DrillCatalogue.Punch, Topic = Topic.Climbing, Name = "climb_pack_current", Title = "pack current, mean of that second", Unit = "A",
            Display = new("A", 1, 0), Floor = 2, Weight = 0.3,
            Instrument = true,
            Read = log => log.Mean(Start, Start + 1, sample => sample.PackCurrent),
            Say = s => $"The first second of a climb draws {s.Larger} amperes from {s.More}'s battery and {s.Smaller} from {s.Less}'s.",
        },
    ];

    private static IEnumerable<Metric> Rolling() =>
    [
        new()
        {
            // until nine tenths of the rate that the stick commands
            Drill = DrillCatalogue.Roll, Topic = Topic.Rolling, Name = "roll_rise_time", Title = "time to 90 % of the roll rate", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.005,
            Read = log => log.TimeAbove(Start, 0.9 * CommandedRoll(log), sample => sample.State.w_WB_B.X) - Start,
            Say = s => $"Thrown into a roll, {s.More} needs {s.Larger} milliseconds to get up to speed and {s.Less} needs {s.Smaller}.",
        },
        new()
        {
            // largest rate over the commanded one, less 1 (IEEE Std 181, overshoot; from memory)
            Drill = DrillCatalogue.Roll, Topic = Topic.Rolling, Name = "roll_overshoot", Title = "overshoot of the roll rate", Unit = "1",
            LoadsFrom = Metric.Never,
            Display = new("%", 100, 1), Floor = 0.03, Weight = 0.5,
            Read = log => Math.Max(0, (log.Largest(Start, RollRate) / CommandedRoll(log)) - 1),
            Say = s => $"Thrown into a roll, {s.More} shoots {s.Larger} percent over the rate asked for and {s.Less} {s.Smaller}.",
        },
        new()
        {
            // until the rate stays within a tenth of the commanded one (IEEE Std 181, settling; from memory)
            Drill = DrillCatalogue.Roll, Topic = Topic.Rolling, Name = "roll_settling_time", Title = "time until the roll rate is steady", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.01, Weight = 0.5,
            Read = RollSettled,
            Say = s => $"After full roll stick it takes {s.Larger} milliseconds until {s.More}'s rate is steady, {s.Smaller} on {s.Less}.",
        },
        new()
        {
            Drill = DrillCatalogue.Roll, Topic = Topic.Rolling, Name = "time_to_360_deg", Title = "time for one full roll", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.01, Weight = 0.8,
            Read = log => log.TimeTurned(Start, 0, 2 * Math.PI),
            Say = s => $"One full roll takes {s.More} {s.Larger} milliseconds and {s.Less} {s.Smaller}.",
        },
        new()
        {
            Drill = DrillCatalogue.Roll, Topic = Topic.Rolling, Name = "peak_roll_acceleration", Title = "peak roll acceleration", Unit = "rad/s2",
            Display = DegreesPerSecond2, Floor = 5, Weight = 0.5,
            Read = log => log.Largest(Start, sample => sample.AngularAcceleration_B.X),
            Say = s => $"{s.More} reaches {s.Ratio} the roll acceleration of {s.Less}.",
        },
        new()
        {
            // from letting go until a tenth of the rate at that moment is left: a band wide enough not to jump
            // when a small overshoot comes near it
            Drill = DrillCatalogue.Stop, Topic = Topic.Rolling, Name = "stop_time", Title = "time to stop the roll", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.005,
            Read = log => StopReading.Of(log).StopTime,
            Say = s => $"Let go of the stick in a roll, and {s.More} takes {s.Larger} milliseconds to stop; {s.Less} takes {s.Smaller}.",
        },
        new()
        {
            // angle turned back after the furthest point of the roll
            Drill = DrillCatalogue.Stop, Topic = Topic.Rolling, Name = "bounce_back", Title = "bounce-back after the stop", Unit = "rad",
            LoadsFrom = Metric.Never,
            Display = Degrees, Floor = 3 * Degree, Weight = 0.9,
            Read = log => StopReading.Of(log).BounceBack,
            Say = s => $"After a hard stop {s.More} swings back by {s.Larger} degrees and {s.Less} by {s.Smaller}.",
        },
        new()
        {
            // start less lowest height
            Drill = DrillCatalogue.Flip, Topic = Topic.Rolling, Name = "flip_height_lost", Title = "height lost in a flip", Unit = "m",
            LoadsFrom = Metric.Never,
            Display = Metres, Floor = 0.1, Weight = 0.9,
            Read = log => log.Largest(Start, sample => -Height(sample)),
            Say = s => $"A full flip costs {s.More} {s.Larger} metres of height and {s.Less} {s.Smaller}.",
        },
        new()
        {
            // until, past 300 degrees, the pitch rate has fallen to a tenth of its peak
            Drill = DrillCatalogue.Flip, Topic = Topic.Rolling, Name = "flip_time", Title = "time for a flip, stop included", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.01, Weight = 0.7,
            Read = FlipTime,
            Say = s => $"A full flip takes {s.More} {s.Larger} milliseconds and {s.Less} {s.Smaller}.",
        },
    ];

    private const double YawRelease = Start + DrillCatalogue.TurnBeforeYawStop;

    private static IEnumerable<Metric> Turning() =>
    [
        new()
        {
            Drill = DrillCatalogue.Yaw, Topic = Topic.Turning, Name = "yaw_time_to_90_deg", Title = "time to swing the nose 90 deg", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.01, Weight = 0.7,
            Read = log => log.TimeTurned(Start, 2, Math.PI / 2),
            Say = s => $"{s.More} needs {s.Larger} milliseconds to swing its nose through a right angle, {s.Less} needs {s.Smaller}.",
        },
        new()
        {
            Drill = DrillCatalogue.Yaw, Topic = Topic.Turning, Name = "peak_yaw_acceleration", Title = "peak yaw acceleration", Unit = "rad/s2",
            Display = DegreesPerSecond2, Floor = 2, Weight = 0.5,
            Read = log => log.Largest(Start, sample => sample.AngularAcceleration_B.Z),
            Say = s => $"{s.More} starts to yaw with {s.Ratio} the acceleration of {s.Less}.",
        },
        new()
        {
            Drill = DrillCatalogue.Yaw, Topic = Topic.Turning, Name = "yaw_stop_time", Title = "time to stop the yaw", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = Milliseconds, Floor = 0.01, Weight = 0.5,
            Read = log => log.TimeBelow(YawRelease, 0.1 * log.At(YawRelease, YawRate), YawRate) - YawRelease,
            Say = s => $"Let go of the stick in a spin on the spot, and {s.More}'s nose swings on for {s.Larger} milliseconds, {s.Less}'s for {s.Smaller}.",
        },
    ];

    private static IEnumerable<Metric> Washing() =>
    [
        new()
        {
            // root mean square of roll and pitch rate together, none being asked for
            Drill = DrillCatalogue.Wash, Topic = Topic.Washing, Name = "wash_rate", Title = "shaking in its own wake", Unit = "rad/s",
            LoadsFrom = Metric.Never,
            Display = new("deg/s", 1 / Degree, 1), Floor = 2 * Degree, Weight = 0.5,
            Read = log => Math.Sqrt(log.Mean(Start, log.TimeOf(log.Samples.Count - 1), RollPitchRateSquared)),
            Say = s => $"Sinking through its own wake, {s.More} is shaken by {s.Larger} degrees a second and {s.Less} by {s.Smaller} (an estimate).",
        },
    ];

    private static IEnumerable<Metric> Hovering() =>
    [
        new()
        {
            Drill = DrillCatalogue.Hover, Topic = Topic.Hovering, Name = "hover_power", Title = "power to hover", Unit = "W",
            LoadsFrom = DrillCatalogue.Hover.Duration,
            Display = new("W", 1, 0), Floor = 1, Weight = 0.5,
            Instrument = true,
            Read = HoverPower,
            Say = s => $"Hovering takes {s.Larger} watts for {s.More} and {s.Smaller} watts for {s.Less}.",
        },
        new()
        {
            // from a full pack to a fifth of its charge (common practice), at the drill's power: Q/P times the integral of
            // the terminal voltage over the charge
            Drill = DrillCatalogue.Hover, Topic = Topic.Hovering, Name = "hover_endurance", Title = "hover time, full to 20 %", Unit = "s",
            LoadsFrom = DrillCatalogue.Hover.Duration,
            Display = new("min", 1.0 / 60, 1), Floor = 15, Weight = 0.8,
            Read = HoverEndurance,
            Say = s => $"From a full battery down to a fifth {s.More} hovers for {s.Larger} minutes and {s.Less} for {s.Smaller}.",
        },
        new()
        {
            Drill = DrillCatalogue.Hover, Topic = Topic.Hovering, Name = "hover_rotor_speed", Title = "rotor speed in hover, mean", Unit = "rad/s",
            LoadsFrom = Metric.Never,
            Display = new("rpm", 30 / Math.PI, 0), Floor = 10, Weight = 0,
            Instrument = true,
            Read = log => MeanOfRotors(log, sample => sample.State.RotorSpeeds),
            Say = s => $"In a hover {s.More}'s rotors turn at {s.Larger} revolutions a minute and {s.Less}'s at {s.Smaller}.",
        },
        new()
        {
            // time constant of a small change of speed at hover: J / (dQ/dw - d(motor torque)/dw)
            Drill = DrillCatalogue.Hover, Topic = Topic.Hovering, Name = "rotor_time_constant", Title = "rotor time constant in hover", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = new("ms", 1000, 1), Floor = 0.002, Weight = 0.4,
            Instrument = true,
            Read = log => log.Unit.Hover.TimeConstant,
            Say = s => $"{s.More}'s rotors take {s.Ratio} as long to change speed as {s.Less}'s.",
        },
        new()
        {
            Drill = DrillCatalogue.Hover, Topic = Topic.Hovering, Name = "torque_reserve_up", Title = "torque reserve up, mean per rotor", Unit = "N m",
            LoadsFrom = DrillCatalogue.Hover.Duration,
            Display = new("N m", 1, 3), Floor = 1e-4, Weight = 0.2,
            Instrument = true,
            Read = log => MeanOfRotors(log, sample => sample.ReserveUp),
            Say = s => $"In a hover {s.More}'s motors have {s.Ratio} the spare torque of {s.Less}'s.",
        },
        new()
        {
            Drill = DrillCatalogue.Hover, Topic = Topic.Hovering, Name = "torque_reserve_down", Title = "torque reserve down, mean per rotor", Unit = "N m",
            LoadsFrom = DrillCatalogue.Hover.Duration,
            Display = new("N m", 1, 3), Floor = 1e-4, Weight = 0.2,
            Instrument = true,
            Read = log => MeanOfRotors(log, sample => sample.ReserveDown),
            Say = s => $"In a hover {s.More}'s motors can brake with {s.Ratio} the torque of {s.Less}'s.",
        },
    ];

    private static double RollRate(LogRow sample) => sample.State.w_WB_B.X;

    private static double YawRate(LogRow sample) => sample.State.w_WB_B.Z;

    private static double CommandedRoll(FlightLog log) => log.Profile.RollPitch.Rate(log.Effort);

    private static double RollSettled(FlightLog log)
    {
        double wanted = CommandedRoll(log);
        for (int row = log.Samples.Count - 1; row > 0; row--)
        {
            if (Math.Abs(log.Samples[row].State.w_WB_B.X - wanted) > 0.1 * wanted)
                return row == log.Samples.Count - 1 ? double.NaN : log.TimeOf(row + 1) - Start;
        }
        return double.NaN;
    }

    private static double FlipTime(FlightLog log)
    {
        double late = Start + log.TimeTurned(Start, 1, 300 * Degree);
        return log.TimeBelow(late, 0.1 * log.Largest(Start, PitchRate), PitchRate) - Start;
    }

    private static double PitchRate(LogRow sample) => sample.State.w_WB_B.Y;

    private static double HoverPower(FlightLog log) => log.Samples[^1].PackVoltage * log.Samples[^1].PackCurrent;

    /// <summary>At the end of a log; rotors work unlike each other where the centre of gravity lies off their middle.</summary>
    private static double MeanOfRotors(FlightLog log, Func<LogRow, PerRotor> signal)
    {
        int rotors = log.Unit.Unit.Craft.Rotors.Count;
        PerRotor values = signal(log.Samples[^1]);
        double sum = 0;
        for (int k = 0; k < rotors; k++) sum += values[k];
        return sum / rotors;
    }

    private static double HoverEndurance(FlightLog log)
    {
        const double least = 0.2;
        const int slices = 80;
        BatteryConstants battery = log.Unit.Unit.Craft.Battery;
        double power = HoverPower(log), resistance = battery.SeriesResistance + battery.PairResistance, sum = 0;
        for (int n = 0; n < slices; n++)
        {
            double open = battery.OpenCircuitVoltageAt(least + ((1 - least) * (n + 0.5) / slices));
            sum += (open + Math.Sqrt(Math.Max(0, (open * open) - (4 * resistance * power)))) / 2;
        }
        return battery.Capacity * (1 - least) * sum / slices / power;
    }
}
