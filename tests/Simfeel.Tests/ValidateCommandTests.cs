using System.Text.Json;
using System.Text.RegularExpressions;
using Simfeel.Studies.Validation;
using SkiaSharp;

namespace Simfeel.Tests;

/// <summary>The verb <c>validate</c>, its pictures, and the chapter of the README that shows them.</summary>
public sealed partial class ValidateCommandTests(ValidateCommandTests.Run run) : IClassFixture<ValidateCommandTests.Run>
{
    /// <summary>One run with pictures for all tests.</summary>
    public sealed class Run : IDisposable
    {
        private readonly TempFolder _folder = new();

        public Run() => Result = Cli.Run("validate", "--plots", Folder, "--json");

        internal string Folder => _folder.File("pictures");

        internal CliResult Result { get; }

        public void Dispose() => _folder.Dispose();
    }

    private static readonly string[] Names = [.. ValidationCatalogue.All.Select(known => known.Name)];

    [Fact]
    public void Json_has_the_promised_fields()
    {
        Assert.Equal(0, run.Result.ExitCode);
        Assert.Equal("", run.Result.Errors);
        JsonElement root = JsonDocument.Parse(run.Result.Output).RootElement;
        Assert.True(root.GetProperty("inside").GetBoolean());
        Assert.Equal(Names, root.GetProperty("cases").EnumerateArray().Select(known => known.GetProperty("name").GetString()));
        foreach (JsonElement known in root.GetProperty("cases").EnumerateArray())
        {
            Assert.All(["title", "source", "note"], key => Assert.NotEqual("", known.GetProperty(key).GetString()));
            Assert.True(File.Exists(known.GetProperty("picture").GetString()));
            Assert.NotEqual(0, known.GetProperty("checks").GetArrayLength());
            foreach (JsonElement check in known.GetProperty("checks").EnumerateArray())
            {
                Assert.NotEqual("", check.GetProperty("what").GetString());
                Assert.Contains(check.GetProperty("rule").GetString(), (string[])["worst_within", "rms_within", "mean_within", "never_above", "never_below"]);
                Assert.True(check.GetProperty("points").GetInt32() > 0);
                Assert.All(["mean_error", "rms_error", "worst_error", "bound"], key => Assert.Equal(JsonValueKind.Number, check.GetProperty(key).ValueKind));
                Assert.All(["relative", "bound_set_before_first_run", "inside"], key => _ = check.GetProperty(key).GetBoolean());
            }
        }
    }

    [Fact]
    public void The_table_names_every_case_with_its_source()
    {
        CliResult result = Cli.Run("validate");
        Assert.Equal(0, result.ExitCode);
        Assert.All(ValidationCatalogue.All, known =>
        {
            Assert.Contains($"{known.Name} ({known.ShortSource})", result.Output, StringComparison.Ordinal);
            Assert.Contains(known.Source, result.Output, StringComparison.Ordinal);
        });
        Assert.DoesNotContain(" NO", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Readme_shows_the_picture_of_every_case_and_no_other()
    {
        string readme = ProjectFolder.Readme;
        string[] shown = [.. PictureLink().Matches(readme).Select(match => match.Groups[1].Value)];
        Assert.Equal(Names.Order(), shown.Order());
        Assert.Equal(Names.Order(), Directory.GetFiles(run.Folder).Select(Path.GetFileNameWithoutExtension).Order());
        Assert.Equal(Names.Order(), Directory.GetFiles(SourceTree.FullPath("assets/validation"), "*.png").Select(Path.GetFileNameWithoutExtension).Order());
    }

    /// <summary>
    /// Bytes may differ with the version of the font; what is drawn may not. A picture that is out of date is drawn anew by
    /// ./simfeel validate --plots assets/validation.
    /// </summary>
    [Fact]
    public void Kept_pictures_are_those_that_the_program_draws()
    {
        foreach (string name in Names)
        {
            string path = SourceTree.FullPath($"assets/validation/{name}.png");
            Assert.InRange(new FileInfo(path).Length, 1, 120_000);
            using SKBitmap kept = SKBitmap.Decode(path), drawn = SKBitmap.Decode(Path.Combine(run.Folder, name + ".png"));
            Assert.Equal((drawn.Width, drawn.Height), (kept.Width, kept.Height));
            int differ = kept.Pixels.Zip(drawn.Pixels, (a, b) => Math.Abs(a.Red - b.Red) + Math.Abs(a.Green - b.Green) + Math.Abs(a.Blue - b.Blue)).Count(d => d > 200);
            Assert.True(differ < 0.001 * kept.Width * kept.Height, $"{name}.png: {differ} pixels differ");
        }
    }

    [Fact]
    public void A_missing_font_is_one_message_and_exit_code_3()
    {
        using TempFolder folder = new();
        string empty = folder.File("pictures"), fonts = folder.File("fonts.conf");
        File.WriteAllText(fonts, "<?xml version=\"1.0\"?><fontconfig></fontconfig>");
        Dictionary<string, string> environment = new() { ["FONTCONFIG_FILE"] = fonts };
        CliResult result = Cli.RunLibrary(Path.Combine(AppContext.BaseDirectory, "simfeel.dll"), environment, "validate", "--plots", empty);
        Assert.Equal(3, result.ExitCode);
        Assert.Equal("", result.Output);
        Assert.Contains("DejaVu Sans", result.Errors, StringComparison.Ordinal);
        Assert.Contains("fonts-dejavu-core", result.Errors, StringComparison.Ordinal);
        Assert.Single(result.Errors.Trim().Split('\n'));
        Assert.False(Directory.Exists(empty));

        // Without pictures no font is needed.
        Assert.Equal(0, Cli.RunLibrary(Path.Combine(AppContext.BaseDirectory, "simfeel.dll"), environment, "validate").ExitCode);
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_told()
    {
        string file = Path.GetTempFileName();
        try
        {
            CliResult result = Cli.Run("validate", "--plots", file);
            Assert.Equal(1, result.ExitCode);
            Assert.Equal("", result.Output);
            Assert.Contains(file, result.Errors, StringComparison.Ordinal);
            Assert.Single(result.Errors.Trim().Split('\n'));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [GeneratedRegex(@"!\[[^\]]+\]\(assets/validation/([a-z0-9-]+)\.png\)")]
    private static partial Regex PictureLink();
}
