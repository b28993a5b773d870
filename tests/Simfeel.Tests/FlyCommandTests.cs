using System.Text.RegularExpressions;

namespace Simfeel.Tests;

/// <summary>What <c>fly</c> says where it cannot: one message, the right exit code, no stack trace.</summary>
public class FlyCommandTests
{
    private static readonly string Library = Path.Combine(AppContext.BaseDirectory, "simfeel.dll");

    private static readonly Dictionary<string, string> NoDisplay = new() { ["DISPLAY"] = "", ["WAYLAND_DISPLAY"] = "", ["SDL_VIDEODRIVER"] = "" };

    private static readonly Dictionary<string, string> Offscreen = new() { ["SDL_VIDEODRIVER"] = "offscreen", ["SDL_AUDIODRIVER"] = "dummy" };

    [Fact]
    public void Without_a_display_it_says_so() =>
        Said(Cli.RunLibrary(Library, NoDisplay, "fly", "wagtail", "curlew"), 3, "display");

    [Fact]
    public void With_an_old_driver_it_says_so()
    {
        Dictionary<string, string> old = new(Offscreen) { ["MESA_GL_VERSION_OVERRIDE"] = "2.1", ["MESA_GLSL_VERSION_OVERRIDE"] = "120" };
        Said(Cli.RunLibrary(Library, old, "fly", "wagtail", "curlew"), 3, "OpenGL 3.3");
    }

    [Theory]
    [InlineData(2, "--size is '1x1'", "fly", "--size", "1x1")]
    [InlineData(2, "--video needs --replay", "fly", "--video", "out.mp4")]
    [InlineData(2, "--replay flies the recording's own builds", "fly", "wagtail", "curlew", "--replay", "flight.arrow")]
    [InlineData(1, "is a folder; name a file", "fly", "--replay", ".")]
    [InlineData(2, "--record needs a value", "fly", "--record")]
    [InlineData(1, "there is no folder", "fly", "--record", "nowhere/flight.arrow")]
    [InlineData(2, "--without names 'rain'", "fly", "--without", "rain")]
    [InlineData(1, "no starter build called 'wagtale'", "fly", "wagtale", "curlew")]
    [InlineData(1, "no field called 'moor'", "fly", "--field", "moor")]
    [InlineData(1, "nowhere.arrow", "fly", "--replay", "nowhere.arrow")]
    public void A_wrong_command_line_is_said(int exitCode, string words, params string[] arguments) =>
        Said(Cli.RunLibrary(Library, Offscreen, arguments), exitCode, words);

    [Fact]
    public void A_broken_build_is_said_with_line_and_range()
    {
        using TempFolder folder = new();
        string file = folder.File("broken.toml");
        string text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "builds", "wagtail.toml"));
        File.WriteAllText(file, text.Replace("wheelbase_mm = 225", "wheelbase_mm = 9999", StringComparison.Ordinal));
        CliResult result = Cli.RunLibrary(Library, Offscreen, "fly", file, "curlew");
        Said(result, 1, "frame.wheelbase_mm = 9999");
        Assert.Matches(new Regex(@":\d+:\d+: error: "), result.Errors);
    }

    private static void Said(CliResult result, int exitCode, string words)
    {
        Assert.Equal(exitCode, result.ExitCode);
        Assert.Contains(words, result.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", result.Errors, StringComparison.Ordinal);
        Assert.Equal("", result.Output);
    }
}
