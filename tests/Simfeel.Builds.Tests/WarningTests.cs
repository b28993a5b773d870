namespace Simfeel.Builds.Tests;

/// <summary>What is odd but can be flown.</summary>
public class WarningTests
{
    [Theory]
    [InlineData("motor", "mas_g = 33", "motor.mas_g", "did you mean mass_g?")]
    [InlineData("motor", "mass = 33", "motor.mass", "did you mean mass_g?")]
    [InlineData("motor", "mass_kg = 0.033", "motor.mass_kg", "did you mean mass_g?")]
    [InlineData("motor", "winding_resistence_mohm = 60", "motor.winding_resistence_mohm", "did you mean winding_resistance_mohm?")]
    [InlineData("frame", "layuot = \"plus\"", "frame.layuot", "did you mean layout?")]
    [InlineData("motor", "current_limit_A = 60", "motor.current_limit_A", "it belongs to [speed_controller]")]
    [InlineData("motor", "zzzzzzzzzzzz = 60", "motor.zzzzzzzzzzzz", "")]
    public void UnknownKeyWarnsWithLineAndHint(string table, string line, string key, string hint)
    {
        string text = BuildText.With(table, line);
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.NotNull(result.Build);
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Warning, key, hint), (warning.Severity, warning.Key, warning.Hint));
        Assert.Equal(BuildText.LineOf(text, line), warning.Line);
    }

    [Fact]
    public void UnknownTableWarnsOnce()
    {
        string text = BuildText.Plus("[batery]\nmass_g = 200\ncells = 4\n");
        Diagnostic warning = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
        Assert.Equal((Severity.Warning, "batery", "did you mean [battery]?"), (warning.Severity, warning.Key, warning.Hint));
    }

    [Fact]
    public void ManyUnknownKeysAreNotAllListed()
    {
        string text = BuildText.Plus("[gyro]\n" + string.Concat(Enumerable.Range(0, 5000).Select(i => $"key{i} = {i}\n")));
        Assert.Equal(20, BuildReader.Parse(text, "test.toml").Diagnostics.Count);
    }

    [Theory]
    [InlineData("motor", "winding_resistance_mohm = 300", "motor.winding_resistance_mohm", "24.0 to 150.0 mohm")]
    [InlineData("motor", "mass_g = 90", "motor.mass_g", "16.5 to 66.0 g")]
    [InlineData("battery", "mass_g = 500", "battery.mass_g", "80 to 270 Wh/kg")]
    [InlineData("battery", "current_rating_A = 20", "battery.current_rating_A", "at least 48 A")]
    public void UnusualPartWarns(string table, string line, string key, string range)
    {
        BuildResult result = BuildReader.Parse(BuildText.With(table, line), "test.toml");
        Assert.NotNull(result.Build);
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Warning, key), (warning.Severity, warning.Key));
        Assert.Contains(range, warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TipMachWarns()
    {
        string text = BuildText.Minimal.Replace("kv_rpm_per_V = 1800", "kv_rpm_per_V = 2700", StringComparison.Ordinal);
        Diagnostic warning = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
        // 2700 rpm/V x 25.2 V x 2 pi/60 x 0.06477 m / 340 m/s
        Assert.Contains("Mach 1.36", warning.Message, StringComparison.Ordinal);
        Assert.Equal((Severity.Warning, "motor.kv_rpm_per_V"), (warning.Severity, warning.Key));
    }

    [Fact]
    public void NarrowGapBetweenDiscsWarns()
    {
        // Side of the square 225/sqrt 2 = 159.1 mm; 6.2 in = 157.5 mm.
        string text = BuildText.Minimal.Replace("diameter_in = 5.1", "diameter_in = 6.2", StringComparison.Ordinal)
            .Replace("[frame]\n", "[frame]\nplate_length_mm = 60\nplate_width_mm = 20\n", StringComparison.Ordinal)
            .Replace("kv_rpm_per_V = 1800", "kv_rpm_per_V = 1500", StringComparison.Ordinal);
        Diagnostic warning = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
        Assert.Equal((Severity.Warning, "propeller.diameter_in"), (warning.Severity, warning.Key));
        Assert.Contains("1.6 mm", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NewerFormatWarnsAndIsRead()
    {
        string text = BuildText.With("motor", "temperature_limit_K = 400").Replace("format = 1", "format = 2", StringComparison.Ordinal);
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.NotNull(result.Build);
        Assert.Equal(["format", "motor.temperature_limit_K"], result.Diagnostics.Select(d => d.Key));
        Assert.All(result.Diagnostics, d => Assert.Equal(Severity.Warning, d.Severity));
        Assert.Equal(1, result.Diagnostics[0].Line);
    }

    [Fact]
    public void MissingFormatWarns()
    {
        BuildResult result = BuildReader.Parse(BuildText.Minimal.Replace("format = 1", "", StringComparison.Ordinal), "test.toml");
        Assert.NotNull(result.Build);
        Assert.Equal("format", Assert.Single(result.Diagnostics).Key);
    }

    [Fact]
    public void WeighedMassThatThePartsHardlyExplainWarns()
    {
        BuildResult result = BuildReader.Parse(BuildText.Plus("[measured]\nall_up_mass_g = 900\n"), "test.toml");
        Assert.NotNull(result.Build);
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal("measured.all_up_mass_g", warning.Key);
        Assert.Contains("explain only", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void BalanceFarFromThePartsWarns()
    {
        string text = BuildText.Plus("[measured]\nbalance_x_mm = 40\n");
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.NotNull(result.Build);
        Diagnostic warning = Assert.Single(result.Diagnostics);
        Assert.Equal((Severity.Warning, "measured.balance_x_mm", BuildText.LineOf(text, "balance_x_mm")), (warning.Severity, warning.Key, warning.Line));
        // 8 % of 225 mm about the middle.
        Assert.Contains("-18.0 to 18.0 mm", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SpinsOutOfBalanceWarn()
    {
        string text = BuildText.With("frame", "positions_mm = [[80,80,0,1],[-80,80,0,1],[-80,-80,0,1],[80,-80,0,-1]]")
            .Replace("wheelbase_mm = 225\n", "", StringComparison.Ordinal);
        Diagnostic warning = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
        Assert.Contains("3 rotors turn clockwise and 1 the other way", warning.Message, StringComparison.Ordinal);
    }
}
