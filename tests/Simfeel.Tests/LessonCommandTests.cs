using System.Text.Json;

namespace Simfeel.Tests;

/// <summary>Lessons and blind flights on the command line.</summary>
public class LessonCommandTests
{
    [Fact]
    public void The_list_has_every_lesson_under_its_topic()
    {
        (int code, string output, string _) = Cli.Run("lesson");
        Assert.Equal(0, code);
        Assert.Contains("Rotational inertia", output, StringComparison.Ordinal);
        Assert.Contains("ballast-to-the-tips", output, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("lesson", "--json").Output);
        Assert.Equal(23, json.RootElement.GetProperty("lessons").GetArrayLength());
    }

    [Fact]
    public void A_lesson_with_hands_writes_log_and_sheet()
    {
        using TempFolder temp = new();
        string folder = temp.Path;
        string log = Path.Combine(folder, "class.csv"), sheet = Path.Combine(folder, "s.html"), blank = Path.Combine(folder, "w.md");
        (int code, string output, string error) = Cli.Run("lesson", "thin-air", "--hands", "1,7,3,1", "--log", log, "--sheet", sheet);
        Assert.True(code == 0, error);
        Assert.Contains("9557 rpm (at the sea), 11136 rpm (at 3000 m): 17 % more", output, StringComparison.Ordinal);
        Assert.Contains("7 of 12 had it right beforehand.", output, StringComparison.Ordinal);
        Assert.Contains("thin-air,Wagtail,B,\"Faster, by up to a quarter\",7,yes", File.ReadAllText(log), StringComparison.Ordinal);
        Assert.Contains("7 of 12 had it right", File.ReadAllText(sheet), StringComparison.Ordinal);
        Assert.Equal(0, Cli.Run("lesson", "thin-air", "--worksheet", blank).ExitCode);
        Assert.DoesNotContain("11136", File.ReadAllText(blank), StringComparison.Ordinal);
    }

    [Fact]
    public void Another_build_and_value_are_flown_and_json_has_the_numbers()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("lesson", "thin-air", "--build", "curlew", "--value", "1500", "--json").Output);
        JsonElement root = json.RootElement;
        Assert.Equal("Curlew", root.GetProperty("build").GetString());
        Assert.Equal(1500, root.GetProperty("values")[1].GetDouble());
        // ISO 2533: 1.05807 kg/m3 at 1500 m
        Assert.Equal(100 * (Math.Sqrt(1.225 / 1.05807) - 1), root.GetProperty("difference_percent").GetDouble(), 0.7);
    }

    [Theory]
    [InlineData(1, "There is no file and no lesson called 'balast'", "lesson", "balast")]
    [InlineData(2, "it must be a letter from a to d", "lesson", "thin-air", "--answer", "q")]
    [InlineData(2, "write 4 whole numbers", "lesson", "thin-air", "--hands", "3,4")]
    [InlineData(2, "Give one of", "lesson", "thin-air", "--hands", "3,4,5,6", "--skip")]
    [InlineData(2, "must end in .html or .md", "lesson", "thin-air", "--sheet", "s.pdf")]
    [InlineData(2, "gives nothing away", "lesson", "thin-air", "--worksheet", "w.html", "--answer", "a")]
    [InlineData(2, "belong to the lesson's own value", "lesson", "thin-air", "--value", "100", "--answer", "a")]
    [InlineData(2, "Name a lesson", "lesson", "--answer", "a")]
    [InlineData(1, "allowed is -400 to 5000 m", "lesson", "thin-air", "--value", "9000", "--skip")]
    [InlineData(1, "no number", "lesson", "thin-air", "--value", "high", "--skip")]
    [InlineData(1, "write the value itself, without the x", "lesson", "thin-air", "--value", "x2", "--skip")]
    [InlineData(1, "there is no folder", "lesson", "thin-air", "--skip", "--sheet", "no/such/folder/s.html")]
    [InlineData(1, "cannot hover", "lesson", "mass-and-fall", "--build", "sanderling", "--skip")]
    [InlineData(2, "must be triangle or pair", "fly", "wagtail", "curlew", "--blind", "duo")]
    [InlineData(2, "needs both builds", "fly", "wagtail", "--blind", "pair")]
    [InlineData(1, "have no right answer", "fly", "wagtail", "wagtail", "--blind", "pair")]
    [InlineData(2, "go with --blind", "fly", "wagtail", "curlew", "--trials", "3")]
    [InlineData(2, "--trials is 0", "fly", "wagtail", "curlew", "--blind", "pair", "--trials", "0")]
    [InlineData(2, "--late is 900", "fly", "wagtail", "curlew", "--blind", "pair", "--late", "900")]
    public void Every_mistake_is_said(int code, string words, params string[] args)
    {
        (int got, string _, string error) = Cli.Run(args);
        Assert.Equal(code, got);
        Assert.Contains(words, error, StringComparison.Ordinal);
    }
}
