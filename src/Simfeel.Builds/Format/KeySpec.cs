namespace Simfeel.Builds.Format;

/// <summary>What a key of a file holds.</summary>
public enum KeyKind
{
    /// <summary>A number, or a table of low, typical and high.</summary>
    Number,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>Free text in quotes.</summary>
    Text,

    /// <summary>One word out of a list, in quotes.</summary>
    Choice,

    /// <summary>true or false.</summary>
    Flag,

    /// <summary>A list of rotor positions.</summary>
    Positions,

    /// <summary>A list of blade stations.</summary>
    Stations,

    /// <summary>The name of a file with a section polar, beside the build file or below.</summary>
    PolarFile,
}

/// <summary>
/// One key of a file format, builds first of all: the single place where its unit, range, default and meaning are written down.
/// The reader, the messages, the edits and the reference tables of the documentation all take them from here.
/// </summary>
/// <param name="Path">Table and key, such as <c>motor.mass_g</c>; keys of extra parts start with <c>extra.</c></param>
/// <param name="Kind">What the key holds.</param>
/// <param name="Unit">Unit as printed; empty for plain numbers and words.</param>
/// <param name="ToSI">SI value of one unit.</param>
/// <param name="Minimum">Smallest value allowed, in <paramref name="Unit"/>.</param>
/// <param name="Maximum">Largest value allowed, in <paramref name="Unit"/>.</param>
/// <param name="Default">Value taken where the key is missing, in <paramref name="Unit"/>; null where it is required, estimated or optional.</param>
/// <param name="WhenMissing">What happens where the key is missing, in words.</param>
/// <param name="Meaning">What the number is.</param>
/// <param name="Choices">Words allowed for <see cref="KeyKind.Choice"/>; empty otherwise.</param>
public sealed record KeySpec(
    string Path,
    KeyKind Kind,
    string Unit,
    double ToSI,
    double Minimum,
    double Maximum,
    double? Default,
    string WhenMissing,
    string Meaning,
    IReadOnlyList<string> Choices)
{
    /// <summary>True where a file without this key is refused.</summary>
    public bool Required => WhenMissing == RequiredText;

    /// <summary>Name of the table that the key belongs to; empty for the top of the file.</summary>
    public string Table => Path.Contains('.') ? Path[..Path.IndexOf('.')] : "";

    /// <summary>The key without its table.</summary>
    public string Key => Path[(Path.IndexOf('.') + 1)..];

    /// <summary>Allowed values in words, with the unit: <c>20 to 60000 rpm/V</c>.</summary>
    public string Range => Kind switch
    {
        KeyKind.Number => WithUnit($"{Minimum:0.######} to {Maximum:0.######}"),
        KeyKind.Count => WithUnit($"a whole number from {Minimum:0.######} to {Maximum:0.######}"),
        KeyKind.Choice => "one of " + string.Join(", ", Choices.Select(c => $"\"{c}\"")),
        KeyKind.Flag => "true or false",
        KeyKind.Positions => "3 to 8 places [x, y, z] or [x, y, z, spin], -1000 to 1000 mm, spin 1 or -1",
        KeyKind.Stations => "2 to 60 stations [r/R, chord/R, twist], r/R rising from at most 0.5 to at least 0.9 within 0.02 to 1, chord/R 0.005 to 1, twist -45 to 90 deg",
        KeyKind.PolarFile => "name in quotes of a file beside the build file or below it",
        _ => "text in quotes, at most 2000 characters",
    };

    internal const string RequiredText = "required";

    private string WithUnit(string text) => Unit.Length == 0 ? text : $"{text} {Unit}";
}
