using System.Text.Json;

namespace Simfeel.Tests;

/// <summary><c>fit</c> and <c>fit swing</c> as users run them.</summary>
public sealed class FitCommandTests : IDisposable
{
    private readonly TempFolder _folder = new();

    private static string Example => SourceTree.FullPath("assets/bench/wagtail-stand.csv");

    private string Out => _folder.File("mine.toml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_table_becomes_a_copy_of_the_build()
    {
        CliResult result = Cli.Run("fit", Example, "--build", "wagtail", "--out", Out);
        Assert.Equal("", result.Errors);
        Assert.Equal(0, result.ExitCode);
        Assert.StartsWith("Your propeller lifts 4 % less than the model thought", result.Output, StringComparison.Ordinal);
        Assert.Contains("column 3 \"Torque [mN m]\": torque, millinewton metre", result.Output, StringComparison.Ordinal);
        Assert.Contains("cuts", result.Output, StringComparison.Ordinal);
        string copy = File.ReadAllText(Out);
        Assert.Contains("# *", copy, StringComparison.Ordinal);
        Assert.Contains("source = \"measured\" }   # *", copy, StringComparison.Ordinal);
        // the copy flies on: it lifts what was measured at full throttle
        JsonElement stand = Json(Cli.Run("stand", Out, "--steps", "2", "--json"));
        double lifted = stand.GetProperty("rows")[1].GetProperty("thrust_N").GetDouble();
        Assert.InRange(lifted / 9.80665e-3, 1580, 1720);
    }

    [Fact]
    public void Json_gives_the_promised_fields()
    {
        JsonElement root = Json(Cli.Run("fit", "stand", Example, "--build", "wagtail", "--no-write", "--json"));
        Assert.Equal(JsonValueKind.Null, root.GetProperty("written").ValueKind);
        Assert.True(root.GetProperty("throttle_is_duty").GetBoolean());
        Assert.InRange(root.GetProperty("rows_used").GetInt32(), 20, 24);
        Assert.Equal(2, root.GetProperty("blocks").GetArrayLength());
        foreach (JsonElement constant in root.GetProperty("constants").EnumerateArray())
        {
            Assert.Contains('.', constant.GetProperty("key").GetString()!);
            Assert.True(constant.GetProperty("value").GetDouble() > 0);
            Assert.Equal(constant.GetProperty("determined").GetBoolean(), constant.GetProperty("why_not").GetString()!.Length == 0);
        }
        Assert.All(root.GetProperty("residuals").EnumerateArray(), r => Assert.InRange(r.GetProperty("rms_percent").GetDouble(), 0, 3));
    }

    /// <summary>A polar lies beside the build: the copy goes beside it too, or nothing is written and the report is shown all the same.</summary>
    [Fact]
    public void A_build_with_a_polar_keeps_it()
    {
        string build = _folder.File("polar.toml"), elsewhere = Directory.CreateDirectory(_folder.File("other")).FullName;
        string text = File.ReadAllText(SourceTree.FullPath("assets/builds/wagtail.toml")).Replace("[propeller]", "[propeller]\npolar = \"section.csv\"", StringComparison.Ordinal);
        File.WriteAllText(build, text);
        File.Copy(SourceTree.FullPath("assets/validation/sda1075-ncrit4.csv"), _folder.File("section.csv"));
        CliResult result = Cli.Run("fit", Example, "--build", build, "--out", Out);
        Assert.Equal("", result.Errors);
        Assert.Equal(0, result.ExitCode);
        Assert.Equal(0, Cli.Run("weigh", Out, "--json").ExitCode);

        CliResult refused = Cli.Run("fit", Example, "--build", build, "--out", Path.Combine(elsewhere, "mine.toml"));
        Assert.Equal(1, refused.ExitCode);
        Assert.Contains("propeller.thrust_factor", refused.Output, StringComparison.Ordinal);
        Assert.Contains("--out", refused.Errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(elsewhere));
    }

    [Fact]
    public void Another_motor_or_axis_is_suspected()
    {
        // without the title that names the propeller, which alone would be refused
        string untitled = _folder.File("untitled.csv");
        File.WriteAllLines(untitled, File.ReadAllLines(Example).Skip(3));
        CliResult other = Cli.Run("fit", untitled, "--build", "redshank", "--no-write");
        Assert.Contains("same motor and propeller?", other.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Caution", Cli.Run("fit", Example, "--build", "wagtail", "--no-write").Output, StringComparison.Ordinal);
        CliResult swing = Cli.Run("fit", "swing", "--build", "wagtail", "--axis", "roll", "--mass-g", "598", "--spacing-mm", "200", "--length-mm", "1000", "--period-s", "20", "--no-write");
        Assert.Contains("Check the axis", swing.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_overwritten_unless_told()
    {
        File.WriteAllText(Out, "mine");
        CliResult refused = Cli.Run("fit", Example, "--build", "wagtail", "--out", Out);
        Assert.Equal(1, refused.ExitCode);
        Assert.Contains("--force", refused.Errors, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Out));
        Assert.Equal(0, Cli.Run("fit", Example, "--build", "wagtail", "--out", Out, "--force").ExitCode);
        Assert.StartsWith("# Wagtail", File.ReadAllText(Out), StringComparison.Ordinal);
    }

    /// <summary>Period of 1.000 s: 0.598 x 9.80665 x 0.2^2 / (16 pi^2 x 1) = 1.4855 g m2.</summary>
    [Fact]
    public void A_swing_test_becomes_an_inertia()
    {
        string[] args = ["fit", "swing", "--build", "wagtail", "--axis", "roll", "--mass-g", "598", "--spacing-mm", "200", "--length-mm", "1000", "--period-s", "1", "--period-pm-s", "0.004", "--out", Out];
        CliResult result = Cli.Run(args);
        Assert.Equal("", result.Errors);
        Assert.Equal(0, result.ExitCode);
        Assert.StartsWith("Wagtail resists rolling with 1.485 g m2", result.Output, StringComparison.Ordinal);
        Assert.Contains("unplugged", result.Output, StringComparison.Ordinal);
        Assert.Contains("typical = 1.485", File.ReadAllText(Out), StringComparison.Ordinal);
        JsonElement weighed = Json(Cli.Run("weigh", Out, "--json"));
        Assert.Equal(1.485e-3, weighed.GetProperty("inertia_kg_m2")[0][0].GetDouble(), 6);
        JsonElement json = Json(Cli.Run([.. args, "--force", "--json"]));
        Assert.Equal(0.598 * 9.80665 * 0.04 / (16 * Math.PI * Math.PI), json.GetProperty("inertia_kg_m2").GetDouble(), 9);
        Assert.InRange(json.GetProperty("standard_deviation_kg_m2").GetDouble(), 1e-5, 2e-5);
    }

    [Theory]
    [InlineData("fit")]
    [InlineData("fit", "stand")]
    [InlineData("fit", "swing")]
    public void Help_shows_examples(params string[] verb)
    {
        CliResult result = Cli.Run([.. verb, "--help"]);
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("EXAMPLES", result.Output, StringComparison.Ordinal);
        Assert.Contains("--build", result.Output, StringComparison.Ordinal);
    }

    public static TheoryData<string[], int, string> Mistakes => new()
    {
        { ["fit"], 2, "TABLE" },
        { ["fit", "x.csv"], 2, "--build" },
        { ["fit", "no-such.csv", "--build", "wagtail", "--no-write"], 1, "no such file" },
        { ["fit", Example, "--build", "no-such", "--no-write"], 1, "no-such" },
        { ["fit", Example, "--build", "wagtail", "--no-write", "--column", "Pull=thrust:gf"], 1, "no column 'Pull'" },
        { ["fit", Example, "--build", "wagtail", "--no-write", "--column", "Thrust=push"], 2, "no quantity" },
        { ["fit", Example, "--build", "wagtail", "--no-write", "--column", "Thrust=thrust:stone"], 2, "no unit" },
        { ["fit", Example, "--build", "wagtail", "--no-write", "--poles", "7"], 2, "--poles" },
        { ["fit", Example, "--build", "wagtail", "--no-write", "--decimal", "dot"], 2, "--decimal" },
        // the table is of a 5 inch propeller
        { ["fit", Example, "--build", "curlew", "--no-write"], 1, "--block" },
        { ["fit", "swing", "--build", "wagtail"], 2, "--axis" },
        { ["fit", "swing", "--build", "wagtail", "--axis", "up"], 2, "roll, pitch or yaw" },
        { ["fit", "swing", "--build", "wagtail", "--axis", "roll", "--mass-g", "598"], 2, "--spacing-mm" },
        { ["fit", "swing", "--build", "wagtail", "--axis", "roll", "--mass-g", "598", "--spacing-mm", "200", "--length-mm", "100", "--period-s", "1"], 2, "less than the wires' length" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_gets_one_clear_message_and_its_exit_code(string[] args, int exitCode, string names) =>
        Cli.RunMistaken(args, exitCode, names);

    private static JsonElement Json(CliResult result)
    {
        Assert.Equal("", result.Errors);
        Assert.Equal(0, result.ExitCode);
        return JsonDocument.Parse(result.Output).RootElement;
    }
}
