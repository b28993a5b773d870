namespace Simfeel.Cockpit.Parts;

/// <summary>One number that a change of parts changes.</summary>
/// <param name="Name">What it is, such as "Mass" or "Roll inertia".</param>
/// <param name="Unit">Unit.</param>
/// <param name="Before">Of the build as its file has it.</param>
/// <param name="After">Of the changed build.</param>
public sealed record PartBenchDifference(string Name, string Unit, double Before, double After);
