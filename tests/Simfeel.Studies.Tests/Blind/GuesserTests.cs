using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

/// <summary>Ten thousand pilots who guess, all with seeds: what they get right is binomial, and what they were given is uniform.</summary>
public class GuesserTests
{
    private const int Guessers = 10_000, Trials = 12, Controls = 4;

    public static TheoryData<string> Kinds => [.. BlindTest.All.Select(test => test.Word)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Guessers_hit_as_the_binomial_distribution_says(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        (int[] hits, int[] controlHits) = Fly(test, Peeking(test, 0));
        Assert.InRange(ChiSquare(hits, Trials, test.Chance, out double critical), 0, critical);
        Assert.InRange(ChiSquare(controlHits, Controls, test.Chance, out critical), 0, critical);
    }

    /// <summary>The check above can fail: who sees the truth of one trial in fifty is caught. Controls hide it: there is no truth to see.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Guessers_who_peek_are_caught(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        (int[] hits, int[] controlHits) = Fly(test, Peeking(test, 0.02));
        Assert.True(ChiSquare(hits, Trials, test.Chance, out double critical) > critical);
        Assert.InRange(ChiSquare(controlHits, Controls, test.Chance, out critical), 0, critical);
    }

    /// <summary>A pilot who sees every craft is right in every real trial and gets controls by luck still.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Even_a_perfect_pilot_gets_controls_by_luck(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        (int[] hits, int[] controlHits) = Fly(test, Peeking(test, 1));
        Assert.Equal(Guessers, hits[Trials]);
        Assert.InRange(ChiSquare(controlHits, Controls, test.Chance, out double critical), 0, critical);
    }

    /// <summary>A pilot who always votes the same is right in a balanced share of the real trials, exactly, and by luck in controls.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void One_vote_for_everything_gains_nothing(string kind)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        for (int choice = 1; choice <= test.Choices.Count; choice++)
        {
            (int[] hits, int[] controlHits) = Fly(test, (_, _) => choice);
            Assert.Equal(Guessers, hits[Trials / test.Choices.Count]);
            Assert.InRange(ChiSquare(controlHits, Controls, test.Chance, out double critical), 0, critical);
        }
    }

    [Theory]
    [InlineData("triangle", 6)]
    [InlineData("pair", 4)]
    public void Orders_are_uniform(string kind, int orders)
    {
        BlindTest test = BlindTest.Parse(kind)!;
        Dictionary<string, int> first = [], only = [];
        for (int seed = 0; seed < Guessers; seed++)
        {
            Count(first, SessionTests.FlyAll(new(test, Trials, 0, seed)));
            Count(only, SessionTests.FlyAll(new(test, 1, 0, seed)));
        }
        foreach (Dictionary<string, int> counts in (Dictionary<string, int>[])[first, only])
        {
            Assert.Equal(orders, counts.Count);
            double expected = (double)Guessers / orders;
            Assert.InRange(counts.Values.Sum(count => (count - expected) * (count - expected) / expected), 0, ChiSquared.InvCDF(orders - 1, 0.999));
        }

        static void Count(Dictionary<string, int> counts, string order) => counts[order] = counts.GetValueOrDefault(order) + 1;
    }

    /// <summary>A pilot who guesses, but for a share of the trials sees which craft flew.</summary>
    private static Func<Random, string, int> Peeking(BlindTest test, double share) => (random, order) =>
    {
        int guess = 1 + random.Next(test.Choices.Count);
        return random.NextDouble() < share ? test.RightChoice(order) ?? guess : guess;
    };

    /// <summary>How many sessions had how many right, real trials and controls.</summary>
    private static (int[] Hits, int[] ControlHits) Fly(BlindTest test, Func<Random, string, int> voter)
    {
        int[] hits = new int[Trials + 1], controlHits = new int[Controls + 1];
        for (int seed = 0; seed < Guessers; seed++)
        {
            BlindSession session = new(test, Trials, Controls, seed);
            Xoshiro256StarStar votes = new(1_000_000 + seed);
            while (!session.IsOver)
            {
                session.Vote(voter(votes, SessionTests.FlyAll(session)));
            }
            BlindResult result = BlindResult.Of(test, session.Reveal());
            Assert.Equal((Trials, Controls), (result.Trials, result.Controls));
            hits[result.Hits]++;
            controlHits[result.ControlHits]++;
        }
        return (hits, controlHits);
    }

    /// <summary>Pearson's statistic against the exact binomial, bins of fewer than 5 put together, and its critical value at 1e-3.</summary>
    private static double ChiSquare(int[] counts, int trials, double chance, out double critical)
    {
        double statistic = 0, expected = 0;
        int seen = 0, bins = 0;
        for (int k = 0; k <= trials; k++)
        {
            expected += Guessers * Binomial.PMF(chance, trials, k);
            seen += counts[k];
            double rest = k < trials ? Guessers * (1 - Binomial.CDF(chance, trials, k)) : double.PositiveInfinity;
            if (k < trials && (expected < 5 || rest < 5)) continue;
            statistic += (seen - expected) * (seen - expected) / expected;
            (expected, seen) = (0, 0);
            bins++;
        }
        critical = ChiSquared.InvCDF(bins - 1, 0.999);
        return statistic;
    }
}
