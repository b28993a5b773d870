using System.Globalization;
using System.Reflection;
using Simfeel.Builds;
using Simfeel.Flight.Fields;
using Simfeel.Physics;
using Simfeel.Physics.Air;

namespace Simfeel.Flight.Traces;

/// <summary>
/// What a trace says before its first row: enough to fly it again. Kept as text in the metadata of the Arrow schema, numbers in
/// SI with the shortest digits that give the same bits back.
/// </summary>
public sealed record TraceHeader
{
    /// <summary>Version of the format that this program writes and reads.</summary>
    public const int Format = 1;

    /// <summary>Version of the program that wrote it.</summary>
    public string ProgramVersion { get; init; } =
        typeof(TraceHeader).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";

    /// <summary>First build.</summary>
    public required TraceBuild A { get; init; }

    /// <summary>Second build.</summary>
    public required TraceBuild B { get; init; }

    /// <summary>Name of the field; empty where the flight had none.</summary>
    public string FieldName { get; init; } = "";

    /// <summary>Text of the field's file; empty where the flight had none.</summary>
    public string FieldText { get; init; } = "";

    /// <summary>The pilot.</summary>
    public PilotProfile Profile { get; init; } = new();

    /// <summary>Effects of moving air, seed, start height.</summary>
    public FieldConditions Conditions { get; init; } = new();

    /// <summary>The air of the site.</summary>
    public required AirState Air { get; init; }

    /// <summary>Policy that set the gains.</summary>
    public string Policy { get; init; } = "matched";

    /// <summary>Delay of the picture that was added on purpose, s. The radio's is in <see cref="Profile"/>.</summary>
    public double VideoDelay { get; init; }

    /// <summary>Rows a second; divides the stick readings a second.</summary>
    public int SampleRate { get; init; } = 100;

    /// <summary>The pilot did not know which build was which; whoever shows the trace keeps the names back until asked.</summary>
    public bool Blind { get; init; }

    /// <summary>Stick readings in a row.</summary>
    public int ReadingsPerRow => (int)Math.Round(1 / (Profile.StickPeriod * SampleRate));

    /// <summary>The header of a flight that begins now.</summary>
    public static TraceHeader Of(FlyableBuild a, FlyableBuild b, PilotProfile profile, FieldConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(a);
        return new() { A = TraceBuild.Of(a), B = TraceBuild.Of(b), Profile = profile, Conditions = conditions, Air = a.Assembled.Air };
    }

    /// <summary>The field out of its text; null where the flight had none.</summary>
    /// <exception cref="TraceException">The text makes no field, such as after the format changed.</exception>
    public FieldMap? ReadField()
    {
        if (FieldText.Length == 0) return null;
        FieldResult result = FieldReader.Parse(FieldText, FieldName);
        return result.Map
            ?? throw new TraceException($"The trace's field {Shown(FieldName)} cannot be made again: {result.Diagnostics[0]}");
    }

    /// <summary>As key and text.</summary>
    public IReadOnlyDictionary<string, string> ToMetadata()
    {
        Dictionary<string, string> text = new(StringComparer.Ordinal)
        {
            ["format"] = Format.ToString(CultureInfo.InvariantCulture),
            ["program_version"] = ProgramVersion,
            ["policy"] = Policy,
            ["blind"] = Blind ? "true" : "false",
            ["field_name"] = FieldName,
            ["field_text"] = FieldText,
            ["field_sha256"] = FlyableBuild.Sha256Of(FieldText),
        };
        foreach ((string prefix, TraceBuild build) in new[] { ("a_", A), ("b_", B) })
        {
            text[prefix + "name"] = build.Name;
            text[prefix + "file"] = build.File;
            text[prefix + "text"] = build.Source.Text;
            text[prefix + "sha256"] = FlyableBuild.Sha256Of(build.Source.Text);
            text[prefix + "edits"] = build.EditText();
            text[prefix + "rotors"] = build.Rotors.ToString(CultureInfo.InvariantCulture);
            if (build.Source.PolarFile is null) continue;
            text[prefix + "polar_file"] = build.Source.PolarFile;
            text[prefix + "polar_text"] = build.Source.PolarText ?? "";
        }
        foreach (TraceNumber number in TraceNumbers.All)
            text[number.Key] = number.Get(this).ToString("R", CultureInfo.InvariantCulture);
        return text;
    }

    /// <summary>Out of key and text.</summary>
    /// <exception cref="TraceException">A key is missing or wrong, or a text does not have its hash.</exception>
    public static TraceHeader FromMetadata(IReadOnlyDictionary<string, string>? metadata)
    {
        if (metadata is null || !metadata.TryGetValue("format", out string? format))
            throw new TraceException("This Arrow stream is no trace of a flight: its schema has no key 'format'.");
        if (format != Format.ToString(CultureInfo.InvariantCulture))
            throw new TraceException($"The trace has format {Shown(format)}; this program reads format {Format}.");
        double[] numbers = [.. TraceNumbers.All.Select(number => number.Missing is double missing && !metadata.ContainsKey(number.Key) ? missing : number.Parse(Text(metadata, number.Key)))];
        string fieldText = Text(metadata, "field_text");
        CheckHash(metadata, "field_sha256", fieldText, "the field");
        TraceHeader header = new()
        {
            ProgramVersion = Text(metadata, "program_version"),
            A = BuildOf(metadata, "a_", "build A"),
            B = BuildOf(metadata, "b_", "build B"),
            FieldName = Text(metadata, "field_name"),
            FieldText = fieldText,
            Policy = Text(metadata, "policy"),
            Blind = Text(metadata, "blind") == "true",
            Air = default,
        };
        return TraceNumbers.Apply(header, numbers);
    }

    internal static string Shown(string text) => text.Length <= 40 ? $"'{text}'" : $"'{text[..40]}...'";

    private static TraceBuild BuildOf(IReadOnlyDictionary<string, string> metadata, string prefix, string name)
    {
        string text = Text(metadata, prefix + "text"), edits = Text(metadata, prefix + "edits"), rotors = Text(metadata, prefix + "rotors");
        CheckHash(metadata, prefix + "sha256", text, name);
        if (!int.TryParse(rotors, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count is < 3 or > Craft.MaxRotors)
            throw new TraceException($"The trace's {prefix}rotors is {Shown(rotors)}; allowed are 3 to {Craft.MaxRotors}.");
        IReadOnlyList<KeyValuePair<string, double>> changed = TraceBuild.ParseEdits(edits)
            ?? throw new TraceException($"The trace's {prefix}edits is {Shown(edits)}; allowed are lines key=value.");
        BuildSource source = new(text, metadata.GetValueOrDefault(prefix + "polar_file"), metadata.GetValueOrDefault(prefix + "polar_text"));
        return new(Text(metadata, prefix + "name"), Text(metadata, prefix + "file"), count, source, changed);
    }

    private static void CheckHash(IReadOnlyDictionary<string, string> metadata, string key, string text, string what)
    {
        if (Text(metadata, key) != FlyableBuild.Sha256Of(text))
            throw new TraceException($"The trace's text of {what} does not have the hash that {key} gives: the file is damaged or was changed by hand.");
    }

    private static string Text(IReadOnlyDictionary<string, string> metadata, string key) =>
        metadata.GetValueOrDefault(key) ?? throw new TraceException($"The trace's schema has no key '{key}'.");
}
