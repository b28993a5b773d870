using Simfeel.Builds;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Sheet.Json;
using Simfeel.Studies.Sheet.Sections;

namespace Simfeel.Studies.Sheet;

/// <summary>A feel sheet for machines.</summary>
public static class FeelSheetJson
{
    /// <summary>
    /// The content as an object model of dictionaries, lists, texts, numbers and truth values. SI units named in the keys, or in a
    /// <c>unit</c> beside the numbers where they are of several kinds; NaN stays NaN, for JSON's writer to make it null.
    /// </summary>
    public static Dictionary<string, object?> Of(FeelSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        Comparison comparison = sheet.Comparison;
        return new()
        {
            ["version"] = sheet.Version,
            ["a"] = Build(sheet.A, sheet.Fingerprints.A),
            ["b"] = Build(sheet.B, sheet.Fingerprints.B),
            ["policy"] = comparison.Policy,
            ["other_policy"] = sheet.OtherPolicy.Policy,
            ["seed"] = comparison.Field.Seed,
            ["effort"] = comparison.Effort,
            ["effects"] = comparison.Field.Effects.ToString(),
            ["start_height_m"] = comparison.Field.StartHeight,
            ["air"] = new Dictionary<string, object?>
            {
                ["density_kg_m3"] = sheet.A.Air.Density,
                ["temperature_K"] = sheet.A.Air.Temperature,
                ["pressure_Pa"] = sheet.A.Air.Pressure,
            },
            ["sentences"] = WordsSection.Telling(sheet),
            ["cautions"] = Cautions.Of(comparison),
            ["not_modelled"] = sheet.NotModelled,
            ["metrics"] = MetricsJson.Of(sheet),
            ["styles"] = StudiesJson.Styles(sheet.Styles),
            ["blame"] = StudiesJson.Blame(sheet.Blame),
            ["growth"] = StudiesJson.Growth(sheet.Growth),
            ["uncertainty"] = StudiesJson.Uncertainty(sheet.Uncertainty),
            ["reserve"] = new Dictionary<string, object?> { ["a"] = PhysicsJson.Reserve(comparison.A, comparison.Profile), ["b"] = PhysicsJson.Reserve(comparison.B, comparison.Profile) },
            ["mass"] = new Dictionary<string, object?> { ["a"] = PhysicsJson.Mass(sheet.A), ["b"] = PhysicsJson.Mass(sheet.B) },
            ["traces"] = PhysicsJson.Traces(comparison),
            ["differences"] = sheet.Differences.Select(difference => new Dictionary<string, object?>
            {
                ["key"] = difference.Key,
                ["unit"] = (difference.A ?? difference.B)?.Unit,
                ["a"] = difference.A?.Typical,
                ["b"] = difference.B?.Typical,
                ["source_a"] = Source(difference.A),
                ["source_b"] = Source(difference.B),
            }).ToList(),
            ["tuning"] = new Dictionary<string, object?> { ["a"] = ComparisonJson.Tuning(comparison.A), ["b"] = ComparisonJson.Tuning(comparison.B) },
            ["other_tuning"] = new Dictionary<string, object?> { ["a"] = ComparisonJson.Tuning(sheet.OtherPolicy.A), ["b"] = ComparisonJson.Tuning(sheet.OtherPolicy.B) },
            ["delays_s"] = ComparisonJson.Delays(comparison),
        };
    }

    private static Dictionary<string, object?> Build(AssembledBuild build, string fingerprint) => new()
    {
        ["name"] = build.Build.Name,
        ["class"] = build.Build.ClassLabel,
        ["description"] = build.Build.Description,
        ["sha256"] = fingerprint,
        ["estimated"] = build.Values.Where(value => value.Source == ValueSource.Rule).Select(value => new Dictionary<string, object?>
        {
            ["key"] = value.Key,
            ["unit"] = value.Unit,
            ["value"] = value.Typical,
            ["rule"] = value.Rule,
        }).ToList(),
    };

    private static string? Source(BuildValue? value) => value?.Source.ToString().ToLowerInvariant();
}
