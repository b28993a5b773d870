using Simfeel.Flight.Drills;

namespace Simfeel.Studies.Metrics;

/// <summary>A number read off the log of a drill.</summary>
public sealed record Metric
{
    /// <summary>Drill that it is read from.</summary>
    public required Drill Drill { get; init; }

    /// <summary>What it is about, so that the most telling sentences do not all tell of the same thing.</summary>
    public required Topic Topic { get; init; }

    /// <summary>Identifier for machines, in snake_case.</summary>
    public required string Name { get; init; }

    /// <summary>What a table calls it.</summary>
    public required string Title { get; init; }

    /// <summary>SI unit of the value.</summary>
    public required string Unit { get; init; }

    /// <summary>Unit for people, and how many of it make one SI unit.</summary>
    public required DisplayUnit Display { get; init; }

    /// <summary>
    /// A difference smaller than this (SI) is called not felt however large it is in percent, so that a rebound of a tenth
    /// of a degree against two tenths does not make news. Our inference.
    /// </summary>
    public required double Floor { get; init; }

    /// <summary>True for a figure that explains how a craft flies but that nobody feels by itself, such as a current.</summary>
    public bool Instrument { get; init; }

    /// <summary>
    /// Reads the value from a log: SI, or NaN where the event never came. The catalogue states formula and source.
    /// </summary>
    public required Func<FlightLog, double> Read { get; init; }

    /// <summary>
    /// Earliest time of the drill at which <see cref="Read"/> looks at more than states and duties, s, or <see cref="Never"/>. A
    /// flight for its sake need not work out the loads before.
    /// </summary>
    public double LoadsFrom { get; init; }

    /// <summary><see cref="LoadsFrom"/> of a metric that is read from states and duties alone.</summary>
    public const double Never = double.PositiveInfinity;

    /// <summary>Says the difference in one sentence; see <see cref="Saying"/>.</summary>
    public required Saying Say { get; init; }

    /// <summary>
    /// How telling a difference is beside others of the same size, 0 (never told) to 1. Our judgement of what a pilot
    /// notices first.
    /// </summary>
    public double Weight { get; init; } = 1;
}

/// <summary>What a metric is about.</summary>
public enum Topic
{
    /// <summary>Falling and being caught.</summary>
    Falling,

    /// <summary>Climbing.</summary>
    Climbing,

    /// <summary>Rolling, flipping and stopping.</summary>
    Rolling,

    /// <summary>Yaw.</summary>
    Turning,

    /// <summary>Own wake.</summary>
    Washing,

    /// <summary>Hovering.</summary>
    Hovering,

    /// <summary>Getting somewhere: dash, brake, turn, slalom, cruise.</summary>
    Travelling,
}

/// <summary>A unit for people.</summary>
/// <param name="Symbol">As tables print it.</param>
/// <param name="PerSi">How many of it make one SI unit.</param>
/// <param name="Decimals">Decimals that a table prints.</param>
public readonly record struct DisplayUnit(string Symbol, double PerSi, int Decimals)
{
    private const string Thousand = "1000 ";

    /// <summary>A value (SI) in this unit, without the symbol; a dash where there is none.</summary>
    public string Number(double value) => double.IsNaN(value) ? "-" : (value * PerSi).ToString("F" + Decimals);

    /// <summary>The same with the symbol behind it, as a sentence has it.</summary>
    public string WithSymbol(double value) => WithSymbol(Number(value));

    /// <summary>A number that is written already, such as a difference with its sign, with the symbol behind it.</summary>
    public string WithSymbol(string number)
    {
        ArgumentNullException.ThrowIfNull(number);
        if (Symbol.Length == 0 || number == "-") return number;
        // 26.0 of "1000 deg/s2" is 26000 deg/s2 where no column is headed by the unit
        return Symbol.StartsWith(Thousand, StringComparison.Ordinal)
            ? $"{(number.StartsWith('+') ? "+" : "")}{1000 * double.Parse(number):F0} {Symbol[Thousand.Length..]}"
            : $"{number} {Symbol}";
    }
}

/// <summary>
/// A sentence about two builds that differ: names and numbers of the one with more and the one with less, and the ratio.
/// </summary>
public delegate string Saying(Said said);

/// <summary>What a <see cref="Saying"/> may use; numbers are already in the metric's display unit.</summary>
/// <param name="More">Name of the build with the larger value.</param>
/// <param name="Less">Name of the other.</param>
/// <param name="Larger">The larger value.</param>
/// <param name="Smaller">The smaller value.</param>
/// <param name="Ratio">Larger by smaller in words, such as "1.4 times".</param>
public readonly record struct Said(string More, string Less, string Larger, string Smaller, string Ratio);
