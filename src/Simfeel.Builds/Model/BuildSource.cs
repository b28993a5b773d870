namespace Simfeel.Builds;

/// <summary>The texts that a build was read from: enough to read it again without its files.</summary>
/// <param name="Text">Text of the build file.</param>
/// <param name="PolarFile">Name of the polar file as the build file gives it; null where it names none.</param>
/// <param name="PolarText">Text of the polar file; null where there is none.</param>
public sealed record BuildSource(string Text, string? PolarFile, string? PolarText);
