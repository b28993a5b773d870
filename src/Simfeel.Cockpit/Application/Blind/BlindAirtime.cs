using System.Globalization;

namespace Simfeel.Cockpit.Application.Blind;

/// <summary>For how long each flight of a trial was in the air: who votes on what was hardly flown only guesses.</summary>
/// <param name="flights">Flights of a trial.</param>
internal sealed class BlindAirtime(int flights)
{
    /// <summary>
    /// Least time in the air before a vote, s: enough to lift off and move each stick once, short enough not to hold anybody up. Our choice.
    /// </summary>
    public const double Least = 3;

    private readonly double[] _seconds = new double[flights];

    /// <summary>Why there is no vote yet; empty where every flight was long enough.</summary>
    public string Missing => WhyNot(_seconds);

    /// <summary>A flight (counted from 1) was in the air for some seconds more, also where it is flown again.</summary>
    public void Add(int flight, double seconds) => _seconds[flight - 1] += seconds;

    /// <summary>A new trial begins.</summary>
    public void Clear() => Array.Clear(_seconds);

    /// <summary>Names the flights that were too short; empty where none was.</summary>
    public static string WhyNot(IReadOnlyList<double> seconds)
    {
        // rounded down, so that no 3.0 s is refused
        string[] brief = [.. seconds.Select((time, k) => (time, k)).Where(flight => flight.time < Least).Select(flight =>
            string.Create(CultureInfo.InvariantCulture, $"flight {flight.k + 1} {Math.Floor(10 * flight.time) / 10:F1} s"))];
        return brief.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"No vote before each flight was {Least:F0} s in the air, armed and off the ground. So far: {string.Join(", ", brief)}.");
    }
}
