using System.Globalization;

namespace Simfeel.CommandLine.Commands;

/// <summary>Numbers and ranges on the command line of the wind tunnel: <c>6000,8000</c> and <c>0..12</c>.</summary>
internal static class WindTunnelRange
{
    /// <summary>Evenly spaced values of a range, ends included; one value of a single number.</summary>
    /// <param name="option">Name of the option, for the message.</param>
    /// <param name="text">As written.</param>
    /// <param name="least">Least value allowed.</param>
    /// <param name="most">Largest value allowed.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="points">Values in a range.</param>
    /// <exception cref="FormatException">The text is no such range; the message says all.</exception>
    public static double[] Values(string option, string text, double least, double most, string unit, int points)
    {
        int dots = text.IndexOf("..", StringComparison.Ordinal);
        string from = dots < 0 ? text : text[..dots], to = dots < 0 ? text : text[(dots + 2)..];
        if (!Number(from, out double first) || !Number(to, out double last) || first < least || last > most || first > last)
            throw new FormatException($"{option} is '{text}'; it must be a number or a rising range FROM..TO between {least} and {most} {unit}.");
        return first == last ? [first] : [.. Enumerable.Range(0, points).Select(i => i == points - 1 ? last : first + ((last - first) * i / (points - 1)))];
    }

    /// <summary>Numbers parted by commas.</summary>
    /// <exception cref="FormatException">The text is no such list; the message says all.</exception>
    public static double[] List(string option, string text, double least, double most, string unit, int longest)
    {
        string[] parts = text.Split(',');
        double[] values = new double[parts.Length];
        for (int n = 0; n < parts.Length; n++)
        {
            if (parts.Length > longest || !Number(parts[n], out values[n]) || !(values[n] >= least && values[n] <= most))
                throw new FormatException($"{option} is '{text}'; it must be 1 to {longest} numbers parted by commas, each between {least} and {most} {unit}.");
        }
        return values;
    }

    private static bool Number(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}
