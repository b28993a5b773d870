using Simfeel.Builds;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Blind;
using Spectre.Console;

namespace Simfeel.CommandLine.Output;

/// <summary>Votes of blind flights for people and for machines.</summary>
internal static class VotesOutput
{
    /// <summary>Prints tables and sentences.</summary>
    public static void Print(string path, VoteLogContent log, IReadOnlyList<VoteTally> tallies, BandCalibration calibration)
    {
        foreach (Diagnostic remark in log.Remarks) Console.Error.WriteLine(remark);
        if (log.Rows.Count == 0)
        {
            Console.WriteLine($"{path} holds no votes yet.");
            return;
        }
        Console.WriteLine($"{Count(log.Rows.Count, "vote")} in {path}, {log.Rows.Min(row => row.Date):yyyy-MM-dd} to {log.Rows.Max(row => row.Date):yyyy-MM-dd}.");
        Console.WriteLine();
        PrintTable(tallies);
        foreach (VoteTally tally in tallies)
        {
            Console.WriteLine($"{tally.BuildA} and {tally.BuildB}, {tally.Result.Test}: {BlindSentences.Of(tally.Result)}");
            if (tally.Result.Controls > 0) Console.WriteLine(BlindSentences.OfControls(tally.Result));
        }
        Console.WriteLine();
        Console.WriteLine($"Feel bands, from {Count(calibration.Votes, "real vote")} on {Count(calibration.Sizes_Percent.Count, "size")} of difference:");
        foreach (string sentence in CalibrationSentences.Of(calibration)) Console.WriteLine(sentence);
        VoteTally[] believed = [.. tallies.Where(tally => tally.Result.Verdict != BlindVerdict.GivenAway)];
        if (believed.Length < tallies.Count) Console.WriteLine("Votes in which the craft was given away are left out.");
        if (Mixed(believed.SelectMany(tally => tally.Rows)) is { Length: > 0 } mixed) Console.WriteLine($"These votes are put together though they differ in {mixed}.");
        if (calibration.Bands is string bands) Console.WriteLine($"To use them: ./simfeel compare A B --bands {bands}");
    }

    /// <summary>Prints JSON.</summary>
    public static void PrintJson(string path, VoteLogContent log, IReadOnlyList<VoteTally> tallies, BandCalibration calibration) => JsonOutput.Print(new()
    {
        ["file"] = path,
        ["votes"] = log.Rows.Count,
        ["remarks"] = log.Remarks.Select(ErrorReport.Describe).ToList(),
        ["results"] = tallies.Select(Json).ToList(),
        ["calibration"] = Json(calibration),
    });

    private static void PrintTable(IReadOnlyList<VoteTally> tallies)
    {
        Table table = Tables.New("builds", "test", "right", "of", "chance %", "right %", "95 % interval", "by guessing", "not guessed %", "controls right");
        table.Columns[1].Alignment = Justify.Left;
        foreach (VoteTally tally in tallies)
        {
            BlindResult result = tally.Result;
            table.AddRow(
                Markup.Escape($"{tally.BuildA}, {tally.BuildB}"), result.Test.Word, $"{result.Hits}", $"{result.Trials}", Percent(result.Test.Chance),
                Percent(result.Share), $"{Percent(result.ShareInterval.Low)} to {Percent(result.ShareInterval.High)}", BlindSentences.Percent(result.ByGuessing),
                Percent(result.AboveChance), result.Controls == 0 ? "" : $"{result.ControlHits} of {result.Controls}");
        }
        Tables.Print(table);
    }

    private static Dictionary<string, object?> Json(VoteTally tally)
    {
        BlindResult result = tally.Result;
        return new()
        {
            ["a"] = tally.BuildA,
            ["b"] = tally.BuildB,
            ["kind"] = result.Test.Word,
            ["verdict"] = result.Verdict switch
            {
                BlindVerdict.Told => "told_apart",
                BlindVerdict.NotShown => "not_shown",
                BlindVerdict.GivenAway => "given_away",
                _ => "no_votes",
            },
            ["chance"] = result.Test.Chance,
            ["trials"] = result.Trials,
            ["right"] = result.Hits,
            ["share_right"] = result.Share,
            ["share_right_95"] = (double[])[result.ShareInterval.Low, result.ShareInterval.High],
            ["p_by_guessing"] = result.ByGuessing,
            ["share_not_guessed"] = result.AboveChance,
            ["share_not_guessed_95"] = (double[])[result.AboveChanceInterval.Low, result.AboveChanceInterval.High],
            ["right_needed"] = BlindPower.NeededRight(result.Test, result.Trials),
            ["control_trials"] = result.Controls,
            ["control_right"] = result.ControlHits,
            ["control_p_by_luck"] = result.ControlsByLuck,
        };
    }

    private static Dictionary<string, object?> Json(BandCalibration calibration) => new()
    {
        ["outcome"] = calibration.Outcome switch
        {
            CalibrationOutcome.Found => "found",
            CalibrationOutcome.UpperEndOnly => "upper_end_only",
            CalibrationOutcome.NothingFelt => "nothing_felt",
            _ => "too_little",
        },
        ["votes"] = calibration.Votes,
        ["sizes_percent"] = calibration.Sizes_Percent,
        ["perhaps_from_percent"] = Json(calibration.Perhaps),
        ["felt_from_percent"] = Json(calibration.Felt),
        ["slope"] = calibration.Slope,
        ["bands"] = calibration.Bands,
        ["words"] = CalibrationSentences.Of(calibration),
    };

    private static Dictionary<string, object?>? Json(FeelThreshold? threshold) => threshold is null ? null : new()
    {
        ["size"] = threshold.Size_Percent,
        ["low_95"] = threshold.Low_Percent,
        ["high_95"] = threshold.High_Percent,
    };

    /// <summary>In what else than the size of the difference the votes differ.</summary>
    private static string Mixed(IEnumerable<VoteRow> rows)
    {
        VoteRow[] real = [.. rows.Where(row => !row.Vote.Control && !double.IsNaN(row.Subject.Difference_Percent))];
        string[] kinds =
        [
            .. Several("metric", real.Select(row => row.Subject.Metric)),
            .. Several("policy", real.Select(row => TuningPolicies.Word(row.Subject.Policy))),
            .. Several("video delay", real.Select(row => $"{row.Subject.VideoDelay_ms:0.#} ms")),
        ];
        return string.Join(", ", kinds);

        static IEnumerable<string> Several(string what, IEnumerable<string> values)
        {
            string[] all = [.. values.Distinct()];
            if (all.Length > 1) yield return $"{what} ({string.Join(", ", all)})";
        }
    }

    private static string Percent(double share) => double.IsNaN(share) ? "" : $"{100 * share:F0}";

    private static string Count(int number, string what) => $"{number} {what}{(number == 1 ? "" : "s")}";
}
