namespace Simfeel.Flight.Drills;

/// <summary>How exactly numbers are kept while a craft flies.</summary>
public enum Precision
{
    /// <summary>Sixteen digits: for whatever is shown or compared.</summary>
    Double,

    /// <summary>
    /// Seven digits, for draws by the hundred, at half the price: on every metric of every starter build within 3 parts in 10 000 of
    /// double precision, or a fiftieth of the least difference that is told (by test).
    /// </summary>
    Single,
}
