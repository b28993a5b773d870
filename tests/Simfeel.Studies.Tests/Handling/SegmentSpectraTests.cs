using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using Simfeel.Studies.Handling;

namespace Simfeel.Studies.Tests.Handling;

public class SegmentSpectraTests
{
    private const double Period = 0.001;

    /// <summary>
    /// Response and coherence are those of MathNet's fast Fourier transform of whole segments under a Hann window, joined by straight
    /// lines, at frequencies that each length of segment serves.
    /// </summary>
    [Theory]
    [InlineData(8, 0)]
    [InlineData(4, 15)]
    [InlineData(2, 45)]
    [InlineData(1, 110)]
    public void Lines_are_those_of_a_fast_transform(int length, double above)
    {
        (double[] input, double[] output) = Record();
        FrequencyResponse response = ChirpIdentification.Identify(input, output, Period, 4, 700, integrate: false);
        int first = response.Frequencies.TakeWhile(w => w < above).Count();
        for (int n = first; n < first + 15; n += 7)
        {
            (Complex expected, double coherence) = ByTransform(input, output, length * 1000, response.Frequencies[n]);
            Assert.True((response.Values[n] - expected).Magnitude < 1e-9 * expected.Magnitude, $"{response.Values[n]}, not {expected}");
            Assert.Equal(coherence, response.Coherence![n], 1e-9);
            Assert.InRange(coherence, 0.05, 0.999);
        }
    }

    /// <summary>Noise, and the same through a slow filter with other noise on it.</summary>
    private static (double[] Input, double[] Output) Record()
    {
        Random random = new(7);
        double[] input = new double[11_234], output = new double[input.Length];
        double filtered = 0;
        for (int n = 0; n < input.Length; n++)
        {
            input[n] = random.NextDouble() - 0.5;
            filtered += 0.1 * (input[n] - filtered);
            output[n] = filtered + (0.1 * (random.NextDouble() - 0.5));
        }
        return (input, output);
    }

    private static (Complex Response, double Coherence) ByTransform(double[] input, double[] output, int window, double frequency)
    {
        int size = 1;
        while (size < 4 * window) size *= 2;
        double line = frequency * size * Period / Math.Tau;
        int n = (int)line;
        double share = line - n, xx = 0, yy = 0;
        Complex xy = 0;
        for (int start = -window * 3 / 4; start < input.Length; start += window / 4)
        {
            Complex[] x = Transform(input, start), y = Transform(output, start);
            foreach ((int at, double weight) in new[] { (n, 1 - share), (n + 1, share) })
            {
                xx += weight * x[at].Magnitude * x[at].Magnitude;
                yy += weight * y[at].Magnitude * y[at].Magnitude;
                xy += weight * Complex.Conjugate(x[at]) * y[at];
            }
        }
        return (xy / xx, xy.Magnitude * xy.Magnitude / (xx * yy));

        Complex[] Transform(double[] signal, int start)
        {
            Complex[] segment = new Complex[size];
            for (int k = Math.Max(0, -start); k < window && start + k < signal.Length; k++)
                segment[k] = (0.5 - (0.5 * Math.Cos(Math.Tau * k / window))) * signal[start + k];
            Fourier.Forward(segment, FourierOptions.NoScaling);
            return segment;
        }
    }
}
