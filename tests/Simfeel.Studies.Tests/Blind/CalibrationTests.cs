using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

public class CalibrationTests
{
    private const int Voters = 400;

    private static readonly double[] Sizes = [3, 6, 12, 24];

    /// <summary>
    /// SciPy 1.10.1, run in the making of this test: minimize (Nelder-Mead) and, for the profiles, minimize_scalar over the slope in 0.5 to 10
    /// with brentq on half of chi2.ppf(0.95, 1), of the same likelihood written a second time.
    /// </summary>
    [Fact]
    public void Thresholds_and_intervals_are_those_of_SciPy()
    {
        BandCalibration calibration = BandCalibration.OfGroups(
        [
            new(1.0 / 3, 3, 24, 9), new(1.0 / 3, 6, 24, 12), new(1.0 / 3, 12, 24, 18), new(1.0 / 3, 24, 24, 23), new(0.5, 8, 20, 14), new(0.5, 16, 20, 18),
        ]);
        Assert.Equal(CalibrationOutcome.Found, calibration.Outcome);
        Assert.Equal((136, 6), (calibration.Votes, calibration.Sizes_Percent.Count));
        Assert.Equal(1.633026, calibration.Slope, 1e-4);
        Is(calibration.Perhaps!, 5.787415, 3.022246, 8.873869);
        Is(calibration.Felt!, 15.159730, 12.082916, 20.698345);
        Assert.Equal("5.8,15.2", calibration.Bands);
        Assert.Equal(
            ["Perhaps felt from 5.8 % (95 %: 3 to 8.9 %), felt from 15.2 % (95 %: 12.1 to 20.7 %)."],
            CalibrationSentences.Of(calibration));

        static void Is(FeelThreshold threshold, double size, double low, double high)
        {
            Assert.Equal(size, threshold.Size_Percent, 1e-3);
            Assert.Equal(low, threshold.Low_Percent, 1e-3);
            Assert.Equal(high, threshold.High_Percent, 1e-3);
        }
    }

    /// <summary>
    /// Voters whose bands are known: the 95 % intervals hold them in 95 % of logs, within what chance allows one time in a thousand,
    /// binom.ppf(0.001, 400, 0.95) = 365 by SciPy 1.10.1. Of 4000 voters each, 94.4 to 97.7 % were held.
    /// </summary>
    [Theory]
    [InlineData("triangle", 10, 2, 30)]
    [InlineData("pair", 10, 2, 40)]
    [InlineData("triangle", 6, 3.5, 30)]
    [InlineData("pair", 14, 1.2, 60)]
    public void Intervals_hold_the_truth_as_often_as_they_say(string kind, double alpha, double beta, int votes)
    {
        double perhaps = alpha * Math.Pow(Math.Log(4.0 / 3), 1 / beta), felt = alpha * Math.Pow(Math.Log(4), 1 / beta);
        int holdsPerhaps = 0, holdsFelt = 0, found = 0;
        Parallel.For(0, Voters, seed =>
        {
            BandCalibration calibration = BandCalibration.OfGroups(Votes(BlindTest.Parse(kind)!, votes, seed, x => 1 - Math.Exp(-Math.Pow(x / alpha, beta))));
            if (calibration.Perhaps is null || calibration.Felt is null) return;
            Interlocked.Increment(ref found);
            if (Holds(calibration.Perhaps, perhaps)) Interlocked.Increment(ref holdsPerhaps);
            if (Holds(calibration.Felt, felt)) Interlocked.Increment(ref holdsFelt);
        });
        Assert.InRange(found, Voters - 4, Voters);
        Assert.InRange(holdsPerhaps, 365, Voters);
        Assert.InRange(holdsFelt, 365, Voters);

        static bool Holds(FeelThreshold threshold, double size) => size >= threshold.Low_Percent && size <= threshold.High_Percent;
    }

