using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

public class BinomialTests
{
    /// <summary>SciPy 1.10.1, run in the making of this test: binomtest(k, n, c, alternative='greater').pvalue and proportion_ci(0.95, 'exact').</summary>
    [Theory]
    [InlineData(9, 12, 3, 0.0038555549910526277, 0.42814153812190026, 0.9451393554720076)]
    [InlineData(5, 12, 3, 0.36847928556509574, 0.15165222980843474, 0.7233303143178942)]
    [InlineData(0, 12, 3, 1.0, 0.0, 0.26464846939705117)]
    [InlineData(12, 12, 3, 1.8816764231589195e-06, 0.7353515306029488, 1.0)]
    [InlineData(17, 30, 3, 0.007222841304449024, 0.37427345060921996, 0.7453924500967393)]
    [InlineData(8, 10, 2, 0.0546875, 0.4439045376923585, 0.9747892736731665)]
    [InlineData(14, 20, 2, 0.057659149169921875, 0.4572108177235281, 0.8810684095942724)]
    [InlineData(60, 100, 2, 0.02844396682049044, 0.49720915042233343, 0.6967052312971551)]
    [InlineData(400, 1000, 3, 5.9882778700410086e-06, 0.3694689875489111, 0.43112155404406866)]
    public void Tail_and_interval_are_those_of_SciPy(int hits, int trials, int choices, double tail, double low, double high)
    {
        Assert.Equal(1, BinomialTest.UpperTail(hits, trials, 1.0 / choices) / tail, 1e-9);
        (double from, double to) = BinomialTest.ClopperPearson(hits, trials);
        Assert.Equal(low, from, 1e-7);
        Assert.Equal(high, to, 1e-7);
    }

    /// <summary>
    /// Fewest right answers of a triangle test at 5 %: the table printed in appendix A of the FAO's manual on the assessment of
    /// sensory quality of fish (document V7180E), the same test as that of ISO 4120.
    /// </summary>
    [Theory]
    [InlineData(3, "3 4 4 5 5 6 6 7 7 8 8 9 9 9 10 10 11 11 12 12 12 13 13 14 14 15 15 15 16 16 17 17 17 18", 1)]
    [InlineData(36, "18 20 22 25 27 29 32 34 36 38 41", 6)]
    public void Right_votes_needed_in_a_triangle_are_those_of_the_printed_table(int first, string needed, int step)
    {
        int[] table = [.. needed.Split(' ').Select(int.Parse)];
        Assert.Equal(table, table.Select((_, n) => BlindPower.NeededRight(BlindTest.Triangle, first + (n * step))!.Value));
        Assert.Null(BlindPower.NeededRight(BlindTest.Triangle, 2));
    }

    /// <summary>SciPy 1.10.1: smallest k with binom.sf(k - 1, n, 1/2) at most 0.05, for n from 5 on; below 5 there is none.</summary>
    [Fact]
    public void Right_votes_needed_in_pairs_are_those_of_SciPy()
    {
        int[] table = [5, 6, 7, 7, 8, 9, 9, 10, 10, 11, 12, 12, 13, 13, 14, 15, 15, 16, 16, 17, 18, 18, 19, 19, 20, 20];
        Assert.Equal(table, table.Select((_, n) => BlindPower.NeededRight(BlindTest.Pair, 5 + n)!.Value));
        Assert.All(Enumerable.Range(0, 5), n => Assert.Null(BlindPower.NeededRight(BlindTest.Pair, n)));
    }

    /// <summary>SciPy 1.10.1: the last n whose power binom.sf(k - 1, n, 0.8) is under 0.8, and one more.</summary>
    [Fact]
    public void Trials_needed_lie_behind_the_last_tooth()
    {
        Assert.Equal(9, BlindPower.TrialsNeeded(BlindTest.Triangle));
        Assert.Equal(18, BlindPower.TrialsNeeded(BlindTest.Pair));
        Assert.Equal(0.92744450048, BlindPower.Power(BlindTest.Triangle, 12, 0.8), 1e-9);
        Assert.Equal(0.8042077854595495, BlindPower.Power(BlindTest.Pair, 20, 0.8), 1e-9);
        // seven are enough and eight are not: the teeth
        Assert.True(BlindPower.Power(BlindTest.Triangle, 7, 0.8) >= 0.8);
        Assert.True(BlindPower.Power(BlindTest.Triangle, 8, 0.8) < 0.8);
        Assert.Null(BlindPower.TrialsNeeded(BlindTest.Pair, 0.51));
    }

    [Fact]
    public void Nonsense_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialTest.UpperTail(3, 2, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => BinomialTest.ClopperPearson(-1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindPower.TrialsNeeded(BlindTest.Pair, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => BlindPower.TrialsNeeded(BlindTest.Pair, 0.8, 1));
    }
}
