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
