using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Simfeel.Studies.Handling;

/// <summary>
/// Auto- and cross-spectra of two signals at equally spaced lines of frequency, summed over segments that overlap by three quarters
/// under a Hann window; a common factor is left out. Of the thousands of lines of a transform some eighty are asked for, so each is
/// summed when it is. About a segment's middle the window is even: a line's real part needs the even half of the signal and its
/// imaginary part the odd half.
/// </summary>
internal sealed class SegmentSpectra
{
    private readonly double _spacing, _period;
    private readonly Halves[] _segments;
    private readonly double[] _cosine, _sine;
    private readonly Dictionary<int, SpectralLine> _lines = [];

    /// <summary>The spectra of two records.</summary>
    /// <param name="input">At each row.</param>
    /// <param name="output">At each row.</param>
    /// <param name="period">Time between rows, s.</param>
    /// <param name="length">Length of a segment, s.</param>
    public SegmentSpectra(double[] input, double[] output, double period, double length)
    {
        // an even number of rows, so that the middle is one of them
        int half = (int)Math.Round(length / period / 2), size = 1;
        // lines closer than the window resolves, so that straight lines join them
        while (size < 8 * half) size *= 2;
        (_spacing, _period) = (Math.Tau / (size * period), period);
        _segments = [.. Segments(input, output, half)];
        (_cosine, _sine) = (new double[half], new double[half]);
    }

    /// <summary>Response and coherence at a frequency, rad/s.</summary>
    public (Complex Response, double Coherence) At(double frequency)
    {
        double place = frequency / _spacing;
        int n = (int)place;
        SpectralLine before = Line(n), after = Line(n + 1);
        double share = place - n;
        double xx = ((1 - share) * before.Input) + (share * after.Input), yy = ((1 - share) * before.Output) + (share * after.Output);
        Complex xy = ((1 - share) * before.Cross) + (share * after.Cross);
        if (!(xx > 0 && yy > 0)) return (Complex.NaN, 0);
        return (xy / xx, xy.Magnitude * xy.Magnitude / (xx * yy));
    }

    private SpectralLine Line(int n)
    {
        if (_lines.TryGetValue(n, out SpectralLine line)) return line;
        Wave(_cosine, _sine, _spacing * n * _period);
        foreach (Halves segment in _segments)
        {
            (double xReal, double yReal) = Products(segment.EvenInput, segment.EvenOutput, _cosine);
            (double xImaginary, double yImaginary) = Products(segment.OddInput, segment.OddOutput, _sine);
            // e^(-i w t) = cos - i sin
            Complex x = new(xReal, -xImaginary), y = new(yReal, -yImaginary);
            line = new(
                line.Input + (xReal * xReal) + (xImaginary * xImaginary),
                line.Output + (yReal * yReal) + (yImaginary * yImaginary),
                line.Cross + (Complex.Conjugate(x) * y));
        }
        _lines.Add(n, line);
        return line;
    }

    /// <summary>Every segment from the first that touches the record to the last: every row counts alike.</summary>
    private static IEnumerable<Halves> Segments(double[] input, double[] output, int half)
    {
        int window = 2 * half;
        double[] weights = new double[half];
        for (int m = 0; m < half; m++) weights[m] = 0.5 + (0.5 * Math.Cos(Math.Tau * m / window));
        for (int start = -window * 3 / 4; start < input.Length; start += window / 4)
        {
            (double[] evenInput, double[] oddInput) = Split(input, start + half, weights);
            (double[] evenOutput, double[] oddOutput) = Split(output, start + half, weights);
            yield return new(evenInput, oddInput, evenOutput, oddOutput);
        }
    }

    /// <summary>A signal's windowed values as far before as behind a segment's middle: their sums, and later less earlier ones.</summary>
    private static (double[] Even, double[] Odd) Split(double[] signal, int middle, double[] weights)
    {
        double[] even = new double[weights.Length], odd = new double[weights.Length];
        for (int m = 0; m < weights.Length; m++)
        {
            double later = Row(middle + m), earlier = Row(middle - m);
            even[m] = weights[m] * (later + earlier);
            odd[m] = weights[m] * (later - earlier);
        }
        // the row in the middle is its own pair
        even[0] /= 2;
        return (even, odd);

        double Row(int n) => (uint)n < (uint)signal.Length ? signal[n] : 0;
    }

    /// <summary>Cosine and sine of m angle, each vector turned on from the one before.</summary>
    private static void Wave(double[] cosine, double[] sine, double angle)
    {
        int width = Math.Min(Vector256<double>.Count, cosine.Length);
        for (int m = 0; m < width; m++) (sine[m], cosine[m]) = Math.SinCos(m * angle);
        (double s, double c) = Math.SinCos(width * angle);
        for (int m = width; m < cosine.Length; m++)
        {
            cosine[m] = (cosine[m - width] * c) - (sine[m - width] * s);
            sine[m] = (sine[m - width] * c) + (cosine[m - width] * s);
        }
    }

    /// <summary>Scalar products of two vectors with a third, in a fixed order of sums, so that the bits do not depend on the machine.</summary>
    private static (double A, double B) Products(double[] a, double[] b, double[] with)
    {
        ReadOnlySpan<Vector256<double>> u = MemoryMarshal.Cast<double, Vector256<double>>(a), v = MemoryMarshal.Cast<double, Vector256<double>>(b);
        ReadOnlySpan<Vector256<double>> w = MemoryMarshal.Cast<double, Vector256<double>>(with);
        Vector256<double> a0 = default, a1 = default, b0 = default, b1 = default;
        int n = 1;
        for (; n < w.Length && n < u.Length && n < v.Length; n += 2)
        {
            Vector256<double> w0 = w[n - 1], w1 = w[n];
            a0 = Vector256.FusedMultiplyAdd(u[n - 1], w0, a0);
            b0 = Vector256.FusedMultiplyAdd(v[n - 1], w0, b0);
            a1 = Vector256.FusedMultiplyAdd(u[n], w1, a1);
            b1 = Vector256.FusedMultiplyAdd(v[n], w1, b1);
        }
        double ofA = Vector256.Sum(a0 + a1), ofB = Vector256.Sum(b0 + b1);
        for (int m = (n - 1) * Vector256<double>.Count; m < with.Length; m++)
        {
            ofA += a[m] * with[m];
            ofB += b[m] * with[m];
        }
        return (ofA, ofB);
    }

    /// <summary>Sums over the segments at one line: of the squares of both signals' transforms and of their product.</summary>
    private readonly record struct SpectralLine(double Input, double Output, Complex Cross);

    /// <summary>A segment's signals, folded about its middle.</summary>
    private readonly record struct Halves(double[] EvenInput, double[] OddInput, double[] EvenOutput, double[] OddOutput);
}
