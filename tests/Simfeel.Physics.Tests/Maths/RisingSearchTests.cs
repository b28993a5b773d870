using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Maths;

public class RisingSearchTests
{
    /// <summary>The cube root of 2 from a table, a root hard by an end, and a cube's flat one are all pinned to a few roundings.</summary>
    [Fact]
    public void Roots_are_found_to_rounding()
    {
        Check(1.259921049894873, 0, 2, x => (x * x * x) - 2);
        Check(1e-3, 0, 1e3, x => x - 1e-3);
        Check(0.7, 0, 1, x => (x - 0.7) * (x - 0.7) * (x - 0.7));
        Check(999.999, 0, 1e3, x => Math.Exp(x - 999.999) - 1);
    }

    /// <summary>A function without a finite value above a limit is halved up to it, whether it passes 0 below the limit or jumps there.</summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.61)]
    public void An_infinite_side_is_no_hindrance(double root)
    {
        double limit = 0.6;
        Check(Math.Min(root, limit), 0, 10, x => x > limit ? double.PositiveInfinity : x - root);
    }

    [Fact]
    public void Without_a_root_the_end_it_lies_beyond_is_kept()
    {
        Assert.Equal(3, RisingSearch.Enclose(x => x - 4, 0, 3).Above);
        Assert.Equal(3, RisingSearch.Enclose(x => x - 4, 0, 3).Below, 1e-12);
        Assert.Equal(0, RisingSearch.Enclose(x => x + 1, 0, 3).Below);
    }

    private static void Check(double root, double low, double high, Func<double, double> function)
    {
        int calls = 0;
        (double below, double above) = RisingSearch.Enclose(Counted, low, high);
        Assert.Equal(root, below, 4e-15 * root);
        Assert.Equal(root, above, 4e-15 * root);
        Assert.True(below < above && function(below) <= 0 && function(above) > 0);
        Assert.True(calls <= 100);

        double Counted(double x)
        {
            calls++;
            return function(x);
        }
    }
}
