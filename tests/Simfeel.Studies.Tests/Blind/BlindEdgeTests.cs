using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

/// <summary>Edges of what blind flights are counted and searched by.</summary>
public class BlindEdgeTests
{
    [Fact]
    public void A_number_of_trials_below_none_is_refused_and_none_can_show_nothing()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindPower.NeededRight(BlindTest.Pair, -1));
        Assert.Null(BlindPower.NeededRight(BlindTest.Pair, 0));
        Assert.Equal(0, BlindPower.Power(BlindTest.Pair, 4, 0.99));
        foreach ((double share, double power) in new (double, double)[] { (1, 0.8), (0.4, 0.8), (double.NaN, 0.8), (0.8, 0), (0.8, double.NaN) })
            Assert.Throws<ArgumentOutOfRangeException>(() => BlindPower.TrialsNeeded(BlindTest.Pair, share, power));
    }

    /// <summary>Two of two right in a triangle happen in 1/9 of tries, three of three in 1/27.</summary>
    [Fact]
    public void Power_is_the_chance_of_as_many_right_as_needed() => Assert.Equal(0.9 * 0.9 * 0.9, BlindPower.Power(BlindTest.Triangle, 3, 0.9), 12);

    /// <summary>Parabolas have their top where they say, at the ends as well; of two hills the higher is found.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-2)]
    public void A_grid_search_finds_the_top(double top)
    {
        (double at, double value) = GridSearch.Maximum(x => 7 - ((x - top) * (x - top)), 0, 1, 5);
        double best = Math.Clamp(top, 0, 1);
        Assert.Equal(best, at, 2e-6);
        Assert.Equal(7 - ((best - top) * (best - top)), value, 1e-9);
        (double hill, _) = GridSearch.Maximum(x => Math.Max(1 - (20 * Math.Abs(x - 0.2)), 2 - (20 * Math.Abs(x - 0.9))), 0, 1, 21);
        Assert.Equal(0.9, hill, 2e-6);
    }

    /// <summary>The first grid has as many points as asked for, ends included, and nothing beyond the ends is looked at.</summary>
    [Fact]
    public void A_grid_search_keeps_to_its_interval_and_its_points()
    {
        List<double> seen = [];
        GridSearch.Maximum(
            x =>
            {
                seen.Add(x);
                return -x;
            },
            2, 4, 5);
        Assert.Equal([2, 2.5, 3, 3.5, 4], seen.Take(5));
        // then nine about the top, a grid's distance either way
        Assert.Equal(2, seen[5]);
        Assert.Equal(2.5, seen[13]);
        Assert.All(seen, x => Assert.InRange(x, 2, 4));
    }

    [Fact]
    public void A_sealed_trial_shows_its_state_alone()
    {
        SealedTrial trial = new("ABA", control: false, right: 2);
        Assert.Equal("open trial", trial.ToString());
        Assert.Equal([0, 1], new[] { trial.TakeOff(1), trial.TakeOff(2) });
        Assert.False(trial.AllFlown);
        Assert.Equal(0, trial.TakeOff(3));
        Assert.True(trial.AllFlown);
        Assert.False(trial.IsClosed);
        trial.Close();
        Assert.Equal((true, "closed trial"), (trial.IsClosed, trial.ToString()));
    }
}
