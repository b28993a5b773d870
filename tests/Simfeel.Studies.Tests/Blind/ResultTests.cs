using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

public class ResultTests
{
    [Theory]
    [InlineData(12, 9, 0, 0, BlindVerdict.Told, "9 of 12 right; guessing gives that or better in 0.4 % of tries: you can tell them apart.")]
    [InlineData(12, 5, 4, 1, BlindVerdict.NotShown, "5 of 12 right; guessing does as well in 37 % of tries: not shown that you can tell them apart. Of 12, 8 right would show it.")]
    [InlineData(2, 2, 0, 0, BlindVerdict.NotShown, "2 of 2 right; guessing does as well in 11 % of tries: not shown that you can tell them apart. 2 can show nothing, not even all right: fly 3 at least.")]
    [InlineData(12, 12, 6, 6, BlindVerdict.GivenAway, "12 of 12 right, but the controls say that something other than flying gave the craft away: this does not count.")]
    [InlineData(0, 0, 3, 1, BlindVerdict.NoVotes, "No real trial was voted on.")]
    [InlineData(12, 0, 0, 0, BlindVerdict.NotShown, "0 of 12 right; guessing does as well in 100 % of tries: not shown that you can tell them apart. Of 12, 8 right would show it.")]
    public void A_triangle_is_said_in_plain_words(int trials, int hits, int controls, int controlHits, BlindVerdict verdict, string words)
    {
        BlindResult result = new(BlindTest.Triangle, trials, hits, controls, controlHits);
        Assert.Equal(verdict, result.Verdict);
        Assert.Equal(words, BlindSentences.Of(result));
    }

    [Fact]
    public void Controls_are_said_apart()
    {
        Assert.Equal("", BlindSentences.OfControls(new(BlindTest.Pair, 10, 9, 0, 0)));
        Assert.Equal(
            "Controls, one build in every flight: 2 of 4 right; luck does as well in 69 % of tries, as it should.",
            BlindSentences.OfControls(new(BlindTest.Pair, 10, 9, 4, 2)));
        Assert.Equal(
            "Controls, one build in every flight: 8 of 8 right, by luck in only 0.4 % of tries.",
            BlindSentences.OfControls(new(BlindTest.Pair, 10, 9, 8, 8)));
    }

    [Fact]
    public void A_plan_is_said_before_the_first_flight()
    {
        Assert.Equal("Of 12, 8 right would show it. A pilot who is right 8 times in 10 is noticed in 80 % of tries from 9 trials on.", BlindSentences.Plan(BlindTest.Triangle, 12));
        Assert.StartsWith("4 can show nothing, not even all right: fly 5 at least.", BlindSentences.Plan(BlindTest.Pair, 4), StringComparison.Ordinal);
    }

    /// <summary>Abbott: of 18 right in 24 triangles, (3/4 - 1/3)/(2/3) = 5/8 were not guessed; fewer right than by chance is none.</summary>
    [Fact]
    public void Guesses_are_taken_off()
    {
        BlindResult result = new(BlindTest.Triangle, 24, 18, 0, 0);
        Assert.Equal(0.625, result.AboveChance, 12);
        Assert.Equal(1.5 * (result.ShareInterval.Low - (1.0 / 3)), result.AboveChanceInterval.Low, 12);
        Assert.Equal(0, new BlindResult(BlindTest.Pair, 24, 10, 0, 0).AboveChance);
        Assert.Equal(1, new BlindResult(BlindTest.Pair, 24, 24, 0, 0).AboveChanceInterval.High);
    }

    [Fact]
    public void Real_trials_and_controls_are_counted_apart()
    {
        BlindResult result = BlindResult.Of(BlindTest.Pair,
        [
            new(1, false, "AB", "different", true), new(2, false, "AA", "different", false), new(3, true, "BB", "same", true), new(4, true, "AA", "same", false),
            new(5, false, "BA", "different", true),
        ]);
        Assert.Equal(new(BlindTest.Pair, 3, 2, 2, 1), result);
    }

    [Theory]
    [InlineData(0.37, "37 %")]
    [InlineData(0.0995, "10 %")]
    [InlineData(0.0994, "9.9 %")]
    [InlineData(0.0009, "less than 0.1 %")]
    [InlineData(0.996, "more than 99 %")]
    public void Probabilities_are_rounded_so_that_none_seems_certain(double probability, string words) =>
        Assert.Equal(words, BlindSentences.Percent(probability));
}
