namespace Simfeel.Builds.Format;

/// <summary>The build-file format, version 1: every key with its unit, range, default and meaning.</summary>
public static partial class BuildFormat
{
    /// <summary>The version that this program writes and fully understands.</summary>
    public const int Version = 1;

    /// <summary>Largest file that is read, bytes. A build file has a few kilobytes.</summary>
    public const int MaxFileSize = 1024 * 1024;

    /// <summary>Largest number of <c>[[extra]]</c> parts.</summary>
    public const int MaxExtras = 64;

    /// <summary>All keys in the order of the documentation.</summary>
    public static IReadOnlyList<KeySpec> Keys { get; } =
        [.. Top, .. Frame, .. Motor, .. Propeller, .. SpeedController, .. Battery, .. Stack, .. Camera, .. Extra, .. Drag, .. Gyro, .. Pilot, .. Measured];

    /// <summary>Names of the tables in the order of the documentation.</summary>
    public static IReadOnlyList<string> Tables { get; } = [.. Keys.Select(k => k.Table).Where(t => t.Length > 0).Distinct()];

    private static readonly Dictionary<string, KeySpec> ByPath = Keys.ToDictionary(k => k.Path, StringComparer.Ordinal);

    /// <summary>The key with a path such as <c>motor.mass_g</c>; <c>extra[2].mass_g</c> finds <c>extra.mass_g</c>. Null where there is none.</summary>
    public static KeySpec? Find(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        int open = path.IndexOf('[', StringComparison.Ordinal), close = path.IndexOf(']', StringComparison.Ordinal);
        string plain = open > 0 && close > open ? path[..open] + path[(close + 1)..] : path;
        return ByPath.GetValueOrDefault(plain);
    }

    /// <summary>Number of the extra part that a full key belongs to, from 1: <c>extra[2].mass_g</c> gives 2; 0 for all other keys.</summary>
    public static int ExtraNumber(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key.StartsWith("extra[", StringComparison.Ordinal) ? int.Parse(key.AsSpan(6, key.IndexOf(']', StringComparison.Ordinal) - 6)) : 0;
    }

    private static KeySpec Required(string path, string unit, double toSI, double minimum, double maximum, string meaning) =>
        new(path, KeyKind.Number, unit, toSI, minimum, maximum, null, KeySpec.RequiredText, meaning, []);

    private static KeySpec Default(string path, string unit, double toSI, double minimum, double maximum, double value, string meaning) =>
        new(path, KeyKind.Number, unit, toSI, minimum, maximum, value, WithUnit(value, unit), meaning, []);

    private static KeySpec Estimated(string path, string unit, double toSI, double minimum, double maximum, string rule, string meaning) =>
        new(path, KeyKind.Number, unit, toSI, minimum, maximum, null, "estimated: " + rule, meaning, []);

    private static KeySpec Optional(string path, string unit, double toSI, double minimum, double maximum, string otherwise, string meaning) =>
        new(path, KeyKind.Number, unit, toSI, minimum, maximum, null, otherwise, meaning, []);

    private static KeySpec Count(string path, double minimum, double maximum, double? value, string meaning) =>
        new(path, KeyKind.Count, "", 1, minimum, maximum, value, value is double v ? $"{v:G6}" : KeySpec.RequiredText, meaning, []);

    private static KeySpec Text(string path, bool required, string meaning) =>
        new(path, KeyKind.Text, "", 1, 0, 0, null, required ? KeySpec.RequiredText : "empty", meaning, []);

    /// <summary>A word out of a list; the first one is the default.</summary>
    private static KeySpec Choice(string path, string meaning, params string[] choices) =>
        new(path, KeyKind.Choice, "", 1, 0, 0, null, $"\"{choices[0]}\"", meaning, choices);

    private static string WithUnit(double value, string unit) => unit.Length == 0 ? $"{value:G6}" : $"{value:G6} {unit}";

    private const double Milli = 1e-3;
    private const double Degree = Math.PI / 180;
    private const double SquareCentimetre = 1e-4;
    private const double GramSquareMillimetre = 1e-9;
    private const double RpmPerVolt = Math.PI / 30;
}
