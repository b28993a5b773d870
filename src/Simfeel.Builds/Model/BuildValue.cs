namespace Simfeel.Builds;

/// <summary>Where a number comes from.</summary>
public enum ValueSource
{
    /// <summary>Written in the file without saying from where.</summary>
    Stated,

    /// <summary>Measured by whoever wrote the file.</summary>
    Measured,

    /// <summary>From a shop page or data sheet.</summary>
    Datasheet,

    /// <summary>Estimated by whoever wrote the file.</summary>
    Estimated,

    /// <summary>Missing from the file; estimated here by a stated rule.</summary>
    Rule,

    /// <summary>Missing from the file; the format's default.</summary>
    Default,

    /// <summary>Changed by an edit after the file was read.</summary>
    Edited,
}

/// <summary>One number of a build with its provenance. All numbers are in the unit of the key.</summary>
/// <param name="Key">Full key, such as <c>motor.winding_resistance_mohm</c>.</param>
/// <param name="Low">Low end of what it may be.</param>
/// <param name="Typical">The number that is used.</param>
/// <param name="High">High end of what it may be.</param>
/// <param name="Unit">Unit; empty for plain numbers.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Rule">The rule of an estimate; empty otherwise.</param>
public sealed record BuildValue(
    string Key, double Low, double Typical, double High, string Unit, ValueSource Source, string Rule)
{
    /// <summary>True where the program filled the number in, so that it has to be shown beside the result.</summary>
    public bool FilledIn => Source is ValueSource.Rule or ValueSource.Default;
}
