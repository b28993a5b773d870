using Simfeel.Builds;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>In what the builds differ, and which numbers are estimates.</summary>
internal static class PartsSection
{
    public static Section Of(FeelSheet sheet)
    {
        IReadOnlyList<BuildDifference> differences = sheet.Differences;
        return new("parts", "What differs in the builds",
        [
            differences.Count == 0
                ? new Paragraph("The build files say the same in every number.")
                : new Fold($"{differences.Count} numbers of the build files differ", [Differences(sheet, differences)]),
            Estimates(sheet) is { Groups.Count: > 0 } table
                ? new Fold("Numbers that the files do not give, and the rule that stands in", [table])
                : new Paragraph("Both files give every number; nothing is estimated."),
        ]);
    }

    private static DataTable Differences(FeelSheet sheet, IReadOnlyList<BuildDifference> differences)
    {
        (string a, string b) = sheet.Comparison.Names;
        return new(
            "By part of the build file; from: where the number comes from",
            [
                new("number"), new($"{Signs.Of(false)} {a}", Tone: Tone.BuildA), new($"{Signs.Of(true)} {b}", Tone: Tone.BuildB), Column.Unit,
                new("A from", true), new("B from", true),
            ],
            [
                .. differences.GroupBy(difference => difference.Group).Select(group => new RowGroup(group.Key.Replace('_', ' '),
                [
                    .. group.Select(difference => new Row(
                    [
                        Short(difference.Key), Number(difference.A), Number(difference.B), (difference.A ?? difference.B)!.Unit,
                        From(difference.A), From(difference.B),
                    ])),
                ])),
            ]);
    }

    private static DataTable Estimates(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        Dictionary<string, BuildValue> ofA = Ruled(sheet.A), ofB = Ruled(sheet.B);
        return new(
            "A dash: that build's file gives the number, or has no such part",
            [new("number"), new($"{Signs.Of(false)} {a}", Tone: Tone.BuildA), new($"{Signs.Of(true)} {b}", Tone: Tone.BuildB), Column.Unit, new("rule", true)],
            [
                .. ofA.Keys.Union(ofB.Keys).GroupBy(BuildDifference.TableOf).Select(group => new RowGroup(group.Key.Replace('_', ' '),
                [
                    .. group.Select(key => (Key: key, A: ofA.GetValueOrDefault(key), B: ofB.GetValueOrDefault(key))).Select(found => new Row(
                    [
                        Short(found.Key), Number(found.A), Number(found.B), (found.A ?? found.B)!.Unit, (found.A ?? found.B)!.Rule,
                    ])),
                ])),
            ]);

        static Dictionary<string, BuildValue> Ruled(AssembledBuild build) =>
            BuildDifference.ByName(build.Build).Where(pair => pair.Value.Source == ValueSource.Rule).ToDictionary();
    }

    private static string Short(string key) => key[(key.LastIndexOf('.') + 1)..];

    private static string Number(BuildValue? value) => value is null ? Numbers.Missing : Numbers.Plain(value.Typical);

    private static string From(BuildValue? value) => value?.Source switch
    {
        null => Numbers.Missing,
        ValueSource.Stated => "the file",
        ValueSource.Measured => "measured",
        ValueSource.Datasheet => "data sheet",
        ValueSource.Estimated => "the file's estimate",
        ValueSource.Rule => "our rule",
        ValueSource.Default => "usual value",
        _ => "changed after reading",
    };
}
