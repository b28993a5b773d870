using Simfeel.Builds;
using Simfeel.Physics.Air;
using Simfeel.Studies.Compare;
using Simfeel.Studies.Sheet.Writing;

namespace Simfeel.Studies.Sheet.Sections;

/// <summary>Which builds, and one line of how they were flown.</summary>
internal static class TitleSection
{
    public static string Title(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        return $"{a} and {b}: how they differ in flight";
    }

    public static string Line(FeelSheet sheet)
    {
        Comparison comparison = sheet.Comparison;
        return $"{Air(sheet.A.Air)} The same pilot, stick effort {comparison.Effort:F2}. Tuning policy {comparison.Policy}. "
            + $"Drills start {comparison.Field.StartHeight:G4} m above the ground. Computed from the parts; nobody has flown these two.";
    }

    public static Section Of(FeelSheet sheet)
    {
        (string a, string b) = sheet.Comparison.Names;
        return new("plates", "Feel sheet", [Plate(sheet, sheet.A, a, false), Plate(sheet, sheet.B, b, true)]);
    }

    /// <summary>Air in words.</summary>
    public static string Air(AirState air) =>
        $"Still air of {air.Density:F3} kg/m3 ({air.Temperature - 273.15:F0} \u00B0C, {air.Pressure / 100:F0} hPa).";

    private static Plate Plate(FeelSheet sheet, AssembledBuild build, string name, bool isB)
    {
        string[] words = [Words.Capital(build.Build.ClassLabel.Trim()), build.Build.Description.Trim()];
        return new(
            name,
            string.Join(" ", words.Where(word => word.Length > 0).Select(word => word[^1] is '.' or '!' or '?' ? word : word + ".")),
            [
                ("mass", $"{build.Craft.Mass * 1000:F0} g"),
                Fact("thrust_to_weight", "thrust to weight"),
                Fact("hover_rotor_speed", "rotors in hover"),
                Fact("hover_endurance", "hover, full to 20 %"),
            ],
            isB);

        (string, string) Fact(string metric, string title)
        {
            MetricPair pair = sheet.Comparison.Metrics.First(known => known.Metric.Name == metric);
            return (title, Numbers.Of(pair.Metric, isB ? pair.B : pair.A));
        }
    }
}
