using Simfeel.Physics.Maths;

namespace Simfeel.Studies.Fit;

/// <summary>What a fit found, in plain sentences.</summary>
public static class FitSentences
{
    /// <summary>The result in words: propeller, motor, and what it means at the strongest row.</summary>
    public static IReadOnlyList<string> Of(StandFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        List<string> sentences = [];
        FittedConstant thrust = fit.Constant("propeller.thrust_factor"), torque = fit.Constant("propeller.torque_factor");
        if (thrust.Determined && torque.Determined)
            sentences.Add($"Your propeller {Lifts(thrust)} and {Needs(torque)}.");
        else if (thrust.Determined)
            sentences.Add($"Your propeller {Lifts(thrust)}; how much torque it needs, the table does not tell.");
        else if (torque.Determined)
            sentences.Add($"Your propeller {Needs(torque)}; how much it lifts, the table does not tell.");
        FittedConstant kv = fit.Constant("motor.kv_rpm_per_V");
        if (kv.Determined)
        {
            sentences.Add(Math.Abs(kv.Value - kv.Before) <= 2 * kv.RelativeSigma * kv.Value
                ? $"The motor has the KV that the build says, {kv.Before:F0} rpm/V, within what the table can tell."
                : $"The motor has a KV of {kv.Value:F0} rpm/V, not {kv.Before:F0}.");
        }
        if (Strongest(fit) is string strongest) sentences.Add(strongest);
        if (sentences.Count == 0) sentences.Add("The table tells nothing of the propeller or the KV.");
        return sentences;
    }

    private static string Lifts(FittedConstant thrust) => Changed(thrust) switch
    {
        > 0.5 and double more => $"lifts {more:F0} % more than the model thought",
        < -0.5 and double less => $"lifts {-less:F0} % less than the model thought",
        _ => "lifts what the model thought",
    };

    private static string Needs(FittedConstant torque) => Changed(torque) switch
    {
        > 0.5 and double more => $"needs {more:F0} % more torque at the same speed",
        < -0.5 and double less => $"needs {-less:F0} % less torque at the same speed",
        _ => "needs the torque that the model thought",
    };

    private static double Changed(FittedConstant constant) => 100 * ((constant.Value / constant.Before) - 1);

    /// <summary>The row with most thrust, as the build had it and as it has it now.</summary>
    private static string? Strongest(StandFit fit)
    {
        // full throttle is full duty with any controller
        StandRow? row = fit.Rows.Where(r => r.Thrust > 0 && r.Speed > 0 && r.Voltage > 0 && r.Throttle > (fit.ThrottleIsDuty ? 0.5 : 0.995)).MaxBy(r => r.Thrust);
        if (row is null) return null;
        StandModel before = new(fit.Before);
        StandModel after = new(Builds.BuildAssembler.Assemble(fit.After, fit.Before.Air));
        (double was, double wasCurrent) = At(before);
        (double now, double nowCurrent) = At(after);
        return $"At {100 * row.Throttle:F0} % throttle and {row.Voltage:F1} V the build now lifts {now / TradeUnits.GramForce:F0} gf at {nowCurrent:F1} A; before it was {was / TradeUnits.GramForce:F0} gf at {wasCurrent:F1} A.";

        (double Thrust, double Current) At(StandModel model)
        {
            double speed = model.SpeedAt(row.Throttle * row.Voltage);
            (double lift, double torque) = model.Air(speed);
            return (lift, model.Power(model.CurrentFor(torque, speed), speed) / row.Voltage);
        }
    }
}
