namespace Simfeel.Studies.Blind;

/// <summary>A calibration of feel bands in plain words.</summary>
public static class CalibrationSentences
{
    /// <summary>What the votes say, one sentence after the other.</summary>
    public static IReadOnlyList<string> Of(BandCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return calibration.Outcome switch
        {
            CalibrationOutcome.TooLittle => Missing(calibration),
            CalibrationOutcome.NothingFelt =>
            [
                $"Your votes do not differ from guessing, up to differences of {Largest(calibration):0.##} %: not shown that you feel any of them.",
                "There is no band to give. Vote on builds that differ more.",
            ],
            CalibrationOutcome.UpperEndOnly =>
            [
                $"You felt even the smallest difference, {calibration.Sizes_Percent[0]:0.##} %. So the bands lie lower, and only their upper ends (95 %) are known:",
                $"perhaps felt from at most {calibration.Perhaps!.High_Percent:0.#} %, felt from at most {calibration.Felt!.High_Percent:0.#} %. Vote on builds that differ less.",
            ],
            _ =>
            [
                $"Perhaps felt from {Size(calibration.Perhaps!)}, felt from {Size(calibration.Felt!)}.",
                .. Beyond(calibration),
            ],
        };
    }

    private static string Size(FeelThreshold threshold) => double.IsInfinity(threshold.High_Percent)
        ? $"{threshold.Size_Percent:0.#} % (95 %: {threshold.Low_Percent:0.#} % or more, no upper end)"
        : $"{threshold.Size_Percent:0.#} % (95 %: {threshold.Low_Percent:0.#} to {threshold.High_Percent:0.#} %)";

    private static List<string> Missing(BandCalibration calibration)
    {
        List<string> missing = [];
        if (calibration.Votes < BandCalibration.LeastVotes)
            missing.Add($"Feel bands need {BandCalibration.LeastVotes} real votes on known differences; there are {calibration.Votes}.");
        if (calibration.Sizes_Percent.Count < BandCalibration.LeastSizes)
            missing.Add($"Feel bands need {BandCalibration.LeastSizes} sizes of difference; {(calibration.Sizes_Percent.Count == 0 ? "there is none" : $"all votes are on {Largest(calibration):0.##} %")}. Vote on another pair of builds.");
        return missing;
    }

    /// <summary>Thresholds that lie outside of what was voted on rest on the curve alone.</summary>
    private static IEnumerable<string> Beyond(BandCalibration calibration)
    {
        double smallest = calibration.Sizes_Percent[0], largest = Largest(calibration);
        if (calibration.Felt!.Size_Percent > largest)
            yield return $"\"Felt\" lies beyond {largest:0.##} %, the largest difference voted on: that end rests on the shape of the curve. Vote on builds that differ more.";
        if (calibration.Perhaps!.Size_Percent < smallest)
            yield return $"\"Perhaps\" lies below {smallest:0.##} %, the smallest difference voted on: that end rests on the shape of the curve. Vote on builds that differ less.";
    }

    private static double Largest(BandCalibration calibration) => calibration.Sizes_Percent[^1];
}
