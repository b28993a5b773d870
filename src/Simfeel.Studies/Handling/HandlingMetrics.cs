using System.Runtime.CompilerServices;
using Simfeel.Flight;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Handling;

/// <summary>
/// Handling qualities as metrics, by the definitions of <see cref="BandwidthCriterion"/> and <see cref="AttitudeQuickness"/>.
/// NaN where the reading is in doubt; see <see cref="HandlingReading.Doubt"/>.
/// </summary>
public static class HandlingMetrics
{
    /// <summary>Attitude change over which <c>roll_quickness</c> is read, rad.</summary>
    public const double QuicknessAngle = Math.PI / 3;

    /// <summary>
    /// Share of that angle by which the change may miss it: quickness falls with the angle, so that changes over different
    /// angles do not compare. Our choice.
    /// </summary>
    public const double AngleTolerance = 0.2;

    private static readonly DisplayUnit RadiansPerSecond = new("rad/s", 1, 1);
    private static readonly Drill RollChange = HandlingDrills.AttitudeChange(HandlingAxis.Roll, QuicknessAngle, new PilotProfile());

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Metric> All { get; } =
    [
        new()
        {
            Drill = HandlingDrills.Chirp(HandlingAxis.Roll), Topic = Topic.Rolling, Name = "roll_bandwidth", Title = "roll bandwidth", Unit = "rad/s",
            LoadsFrom = Metric.Never,
            Display = RadiansPerSecond, Floor = 1, Weight = 0.6,
            Read = log => Swept(log, HandlingAxis.Roll, criterion => criterion.Bandwidth),
            Say = s => $"{s.More} follows small, quick corrections of the roll stick up to {s.Larger} radians a second, {s.Less} up to {s.Smaller}.",
        },
        new()
        {
            Drill = HandlingDrills.Chirp(HandlingAxis.Roll), Topic = Topic.Rolling, Name = "roll_phase_delay", Title = "roll phase delay", Unit = "s",
            LoadsFrom = Metric.Never,
            Display = new("ms", 1000, 1), Floor = 0.003, Weight = 0.3, Instrument = true,
            Read = log => Swept(log, HandlingAxis.Roll, criterion => criterion.PhaseDelay),
            Say = s => $"Past its bandwidth {s.More} trails the roll stick by {s.Larger} milliseconds and {s.Less} by {s.Smaller}.",
        },
        new()
        {
            Drill = HandlingDrills.Chirp(HandlingAxis.Yaw), Topic = Topic.Turning, Name = "yaw_bandwidth", Title = "yaw bandwidth", Unit = "rad/s",
            LoadsFrom = Metric.Never,
            Display = RadiansPerSecond, Floor = 1, Weight = 0.5,
            Read = log => Swept(log, HandlingAxis.Yaw, criterion => criterion.Bandwidth),
            Say = s => $"{s.More}'s nose follows small, quick corrections of the yaw stick up to {s.Larger} radians a second, {s.Less}'s up to {s.Smaller}.",
        },
        new()
        {
            Drill = RollChange, Topic = Topic.Rolling, Name = "roll_quickness", Title = "roll quickness over 60 deg", Unit = "1/s",
            LoadsFrom = Metric.Never,
            Display = new("1/s", 1, 1), Floor = 0.5, Weight = 0.6,
            Read = Quickness,
            Say = s => $"Thrown over by 60 degrees and stopped, {s.More} has {s.Ratio} the quickness of {s.Less}: peak rate by angle, {s.Larger} against {s.Smaller} a second.",
        },
    ];

    /// <summary>Two metrics are read from one sweep, and its spectra are most of the work.</summary>
    private static readonly ConditionalWeakTable<FlightLog, HandlingReading> Readings = [];

    private static double Swept(FlightLog log, HandlingAxis axis, Func<BandwidthCriterion, double> value)
    {
        HandlingReading reading = Readings.GetValue(log, swept => HandlingReading.Of(swept, axis));
        return reading.Doubt.Length > 0 ? double.NaN : value(reading.Bandwidth);
    }

    private static double Quickness(FlightLog log)
    {
        AttitudeQuickness change = HandlingFlight.Quickness(log, HandlingAxis.Roll);
        return Math.Abs(change.LeastChange - QuicknessAngle) <= AngleTolerance * QuicknessAngle ? change.Quickness : double.NaN;
    }
}
