namespace Simfeel.Builds.Tests;

/// <summary>Everything that can be wrong with a build file gives one diagnostic that names line, key and what is allowed.</summary>
public class DiagnosticTests
{
    /// <summary>Table, the bad line below its heading, key, and pieces of the message: allowed range and unit.</summary>
    public static TheoryData<string, string, string, string[]> BadValues => new()
    {
        { "motor", "mass_g = 0", "motor.mass_g", ["too small", "0.3 to 1500 g"] },
        { "motor", "mass_g = -33", "motor.mass_g", ["too small", "0.3 to 1500 g"] },
        { "motor", "mass_g = nan", "motor.mass_g", ["not a finite number", "0.3 to 1500 g"] },
        { "motor", "mass_g = -nan", "motor.mass_g", ["not a finite number", "g"] },
        { "motor", "mass_g = inf", "motor.mass_g", ["not a finite number", "0.3 to 1500 g"] },
        { "motor", "mass_g = -inf", "motor.mass_g", ["not a finite number", "0.3 to 1500 g"] },
        { "motor", "mass_g = 1e999", "motor.mass_g", ["not a finite number", "0.3 to 1500 g"] },
        { "motor", "mass_g = 1e30", "motor.mass_g", ["too large", "0.3 to 1500 g"] },
        { "motor", "mass_g = 9223372036854775807", "motor.mass_g", ["too large", "g"] },
        { "motor", "mass_g = \"33 g\"", "motor.mass_g", ["no number", "0.3 to 1500 g"] },
        { "motor", "mass_g = true", "motor.mass_g", ["no number", "0.3 to 1500 g"] },
        { "motor", "mass_g = [33]", "motor.mass_g", ["no number", "0.3 to 1500 g"] },
        { "motor", "mass_g = 2026-11-25", "motor.mass_g", ["no number", "0.3 to 1500 g"] },
        { "motor", "mass_g = {}", "motor.mass_g", ["low, typical and high", "0.3 to 1500 g"] },
        { "motor", "mass_g = { value = 3000 }", "motor.mass_g", ["too large", "0.3 to 1500 g"] },
        { "motor", "mass_g = { low = 30, high = 36 }", "motor.mass_g", ["low, typical and high", "0.3 to 1500 g"] },
        { "motor", "mass_g = { value = 33, low = 30 }", "motor.mass_g", ["low, typical and high", "0.3 to 1500 g"] },
        { "motor", "mass_g = { low = 36, typical = 33, high = 30 }", "motor.mass_g", ["must rise", "0.3 to 1500 g"] },
        { "motor", "mass_g = { low = 30, typical = 33, high = 3600 }", "motor.mass_g", ["too large", "0.3 to 1500 g"] },
        { "motor", "mass_g = { value = 33, source = \"guess\" }", "motor.mass_g", ["\"measured\", \"datasheet\", \"estimated\""] },
        { "motor", "mass_g = { valeu = 33 }", "motor.mass_g", ["no meaning", "0.3 to 1500 g"] },
        { "motor", "winding_resistance_mohm = 0", "motor.winding_resistance_mohm", ["too small", "1 to 5000 mohm"] },
        { "motor", "poles = 13", "motor.poles", ["pairs", "even whole number from 2 to 60"] },
        { "motor", "poles = 13.5", "motor.poles", ["whole number from 2 to 60"] },
        { "motor", "rotating_share = 1.2", "motor.rotating_share", ["0.2 to 0.8"] },
        { "motor", "no_load_current_A = 1.5", "motor.no_load_current_A", ["no_load_voltage_V is missing", "0.5 to 60 V"] },
        { "motor", "no_load_voltage_V = 10", "motor.no_load_voltage_V", ["no_load_current_A is missing", "0.01 to 20 A"] },
        { "motor", "outer_diameter_mm = 20", "motor.outer_diameter_mm", ["narrower than the stator", "22 to 150 mm"] },
        { "frame", "layout = \"sqare\"", "frame.layout", ["one of", "\"square\""] },
        { "frame", "layout = 4", "frame.layout", ["one of", "\"square\""] },
        { "frame", "spin = \"left\"", "frame.spin", ["one of \"inward\", \"outward\""] },
        { "frame", "arm_width_mm = 200", "frame.arm_width_mm", ["too large", "1 to 80 mm"] },
        { "frame", "material_density_g_cm3 = 1580", "frame.material_density_g_cm3", ["too large", "0.5 to 3 g/cm3"] },
        { "frame", "plate_width_mm = 140", "frame.plate_width_mm", ["hits the plates", "mm"] },
        { "frame", "positions_mm = 7", "frame.positions_mm", ["3 to 8 places", "mm"] },
        { "frame", "positions_mm = [[80, 80, 0], [-80, 80, 0]]", "frame.positions_mm", ["2 rotor positions", "3 to 8 places", "mm"] },
        { "frame", "positions_mm = [[80, 80], [-80, 80], [-80, -80]]", "frame.positions_mm", ["no rotor position", "-1000 to 1000 mm"] },
        { "frame", "positions_mm = [[80, 80, 0, 2], [-80, 80, 0, 1], [-80, -80, 0, 1]]", "frame.positions_mm", ["no rotor position", "spin 1 or -1"] },
        { "frame", "positions_mm = [[80, 80, nan], [-80, 80, 0], [-80, -80, 0]]", "frame.positions_mm", ["no rotor position", "-1000 to 1000 mm"] },
        { "frame", "positions_mm = [[80, 80, 0, 1], [-80, 80, 0], [-80, -80, 0]]", "frame.positions_mm", ["some have none", "spin 1 or -1"] },
        { "propeller", "hub_mass_share = 0", "propeller.hub_mass_share", ["too small", "0.02 to 0.8"] },
        { "battery", "mass_g = 12", "battery.mass_g", ["Wh/kg", "80 to 270 Wh/kg"] },
        { "battery", "cell_type = \"round\"", "battery.cell_type", ["one of \"pouch\", \"cylindrical\""] },
        { "battery", "full_cell_voltage_V = 3.7", "battery.full_cell_voltage_V", ["too small", "4 to 4.45 V"] },
        { "battery", "x_mm = 5000", "battery.x_mm", ["too large", "-500 to 500 mm"] },
    };

