using System.Collections.Immutable;
using Simfeel.Physics.Rotors;

namespace Simfeel.Physics.Tests.Rotors;

/// <summary>Tables that reach round the trailing edge, and their equality.</summary>
public class TabulatedPolarTests
{
    /// <summary>Angles in degrees: the whole turn; all but 4, 16 and 60 degrees of it, some off centre.</summary>
    public static TheoryData<double, double> Ranges => new() { { -180, 180 }, { -178, 178 }, { -175, 169 }, { -90, 95 }, { -150, 150 } };

    /// <summary>Round the whole turn and across its end nothing jumps, however little the table leaves open.</summary>
    [Theory]
    [MemberData(nameof(Ranges))]
    public void Nothing_jumps_round_the_turn(double first, double last)
    {
        TabulatedPolar polar = Wave(first, last);
        const int steps = 36000;
        SectionCoefficients before = polar.At(-Math.PI, 5e4, 0);
        for (int i = 1; i <= steps; i++)
        {
            SectionCoefficients c = polar.At(Math.Min(-Math.PI + (2 * Math.PI * i / steps), Math.PI), 5e4, 0);
            Assert.InRange(Math.Abs(c.Lift - before.Lift), 0, 0.02);
            Assert.InRange(Math.Abs(c.Drag - before.Drag), 0, 0.02);
            before = c;
        }
        Assert.Equal(polar.At(-Math.PI, 5e4, 0).Lift, polar.At(Math.PI, 5e4, 0).Lift, 1e-9);
        Assert.Equal(polar.At(-Math.PI, 5e4, 0).Drag, polar.At(Math.PI, 5e4, 0).Drag, 1e-9);
    }

    [Fact]
    public void Inside_the_table_counts_and_in_a_wide_gap_the_plate()
    {
        TabulatedPolar polar = Wave(-90, 95);
        Assert.Equal(Math.Sin(2 * Specimens.Radians(90)) + 0.2, polar.At(Specimens.Radians(90), 5e4, 0).Lift, 1e-9);
        Assert.Equal(FlatPlate.At(Specimens.Radians(110), 0.1), polar.At(Specimens.Radians(110), 5e4, 0));
        Assert.Equal(FlatPlate.At(Specimens.Radians(-110), 0.1), polar.At(Specimens.Radians(-110), 5e4, 0));
    }

    [Fact]
    public void Tables_of_equal_numbers_are_equal()
    {
        TabulatedPolar one = Wave(-90, 95), same = Wave(-90, 95);
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, Wave(-90, 90));
        ImmutableArray<double> lift = [0, 1], other = [0, 1.1];
        TabulatedPolar plain = new([0, 0.1], [1e5], [lift], [lift]);
        Assert.NotEqual(plain, new TabulatedPolar([0, 0.1], [1e5], [lift], [other]));
        Assert.NotEqual(plain, new TabulatedPolar([0, 0.1], [2e5], [lift], [lift]));
        Assert.Equal(new(1, 1), plain.Node(0, 1));
    }

    [Fact]
    public void More_than_a_turn_is_refused()
    {
        ImmutableArray<double> two = [0, 1];
        Assert.Throws<ArgumentException>(() => new TabulatedPolar([-3.2, 0], [1e5], [two], [two]));
        Assert.Throws<ArgumentException>(() => new TabulatedPolar([0, 3.2], [1e5], [two], [two]));
    }

    /// <summary>Lift sin 2a + 0.2 and drag 1.1 - cos 2a in steps of a degree.</summary>
    private static TabulatedPolar Wave(double first, double last)
    {
        double[] angles = [.. Enumerable.Range(0, (int)(last - first) + 1).Select(i => Specimens.Radians(first + i))];
        ImmutableArray<double> lift = [.. angles.Select(a => Math.Sin(2 * a) + 0.2)], drag = [.. angles.Select(a => 1.1 - Math.Cos(2 * a))];
        return new(angles, [5e4], [lift], [drag]);
    }
}
