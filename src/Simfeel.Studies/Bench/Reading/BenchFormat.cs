using Simfeel.Builds.Format;
using Simfeel.Physics.Air;

namespace Simfeel.Studies.Bench.Reading;

/// <summary>
/// The format of bench readings, version 1: every key with its unit, range, default and meaning. Keys that end in
/// <c>_pm_</c> and a unit hold the standard error of a reading: two readings in three lie that close to the truth.
/// </summary>
public static class BenchFormat
{
    /// <summary>The version that this program fully understands.</summary>
    public const int Version = 1;

    /// <summary>Most readings in a list.</summary>
    public const int MostReadings = 20;

    private const double Milli = 1e-3, Degree = Math.PI / 180;

    /// <summary>All keys in the order of the file.</summary>
    public static IReadOnlyList<KeySpec> Keys { get; } =
    [
        new("format", KeyKind.Count, "", 1, 1, 1000, Version, $"{Version}", "version of the file format", []),
        new("build", KeyKind.Text, "", 1, 0, 0, null, "empty", "name of the build that was measured, checked against the one it is held against", []),
        Number("gravity_m_s2", "m/s2", 1, 9.76, 9.84, StandardAtmosphere.StandardGravity, "gravity at your place: 9.780 at the equator, 9.832 at the poles"),
        Number("mass.mass_g", "g", Milli, 5, 50000, null, "mass ready to fly: battery and propellers on, without the stick", "not weighed"),
        Number("mass.mass_pm_g", "g", Milli, 0.001, 1000, null, "standard error of the scale", "1 g or 0.2 % of the mass, whichever is less"),
        new("timing.swings", KeyKind.Count, "", 1, 1, 200, 20, "20", "swings in one timing, there and back counted as one", []),
        Number("timing.run_pm_s", "s", 1, 0.001, 5, 0.2, "standard error of one timing by hand; used while there are too few timings to see their scatter"),
        Number("timing.shared_pm_s", "s", 1, 0, 5, 0.05, "standard error that all timings share, such as a habit of pressing late"),
        .. Swing("roll", "nose up or down"),
        .. Swing("pitch", "one side up"),
        .. Swing("yaw", "level"),
        .. Edge("balance_x", "forward of the middle positive"),
        .. Scales("balance_x", "front", "rear", "forward"),
        .. Edge("balance_y", "right of the middle positive"),
        .. Scales("balance_y", "right", "left", "to the right"),
        .. Edge("balance_z", "craft on its side; below the arms' middle positive, so above it negative"),
        Number("balance_z.hook_x_mm", "mm", Milli, -1000, 1000, null, "place of the hook, forward of the middle positive", "not hung"),
        Number("balance_z.hook_z_mm", "mm", Milli, -500, 500, null, "place of the hook, below the arms' middle positive", "not hung"),
        Number("balance_z.hook_angle_deg", "deg", Degree, -80, 80, null, "angle between the plumb line through the hook and the arms' plane, positive where the line passes above the arms", "not hung"),
        Number("balance_z.hook_pm_mm", "mm", Milli, 0, 100, 1, "standard error of the hook's places"),
        Number("balance_z.hook_angle_pm_deg", "deg", Degree, 0, 20, 1, "standard error of the angle"),
    ];

    /// <summary>Names of the tables in the order of the file.</summary>
    public static IReadOnlyList<string> Tables { get; } = [.. Keys.Select(key => key.Table).Where(table => table.Length > 0).Distinct()];

    private static readonly Dictionary<string, KeySpec> ByPath = Keys.ToDictionary(key => key.Path, StringComparer.Ordinal);

    /// <summary>Whether a key holds one reading or a list of repeated ones.</summary>
    internal static bool MayRepeat(KeySpec key) => key.Key is "times_s" or "edge_mm";

    /// <summary>Allowed values in words, with the unit.</summary>
    internal static string Range(KeySpec key) => MayRepeat(key) ? $"1 to {MostReadings} readings of {key.Range}" : key.Range;

    internal static KeySpec? Find(string table, string key) => ByPath.GetValueOrDefault(table.Length > 0 ? $"{table}.{key}" : key);

    private static KeySpec[] Swing(string table, string how) =>
    [
        Number(table + ".spacing_mm", "mm", Milli, 10, 3000, null, $"distance between the two wires; the craft hangs {how}", "not swung"),
        Number(table + ".length_mm", "mm", Milli, 50, 20000, null, "free length of the wires", "not swung"),
        Number(table + ".times_s", "s", 1, 0.2, 600, null, "time of all counted swings, one number for each timing: [31.0, 30.8, 31.1]", "not swung"),
        Number(table + ".swing_deg", "deg", Degree, 0, 60, 10, "largest angle from rest, mean of start and end"),
        Number(table + ".stick_mass_g", "g", Milli, 0, 5000, 0, "mass of a thin, even stick that swings along, its middle under the axis"),
        Number(table + ".stick_length_mm", "mm", Milli, 0, 3000, 0, "length of that stick"),
        Number(table + ".spacing_pm_mm", "mm", Milli, 0, 100, 0.5, "standard error of the spacing"),
        Number(table + ".length_pm_mm", "mm", Milli, 0, 500, 1, "standard error of the length"),
        Number(table + ".swing_pm_deg", "deg", Degree, 0, 30, 3, "standard error of the angle"),
    ];

    private static KeySpec[] Edge(string table, string sign) =>
    [
        Number(table + ".edge_mm", "mm", Milli, -500, 500, null, $"where the craft balances on a knife edge, from the middle of the bottom plate, {sign}; several readings in brackets", "not balanced"),
        Number(table + ".edge_pm_mm", "mm", Milli, 0, 100, 1, "standard error of the edge's place"),
    ];

    private static KeySpec[] Scales(string table, string first, string second, string sign) =>
    [
        Number($"{table}.{first}_g", "g", Milli, 0, 50000, null, $"what the {first} scale shows, its support tared", "not weighed"),
        Number($"{table}.{second}_g", "g", Milli, 0, 50000, null, $"what the {second} scale shows, its support tared", "not weighed"),
        Number($"{table}.{first}_at_mm", "mm", Milli, -1000, 1000, null, $"where the {first} support stands, from the middle of the bottom plate, {sign} positive", "not weighed"),
        Number($"{table}.{second}_at_mm", "mm", Milli, -1000, 1000, null, $"where the {second} support stands", "not weighed"),
        Number(table + ".scale_pm_g", "g", Milli, 0.001, 1000, null, "standard error of a scale", "1 g or 0.2 % of the sum, whichever is less"),
        Number(table + ".at_pm_mm", "mm", Milli, 0, 100, 1, "standard error of a support's place"),
    ];

    private static KeySpec Number(string path, string unit, double toSI, double least, double most, double? usual, string meaning, string missing = "") =>
        new(path, KeyKind.Number, unit, toSI, least, most, usual, usual is double value ? $"{value:G6} {unit}" : missing, meaning, []);
}
