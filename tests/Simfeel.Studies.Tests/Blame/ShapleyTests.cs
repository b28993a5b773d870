using Simfeel.Studies.Blame;

namespace Simfeel.Studies.Tests.Blame;

public class ShapleyTests
{
    /// <summary>
    /// The glove game, a textbook case (M. J. Osborne, A. Rubinstein, A Course in Game Theory, 1994; from memory): one left and two right
    /// gloves, a pair is worth 1; the values are 2/3, 1/6, 1/6.
    /// </summary>
    [Fact]
    public void Glove_game_has_its_known_values()
    {
        // bit 0: the left glove, bits 1 and 2: right gloves
        double[] worth = [0, 0, 0, 1, 0, 1, 0, 1];
        double[] shares = Shapley.Shares(worth);
        Assert.Equal(2.0 / 3, shares[0], 15);
        Assert.Equal(1.0 / 6, shares[1], 15);
        Assert.Equal(1.0 / 6, shares[2], 15);
    }

    /// <summary>v = 3 x + 5 y + 2 x y + 4 x y z by hand: a product is shared in equal parts by its factors.</summary>
    [Fact]
    public void Interactions_are_shared_in_equal_parts()
    {
        double[] worth = [.. Enumerable.Range(0, 8).Select(set =>
        {
            double x = set & 1, y = (set >> 1) & 1, z = (set >> 2) & 1;
            return 7 + (3 * x) + (5 * y) + (2 * x * y) + (4 * x * y * z);
        })];
        double[] shares = Shapley.Shares(worth);
        Assert.Equal(3 + 1 + (4.0 / 3), shares[0], 12);
        Assert.Equal(5 + 1 + (4.0 / 3), shares[1], 12);
        Assert.Equal(4.0 / 3, shares[2], 12);
        Assert.Equal(worth[^1] - worth[0], shares.Sum(), 12);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(9)]
    public void Random_games_keep_the_axioms(int players)
    {
        Random random = new(players);
        double[] worth = [.. Enumerable.Range(0, 1 << players).Select(_ => random.NextDouble())];
        // the last player changes nothing in any set
        int idle = 1 << (players - 1);
        for (int set = 0; set < worth.Length; set++) worth[set | idle] = worth[set];
        double[] shares = Shapley.Shares(worth);
        Assert.Equal(0, shares[^1]);
        Assert.Equal(worth[^1] - worth[0], shares.Sum(), 12);
        // the same game told from the other end
        double[] back = Shapley.Shares([.. worth.Select((_, set) => worth[worth.Length - 1 - set])]);
        for (int n = 0; n < players; n++) Assert.Equal(-shares[n], back[n], 12);
    }

    [Fact]
    public void Sets_that_are_no_power_of_two_are_refused() => Assert.Throws<ArgumentException>(() => Shapley.Shares([1, 2, 3]));
}
