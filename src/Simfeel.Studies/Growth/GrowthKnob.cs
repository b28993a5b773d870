namespace Simfeel.Studies.Growth;

/// <summary>Something of a build that can be made larger or smaller.</summary>
/// <param name="Name">Name on the command line, such as <c>motor.volume</c>, or a full key of the build file.</param>
/// <param name="Title">For people, such as "stator volume of the motors".</param>
/// <param name="Unit">Unit of its size; empty for plain numbers.</param>
public sealed record GrowthKnob(string Name, string Title, string Unit);
