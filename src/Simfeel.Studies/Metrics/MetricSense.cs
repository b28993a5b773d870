namespace Simfeel.Studies.Metrics;

/// <summary>Which way a metric is better, as far as one can say.</summary>
public enum Sense
{
    /// <summary>Less is better: times to stop, height lost.</summary>
    Less,

    /// <summary>More is better: climb, acceleration, endurance.</summary>
    More,

    /// <summary>A matter of taste or a reading.</summary>
    Neither,
}

/// <summary>Which way each metric is better. Our judgement, for freestyle flying.</summary>
public static class MetricSense
{
    private static readonly HashSet<string> More =
    [
        "climb_in_1_s", "thrust_to_weight", "peak_roll_acceleration", "peak_yaw_acceleration", "hover_endurance",
        "torque_reserve_up", "torque_reserve_down",
        "dash_speed", "specific_range", "roll_bandwidth", "yaw_bandwidth", "roll_quickness",
    ];

    private static readonly HashSet<string> Less =
    [
        "catch_time", "catch_height", "time_to_15_m_s", "climb_pack_current", "roll_rise_time", "time_to_360_deg", "stop_time",
        "bounce_back", "flip_height_lost", "flip_time", "yaw_time_to_90_deg", "yaw_stop_time", "wash_rate", "hover_power",
        "rotor_time_constant", "roll_overshoot", "roll_settling_time", "dash_time_to_15_m_s", "brake_time", "brake_distance", "turn_time",
        "turn_height_change", "slalom_time", "slalom_miss", "slalom_stick_work", "cruise_power", "roll_phase_delay",
    ];

    private static readonly HashSet<string> Taste = ["fall_in_1_s", "settled_fall_speed", "rotor_drag_share", "hover_rotor_speed", "turn_radius"];

    /// <summary>Which way a metric is better.</summary>
    public static Sense Of(Metric metric)
    {
        ArgumentNullException.ThrowIfNull(metric);
        return More.Contains(metric.Name) ? Sense.More : Less.Contains(metric.Name) ? Sense.Less : Sense.Neither;
    }

    /// <summary>Whether somebody has judged the metric; a test asks this of all.</summary>
    public static bool Judges(Metric metric)
    {
        ArgumentNullException.ThrowIfNull(metric);
        return More.Contains(metric.Name) || Less.Contains(metric.Name) || Taste.Contains(metric.Name);
    }
}
