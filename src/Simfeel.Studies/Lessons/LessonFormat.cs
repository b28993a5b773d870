using Simfeel.Builds.Format;
using Simfeel.Studies.Metrics;

namespace Simfeel.Studies.Lessons;

/// <summary>The lesson-file format, version 1: every key of its fixed tables. What stands in [same] and [change] is in <see cref="LessonKeys"/>.</summary>
public static class LessonFormat
{
    /// <summary>The version that this program understands.</summary>
    public const int Version = 1;

    /// <summary>Fewest and most answers.</summary>
    public const int FewestChoices = 2, MostChoices = 6;

    /// <summary>Place in the list of a lesson that asks for none.</summary>
    internal const int LastPlace = 1000;

    private const double Far = 1e9;

    /// <summary>All keys in the order of the documentation.</summary>
    public static IReadOnlyList<KeySpec> Keys { get; } =
    [
        new("format", KeyKind.Count, "", 1, 1, Version, Version, $"{Version}", "version of the file format", []),
        Text("lesson.title", "heading"),
        Text("lesson.topic", "heading that lessons of a kind stand under"),
        Text("lesson.idea", "what it is about, in one sentence that gives nothing away"),
        Text("lesson.build", "a build file beside the lesson, or the name of a starter build"),
        Text("lesson.first", "what people call the craft with the first value"),
        Text("lesson.second", "what people call the craft with the second value"),
        new("lesson.place", KeyKind.Count, "", 1, 1, 1000, LastPlace, $"{LastPlace}", "place in the list, small ones first", []),
        new("lesson.fly_blind", KeyKind.Flag, "", 1, 0, 1, 0, "false", "true where a pilot should try to feel the difference blind", []),
        Choice("number.metric", "a metric, named as in compare --json; or leave it out and give channel and read", [.. MetricCatalogue.All.Select(metric => metric.Name)]),
        Choice("number.channel", "what is read", [.. FlightChannel.All.Select(channel => channel.Name)]),
        Choice("number.read", "how it is read", ["at", "largest", "least", "mean", "rms"]),
        Seconds("number.from_s", "from this time (at: at this time), from the start of the drill", "0"),
        Seconds("number.to_s", "to this time", "end of the drill"),
        Optional("number.title", "what people call the number", "title of metric or channel"),
        Choice("plot.channel", "what is drawn over time", [.. FlightChannel.All.Select(channel => channel.Name)], KeySpec.RequiredText),
        Seconds("plot.from_s", "begin of the drawing", "0"),
        Seconds("plot.to_s", "end of the drawing", "end of the drill"),
        Text("question.text", "the question, asked before anything is shown"),
        Text("choice.text", "an answer"),
        .. Ranges("choice", "outcomes for which this answer is right"),
        .. Ranges("claim", "what the lesson says will come out on its own build"),
        Text("explain.text", "why it comes out so"),
        Text("try.text", "what to change oneself and what to look for"),
        new("try.from", KeyKind.Number, "", 1, -Far, Far, null, "the smaller value of [change]", "least value of the changed key", []),
        new("try.to", KeyKind.Number, "", 1, -Far, Far, null, "the larger value of [change]", "largest value of the changed key", []),
        Optional("care.text", "a caution for those who do the same with a real craft", "none"),
    ];

    /// <summary>Tables of a lesson; [[choice]] stands several times.</summary>
    public static IReadOnlyList<string> Tables { get; } = [.. Keys.Select(key => key.Table).Where(table => table.Length > 0).Distinct(), "same", "change"];

    /// <summary>Tables without which a file is no lesson.</summary>
    internal static IReadOnlyList<string> Needed { get; } = ["lesson", "same", "change", "number", "plot", "question", "choice", "claim", "explain", "try"];

    /// <summary>The key of a table; null where there is none.</summary>
    public static KeySpec? Find(string table, string key) => Keys.FirstOrDefault(k => k.Table == table && k.Key == key);

    /// <summary>Markdown: all keys of the fixed tables.</summary>
    public static string Markdown() => Table(Keys, key => key.Table switch { "" => key.Key, "choice" => $"[[choice]] {key.Key}", _ => $"[{key.Table}] {key.Key}" });

    /// <summary>Markdown: one table of keys.</summary>
    internal static string Table(IEnumerable<KeySpec> keys, Func<KeySpec, string> name) =>
        "| key | allowed | when missing | meaning |\n|---|---|---|---|\n"
        + string.Concat(keys.Select(key => $"| `{name(key)}` | {Allowed(key)} | {(key.Required ? "**required**" : key.WhenMissing)} | {key.Meaning} |\n"));

    private static string Allowed(KeySpec key) => key switch
    {
        { Key: "percent" or "difference" } => "two numbers [low, high]",
        { Table: "try", Kind: KeyKind.Number } => "as the changed key",
        { Key: "format" } => $"{key.Maximum}",
        { Kind: KeyKind.Text } => "text in quotes",
        // long lists of words stand in tables of their own
        { Kind: KeyKind.Choice, Choices.Count: > 8 } => "a word, see below",
        _ => key.Range,
    };

    /// <summary>Markdown: what can be read at every moment of a flight, with its unit.</summary>
    public static string ChannelMarkdown() =>
        "| channel | what it is | unit |\n|---|---|---|\n" + string.Concat(FlightChannel.All.Select(channel => $"| `{channel.Name}` | {channel.Title} | {channel.Display.Symbol} |\n"));

    private static KeySpec Text(string path, string meaning) => Optional(path, meaning, KeySpec.RequiredText);

    private static KeySpec Optional(string path, string meaning, string missing) => new(path, KeyKind.Text, "", 1, 0, 0, null, missing, meaning, []);

    private static KeySpec Choice(string path, string meaning, IReadOnlyList<string> words, string missing = "not given") =>
        new(path, KeyKind.Choice, "", 1, 0, 0, null, missing, meaning, words);

    private static KeySpec Seconds(string path, string meaning, string missing) => new(path, KeyKind.Number, "s", 1, 0, 30, null, missing, meaning, []);

    private static KeySpec[] Ranges(string table, string meaning) =>
    [
        new($"{table}.percent", KeyKind.Number, "%", 1, -Far, Far, null, "difference instead", $"{meaning}: the second number less the first, in percent of the first; inf and -inf leave an end open", []),
        new($"{table}.difference", KeyKind.Number, "", 1, -Far, Far, null, "percent instead", $"{meaning}: the same in the number's own unit", []),
    ];
}
