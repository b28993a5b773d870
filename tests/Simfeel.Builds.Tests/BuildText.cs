using System.Runtime.CompilerServices;

namespace Simfeel.Builds.Tests;

/// <summary>Build files for tests: the smallest one, and ways to change a line of it.</summary>
internal static class BuildText
{
    /// <summary>Only what is required. Line numbers matter to the tests of messages.</summary>
    public const string Minimal =
        """
        format = 1
        name = "Test"

        [frame]
        wheelbase_mm = 225

        [motor]
        stator_diameter_mm = 22
        stator_height_mm = 7
        kv_rpm_per_V = 1800

        [propeller]
        diameter_in = 5.1
        pitch_in = 4.3
        blades = 3

        [battery]
        cells = 6
        capacity_mAh = 1300

        """;

    /// <summary>The minimal build with a line added below a table's heading.</summary>
    public static string With(string table, string line) => Minimal.Replace($"[{table}]\n", $"[{table}]\n{line}\n", StringComparison.Ordinal);

    /// <summary>The minimal build with text at its end.</summary>
    public static string Plus(string text) => Minimal + text;

    /// <summary>The build of a text that must have no error.</summary>
    public static Build Read(string text)
    {
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.True(result.Build is not null, string.Join('\n', result.Diagnostics));
        return result.Build;
    }

    /// <summary>Line on which a piece of text starts, counted from 1.</summary>
    public static int LineOf(string text, string piece)
    {
        int at = text.IndexOf(piece, StringComparison.Ordinal);
        Assert.True(at >= 0, $"\"{piece}\" is not in the text.");
        return 1 + text.AsSpan(0, at).Count('\n');
    }

    /// <summary>A starter build.</summary>
    public static Build Starter(string name) => BuildReader.Read(Path.Combine(StarterDirectory(), name + ".toml")).Build!;

    /// <summary>The builds that come with the program.</summary>
    public static string StarterDirectory([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "assets", "builds"));
}
