using System.Text.Json;
using System.Xml.Linq;

namespace Simfeel.Tests;

/// <summary><c>bench</c> as users run it.</summary>
public sealed class BenchCommandTests : IDisposable
{
    private const string Readings =
        "format = 1\nbuild = \"Wagtail\"\n[mass]\nmass_g = 603\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [31.0, 30.8, 31.1]\n[balance_x]\nedge_mm = -3\n";

    private readonly TempFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Worksheet_and_template_are_written_and_never_over_anything()
    {
        string sheet = At("bench.html"), template = At("mine.toml");
        CliResult result = Cli.Run("bench", "wagtail", "--worksheet", sheet, "--template", template);
        Assert.Equal(("", 0), (result.Errors, result.ExitCode));
        Assert.Contains("20 swings", result.Output, StringComparison.Ordinal);
        Assert.Contains("UNPLUGGED", result.Output, StringComparison.Ordinal);
        Assert.Equal("Wagtail on the bench", XDocument.Load(sheet).Root!.Descendants("h1").Single().Value);
        Assert.Contains("# mass_g = 0.0", File.ReadAllText(template), StringComparison.Ordinal);

        File.WriteAllText(template, Readings);
        CliResult again = Cli.Run("bench", "wagtail", "--worksheet", At("other.md"), "--template", template);
        Assert.Equal(1, again.ExitCode);
        Assert.Contains("--force", again.Errors, StringComparison.Ordinal);
        Assert.Equal(Readings, File.ReadAllText(template));
        Assert.False(File.Exists(At("other.md")));
        Assert.Equal(0, Cli.Run("bench", "wagtail", "--template", template, "--force").ExitCode);
        Assert.StartsWith("# Bench readings", File.ReadAllText(template), StringComparison.Ordinal);
        Assert.Equal(1, Cli.Run("bench", "wagtail", "--results", template).ExitCode);
        Assert.Equal(["bench.html", "mine.toml"], Directory.GetFiles(_folder.Path).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void Readings_become_a_verdict_a_page_and_a_copy()
    {
        string file = Write(Readings), copy = At("measured.toml"), page = At("result.html");
        CliResult result = Cli.Run("bench", "wagtail", "--results", file, "--sheet", page, "--out", copy);
        Assert.Equal(("", 0), (result.Errors, result.ExitCode));
        Assert.StartsWith("Wagtail: 1 of 3 measured numbers agree", result.Output, StringComparison.Ordinal);
        Assert.Contains("Inertia, roll: the model is 4.2 % low: look at the motors (61 % of it: motor.mass_g", result.Output, StringComparison.Ordinal);
        Assert.Equal("Wagtail: model against measurement", XDocument.Load(page).Root!.Descendants("h1").Single().Value);
        Assert.Contains("all_up_mass_g = { low = 601, typical = 603, high = 605, source = \"measured\" }", File.ReadAllText(copy), StringComparison.Ordinal);

        // held against itself the copy agrees, and says that it was measured
        JsonElement root = Json(Cli.Run("bench", copy, "--results", file, "--json"));
        JsonElement roll = Quantity(root, "measured.ixx_g_m2");
        Assert.True(roll.GetProperty("agrees").GetBoolean());
        Assert.True(roll.GetProperty("model_was_measured").GetBoolean());
        Assert.Equal(1.511e-3, roll.GetProperty("measured").GetDouble(), 6);
        Assert.Equal("kg m2", roll.GetProperty("unit").GetString());
        Assert.Equal(JsonValueKind.Null, Quantity(root, "measured.iyy_g_m2").GetProperty("measured").ValueKind);
        Assert.Equal(JsonValueKind.Null, root.GetProperty("written").ValueKind);
    }

    /// <summary>A copy that would be no build is refused after the result is shown, and nothing is written.</summary>
    [Fact]
    public void An_impossible_measurement_is_shown_and_not_written()
    {
        string file = Write("format = 1\n[mass]\nmass_g = 598\n[yaw]\nspacing_mm = 170\nlength_mm = 1000\ntimes_s = [36.5, 36.6]\n"), copy = At("measured.toml");
        CliResult result = Cli.Run("bench", "wagtail", "--results", file, "--out", copy);
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("Look again: No body has these inertias", result.Output, StringComparison.Ordinal);
        Assert.Contains("measured.izz_g_m2", result.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(copy));
    }

    [Fact]
    public void The_plan_is_there_for_machines()
    {
        JsonElement root = Json(Cli.Run("bench", "curlew", "--json"));
        Assert.Equal(3, root.GetProperty("tests").GetArrayLength());
        Assert.All(root.GetProperty("tests").EnumerateArray(), test => Assert.InRange(test.GetProperty("expected_period_s").GetDouble(), 1, 2));
    }

    [Fact]
    public void Help_shows_examples()
    {
        CliResult result = Cli.Run("bench", "--help");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("EXAMPLES", result.Output, StringComparison.Ordinal);
        Assert.Contains("--worksheet", result.Output, StringComparison.Ordinal);
        Assert.Contains("--results", result.Output, StringComparison.Ordinal);
    }

    public static TheoryData<string[], int, string> Mistakes => new()
    {
        { ["bench"], 2, "BUILD" },
        { ["bench", "no-such"], 1, "no-such" },
        { ["bench", "wagtail", "--results", "no-such.toml"], 1, "no such file" },
        { ["bench", "wagtail", "--sheet", "x.html"], 2, "--results" },
        { ["bench", "wagtail", "--out", "x.toml"], 2, "--results" },
        { ["bench", "wagtail", "--worksheet", "x.pdf"], 2, ".html or .md" },
        { ["bench", "wagtail", "--worksheet"], 2, "--worksheet" },
        { ["bench", "wagtail", "--template", "x.html"], 2, ".toml" },
        { ["bench", "wagtail", "--results", "x.toml", "--template", "y.toml"], 2, "before measuring" },
        { ["bench", "wagtail", "--worksheet", "no-such-folder/x.html"], 1, "no folder" },
        { ["bench", "wagtail", "--results", "no-such.toml", "--out", "no-such.toml", "--force"], 1, "is read here" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_gets_one_clear_message_and_its_exit_code(string[] args, int exitCode, string names) =>
        Cli.RunMistaken(args, exitCode, names);

    [Fact]
    public void A_wrong_reading_gets_its_place()
    {
        string file = Write(Readings.Replace("spacing_mm = 130", "spacing_mm = 1.3", StringComparison.Ordinal));
        CliResult result = Cli.Run("bench", "wagtail", "--results", file);
        Assert.Equal((1, ""), (result.ExitCode, result.Output));
        Assert.Equal($"{file}:6:1: error: roll.spacing_mm = 1.3: This is too small; allowed is 10 to 3000 mm.", result.Errors.Trim());
    }

    private string At(string name) => _folder.File(name);

    private string Write(string text)
    {
        string path = At("readings.toml");
        File.WriteAllText(path, text);
        return path;
    }

    private static JsonElement Quantity(JsonElement root, string key) =>
        root.GetProperty("quantities").EnumerateArray().Single(quantity => quantity.GetProperty("key").GetString() == key);

    private static JsonElement Json(CliResult result)
    {
        Assert.Equal(("", 0), (result.Errors, result.ExitCode));
        return JsonDocument.Parse(result.Output).RootElement;
    }
}
