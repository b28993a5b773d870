using System.Runtime.CompilerServices;
using Simfeel.Builds.Writing;

namespace Simfeel.Builds.Tests.Writing;

/// <summary>Measured numbers go into the text of a build file, and nothing else of it changes.</summary>
public class BuildWriterTests
{
    private static readonly MeasuredNumber[] Numbers =
    [
        new("motor.kv_rpm_per_V", 1690.2, 1701.23, 1712), new("propeller.thrust_factor", 0.9634), new("motor.winding_resistance_mohm", 60, 65.4321, 70),
        new("drag.area_x_cm2", 91.5),
    ];

    /// <summary>All lines of every starter build stay as they were, byte for byte, but those that hold the numbers.</summary>
    [Fact]
    public void Comments_order_and_everything_else_stay()
    {
        foreach (string path in Directory.EnumerateFiles(Starters(), "*.toml"))
        {
            string text = File.ReadAllText(path);
            string copy = BuildWriter.WithMeasured(text, Numbers);
            string[] before = text.Split('\n'), after = copy.Split('\n');
            string[] gone = [.. before.Except(after)], come = [.. after.Except(before)];
            Assert.All(gone, line => Assert.StartsWith("kv_rpm_per_V", line, StringComparison.Ordinal));
            Assert.Single(gone);
            Assert.Equal(text.Contains("[drag]", StringComparison.Ordinal) ? 4 : 5, come.Length);
            // what is left over, in the order of the file
            Assert.Equal(before.Except(gone), after.Except(come).Intersect(before));
            Build build = BuildText.Read(copy);
            BuildValue kv = build.Values.Single(v => v.Key == "motor.kv_rpm_per_V");
            Assert.Equal((1690.0, 1701.0, 1712.0, ValueSource.Measured), (kv.Low, kv.Typical, kv.High, kv.Source));
            Assert.Equal(0.9634, build.Propeller.Blades.ThrustFactor);
            Assert.Equal(0.06543, build.Motor.Electrics.WindingResistance, 12);
            Assert.Equal(91.5e-4, build.Drag.Area.X, 12);
        }
    }

    [Fact]
    public void A_comment_behind_a_value_stays()
    {
        string text = BuildText.Minimal.Replace("kv_rpm_per_V = 1800", "kv_rpm_per_V = { value = 1800, source = \"datasheet\" }   # * the shop's", StringComparison.Ordinal);
        Assert.Contains(
            "\nkv_rpm_per_V = { low = 1690, typical = 1701, high = 1712, source = \"measured\" }   # * the shop's\n",
            BuildWriter.WithMeasured(text, Numbers), StringComparison.Ordinal);
    }

    /// <summary>Twice is once: a second writing replaces the first.</summary>
    [Fact]
    public void Writing_again_replaces()
    {
        string once = BuildWriter.WithMeasured(BuildText.Minimal, Numbers);
        Assert.Equal(once, BuildWriter.WithMeasured(once, Numbers));
        string other = BuildWriter.WithMeasured(once, [new("propeller.thrust_factor", 1.1)]);
        Assert.Equal(once.Replace("0.9634", "1.1", StringComparison.Ordinal), other);
    }

    /// <summary>All ways in which TOML may write a table.</summary>
    [Theory]
    [InlineData("[propeller]\ndiameter_in = 5.1\npitch_in = 4.3\nblades = 3\n")]
    [InlineData("[ propeller ] # screws\ndiameter_in = 5.1\npitch_in = 4.3\n\n# three of them\nblades = 3 # yes")]
    [InlineData("[propeller]\nthrust_factor = 1 # to be measured\ndiameter_in = 5.1\npitch_in = 4.3\nblades = 3\n\n")]
    [InlineData("[\"propeller\"]\n\"thrust_factor\" = { low = 0.9, typical = 1, high = 1.1 }\ndiameter_in = 5.1\npitch_in = 4.3\nblades = 3")]
    public void A_table_at_the_end_is_found(string table)
    {
        string text = BuildText.Minimal.Replace("[propeller]\ndiameter_in = 5.1\npitch_in = 4.3\nblades = 3\n", "", StringComparison.Ordinal) + table;
        Check(text);
        Check(text.Replace("\n", "\r\n", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("propeller = { diameter_in = 5.1, pitch_in = 4.3, blades = 3 } # all in one\n")]
    [InlineData("propeller = { diameter_in = 5.1, thrust_factor = 1.2, pitch_in = 4.3, blades = 3 }\n")]
    [InlineData("propeller.diameter_in = 5.1\npropeller.pitch_in = 4.3\npropeller.blades = 3\n")]
    [InlineData("propeller.diameter_in = 5.1\npropeller.thrust_factor = 1.2 # old\npropeller.pitch_in = 4.3\npropeller.blades = 3\n")]
    public void A_table_without_a_heading_is_found(string table)
    {
        string text = BuildText.Minimal.Replace("[propeller]\ndiameter_in = 5.1\npitch_in = 4.3\nblades = 3\n", "", StringComparison.Ordinal)
            .Replace("name = \"Test\"\n", "name = \"Test\"\n" + table, StringComparison.Ordinal);
        Check(text);
    }

    [Theory]
    [InlineData("motor.kv", 1, "motor.kv is no key")]
    [InlineData("motor.kv_rpm_per_V", 5, "20 to 60000 rpm/V")]
    [InlineData("motor.kv_rpm_per_V", double.NaN, "not a finite number")]
    [InlineData("extra[1].mass_g", 5, "no key that a measurement can set")]
    [InlineData("name", 5, "no key that a measurement can set")]
    // far below the sum of the parts
    [InlineData("measured.all_up_mass_g", 10, "less than the sum of the parts")]
    public void What_a_build_may_not_have_is_refused(string key, double value, string message)
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => BuildWriter.WithMeasured(BuildText.Minimal, [new(key, value)]));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    private static string Starters([CallerFilePath] string here = "") => BuildText.StarterDirectory(Path.GetDirectoryName(here)!);

    /// <summary>The number is in, once, and all the text around it is as before.</summary>
    private static void Check(string text)
    {
        string copy = BuildWriter.WithMeasured(text, [new("propeller.thrust_factor", 0.91)]);
        Build build = BuildText.Read(copy);
        Assert.Equal(0.91, build.Propeller.Blades.ThrustFactor);
        Assert.Equal(5.1 * 0.0254, build.Propeller.Blades.Diameter, 9);
        Assert.Equal(1, copy.Split("thrust_factor").Length - 1);
        Assert.Equal(text.Split('#').Length, copy.Split('#').Length);
        Assert.Equal(text.Contains("\r\n", StringComparison.Ordinal), !copy.Replace("\r\n", "", StringComparison.Ordinal).Contains('\n') && copy.Contains('\r'));
    }

    [Fact]
    public void A_device_is_not_replaced_by_a_file()
    {
        const string device = "/dev/simfeel-no-such-device";

        Assert.Contains("device", Assert.Throws<IOException>(() => WholeFile.Write(device, "x")).Message, StringComparison.Ordinal);
        Assert.False(File.Exists(device));
    }
}
