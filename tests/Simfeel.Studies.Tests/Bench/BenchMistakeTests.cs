using Simfeel.Builds;
using Simfeel.Studies.Bench;
using Simfeel.Studies.Bench.Reading;
using Simfeel.Studies.Fit;

namespace Simfeel.Studies.Tests.Bench;

/// <summary>Whatever is wrong with a readings file gets one clear error: file, line, key, allowed range, unit.</summary>
public class BenchMistakeTests
{
    private const string Good = "[mass]\nmass_g = 598\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [30.4, 30.5]\n";

    public static TheoryData<string, int, string, string> Mistakes => new()
    {
        { "[mass]\nmass_g = 0.598", 3, "mass.mass_g", "too small; allowed is 5 to 50000 g" },
        { "[mass]\nmass_g = \"598 g\"", 3, "mass.mass_g", "no number; allowed is" },
        { "[mass]\nmass_g = 598,5", 3, "mass_g", "decimal point" },
        { "[mass]\nmass_g = 598 g", 3, "mass_g", "its unit is in the key" },
        { "[mass]\nmass_g = [598, 599]", 3, "mass.mass_g", "one number, not a list" },
        { "[mass]\nmass_g = nan", 3, "mass.mass_g", "not a finite number" },
        { "[mass]\nmass_g = 598\nmass_g = 599", 4, "mass.mass_g", "given twice" },
        { "[mass]\nmass_pm_g = 1", 2, "mass.mass_g", "missing" },
        { "[[roll]]\nspacing_mm = 130", 2, "roll", "one roll table only" },
        { "roll = { spacing_mm = 130 }", 2, "roll", "is a table" },
        { "[roll]\nspacing_mm = 130\nlength_mm = 1000", 2, "roll.times_s", "1 to 20 readings of 0.2 to 600 s" },
        { "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = []", 5, "roll.times_s", "There are 0 readings" },
        { "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [30.4, \"30.5\"]", 5, "roll.times_s", "no number" },
        { "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [30.4, [30.5]]", 5, "roll.times_s", "no number" },
        { "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = 1.52", 5, "roll.times_s", "With 20 swings in one timing a swing would take 0.076 s; allowed is 0.15 to 60 s" },
        { "[roll]\nspacing_mm = 1000\nlength_mm = 130\ntimes_s = 30", 3, "roll.spacing_mm", "changed places" },
        { "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = 30\nstick_mass_g = 5", 2, "roll.stick_length_mm", "missing" },
        { "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = 30\nswing_deg = 75", 6, "roll.swing_deg", "0 to 60 deg" },
        { "[timing]\nswings = 19.5", 3, "timing.swings", "not a whole number" },
        { "gravity_m_s2 = 1.62", 2, "gravity_m_s2", "9.76 to 9.84 m/s2" },
        { "[balance_x]\nedge_mm = 3\nfront_g = 300", 4, "balance_x.front_g", "allowed is one way" },
        { "[balance_x]\nfront_g = 300\nrear_g = 298\nfront_at_mm = 60", 2, "balance_x.rear_at_mm", "-1000 to 1000 mm" },
        { "[balance_x]\nfront_g = 300\nrear_g = 298\nfront_at_mm = -60\nrear_at_mm = 60", 5, "balance_x.front_at_mm", "at least 20 mm ahead" },
        { "[balance_y]\nright_g = 0\nleft_g = 0\nright_at_mm = 60\nleft_at_mm = -60", 3, "balance_y.right_g", "more than 0 g" },
        { "[balance_z]\nhook_x_mm = 60\nhook_z_mm = 0\nhook_angle_deg = 20", 2, "balance_z.hook_angle_deg", "[balance_x]" },
        { "[balance_z]\nhook_x_mm = 60\nhook_z_mm = 0\nhook_angle_deg = 90", 5, "balance_z.hook_angle_deg", "-80 to 80 deg" },
        { "build = 5", 2, "build", "text in quotes" },
        { "[mass\nmass_g = 598", 2, "", "not valid TOML" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_is_said_once_with_its_place(string text, int line, string key, string words)
    {
        BenchResult result = BenchReader.Parse("format = 1\n" + text, "mine-bench.toml");
        Assert.Null(result.Readings);
        Diagnostic error = Assert.Single(result.Diagnostics, d => d.Severity == Severity.Error);
        Assert.Equal(("mine-bench.toml", line, key), (error.File, error.Line!.Value, error.Key));
        Assert.Contains(words, error.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("format = 1\n" + Good + "time_s = 30", 8, "roll.time_s", "did you mean times_s?")]
    [InlineData("format = 1\n" + Good + "[rol]\nspacing_mm = 2", 8, "rol", "did you mean [roll]?")]
    [InlineData("format = 1\n" + Good + "mass_pm_g = 2", 8, "roll.mass_pm_g", "it belongs to [mass]")]
    [InlineData("format = 7\n" + Good, 1, "format", "knows version 1")]
    [InlineData(Good, 1, "format", "put format = 1")]
    [InlineData("format = 1\n[mass]\nmass_g = 598\n[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [30.4, 30.5, 28.9]", 7, "roll.times_s", "miscounted")]
    public void A_doubt_is_said_and_the_readings_are_used(string text, int line, string key, string words)
    {
        BenchResult result = BenchReader.Parse(text, "mine-bench.toml");
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Warning, line, key), (warning.Severity, warning.Line!.Value, warning.Key));
        Assert.Contains(words, warning.ToString(), StringComparison.Ordinal);
        Assert.Equal(0.598, result.Readings!.Mass!.Value.Value, 12);
    }

    [Theory]
    [InlineData("format = 1", "Nothing was measured yet")]
    [InlineData("   \n", "empty")]
    [InlineData("a = [[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]", "nested")]
    public void A_file_without_readings_is_no_measurement(string text, string words)
    {
        BenchResult result = BenchReader.Parse(text, "mine-bench.toml");
        Assert.Null(result.Readings);
        Assert.Contains(words, result.Diagnostics.Single(d => d.Severity == Severity.Error).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Swings_need_a_mass_unless_the_build_was_weighed()
    {
        const string swing = "[roll]\nspacing_mm = 130\nlength_mm = 1000\ntimes_s = [30.4, 30.5]\n";
        FitException error = Assert.Throws<FitException>(() => BenchCases.Report(swing, BenchCases.Starter("curlew")));
        Assert.Equal("mass.mass_g", error.Diagnostics[0].Key);
        BenchReport borrowed = BenchCases.Report(swing);
        Assert.True(borrowed.MassFromBuild);
        Assert.Equal(
            BenchCases.Of(BenchCases.Report("[mass]\nmass_g = 598\n" + swing), BenchKind.Inertia, BenchAxis.X).Measured!.Value,
            BenchCases.Of(borrowed, BenchKind.Inertia, BenchAxis.X).Measured!.Value, 12);
    }

    [Fact]
    public void Dotted_keys_are_those_of_their_table()
    {
        BenchReadings readings = BenchCases.Read("mass.mass_g = 598\nroll.spacing_mm = 130\nroll.length_mm = 1000\nroll.times_s = 30.4");
        Assert.Equal(0.598, readings.Mass!.Value.Value, 12);
        Assert.Equal(0.13, readings.Swings[BenchAxis.X].Spacing.Value, 12);
    }

    [Fact]
    public void A_missing_file_and_a_folder_are_said()
    {
        Assert.Contains("no such file", Assert.Single(BenchReader.Read("no-such-bench.toml").Diagnostics).Message, StringComparison.Ordinal);
        Assert.Contains("folder", Assert.Single(BenchReader.Read(AppContext.BaseDirectory).Diagnostics).Message, StringComparison.Ordinal);
    }
}