    [Theory]
    [MemberData(nameof(BadValues))]
    public void BadValue(string table, string line, string key, string[] pieces)
    {
        string text = BuildText.With(table, line);
        // Explicit positions make the wheelbase superfluous; leave it out so that nothing else is said.
        if (line.StartsWith("positions_mm", StringComparison.Ordinal)) text = text.Replace("wheelbase_mm = 225\n", "\n", StringComparison.Ordinal);
        OneError(text, line, key, pieces);
    }

    /// <summary>A piece of the minimal build, what takes its place, key, and pieces of the message.</summary>
    public static TheoryData<string, string, string, string[]> BadReplacements => new()
    {
        { "cells = 6", "cells = 0", "battery.cells", ["too small", "whole number from 1 to 14"] },
        { "cells = 6", "cells = 15", "battery.cells", ["too large", "whole number from 1 to 14"] },
        { "cells = 6", "cells = 3.5", "battery.cells", ["not a whole number", "1 to 14"] },
        { "blades = 3", "blades = 1", "propeller.blades", ["too small", "2 to 8"] },
        { "diameter_in = 5.1", "diameter_in = 130", "propeller.diameter_in", ["too large", "0.8 to 20 in"] },
        { "kv_rpm_per_V = 1800", "kv_rpm_per_V = 0", "motor.kv_rpm_per_V", ["too small", "20 to 60000 rpm/V"] },
        { "wheelbase_mm = 225", "wheelbase_mm = 2.25", "frame.wheelbase_mm", ["too small", "40 to 1500 mm"] },
        { "capacity_mAh = 1300", "capacity_mAh = 1.3", "battery.capacity_mAh", ["too small", "30 to 60000 mAh"] },
        { "name = \"Test\"", "name = \"\"", "name", ["empty", "text in quotes"] },
        { "name = \"Test\"", "name = 5", "name", ["text in quotes"] },
        { "format = 1", "format = 0", "format", ["too small", "1 to 1000"] },
        { "format = 1", "format = \"1\"", "format", ["no number", "1 to 1000"] },
        { "cells = 6", "cells = 3,5", "battery.cells", []},
    };

    [Theory]
    [MemberData(nameof(BadReplacements))]
    public void BadReplacement(string piece, string replacement, string key, string[] pieces)
    {
        string text = BuildText.Minimal.Replace(piece, replacement, StringComparison.Ordinal);
        if (replacement.Contains(',', StringComparison.Ordinal))
        {
            // No TOML at all: the parser's own message, with a hint of ours.
            Diagnostic only = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
            Assert.Equal(BuildText.LineOf(text, replacement), only.Line);
            Assert.Contains("decimal point", only.Hint, StringComparison.Ordinal);
            return;
        }
        OneError(text, replacement, key, pieces);
    }

