using Simfeel.Physics.Air;
using Simfeel.Physics.Maths;

namespace Simfeel.Physics.Tests.Air;

/// <summary>Gusts against MIL-F-8785C (1980), 3.7.3: worked values of its formulas, and the published spectra by averaging.</summary>
public class DrydenGustsTests
{
    private const double Foot = 0.3048, Height = 20 * Foot, Speed = 15;

    // worked out from L_u = h / (0.177 + 0.000823 h)^1.2 and sigma_u = 0.1 u20 / (0.177 + 0.000823 h)^0.4 at 20, 200 and 1000 ft;
    // at 1000 ft both tend to 1000 ft and 0.1 u20, where the low-altitude model meets the one for higher up
    [Theory]
    [InlineData(20, 143.589, 1.9291)]
    [InlineData(200, 725.786, 1.5367)]
    [InlineData(1000, 1000, 1)]
    public void Lengths_and_strengths_are_those_of_the_standard(double feet, double length_ft, double ratio)
    {
        (double along, double up) = DrydenGusts.Lengths(feet * Foot);
        Assert.Equal(length_ft, along / Foot, length_ft * 1e-5);
        Assert.Equal(feet, up / Foot, 1e-9);
        (double strong, double vertical) = DrydenGusts.Deviations(Speed, feet * Foot);
        Assert.Equal(0.1 * Speed, vertical, 1e-12);
        Assert.Equal(ratio, strong / vertical, 1e-4);
    }

    [Fact]
    public void The_mean_wind_is_as_stated_at_twenty_feet_and_grows_with_the_logarithm_of_height()
    {
        Assert.Equal(7, DrydenGusts.MeanAt(7, 20 * Foot), 1e-12);
        // ln(200 / 0.15) / ln(20 / 0.15) = 7.1954 / 4.8929
        Assert.Equal(7 * 1.4706, DrydenGusts.MeanAt(7, 200 * Foot), 0.001);
        Assert.Equal(0, DrydenGusts.MeanAt(0, 50));
    }

    [Fact]
    public void Variance_and_spectrum_are_those_of_the_standard()
    {
        // 16 hours at 50 Hz for a craft that holds its place, in pieces of 82 s
        const double period = 0.02;
        const int piece = 4096, pieces = 700;
        (double length, double depth) = DrydenGusts.Lengths(Height);
        (double strong, double up) = DrydenGusts.Deviations(Speed, Height);
        double[] frequencies = [0.3, 0.8, 2, 6];
        Tone[] tones = [.. frequencies.Select(frequency => new Tone(frequency, piece, period))];
        double[,] power = new double[3, frequencies.Length];
        double[] variance = new double[3], mean = new double[3];
        double[][] record = [new double[piece], new double[piece], new double[piece]];
        DrydenGusts gusts = default;
        long count = 0;
        for (int p = 0; p < pieces; p++)
        {
            for (int n = 0; n < piece; n++)
            {
                Vec3 wind = gusts.Next(new(Speed, 0), Height, Vec3.Zero, 5, count++, period);
                (record[0][n], record[1][n], record[2][n]) = (wind.X + Speed, wind.Y, wind.Z);
            }
            for (int axis = 0; axis < 3; axis++)
            {
                foreach (double gust in record[axis])
                {
                    mean[axis] += gust / (piece * (double)pieces);
                    variance[axis] += gust * gust / (piece * (double)pieces);
                }
                for (int f = 0; f < frequencies.Length; f++) power[axis, f] += tones[f].Density(record[axis]) / pieces;
            }
        }
        double[] deviations = [strong, strong, up], lengths = [length, length, depth];
        for (int axis = 0; axis < 3; axis++)
        {
            Assert.Equal(0, mean[axis], 0.03 * deviations[axis]);
            Assert.Equal(1, variance[axis] / (deviations[axis] * deviations[axis]), 0.05);
            for (int f = 0; f < frequencies.Length; f++)
            {
                double l = lengths[axis] * frequencies[f] / Speed, spread = deviations[axis] * deviations[axis] * lengths[axis] / (Math.PI * Speed);
                double published = axis == 0 ? 2 * spread / (1 + (l * l)) : spread * (1 + (3 * l * l)) / Math.Pow(1 + (l * l), 2);
                Assert.Equal(1, power[axis, f] / published, 0.15);
            }
        }
    }

    [Fact]
    public void The_same_numbers_blow_again_and_nothing_blows_without_wind()
    {
        DrydenGusts first = default, second = default, other = default, still = default;
        for (int n = 0; n < 500; n++)
        {
            Vec3 wind = first.Next(new(6, 1), 3 + (0.01 * n), new(n, 0, 0), 9, n, 0.001);
            Assert.Equal(wind, second.Next(new(6, 1), 3 + (0.01 * n), new(n, 0, 0), 9, n, 0.001));
            Assert.NotEqual(wind, other.Next(new(6, 1), 3 + (0.01 * n), new(n, 0, 0), 10, n, 0.001));
            Assert.Equal(0, still.Next(default, 3, Vec3.Zero, 9, n, 0.001).Length);
        }
    }

    [Fact]
    public void It_comes_from_where_it_is_said_to()
    {
        DrydenGusts gusts = default;
        Vec3 sum = Vec3.Zero;
        for (int n = 0; n < 200_000; n++) sum += gusts.Next(new(10, Math.PI / 2), Height, Vec3.Zero, 1, n, 0.05) / 200_000;
        Assert.Equal(-10, sum.Y, 0.3);
        Assert.Equal(0, sum.X, 0.3);
    }

    /// <summary>A frequency (rad/s) to look at in records of a length, with a Hann window.</summary>
    private sealed class Tone
    {
        private readonly double[] _cos, _sin;
        private readonly double _scale;

        public Tone(double frequency, int length, double period)
        {
            double[] window = [.. Enumerable.Range(0, length).Select(n => 0.5 * (1 - Math.Cos(Math.Tau * n / length)))];
            _cos = [.. window.Select((w, n) => w * Math.Cos(frequency * period * n))];
            _sin = [.. window.Select((w, n) => w * Math.Sin(frequency * period * n))];
            _scale = period / (Math.PI * window.Sum(w => w * w));
        }

        /// <summary>One-sided spectral density over rad/s.</summary>
        public double Density(double[] record)
        {
            double re = 0, im = 0;
            for (int n = 0; n < record.Length; n++)
            {
                re += _cos[n] * record[n];
                im += _sin[n] * record[n];
            }
            return _scale * ((re * re) + (im * im));
        }
    }
}
