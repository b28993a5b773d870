using System.Text;
using Simfeel.Fuzz.Mutation;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Fuzz.Targets;

namespace Simfeel.Fuzz.Processes;

/// <summary>Builds, lessons, readings, journals and traces whose names and texts try to lead out of where they belong.</summary>
internal static class HostileCases
{
    /// <summary>Names that a file may give to whatever it names: a build, a polar, a lesson, a craft.</summary>
    private static readonly string[] Names =
    [
        "../escaped", "../../escaped.toml", "/escaped", "..\\\\escaped", "a/../../escaped", "escaped/", "~/escaped", "$(touch escaped)", "`touch escaped`", "; touch escaped", "| touch escaped", "%00", "escaped\\u0000x", "con", "-rf", "--out",
        new('n', 2000), "\u202escaped", "\ud83d\ude00", ".", "..", "/dev/full", "link/escaped",
    ];

    private static readonly Dictionary<string, string> OutLinks = new() { ["link"] = "../outside", ["link.toml"] = "../outside/kept.toml", ["loop"] = "loop", ["section.csv"] = "../outside/section.csv" };

    private static readonly byte[] Build = File.ReadAllBytes(Corpus.PathOf("builds/wagtail.toml"));

    /// <summary>A case of a number.</summary>
    public static HostileCase Make(Dice dice)
    {
        string name = dice.Of(Names);
        return dice.Below(10) switch
        {
            0 => new(["bench", "b.toml", "--worksheet", "out.html", "--template", "out.toml"], Of(("b.toml", Renamed(name))), OutLinks, ["out.html", "out.toml"]),
            1 => new(["fit", "swing", "--build", "b.toml", "--axis", "roll", "--mass-g", "598", "--spacing-mm", "200", "--length-mm", "1000", "--period-s", "1.2", .. dice.Once(2) ? ["--out", "out.toml"] : Array.Empty<string>()], Of(("b.toml", Renamed(name))), OutLinks, ["out.toml", "b-measured.toml"]),
            2 => new(["fit", "stand.csv", "--build", "b.toml", "--out", "out.toml"], Of(("b.toml", Renamed(name)), ("stand.csv", Corpus.Of("bench/wagtail-stand.csv")[0])), OutLinks, ["out.toml"]),
            3 => new(["weigh", "b.toml"], Of(("b.toml", WithPolar(name))), OutLinks, []),
            4 => new(["lesson", "l.toml", "--skip", "--sheet", "out.md", "--log", "out.csv"], Of(("l.toml", Lesson(name)), ("b.toml", Build)), OutLinks, ["out.md", "out.csv"]),
            5 => new(["bench", "b.toml", "--results", "r.toml", "--sheet", "out.md", "--out", "out.toml"], Of(("b.toml", Build), ("r.toml", Text(Corpus.Of("bench/wagtail-bench.toml")[0]).Replace("\"Wagtail\"", $"\"{name}\"", StringComparison.Ordinal))), OutLinks, ["out.md", "out.toml"]),
            6 => new(["sweep-merge", "out.csv", "s.part", "s.part"], Of(("s.part", new SweepTarget().Make(dice))), OutLinks, ["out.csv"]),
            7 => new(["votes", "v.csv"], Of(("v.csv", Text(Corpus.Of("corpus/votes/votes.csv")[0]).Replace("Curlew", name.Replace("\\u0000", "", StringComparison.Ordinal), StringComparison.Ordinal))), OutLinks, []),
            8 => new(["sweep", "b.toml", "--vary", "battery.x_mm=-5..5/2", "--metric", "stop_time", "--out", "out.csv"], Of(("b.toml", Renamed(name))), OutLinks, ["out.csv", "out.csv.part"]),
            _ => new(["fly", "--replay", "t.arrow"], Of(("t.arrow", Trace(name))), OutLinks, []),
        };
    }

    private static Dictionary<string, byte[]> Of(params (string Name, object Content)[] files) =>
        files.ToDictionary(file => file.Name, file => file.Content as byte[] ?? Encoding.UTF8.GetBytes((string)file.Content));

    private static string Text(byte[] bytes) => Encoding.UTF8.GetString(bytes);

    private static string Renamed(string name) => Text(Build).Replace("\"Wagtail\"", $"\"{name}\"", StringComparison.Ordinal);

    private static string WithPolar(string name) => Text(Build).Replace("[propeller]", $"[propeller]\npolar = \"{name}\"", StringComparison.Ordinal);

    private static string Lesson(string name) =>
        Text(Corpus.Of("corpus/lessons")[0]).Replace("build = \"wagtail\"", "build = \"b.toml\"", StringComparison.Ordinal).Replace("\"Longer push\"", $"\"{name}\"", StringComparison.Ordinal).Replace("\"Short\"", $"\"{name}\"", StringComparison.Ordinal);

    private static byte[] Trace(string name) => TraceMaker.WithHeader(TraceMaker.Fly(false), words =>
    {
        foreach (string key in (string[])["a_name", "a_file", "b_file", "field_name"]) words[key] = name;
    });
}
