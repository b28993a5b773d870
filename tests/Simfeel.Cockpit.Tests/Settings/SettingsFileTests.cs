using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Graphics;
using Simfeel.Cockpit.Graphics.Views;
using Simfeel.Cockpit.Settings;

namespace Simfeel.Cockpit.Tests.Settings;

public class SettingsFileTests
{
    /// <summary>Two windows on one file: each stores what was set in it, and neither takes back what was set in the other.</summary>
    [Fact]
    public void Two_windows_keep_each_others_settings()
    {
        string before = SettingsFile.Write(new CockpitSettings());
        CockpitSettings one = new() { TextScale = 1.5 }, two = new() { SoundGain = 0.25, BuildA = "pipit" };
        string there = SettingsFile.Write(one, before, before);
        there = SettingsFile.Write(two, before, there);
        // set back by the one that set it
        one.TextScale = 1;
        one.Quality = Quality.High;
        there = SettingsFile.Write(one, SettingsFile.Write(new CockpitSettings { TextScale = 1.5 }), there);

        List<string> wrong = [];
        CockpitSettings read = SettingsFile.Read(there, "settings.toml", wrong);
        Assert.Empty(wrong);
        Assert.Equal((1, 0.25, "pipit", Quality.High), (read.TextScale, read.SoundGain, read.BuildA, read.Quality));
        Assert.Equal(SettingsFile.Write(one), SettingsFile.Write(one, before, ""));
    }

    [Fact]
    public void What_is_written_is_read_again()
    {
        CockpitSettings settings = new()
        {
            BuildA = "odd \"name\"\n.toml",
            Quality = Quality.High,
            TextScale = 1.75,
            View = View.Onboard,
            TrueScale = true,
            VideoDelay_ms = 33.5,
            SoundGain = 0,
            Palette = PaletteKind.Projector,
            HoldAtMarks = true,
        };
        List<string> wrong = [];

        CockpitSettings read = SettingsFile.Read(SettingsFile.Write(settings), "settings.toml", wrong);

        Assert.Empty(wrong);
        Assert.Equal(SettingsFile.Write(settings), SettingsFile.Write(read));
        Assert.Equal(settings.BuildA, read.BuildA);
        Assert.Equal(33.5, read.VideoDelay_ms);
        Assert.Equal(PaletteKind.Projector, read.Palette);
        Assert.True(read.HoldAtMarks);
    }

    [Fact]
    public void Defaults_lie_in_their_own_ranges()
    {
        List<string> wrong = [];

        SettingsFile.Read(SettingsFile.Write(new()), "settings.toml", wrong);

        Assert.Empty(wrong);
    }

    [Theory]
    [InlineData("text_scale = 3", "settings.toml: text_scale is 3; it must be a number from 0.75 to 2. The default is used.")]
    [InlineData("video_delay_ms = nan", "settings.toml: video_delay_ms is NaN; it must be a number from 0 to 300 ms. The default is used.")]
    [InlineData("true_scale = 1", "settings.toml: true_scale is 1; it must be true or false. The default is used.")]
    [InlineData("view = \"2\"", "settings.toml: view is 2; it must be onboard, chase, ground, split. The default is used.")]
    [InlineData("palette = \"pink\"", "settings.toml: palette is pink; it must be usual, projector. The default is used.")]
    [InlineData("hold_at_marks = 0", "settings.toml: hold_at_marks is 0; it must be true or false. The default is used.")]
    [InlineData("build_a = [1]", "settings.toml: build_a is a table or list; it must be a text. The default is used.")]
    [InlineData("colour = 1", "settings.toml: there is no setting called colour; it is left out.")]
    [InlineData("format = 7", "settings.toml: format is 7; this version writes 1 and reads what it knows.")]
    public void A_mistake_is_said_once_and_its_default_used(string line, string message)
    {
        List<string> wrong = [];

        CockpitSettings read = SettingsFile.Read("sound_gain = 0.25\n" + line + "\n", "settings.toml", wrong);

        Assert.Equal([message], wrong);
        Assert.Equal(0.25, read.SoundGain);
        read.SoundGain = new CockpitSettings().SoundGain;
        Assert.Equal(SettingsFile.Write(new()), SettingsFile.Write(read));
    }

    [Fact]
    public void Broken_text_is_said_in_one_sentence()
    {
        List<string> wrong = [];

        CockpitSettings read = SettingsFile.Read("text_scale = = 1", "settings.toml", wrong);

        Assert.Single(wrong);
        Assert.Contains("settings.toml", wrong[0], StringComparison.Ordinal);
        Assert.Equal(1, read.TextScale);
    }
}
