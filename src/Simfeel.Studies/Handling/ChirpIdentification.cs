using System.Numerics;
using MathNet.Numerics.IntegralTransforms;

namespace Simfeel.Studies.Handling;

/// <summary>
/// Frequency response from a sweep: H1 = Gxy/Gxx and ordinary coherence |Gxy|^2/(Gxx Gyy) over overlapped segments under a
/// Hann window (Bendat and Piersol, Random Data, chapters 5, 6 and 11). Segments are long at low frequencies, for
/// resolution, and short at high ones, for many of them.
/// </summary>
public static class ChirpIdentification
{
    /// <summary>Frequencies a decade in the result.</summary>
    public const int PerDecade = 60;

    /// <summary>Lengths of the segments, s, and the frequency up to which each serves, rad/s. Our choice.</summary>
    private static readonly (double Length, double UpTo)[] Segments = [(8, 15), (4, 45), (2, 110), (1, double.PositiveInfinity)];

    /// <summary>Identifies the response of an attitude.</summary>
    /// <param name="input">Command at each row; at rest (0) at both ends.</param>
    /// <param name="output">Attitude (rad), or its rate (rad/s) where <paramref name="integrate"/> says so; at rest at both ends.</param>
    /// <param name="period">Time between rows, s.</param>
    /// <param name="from">Lowest frequency wanted, rad/s: no lower than the sweep's.</param>
    /// <param name="to">Highest, rad/s.</param>
    /// <param name="integrate">
    /// The output is a rate: it is divided by j omega, since an attitude that wanders away would leak over the whole spectrum.
    /// </param>
    /// <exception cref="ArgumentException">Lengths differ, the record is shorter than a second, or the range is none.</exception>
    public static FrequencyResponse Identify(double[] input, double[] output, double period, double from, double to, bool integrate)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(output);
        if (input.Length != output.Length) throw new ArgumentException("Input and output have the same rows.", nameof(output));
        if (!(input.Length * period >= 1)) throw new ArgumentException("A sweep is at least a second long.", nameof(input));
        double[] grid = Grid(from, to, period);
        Complex[] values = new Complex[grid.Length];
        double[] coherence = new double[grid.Length];
        int done = 0;
        foreach ((double length, double upTo) in Segments)
        {
            int end = done;
            while (end < grid.Length && grid[end] < upTo) end++;
            if (end == done) continue;
            Spectra spectra = Spectra.Of(input, output, period, length);
            for (; done < end; done++)
            {
                (Complex response, coherence[done]) = spectra.At(grid[done]);
                values[done] = integrate ? response / new Complex(0, grid[done]) : response;
            }
        }
        return new FrequencyResponse(grid, values, coherence);
    }

    /// <summary>Frequencies evenly spaced in their logarithm, rad/s.</summary>
    internal static double[] Grid(double from, double to, double period)
    {
        if (!(from > 0 && to > from && to < Math.PI / period))
            throw new ArgumentException("Frequencies rise from above 0 to below half the sampling rate.", nameof(to));
        int steps = (int)Math.Ceiling(PerDecade * Math.Log10(to / from));
        return [.. Enumerable.Range(0, steps + 1).Select(n => from * Math.Pow(to / from, (double)n / steps))];
    }

    /// <summary>Auto- and cross-spectra at the lines of the transform; a common factor is left out.</summary>
    private sealed class Spectra(int size, double period)
    {
        private readonly double[] _xx = new double[size / 2], _yy = new double[size / 2];
        private readonly Complex[] _xy = new Complex[size / 2];

        public static Spectra Of(double[] input, double[] output, double period, double length)
        {
            int window = (int)Math.Round(length / period), size = 1;
            // padding by zeros sets the lines closer than the window resolves, so that straight lines join them
            while (size < 4 * window) size *= 2;
            Spectra spectra = new(size, period);
            // three quarters of overlap, from the first segment that touches the record to the last: every row counts alike
            for (int first = -window * 3 / 4; first < input.Length; first += window / 4)
                spectra.Add(Windowed(input, output, first, window, size));
            return spectra;
        }

        public (Complex Response, double Coherence) At(double frequency)
        {
            double line = frequency * size * period / Math.Tau;
            int n = (int)line;
            double share = line - n;
            double xx = ((1 - share) * _xx[n]) + (share * _xx[n + 1]), yy = ((1 - share) * _yy[n]) + (share * _yy[n + 1]);
            Complex xy = ((1 - share) * _xy[n]) + (share * _xy[n + 1]);
            if (!(xx > 0 && yy > 0)) return (Complex.NaN, 0);
            return (xy / xx, xy.Magnitude * xy.Magnitude / (xx * yy));
        }

        /// <summary>
        /// Adds a segment whose real part is the input and whose imaginary part the output: of two real signals one transform tells both,
        /// X = (Z(n) + Z*(-n)) / 2 and Y = (Z(n) - Z*(-n)) / 2i.
        /// </summary>
        private void Add(Complex[] z)
        {
            for (int n = 0; n < _xx.Length; n++)
            {
                Complex mirrored = Complex.Conjugate(z[(size - n) % size]);
                Complex x = (z[n] + mirrored) / 2, y = (z[n] - mirrored) / new Complex(0, 2);
                _xx[n] += (x * Complex.Conjugate(x)).Real;
                _yy[n] += (y * Complex.Conjugate(y)).Real;
                _xy[n] += Complex.Conjugate(x) * y;
            }
        }

        private static Complex[] Windowed(double[] input, double[] output, int first, int window, int size)
        {
            Complex[] segment = new Complex[size];
            for (int n = Math.Max(0, -first); n < window && first + n < input.Length; n++)
                segment[n] = (0.5 - (0.5 * Math.Cos(Math.Tau * n / window))) * new Complex(input[first + n], output[first + n]);
            Fourier.Forward(segment, FourierOptions.NoScaling);
            return segment;
        }
    }
}
