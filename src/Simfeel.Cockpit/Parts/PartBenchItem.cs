namespace Simfeel.Cockpit.Parts;

/// <summary>One number of a build that the part bench can change.</summary>
public sealed class PartBenchItem
{
    /// <summary>Key of the build file, such as <c>frame.wheelbase_mm</c>.</summary>
    public required string Key { get; init; }

    /// <summary>What it is, such as "Wheelbase".</summary>
    public required string Label { get; init; }

    /// <summary>Unit; empty for plain numbers.</summary>
    public required string Unit { get; init; }

    /// <summary>What the build file gives.</summary>
    public required double Original { get; init; }

    /// <summary>What is set now.</summary>
    public double Value { get; set; }

    /// <summary>Least value.</summary>
    public required double Low { get; init; }

    /// <summary>Largest value.</summary>
    public required double High { get; init; }

    /// <summary>One press of a key.</summary>
    public required double Step { get; init; }
}

/// <summary>One number that a change of parts changes.</summary>
/// <param name="Name">What it is, such as "Mass" or "Roll inertia".</param>
/// <param name="Unit">Unit.</param>
/// <param name="Before">Of the build as its file has it.</param>
/// <param name="After">Of the changed build.</param>
public sealed record PartBenchDifference(string Name, string Unit, double Before, double After);
