using Simfeel.Studies.Plots;

namespace Simfeel.Studies.Validation;

/// <summary>
/// The rotor model beside one published source: the case holds the published numbers, runs the model on the same states
/// and says how far apart they are. Runs are independent and give the same bits every time.
/// </summary>
public abstract class ValidationCase
{
    /// <summary>Its key, also the name of its picture: lower case words and hyphens.</summary>
    public abstract string Name { get; }

    /// <summary>Heading of its picture.</summary>
    public abstract string Title { get; }

    /// <summary>Who published the numbers, where, and how they came here.</summary>
    public abstract string Source { get; }

    /// <summary>The source in a few words, for a table.</summary>
    public abstract string ShortSource { get; }

    /// <summary>What must be known to read the comparison.</summary>
    public abstract string Note { get; }

    /// <summary>Runs the model.</summary>
    public abstract CaseResult Run();
}

/// <summary>What a case found.</summary>
/// <param name="Sheet">Published points and the model's curves.</param>
/// <param name="Checks">How far apart they are.</param>
public sealed record CaseResult(ChartSheet Sheet, IReadOnlyList<ValidationCheck> Checks);
