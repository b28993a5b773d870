using System.Numerics;

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
            SegmentSpectra spectra = new(input, output, period, length);
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
}
