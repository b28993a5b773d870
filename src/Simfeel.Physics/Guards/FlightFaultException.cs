using System.Globalization;

namespace Simfeel.Physics.Guards;

/// <summary>
/// A step of a flight broke an invariant (<see cref="Guard"/>), so what would follow means nothing: an error of the program, or
/// constants that no craft has. It holds the step, so that it can be flown again. Whoever shows it to people writes
/// <see cref="StepRecord.ToText"/> to a file.
/// </summary>
public sealed class FlightFaultException : Exception
{
    /// <summary>A fault of a step.</summary>
    public FlightFaultException(StepRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        Record = record;
    }

    /// <summary>The step.</summary>
    public StepRecord Record { get; }

    /// <summary>What was flown, such as a drill; for the message.</summary>
    public string During { get; set; } = "";

    /// <summary>One sentence: craft, time, step, stage, and what was broken.</summary>
    public override string Message
    {
        get
        {
            string craft = Record.Craft.Length > 0 ? Record.Craft : $"Craft {Record.Lane}";
            string during = During.Length > 0 ? $" in {During}" : "";
            string what = Record.Broken switch
            {
                Invariant.FiniteState => "a number of its state is not finite",
                Invariant.UnitAttitude => "its attitude is not of unit length",
                _ => "its energy rose by more than its battery can give",
            };
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{craft}{during}: the flight was stopped at {Record.Time:F5} s, step {Record.Number}, stage {Record.Stage}: {what}.");
        }
    }
}