    /// <summary>Text at the end of the minimal build, its line that is wrong, key, and pieces of the message.</summary>
    public static TheoryData<string, string, string, string[]> BadTails => new()
    {
        { "[[extra]]\nshape = \"point\"\n", "[[extra]]", "extra[1].mass_g", ["missing", "0.01 to 20000 g"] },
        { "[[extra]]\nmass_g = 5\nshape = \"box\"\nlength_mm = 10\nwidth_mm = 10\n", "[[extra]]", "extra[1].height_mm", ["missing", "0.1 to 2000 mm"] },
        { "[[extra]]\nmass_g = 5\n[[extra]]\nmass_g = -1\n", "mass_g = -1", "extra[2].mass_g", ["too small", "0.01 to 20000 g"] },
        { "[[extra]]\nmass_g = 5\nshape = \"cone\"\n", "shape = \"cone\"", "extra[1].shape", ["one of", "\"sphere\""] },
        { "[extra]\nmass_g = 5\n", "[extra]", "extra", ["table of its own"] },
        { "[[gyro]]\nlowpass_Hz = 100\n", "[[gyro]]", "gyro", ["one gyro table"] },
        { "[speed_controller]\nbraking = 1\n", "braking = 1", "speed_controller.braking", ["true or false"] },
        { "[speed_controller]\ncommand_delay_ms = 500\n", "command_delay_ms = 500", "speed_controller.command_delay_ms", ["too large", "0 to 50 ms"] },
        { "[gyro]\nlowpass_Hz = 0\n", "lowpass_Hz = 0", "gyro.lowpass_Hz", ["too small", "5 to 4000 Hz"] },
        { "[camera]\ntilt_deg = 120\n", "tilt_deg = 120", "camera.tilt_deg", ["too large", "-30 to 90 deg"] },
        { "[drag]\narea_x_cm2 = 0\n", "area_x_cm2 = 0", "drag.area_x_cm2", ["too small", "0.5 to 20000 cm2"] },
        { "[pilot]\nroll_end_deg_s = 100\n", "roll_end_deg_s = 100", "pilot.roll_end_deg_s", ["less than", "200 to 3000 deg/s"] },
        { "[measured]\nall_up_mass_g = 100\n", "all_up_mass_g = 100", "measured.all_up_mass_g", ["less than the sum of the parts", "to 50000 g"] },
        { "[measured]\nizz_g_m2 = 50\n", "izz_g_m2 = 50", "measured.izz_g_m2", ["No body has these inertias", "g m2"] },
    };

    [Theory]
    [MemberData(nameof(BadTails))]
    public void BadTail(string tail, string line, string key, string[] pieces) => OneError(BuildText.Plus(tail), line, key, pieces);

    [Theory]
    [InlineData("name", "text in quotes")]
    [InlineData("frame.wheelbase_mm", "40 to 1500 mm")]
    [InlineData("motor.stator_diameter_mm", "3 to 120 mm")]
    [InlineData("motor.kv_rpm_per_V", "20 to 60000 rpm/V")]
    [InlineData("propeller.pitch_in", "0.2 to 20 in")]
    [InlineData("battery.capacity_mAh", "30 to 60000 mAh")]
    public void MissingKey(string key, string range)
    {
        string name = key[(key.IndexOf('.', StringComparison.Ordinal) + 1)..];
        string text = string.Join('\n', BuildText.Minimal.Split('\n').Where(l => !l.StartsWith(name + " ", StringComparison.Ordinal)));
        Diagnostic error = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
        Assert.Equal((Severity.Error, key), (error.Severity, error.Key));
        Assert.Contains("missing", error.Message, StringComparison.Ordinal);
        Assert.Contains(range, error.Message, StringComparison.Ordinal);
        if (key.Contains('.', StringComparison.Ordinal)) Assert.Equal(BuildText.LineOf(text, $"[{key.Split('.')[0]}]"), error.Line);
    }

    [Fact]
    public void OverlappingDiscs()
    {
        // Side of the square 175/sqrt 2 = 123.7 mm = 4.87 in; 5.1 in = 129.5 mm.
        string text = BuildText.Minimal.Replace("wheelbase_mm = 225", "wheelbase_mm = 175", StringComparison.Ordinal);
        OneError(text, "diameter_in", "propeller.diameter_in", ["rotors 1 and 2 overlap by 5.8 mm", "at most 4.87 in"]);
    }

    [Fact]
    public void AllErrorsComeInOneGo()
    {
        string text = BuildText.Minimal
            .Replace("cells = 6", "cells = 60", StringComparison.Ordinal)
            .Replace("blades = 3", "blades = \"three\"", StringComparison.Ordinal)
            .Replace("pitch_in = 4.3\n", "", StringComparison.Ordinal);
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.Null(result.Build);
        Assert.Equal(["propeller.pitch_in", "propeller.blades", "battery.cells"], result.Diagnostics.Select(d => d.Key));
    }

    [Fact]
    public void DiagnosticPrintsOnOneLine()
    {
        string text = BuildText.With("motor", "mass_g = -33");
        Diagnostic error = Assert.Single(BuildReader.Parse(text, "test.toml").Diagnostics);
        Assert.Equal("test.toml:8:1: error: motor.mass_g = -33: This is too small; allowed is 0.3 to 1500 g.", error.ToString());
    }

    private static void OneError(string text, string line, string key, string[] pieces)
    {
        BuildResult result = BuildReader.Parse(text, "test.toml");
        Assert.True(result.Diagnostics.Count == 1, string.Join('\n', result.Diagnostics));
        Diagnostic error = result.Diagnostics[0];
        Assert.Null(result.Build);
        Assert.Equal((Severity.Error, "test.toml", BuildText.LineOf(text, line)), (error.Severity, error.File, error.Line));
        Assert.Equal(key, error.Key);
        foreach (string piece in pieces) Assert.Contains(piece, error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', error.ToString());
    }
}
