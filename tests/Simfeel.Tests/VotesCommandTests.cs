using System.Text.Json;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Blind;
using Simfeel.Tests.Documents;

namespace Simfeel.Tests;

/// <summary><c>votes</c> as users run it, on logs that simulated pilots left through the real session and log.</summary>
public sealed class VotesCommandTests : IDisposable
{
    private readonly TempFolder _folder = new();

    private string Log => _folder.File("votes.csv");

    public void Dispose() => _folder.Dispose();

    /// <summary>SIMFEEL_APPROVE=1 writes them anew.</summary>
    [Fact]
    public void The_votes_that_come_along_are_those_of_the_simulated_pilot()
    {
        SimulatedVotes.Write(Log);
        string kept = SourceTree.FullPath(SimulatedVotes.File);
        if (Environment.GetEnvironmentVariable("SIMFEEL_APPROVE") == "1") File.Copy(Log, kept, true);
        // line ends are git's affair in the tree
        Assert.Equal(File.ReadAllLines(kept), File.ReadAllLines(Log));
    }

    /// <summary>Who sees the big difference and guesses at the small one gets bands between the two, which compare takes.</summary>
    [Fact]
    public void Votes_are_set_against_chance_and_give_bands()
    {
        Fly(BlindTest.Triangle, "Curlew", 45.6, sees: true);
        Fly(BlindTest.Pair, "Pipit [x]", 4, sees: false);
        CliResult result = Cli.Run("votes", Log);
        Assert.Equal("", result.Errors);
        Assert.Equal(0, result.ExitCode);
        Assert.StartsWith("60 votes in ", result.Output, StringComparison.Ordinal);
        Assert.Contains("Wagtail and Curlew, triangle: 24 of 24 right; guessing gives that or better in less than 0.1 % of tries: you can tell them apart.", result.Output, StringComparison.Ordinal);
        Assert.Contains("Wagtail and Pipit [x], pair: 12 of 24 right; guessing does as well in 58 % of tries: not shown that you can tell them apart.", result.Output, StringComparison.Ordinal);
        Assert.Contains("Controls, one build in every flight: ", result.Output, StringComparison.Ordinal);

        JsonElement root = JsonDocument.Parse(Cli.Run("votes", Log, "--json").Output).RootElement;
        Assert.Equal(60, root.GetProperty("votes").GetInt32());
        JsonElement told = root.GetProperty("results")[0];
        Assert.Equal("told_apart", told.GetProperty("verdict").GetString());
        Assert.Equal((24, 24, 6), (told.GetProperty("trials").GetInt32(), told.GetProperty("right").GetInt32(), told.GetProperty("control_trials").GetInt32()));
        Assert.Equal("not_shown", root.GetProperty("results")[1].GetProperty("verdict").GetString());
        JsonElement calibration = root.GetProperty("calibration");
        string bands = calibration.GetProperty("bands").GetString()!;
        Assert.Contains($"./simfeel compare A B --bands {bands}", result.Output, StringComparison.Ordinal);
        double[] ends = [.. bands.Split(',').Select(double.Parse)];
        Assert.True(ends[0] > 4 && ends[0] <= ends[1] && ends[1] < 45.6, bands);
        // compare understands the value: it goes on to look for the builds
        Assert.DoesNotContain("--bands", Cli.Run("compare", "none.toml", "none.toml", "--bands", bands).Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_torn_line_is_remarked_on_and_a_wrong_one_named()
    {
        Fly(BlindTest.Pair, "Curlew", 45.6, sees: true);
        string whole = File.ReadAllText(Log);
        File.AppendAllText(Log, "2026-05-02T18:30:00+02:00,pair,3,no,Wag");
        CliResult torn = Cli.Run("votes", Log);
        Assert.Equal(0, torn.ExitCode);
        Assert.Contains("votes.csv:32: warning: The line was cut short", torn.Errors, StringComparison.Ordinal);
        Assert.StartsWith("30 votes in ", torn.Output, StringComparison.Ordinal);

        File.WriteAllText(Log, whole.Replace(",matched,", ",fair,", StringComparison.Ordinal));
        CliResult wrong = Cli.Run("votes", Log);
        Assert.Equal(1, wrong.ExitCode);
        Assert.Equal("", wrong.Output);
        Assert.Equal(30, wrong.Errors.TrimEnd().Split('\n').Length);
        Assert.Contains("error: policy = fair: It must be matched, same-gains, limit, bare.", wrong.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_that_is_not_there_or_empty_is_said()
    {
        CliResult missing = Cli.Run("votes", Log);
        Assert.Equal(1, missing.ExitCode);
        Assert.Contains("There is no such file.", missing.Errors, StringComparison.Ordinal);
        Fly(BlindTest.Pair, "Curlew", 45.6, sees: true);
        File.WriteAllText(Log, File.ReadLines(Log).First() + "\r\n");
        CliResult empty = Cli.Run("votes", Log);
        Assert.Equal(0, empty.ExitCode);
        Assert.EndsWith("holds no votes yet.\n", empty.Output, StringComparison.Ordinal);
        Assert.Equal("too_little", JsonDocument.Parse(Cli.Run("votes", Log, "--json").Output).RootElement.GetProperty("calibration").GetProperty("outcome").GetString());
    }

    /// <summary>A session of 24 trials and 6 controls, logged vote by vote; a pilot who does not see always votes 1.</summary>
    private void Fly(BlindTest test, string other, double difference, bool sees)
    {
        BlindSession session = new(test, 24, 6, seed: 11);
        VoteLog log = new(Log);
        while (!session.IsOver)
        {
            int[] builds = [.. Enumerable.Range(1, test.Flights).Select(flight => session.Select(flight).TakeOff())];
            int choice = !sees ? 1 : test == BlindTest.Pair ? 1 + Math.Abs(builds[0] - builds[1]) : 1 + Math.Max(0, Array.FindIndex(builds, build => builds.Count(b => b == build) == 1));
            log.Append(session.Vote(choice), new("Wagtail", other, "stop_time", difference, TuningPolicy.Matched, 0, "0.1.0"), DateTimeOffset.UnixEpoch.AddDays(20000));
        }
    }
}
