namespace Simfeel.Studies.Flights;

/// <summary>One thing found in the flights of a session, for both builds side by side.</summary>
/// <param name="Name">Short name, such as "fastest roll".</param>
/// <param name="Unit">Unit of the numbers, such as "deg/s".</param>
/// <param name="A">What the first build did best; null where it never did it.</param>
/// <param name="B">What the second build did best; null where it never did it.</param>
/// <param name="Meaning">One sentence: what is measured and from where to where.</param>
public sealed record FindRow(string Name, string Unit, double? A, double? B, string Meaning)
{
    /// <summary>Decimals that a table prints.</summary>
    public int Decimals { get; init; }
}
