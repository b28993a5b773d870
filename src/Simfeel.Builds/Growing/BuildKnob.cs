namespace Simfeel.Builds;

/// <summary>
/// A part of a build that can be made larger or smaller as a whole: what makes it up moves together, by the rules of the estimates,
/// while all other parts stay as they are.
/// </summary>
public sealed record BuildKnob
{
    /// <summary>Name on the command line, such as <c>motor.volume</c>.</summary>
    public required string Name { get; init; }

    /// <summary>For people, such as "stator volume of the motors".</summary>
    public required string Title { get; init; }

    /// <summary>Unit of <see cref="Size"/>.</summary>
    public required string Unit { get; init; }

    /// <summary>What moves with it and by which rule, in one sentence.</summary>
    public required string Rule { get; init; }

    /// <summary>Factors between which it is grown unless told otherwise.</summary>
    public required (double From, double To) UsualRange { get; init; }

    /// <summary>Its size in <see cref="Unit"/>.</summary>
    public required Func<Build, double> Size { get; init; }

    /// <summary>
    /// The build with the part grown by a factor above 0; not to be edited by key any more. Throws an
    /// <see cref="InvalidOperationException"/> that says why where the format does not allow that size.
    /// </summary>
    public required Func<Build, double, Build> Grow { get; init; }

    /// <summary>
    /// Consequences of the growth that can be switched off, one at a time: name, and the grown build without it, from the build
    /// as it was and as it grew.
    /// </summary>
    public IReadOnlyList<(string Name, Func<Build, Build, Build> Without)> Consequences { get; init; } = [];

    /// <summary>
    /// Why the grown build cannot stand; null where it can. Propellers that would overlap, mostly.
    /// </summary>
    public static string? Refusal(Build build)
    {
        string? refusal = null;
        Checks.ClearanceChecks.Run(build, false, (severity, _, message, _) =>
        {
            if (severity == Severity.Error) refusal ??= message;
        });
        return refusal;
    }
}
