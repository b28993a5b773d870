using Simfeel.Builds.Format;

namespace Simfeel.Flight.Fields;

/// <summary>The field-file format, version 1: every key with its unit, range, default and meaning.</summary>
public static class FieldFormat
{
    /// <summary>The version that this program fully understands.</summary>
    public const int Version = 1;

    /// <summary>Largest number of tables of one kind.</summary>
    public const int MostOfAKind = 200;

    /// <summary>Largest number of solid things that all tables make together; contact asks every one near a craft.</summary>
    public const int MostSolids = 400;

    /// <summary>Largest number of lines and rings that all tables make together.</summary>
    public const int MostMarks = 400;

    /// <summary>Shortest wall, m.</summary>
    internal const double LeastWall = 0.2;

    private const double Degree = Math.PI / 180;

    /// <summary>All keys in the order of the documentation.</summary>
    public static IReadOnlyList<KeySpec> Keys { get; } =
    [
        new("format", KeyKind.Count, "", 1, 1, 1000, Version, $"{Version}", "version of the file format", []),
        Text("field.name", "name of the field"),
        Angle("field.start_heading_deg", "where the craft look at their start, from north towards east"),
        Required("field.pilot_north_m", -2000, 2000, "where the pilot stands, north of the start pad"),
        Required("field.pilot_east_m", -2000, 2000, "where the pilot stands, east of the start pad"),
        Length("field.pilot_eye_height_m", 0.3, 20, 1.7, "height of the pilot's eye above the ground"),
        Required("field.sea_depth_m", 0.5, 200, "how far the sea lies below the land"),
        .. Place("land", "a corner of the land"),
        .. Place("building", "its middle"),
        Required("building.length_m", 0.2, 100, "length"),
        Required("building.width_m", 0.2, 100, "width"),
        Required("building.height_m", 0.1, 60, "height"),
        Angle("building.heading_deg", "direction of its length, from north towards east"),
        .. Ends("wall"),
        Required("wall.height_m", 0.1, 30, "height"),
        Length("wall.thickness_m", 0.2, 5, 0.4, "thickness"),
        Length("wall.gap_m", 0, 100, 0, "width of a gap, 0 for none"),
        Length("wall.gap_from_m", 0, 6000, 0, "where the gap begins, from the wall's first end along it"),
        Length("wall.lintel_m", 0, 30, 0, "height above which masonry closes the gap again, 0 for open above"),
        Text("gate.name", "short name, its own for each gate"),
        .. Place("gate", "middle of the opening"),
        Angle("gate.heading_deg", "direction in which one flies through, from north towards east"),
        Required("gate.width_m", 0.5, 20, "width of the opening"),
        Required("gate.height_m", 0.5, 20, "height of the opening"),
        Length("gate.base_m", 0, 50, 0, "lower edge of the opening above the ground; above 0 it has a sill"),
        Length("gate.bar_m", 0.05, 2, 0.12, "thickness of its bars, around the opening"),
        .. Place("pole", "its foot"),
        Required("pole.height_m", 0.2, 60, "height"),
        Length("pole.diameter_m", 0.05, 2, 0.12, "diameter"),
        .. Row("pole"),
        .. Place("tree", "its foot"),
        Required("tree.height_m", 1, 60, "height"),
        Required("tree.crown_m", 0.5, 30, "diameter of the crown"),
        Length("tree.trunk_m", 0.05, 3, 0.3, "diameter of the trunk"),
        .. Row("tree"),
        .. Place("rock", "its middle; off the shore it stands in the sea"),
        Required("rock.diameter_m", 0.2, 30, "diameter"),
        Required("rock.height_m", 0.1, 30, "height above the ground or the sea"),
        .. Place("lighthouse", "its foot"),
        Required("lighthouse.height_m", 3, 80, "height, lamp included"),
        Required("lighthouse.diameter_m", 1, 20, "diameter of the tower"),
        .. Ends("line"),
        Length("line.paint_m", 0.02, 5, 0.15, "width of the paint"),
        .. Row("line"),
        .. Place("ring", "its middle"),
        Required("ring.radius_m", 0.1, 200, "radius"),
        Length("ring.paint_m", 0.02, 5, 0.1, "width of the paint"),
    ];

    /// <summary>Names of the tables in the order of the documentation; all but <c>field</c> may stand many times.</summary>
    public static IReadOnlyList<string> Tables { get; } = [.. Keys.Select(key => key.Table).Where(table => table.Length > 0).Distinct()];

    private static readonly Dictionary<string, KeySpec> ByPath = Keys.ToDictionary(key => key.Path, StringComparer.Ordinal);

    /// <summary>Markdown: one table of keys per table of the file, with range, default and meaning.</summary>
    public static string Markdown() =>
        FormatReference.Markdown(Keys, "###", table => table switch { "" => "top of the file", "field" => "[field]", _ => $"[[{table}]]" });

    /// <summary>Allowed steps of a row, with the unit.</summary>
    internal static string StepRange => Find("pole", "step_north_m")!.Range;

    internal static KeySpec? Find(string table, string key) => ByPath.GetValueOrDefault(table.Length > 0 ? $"{table}.{key}" : key);

    private static KeySpec[] Place(string table, string what) =>
    [
        Required(table + ".north_m", -2000, 2000, what + ", north of the start pad"),
        Required(table + ".east_m", -2000, 2000, what + ", east of the start pad"),
    ];

    private static KeySpec[] Ends(string table) =>
    [
        Required(table + ".from_north_m", -2000, 2000, "its first end, north of the start pad"),
        Required(table + ".from_east_m", -2000, 2000, "its first end, east of the start pad"),
        Required(table + ".to_north_m", -2000, 2000, "its other end, north of the start pad"),
        Required(table + ".to_east_m", -2000, 2000, "its other end, east of the start pad"),
    ];

    private static KeySpec[] Row(string table) =>
    [
        new(table + ".count", KeyKind.Count, "", 1, 1, 100, 1, "1", "how many of them stand in a row", []),
        Length(table + ".step_north_m", -500, 500, 0, "from one of the row to the next, to the north"),
        Length(table + ".step_east_m", -500, 500, 0, "from one of the row to the next, to the east"),
    ];

    private static KeySpec Required(string path, double minimum, double maximum, string meaning) =>
        new(path, KeyKind.Number, "m", 1, minimum, maximum, null, KeySpec.RequiredText, meaning, []);

    private static KeySpec Length(string path, double minimum, double maximum, double value, string meaning) =>
        new(path, KeyKind.Number, "m", 1, minimum, maximum, value, $"{value:G6} m", meaning, []);

    private static KeySpec Angle(string path, string meaning) =>
        new(path, KeyKind.Number, "deg", Degree, -360, 360, 0, "0 deg", meaning, []);

    private static KeySpec Text(string path, string meaning) =>
        new(path, KeyKind.Text, "", 1, 0, 0, null, KeySpec.RequiredText, meaning, []);
}