    /// <summary>
    /// The most likely bands of many votes are the voter's own, through whole sessions. In pairs the voter says "same" when nothing is felt,
    /// and so is right in every same trial: the model of both kinds is one.
    /// </summary>
    [Theory]
    [InlineData("triangle")]
    [InlineData("pair")]
    public void Many_votes_give_the_bands_themselves(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        List<VoteGroup> groups = [];
        foreach (double size in Sizes)
        {
            Xoshiro256StarStar random = new((int)size);
            BlindSession session = new(test, 1000, 50, (int)size);
            while (!session.IsOver)
            {
                string order = SessionTests.FlyAll(session);
                bool feels = random.NextDouble() < 1 - Math.Exp(-Math.Pow(size / 10, 2));
                int guess = test == BlindTest.Pair ? 1 : 1 + random.Next(3);
                session.Vote(feels ? test.RightChoice(order) ?? guess : guess);
            }
            BlindResult result = BlindResult.Of(test, session.Reveal());
            groups.Add(new(test.Chance, size, result.Trials, result.Hits));
        }
        BandCalibration calibration = BandCalibration.OfGroups(groups);
        Assert.Equal(10 * Math.Sqrt(Math.Log(4.0 / 3)), calibration.Perhaps!.Size_Percent, 0.6);
        Assert.Equal(10 * Math.Sqrt(Math.Log(4)), calibration.Felt!.Size_Percent, 0.6);
        Assert.Equal(2, calibration.Slope, 0.25);
    }

    /// <summary>Guessers feel nothing, and at most one in twenty seems to: binom.ppf(0.999, 400, 0.05) = 35 of 400 by SciPy 1.10.1.</summary>
    [Theory]
    [InlineData("triangle", 10)]
    [InlineData("pair", 10)]
    [InlineData("triangle", 60)]
    [InlineData("pair", 60)]
    public void A_guesser_feels_nothing(string kind, int votes)
    {
        BandCalibration[] guessers = [.. Enumerable.Range(0, Voters).AsParallel().Select(seed => BandCalibration.OfGroups(Votes(BlindTest.Parse(kind)!, votes, seed, _ => 0)))];
        Assert.InRange(guessers.Count(guesser => guesser.Outcome != CalibrationOutcome.NothingFelt), 0, 35);
        BandCalibration one = guessers.First(guesser => guesser.Outcome == CalibrationOutcome.NothingFelt);
        Assert.Null(one.Bands);
        Assert.Null(one.Felt);
        Assert.StartsWith("Your votes do not differ from guessing, up to differences of 24 %", CalibrationSentences.Of(one)[0], StringComparison.Ordinal);
    }

    /// <summary>
    /// By hand: the upper ends lie where 20 right votes of 20 on the smallest size are just likely enough, P^20 = exp(-3.841/2), at the steepest
    /// slope allowed, which makes the larger sizes certain: P = 1 - (1 - c) exp(-h), h = ln(1/(1 - F)) (3/t)^10. 3.841: any table of chi-square.
    /// </summary>
    [Theory]
    [InlineData("triangle")]
    [InlineData("pair")]
    public void A_perfect_voter_gives_an_upper_end(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        BandCalibration calibration = BandCalibration.OfGroups(Votes(test, 20, 1, _ => 1));
        Assert.Equal(CalibrationOutcome.UpperEndOnly, calibration.Outcome);
        Assert.Equal(0, calibration.Felt!.Low_Percent);
        Assert.True(double.IsNaN(calibration.Felt.Size_Percent));
        double hazard = -Math.Log((1 - Math.Exp(-3.841 / 40)) / (1 - test.Chance));
        Assert.Equal(3 * Math.Pow(Math.Log(4) / hazard, 0.1), calibration.Felt.High_Percent, 1e-3);
        Assert.Equal(3 * Math.Pow(Math.Log(4.0 / 3) / hazard, 0.1), calibration.Perhaps!.High_Percent, 1e-3);
        Assert.Equal(FormattableString.Invariant($"{calibration.Perhaps.High_Percent:0.#},{calibration.Felt.High_Percent:0.#}"), calibration.Bands);
        Assert.StartsWith("You felt even the smallest difference, 3 %.", CalibrationSentences.Of(calibration)[0], StringComparison.Ordinal);
    }

