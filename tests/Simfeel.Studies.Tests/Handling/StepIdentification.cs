using System.Numerics;
using Simfeel.Flight.Drills;
using Simfeel.Studies.Handling;

namespace Simfeel.Studies.Tests.Handling;

/// <summary>
/// Frequency response from a step, another way to what the sweep tells: Fourier transform of the output's change from row
/// to row, by that of the input's (convolution theorem; Bendat and Piersol, Random Data, chapter 2). The changes of a
/// settled step come to rest, so neither needs a window; a taper over the end keeps out what has not settled.
/// </summary>
internal static class StepIdentification
{
    /// <summary>A small step of a stick that is held for two seconds.</summary>
    public static Drill Step(HandlingAxis axis) => new(
        "step", "A small step of a stick.", Drill.LeadIn + 2,
        (hover, _) => view => axis.Deflected(view.Time < Drill.LeadIn ? 0 : HandlingDrills.Amplitude, hover));

    /// <summary>Response from a flight of <see cref="Step"/>.</summary>
    public static FrequencyResponse Stepped(FlightLog log, HandlingAxis axis) => Identify(
        HandlingFlight.Command(log, axis), HandlingFlight.Rate(log, axis), log.Period, HandlingFlight.From, HandlingFlight.To, integrate: true);

    /// <summary>Share of the time after the step over which the end is faded out. Our choice.</summary>
    public const double Taper = 0.4;

    /// <summary>Identifies the response of an attitude.</summary>
    /// <param name="input">Command at each row: rest, then the step however the thumb makes it.</param>
    /// <param name="output">Attitude (rad), or its rate (rad/s) where <paramref name="integrate"/> says so.</param>
    /// <param name="period">Time between rows, s.</param>
    /// <param name="from">Lowest frequency wanted, rad/s.</param>
    /// <param name="to">Highest, rad/s.</param>
    /// <param name="integrate">The output is a rate: divide by j omega.</param>
    /// <returns>The response, without coherence: one step has none.</returns>
    /// <exception cref="ArgumentException">Lengths differ, the input never moves, or the range is none.</exception>
    public static FrequencyResponse Identify(double[] input, double[] output, double period, double from, double to, bool integrate)
    {
        if (input.Length != output.Length) throw new ArgumentException("Input and output have the same rows.", nameof(output));
        int start = 1;
        while (start < input.Length && input[start] == input[start - 1]) start++;
        if (start >= input.Length) throw new ArgumentException("The input never moves.", nameof(input));
        double[] grid = ChirpIdentification.Grid(from, to, period);
        Complex[] values = new Complex[grid.Length];
        int rows = input.Length - start;
        double fade = Taper * rows;
        for (int k = 0; k < grid.Length; k++)
        {
            Complex turn = Complex.Exp(new Complex(0, -grid[k] * period)), here = 1, x = 0, y = 0;
            for (int n = 0; n < rows; n++, here *= turn)
            {
                double left = rows - n;
                double weight = left >= fade ? 1 : 0.5 - (0.5 * Math.Cos(Math.PI * left / fade));
                x += (input[start + n] - input[start + n - 1]) * weight * here;
                y += (output[start + n] - output[start + n - 1]) * weight * here;
            }
            values[k] = integrate ? y / x / new Complex(0, grid[k]) : y / x;
        }
        return new FrequencyResponse(grid, values);
    }
}
