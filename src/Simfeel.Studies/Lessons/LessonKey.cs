using Simfeel.Builds;
using Simfeel.Builds.Format;
using Simfeel.Builds.Reading;
using Simfeel.Flight.Tuning;

namespace Simfeel.Studies.Lessons;

/// <summary>Whose a key of a lesson is.</summary>
public enum LessonKeyKind
{
    /// <summary>Of the lesson itself: drill, ballast, air, pack, display, tuning.</summary>
    Own,

    /// <summary>A part that grows as a whole, by a factor; see <see cref="BuildKnobs"/>.</summary>
    Part,

    /// <summary>A number of the build file.</summary>
    Build,
}

/// <summary>A key that a lesson may set or change.</summary>
/// <param name="Kind">Whose it is.</param>
/// <param name="Spec">Its unit, range and meaning.</param>
public sealed record LessonKey(LessonKeyKind Kind, KeySpec Spec)
{
    /// <summary>Its name, such as <c>drill.axis</c>.</summary>
    public string Path => Spec.Path;

    /// <summary>What it is; with the part where it is a number of the build.</summary>
    public string Meaning => Kind == LessonKeyKind.Build ? $"{Spec.Table.Replace('_', ' ')}, {Spec.Meaning}" : Spec.Meaning;

    /// <summary>Its unit; empty for words and factors.</summary>
    public string Unit => Spec.Unit;

    /// <summary>Words that it may hold; empty for numbers.</summary>
    public IReadOnlyList<string> Words => Spec.Choices;
}

/// <summary>All keys that a lesson may set or change.</summary>
public static class LessonKeys
{
    /// <summary>Factors by which a part or a number of the build may be changed.</summary>
    public const double LeastFactor = 0.1, LargestFactor = 10;

    /// <summary>Keys of the lesson itself, in the order of the documentation.</summary>
    public static IReadOnlyList<KeySpec> Own { get; } =
    [
        Word("drill.name", $"what is flown: a drill of compare, or {string.Join(", ", LessonDrills.OfTheirOwn)}", [.. LessonDrills.Names], null),
        Word("drill.axis", "axis of push, release and tumble, and of the channels rate and angle", ["roll", "pitch", "yaw"], "roll"),
        Number("drill.effort", "", 0.25, 1, 1, "share of full stick"),
        Number("drill.hold_s", "s", 0.03, 2, 0.3, "time that push holds the stick"),
        Number("drill.speed_m_s", "m/s", 0, 30, 0, "speed ahead of level and sink, climb of climb"),
        Number("drill.sink_m_s", "m/s", 0.5, 20, 4, "sink speed of sink"),
        Number("drill.tilt_deg", "deg", 0, 60, 15, "tilt of release"),
        Number("drill.spin_deg_per_s", "deg/s", 60, 2000, 720, "spin of tumble"),
        Number("ballast.mass_g", "g", 0, 5000, 0, "lead that is added, in as many lumps as there are arms"),
        Number("ballast.spread_percent", "%", 0, 100, 0, "where the lumps of lead sit, from 0 in the middle of the motors to 100 at the motors"),
        Number("ballast.height_mm", "mm", -300, 300, 0, "how high the lumps of lead sit over the arms' middle plane"),
        Number("air.altitude_m", "m", -400, 5000, 0, "altitude of the field"),
        Number("pack.charge_percent", "%", 10, 100, 90, "charge of the pack at the start"),
        Number("display.delay_ms", "ms", 0, 300, 0, "how much later than usual the pilot sees the craft"),
        Word("tuning.policy", "how the gains are chosen", TuningPolicies.Words, "matched"),
    ];

    /// <summary>The key of a name; null where there is none.</summary>
    public static LessonKey? Find(string path)
    {
        if (Own.FirstOrDefault(key => key.Path == path) is KeySpec own) return new(LessonKeyKind.Own, own);
        if (BuildKnobs.All.FirstOrDefault(knob => knob.Name == path) is BuildKnob part)
            return new(LessonKeyKind.Part, Factor(path, part.Title));
        return BuildFormat.Find(path) is { Kind: KeyKind.Number } number && number.Table is not ("" or "measured" or "pilot" or "extra")
            ? new(LessonKeyKind.Build, number)
            : null;
    }

    /// <summary>The name that was probably meant; null where none is near.</summary>
    public static string? Near(string path) =>
        NearestName.Of(path, Own.Select(key => key.Path).Concat(BuildKnobs.All.Select(knob => knob.Name)).Concat(BuildFormat.Keys.Where(key => key.Kind == KeyKind.Number).Select(key => key.Path)));

    /// <summary>Markdown: the lesson's own keys.</summary>
    public static string Markdown() => LessonFormat.Table(Own, key => key.Path);

    /// <summary>What is wrong with a value of a key; null where nothing is.</summary>
    internal static string? Fault(LessonKey key, in LessonValue value)
    {
        if (key.Words.Count > 0) return key.Words.Contains(value.Word) ? null : $"Allowed is {key.Spec.Range}.";
        if (value.Word.Length > 0) return $"This is no number; allowed is {key.Spec.Range}, or a factor such as \"x 2\".";
        if (!value.IsFactor) return NumberReader.RangeFault(key.Spec, value.Number);
        if (key.Kind == LessonKeyKind.Own) return $"\"x {value.Number:G6}\" is a factor, and this is no number of the build; write the value itself, without the x. Allowed is {key.Spec.Range}.";
        return value.Number is >= LeastFactor and <= LargestFactor ? null : $"The factor {value.Number:G6} is out of range; allowed is {LeastFactor} to {LargestFactor}.";
    }

    private static KeySpec Number(string path, string unit, double low, double high, double missing, string meaning) =>
        new(path, KeyKind.Number, unit, 1, low, high, missing, $"{missing:0.###}", meaning, []);

    private static KeySpec Word(string path, string meaning, IReadOnlyList<string> words, string? missing) =>
        new(path, KeyKind.Choice, "", 1, 0, 0, null, missing ?? KeySpec.RequiredText, meaning, words);

    private static KeySpec Factor(string path, string meaning) =>
        new(path, KeyKind.Number, "", 1, LeastFactor, LargestFactor, 1, "1", meaning, []);
}