    /// <summary>Right only on the largest difference: "felt" has no upper end, and what is beyond the votes is said to be so.</summary>
    [Fact]
    public void What_lies_beyond_the_votes_is_said()
    {
        BandCalibration calibration = BandCalibration.OfGroups([new(1.0 / 3, 3, 40, 13), new(1.0 / 3, 6, 40, 14), new(1.0 / 3, 12, 40, 25)]);
        Assert.Equal(CalibrationOutcome.Found, calibration.Outcome);
        Assert.True(calibration.Felt!.Size_Percent > 12);
        Assert.Contains(CalibrationSentences.Of(calibration), sentence => sentence.StartsWith("\"Felt\" lies beyond 12 %", StringComparison.Ordinal));
    }

    [Fact]
    public void Too_few_votes_say_what_is_missing()
    {
        BandCalibration few = BandCalibration.OfGroups([new(0.5, 5, 9, 9), new(0.5, 10, 10, 10)]);
        Assert.Equal(CalibrationOutcome.TooLittle, few.Outcome);
        Assert.Equal(["Feel bands need 20 real votes on known differences; there are 19."], CalibrationSentences.Of(few));
        Assert.NotEqual(CalibrationOutcome.TooLittle, BandCalibration.OfGroups([new(0.5, 5, 10, 10), new(0.5, 10, 10, 10)]).Outcome);
        BandCalibration one = BandCalibration.OfGroups([new(0.5, 5, 30, 30), new(0.5, 0, 30, 15)]);
        Assert.Equal(["Feel bands need 2 sizes of difference; all votes are on 5 %. Vote on another pair of builds."], CalibrationSentences.Of(one));
        Assert.Equal(2, CalibrationSentences.Of(BandCalibration.OfGroups([])).Count);
    }

    /// <summary>Controls say nothing of feeling, nor do votes on a difference that nobody computed; a sign only says which build is first.</summary>
    [Fact]
    public void Only_real_votes_on_known_differences_count()
    {
        VoteRow[] rows =
        [
            Row(5, true), Row(-5, false), Row(10, true), Row(5, true) with { Vote = new(1, true, "AA", "same", true) }, Row(double.NaN, true),
        ];
        Assert.Equal([new VoteGroup(0.5, 5, 2, 1), new VoteGroup(0.5, 10, 1, 1)], VoteGroup.Of(rows));
        Assert.Equal(3, BandCalibration.Of(VoteTally.Of(rows)).Votes);

        static VoteRow Row(double difference, bool right) => new(
            default, BlindTest.Pair, new(1, false, "AB", right ? "different" : "same", right), new("a", "b", "stop_time", difference, TuningPolicy.Matched, 0, ""));
    }

    /// <summary>Where controls were right far too often, something gave the craft away, and bands from those votes would be nonsense.</summary>
    [Fact]
    public void Votes_that_were_given_away_do_not_count()
    {
        List<VoteRow> rows = [];
        for (int n = 0; n < 10; n++)
        {
            Add("c", 5, false, true);
            Add("c", 10, false, true);
            Add("d", 5, false, true);
            Add("d", 5, true, n % 2 == 0);
            Add("c", 5, true, true);
        }
        IReadOnlyList<VoteTally> tallies = VoteTally.Of(rows);
        Assert.Equal(["a c", "a d"], tallies.Select(tally => $"{tally.BuildA} {tally.BuildB}"));
        Assert.Equal([BlindVerdict.GivenAway, BlindVerdict.Told], tallies.Select(tally => tally.Result.Verdict));
        Assert.Equal(10, BandCalibration.Of(tallies).Votes);

        void Add(string other, double difference, bool control, bool right)
        {
            // the same two builds in either order are one tally
            bool swap = rows.Count % 2 == 1 && rows.Count > 5;
            rows.Add(new(default, BlindTest.Pair, new(1, control, control ? "AA" : "AB", right ? "different" : "same", right),
                new(swap ? other : "a", swap ? "a" : other, "stop_time", difference, TuningPolicy.Matched, 0, "")));
        }
    }

    /// <summary>A voter who feels a difference of x percent with probability F(x) and guesses else.</summary>
    private static IReadOnlyList<VoteGroup> Votes(BlindTest test, int trials, int seed, Func<double, double> feels)
    {
        Xoshiro256StarStar random = new(seed);
        return [.. Sizes.Select(size => new VoteGroup(
            test.Chance, size, trials, Binomial.Sample(random, test.Chance + ((1 - test.Chance) * feels(size)), trials)))];
    }
}
