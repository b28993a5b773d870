namespace Simfeel.Cockpit.Overlay;

/// <summary>Range of a graph's upright axis: round or known numbers that hold every value on show.</summary>
/// <param name="least">Smallest upper end; above 0.</param>
/// <param name="bothWays">Whether the axis goes as far below nought as above.</param>
internal sealed class GraphScale(double least, bool bothWays)
{
    /// <summary>Upper end.</summary>
    public double High { get; private set; }

    /// <summary>Lower end.</summary>
    public double Low { get; private set; }

    /// <summary>Takes the smallest of 1, 2, 5, 10, 20, 50 ... that is not below a value or the smallest upper end.</summary>
    public void Hold(double peak)
    {
        High = least;
        for (int k = 0; High < peak && k < 20; k++) High *= Mantissa(High) == 2 ? 2.5 : 2;
        Low = bothWays ? -High : 0;
    }

    /// <summary>Takes ends that are known, wider where a value lies beyond them.</summary>
    public void Hold(double low, double high, double smallest, double greatest) =>
        (Low, High) = (Math.Min(low, Math.Floor(smallest)), Math.Max(high, Math.Ceiling(greatest)));

    private static int Mantissa(double value) =>
        (int)Math.Round(value / Math.Pow(10, Math.Floor(Math.Log10(value) + 1e-9)));
}
