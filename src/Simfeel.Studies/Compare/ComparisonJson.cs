using Simfeel.Flight;

namespace Simfeel.Studies.Compare;

/// <summary>Parts of a comparison for machines, in SI units, as the command line and the feel sheet both write them.</summary>
public static class ComparisonJson
{
    /// <summary>One metric of both builds; keys may be added.</summary>
    public static Dictionary<string, object?> Metric(MetricPair pair) => new()
    {
        ["drill"] = pair.Metric.Drill.Name,
        ["name"] = pair.Metric.Name,
        ["unit"] = pair.Metric.Unit,
        ["a"] = pair.A,
        ["b"] = pair.B,
        ["difference"] = pair.Difference,
        ["difference_percent"] = pair.DifferencePercent,
        ["floor"] = pair.Metric.Floor,
        ["feel"] = FeelBands.Word(pair.Feel),
    };

    /// <summary>What the tuning of one build reached.</summary>
    public static Dictionary<string, object?> Tuning(TunedUnit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return new()
        {
            ["roll_crossover_rad_s"] = unit.Roll.Crossover,
            ["yaw_crossover_rad_s"] = unit.Yaw.Crossover,
            ["roll_phase_margin_rad"] = unit.Roll.PhaseMargin,
            ["yaw_phase_margin_rad"] = unit.Yaw.PhaseMargin,
            ["roll_gain_margin"] = unit.Roll.GainMargin,
            ["yaw_gain_margin"] = unit.Yaw.GainMargin,
        };
    }

    /// <summary>Every delay between thumb and motor, s.</summary>
    public static Dictionary<string, object?> Delays(Comparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return new()
        {
            ["stick_reading"] = comparison.Profile.StickPeriod,
            ["thumb_centre_to_full"] = comparison.Profile.ThumbTime,
            ["radio"] = comparison.Profile.RadioDelay,
            ["control_loop"] = comparison.Profile.LoopPeriod,
            ["speed_controller_a"] = comparison.A.Unit.CommandDelay,
            ["speed_controller_b"] = comparison.B.Unit.CommandDelay,
        };
    }
}
