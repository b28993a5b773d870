using System.Numerics;
using Simfeel.Studies.Handling;

namespace Simfeel.Studies.Tests.Handling;

/// <summary>Reading a response whose gain is a power of the frequency and whose phase is a line over its logarithm.</summary>
public class FrequencyResponseTests
{
    private static readonly double[] Frequencies = [1, 2, 4, 8];

    /// <summary>Gain w^-2, phase -(pi / 2) - (pi / 4) log2 w: a whole turn is passed between 4 and 8.</summary>
    private static readonly FrequencyResponse Power = new(
        Frequencies, [.. Frequencies.Select(w => Complex.FromPolarCoordinates(Math.Pow(w, -2), Math.PI * (-0.5 - (0.25 * Math.Log2(w)))))], [0.9, 0.5, 0.7, 0.2]);

    [Theory]
    [InlineData(1)]
    [InlineData(1.3)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(7.9)]
    [InlineData(8)]
    public void Between_its_frequencies_a_power_is_a_straight_line(double w)
    {
        Assert.Equal(1, Power.GainAt(w) * w * w, 1e-12);
        Assert.Equal(Math.PI * (-0.5 - (0.25 * Math.Log2(w))), Power.PhaseAt(w), 1e-12);
    }

    [Theory]
    [InlineData(0.99)]
    [InlineData(8.01)]
    [InlineData(double.NaN)]
    public void Outside_there_is_nothing(double w) => Assert.True(double.IsNaN(Power.GainAt(w)) && double.IsNaN(Power.PhaseAt(w)));

    [Fact]
    public void Crossings_lie_on_the_lines()
    {
        Assert.Equal(4, Power.FirstPhaseCrossing(-Math.PI), 1e-9);
        Assert.Equal(Math.Sqrt(8), Power.PhaseCrossing(-0.875 * Math.PI, double.PositiveInfinity), 1e-9);
        Assert.Equal(3, Power.GainCrossing(1.0 / 9, double.PositiveInfinity), 1e-9);
        Assert.True(double.IsNaN(Power.FirstPhaseCrossing(-2 * Math.PI)) && double.IsNaN(Power.FirstPhaseCrossing(0)));
        // beyond the limit it does not count
        Assert.True(double.IsNaN(Power.PhaseCrossing(-1.1 * Math.PI, 4)));
        Assert.Equal(Math.Pow(2, 2.4), Power.PhaseCrossing(-1.1 * Math.PI, 4.1), 1e-9);
    }

    /// <summary>A phase that falls through a level twice: the first time counts for -180 degrees, the last one for the margins.</summary>
    [Fact]
    public void Of_several_crossings_the_first_or_the_last_counts()
    {
        double[] phase = [-1, -2, -1, -2, -1.8];
        FrequencyResponse waves = new([1, 2, 3, 4, 5], [.. phase.Select(p => Complex.FromPolarCoordinates(1, p))]);
        Assert.Equal(Math.Sqrt(2), waves.FirstPhaseCrossing(-1.5), 1e-9);
        Assert.Equal(Math.Sqrt(12), waves.PhaseCrossing(-1.5, double.PositiveInfinity), 1e-9);
        Assert.Equal(Math.Sqrt(2), waves.PhaseCrossing(-1.5, 2.5), 1e-9);
    }

    /// <summary>A craft lags its stick: a phase of +135 degrees at the first frequency is one of -225.</summary>
    [Fact]
    public void The_first_phase_is_a_lag()
    {
        Assert.Equal(-1.25 * Math.PI, First(0.75 * Math.PI), 1e-12);
        Assert.Equal(0.45 * Math.PI, First(0.45 * Math.PI), 1e-12);
        Assert.Equal(-0.9 * Math.PI, First(-0.9 * Math.PI), 1e-12);

        static double First(double phase) =>
            new FrequencyResponse([1, 2], [Complex.FromPolarCoordinates(1, phase), Complex.One]).Phase[0];
    }

    [Fact]
    public void The_least_coherence_is_that_of_a_range_with_its_ends()
    {
        Assert.Equal(0.5, Power.LeastCoherence(2, 4));
        Assert.Equal(0.7, Power.LeastCoherence(2.1, 4));
        Assert.Equal(0.2, Power.LeastCoherence(4, 8));
        Assert.Equal(0.9, Power.LeastCoherence(0, 1));
        Assert.True(double.IsNaN(Power.LeastCoherence(5, 6)));
        Assert.True(double.IsNaN(new FrequencyResponse([1, 2], [1, 1]).LeastCoherence(1, 2)));
    }

    [Fact]
    public void What_is_no_response_is_refused()
    {
        Refused([1], [1]);
        Refused([1, 2], [1, 1, 1]);
        Refused([1, 2], [1, 1], [1]);
        Refused([2, 1], [1, 1]);
        Refused([1, 1], [1, 1]);
        Refused([0, 1], [1, 1]);
        Refused([1, double.NaN], [1, 1]);

        static void Refused(double[] frequencies, Complex[] values, double[]? coherence = null) =>
            Assert.Throws<ArgumentException>(() => new FrequencyResponse(frequencies, values, coherence));
    }
}
